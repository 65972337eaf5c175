import type { Token } from '../../../text/tokenise.ts';
import { wordAt as w } from '../../../text/word-at.ts';
import { LEXICON } from '../../lexicon-index.ts';

/** Words behind "the other", "the upper", "the second" that none of these can belong to. */
const BEHIND =
  /^(|[.,;:!?&+()\n-]|--|and|but|so|or|then|is|'s|was|were|has|had|needs?|wants?|gets?|got|will|'ll|'d|can|ca|could|should|must|may|might|would|wo|does|did|i|i'm|we|she|he|it|they|by|with|which|who|that|came|comes?|coming|went|goes|going|gone|stays?|stayed|remains?|remained|being|been|be|now|next|still|too|also|as|again|not|never|only|just|already|yet|later|soon|first|tomorrow|today|tonight|yesterday|tmrw|tmw|done|did|didn't|looks?|looked|seems?|seemed|appears?|takes?|took|responded|proved|waits?|waiting|alone|nothing|there|where|while|whereas|having|being|straight|even|almost|nearly|quite|really|definitely|probably|maybe|perhaps)$/;

/** Does the word at `k` leave "the upper", "the second", "the other" before it to stand for a thing by itself? */
export function standsAlone(tokens: Token[], k: number): boolean {
  const word = w(tokens, k);
  if (BEHIND.test(word)) return true;
  if (word === 'to') return /^(be|do|come|go|get|have|follow|wait|stay|remain)$/.test(w(tokens, k + 1));
  // "the top left" is a corner
  if (
    /^(left|right)$/.test(word) &&
    !/^(first|second|third|last|other|former|latter)$/.test(w(tokens, k - 1))
  )
    return false;
  const told = LEXICON.longestAt(tokens, k);
  // "the first darned, the second patched", "the upper torn, the lower stained": but "the upper tear"
  return (
    told !== undefined &&
    told.payloads.some(
      (s) =>
        (s.k === 'action' && s.form === 'past') ||
        ((s.k === 'finding' || s.k === 'fail') &&
          /ed$|^(torn|worn|thin|sound|frail|weak|open)$/.test(w(tokens, told.next - 1))),
    ) &&
    !/^(one|ones|block|blocks|square|squares|row|rows|column|columns|edge|border|seam|corner|piece|bit)$/.test(
      w(tokens, told.next),
    )
  );
}

/** What is said against what: where one of a line stands in a note, the other is likely to be a thing as well. */
const AGAINST: [RegExp, RegExp][] = [
  [/^(upper|top|higher)$/, /^(lower|bottom|other)$/],
  [/^(lower|bottom)$/, /^(upper|top|higher|other)$/],
  [/^left$/, /^(right|other)$/],
  [/^right$/, /^(left|other)$/],
  [/^(first|1st)$/, /^(second|third|2nd|3rd|last|other|others|rest)$/],
  [/^(second|third|2nd|3rd|last)$/, /^(first|second|1st|2nd|other)$/],
  [/^(middle|centre|center)$/, /^(top|bottom|left|right|upper|lower|first|last|other|others|outer)$/],
];

/** Words between two that are told in one list: "the top, the left and the right". */
const LISTED = /^(and|&|or|,|the|hand|-)$/;

/** Is the word at `k` said against another of this note: "the left … the right", "the first … the other"? */
export function isSetAgainst(tokens: Token[], k: number): boolean {
  const of = AGAINST.find(([word]) => word.test(w(tokens, k)));
  if (!of) return false;
  const others = tokens.flatMap((t, m) => (m !== k && Math.abs(m - k) < 40 && of[1].test(t.w) ? [m] : []));
  const listed = tokens.some(
    (t, m) =>
      m !== k &&
      Math.abs(m - k) < 5 &&
      (AGAINST.some(([word]) => word.test(t.w)) || /^(fourth|fifth|sixth)$/.test(t.w)) &&
      tokens.slice(Math.min(m, k) + 1, Math.max(m, k)).every((x) => LISTED.test(x.w)),
  );
  return others.length > 0 && !listed;
}
