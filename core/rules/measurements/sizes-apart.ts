import { UNIT_WORDS } from '../../lexicon/units.ts';
import { readNumber } from '../../text/read-number.ts';
import { isNumberAt } from '../../text/starts-number.ts';
import type { Token } from '../../text/tokenise.ts';
import { withMarks } from '../../text/with-marks.ts';
import { wordAt as w } from '../../text/word-at.ts';
import { LEXICON } from '../lexicon-index.ts';

/** What is measured, where its figure stands behind it. */
const NAME =
  /^(?:width|length|height|blocks?|blks?|squares?|borders?|seams?|diagonals?|diags?|overhang|strips?|sashing|tails?|spacing|binding)$/;
const BE = /^(?:is|are|'s|was|were|run|finish|measure|come)$/;
/** What stands before the figure of the size told first. */
const LEADS =
  /^(?:x|by|×|and|&|wide|width|long|length|deep|apart|cut|at|allowance|is|are|'s|size|r|l|w|side)$/;
const UNITS =
  /^(?:in|ins|inch|inches|"|cm|cms|mm|m|ft|feet|yd|yds|yards?|metres?|meters?|centimetres?|centimeters?)$/;

/**
 * "74 x 86 in | blocks 11 | border 5 1/2", "width 5 ft 2 | length 2 yd | blocks 12 in": sizes told one behind the other, each by its name
 * first, get the comma that parts them in writing, so that "in" is an inch and no figure goes to the next name.
 */
export function withSizesApart(asked: Token[]): Token[] {
  const tokens = withoutQuestions(asked);
  const cuts = new Map<number, string>();
  for (let i = 0; i < tokens.length - 1; i++) {
    if (!NAME.test(tokens[i]!.w)) continue;
    const from = /^(?:the|and|&)$/.test(w(tokens, i - 1)) ? i - 1 : i;
    const end = figureBehind(tokens, i);
    if (end === undefined) continue;
    if (i > 1 && (endsSize(tokens, from) || isCount(tokens, from, end))) cuts.set(from, ',');
    // "… eighty eight long | inches | the blocks are 11"
    if (cuts.has(from) && isUnitForAll(tokens, from - 1)) cuts.set(from - 1, ',');
    if (beginsStatement(tokens, end)) cuts.set(end, ';');
  }
  return withMarks(tokens, cuts);
}

/** "seam allowance? three eighths", "how wide? five foot two": asked of herself and answered with a figure, as behind a colon. */
function withoutQuestions(tokens: Token[]): Token[] {
  if (!tokens.some((t) => t.w === '?')) return tokens;
  return tokens.flatMap((t, i): Token[] => {
    const answered = (k: number): boolean =>
      w(tokens, k) === '?' &&
      (isNumberAt(tokens, k + 1) || /^(?:about|roughly|a|an)$/.test(w(tokens, k + 1)));
    if (t.w === '?' && answered(i) && (NAME.test(w(tokens, i - 1)) || ASKED.test(w(tokens, i - 1))))
      return [{ ...t, w: ':' }];
    // "how wide ?" is the width
    const side =
      t.w === 'how' && answered(i + 2) && isLength(tokens, i + 3) ? SIDE_ASKED[w(tokens, i + 1)] : undefined;
    if (side) return [{ ...t, w: side, to: tokens[i + 1]!.to }];
    if (w(tokens, i - 1) === 'how' && answered(i + 1) && isLength(tokens, i + 2) && SIDE_ASKED[t.w])
      return [];
    if (
      t.w === '?' &&
      answered(i) &&
      w(tokens, i - 2) === 'how' &&
      SIDE_ASKED[w(tokens, i - 1)] &&
      isLength(tokens, i + 1)
    )
      return [{ ...t, w: ':' }];
    return [t];
  });
}
const ASKED = /^(?:allowance|allowances|width|length|overhang|hangover)$/;
const SIDE_ASKED: Record<string, string | undefined> = {
  wide: 'width',
  long: 'length',
  high: 'length',
  tall: 'length',
};
const isLength = (tokens: Token[], i: number): boolean =>
  tokens.slice(i, i + 6).some((t) => UNITS.test(t.w) || t.w === 'foot');

/** The index behind the figure that belongs to the name at `i`; none where that figure has a name of its own behind it. */
function figureBehind(tokens: Token[], i: number): number | undefined {
  let k = i + 1;
  if (w(tokens, i) === 'seam' && w(tokens, k) === 'allowance') k++;
  while (/^(?:allowance|width|size|wide|of|at|:|cut|finished)$/.test(w(tokens, k)) && k < i + 3) k++;
  if (BE.test(w(tokens, k))) k++;
  if (!isNumberAt(tokens, k) || /^(?:a|an|another)$/.test(w(tokens, k))) return undefined;
  const figure = readNumber(tokens, k);
  if (!figure || w(tokens, figure.next) === '-') return undefined;
  const end = UNITS.test(w(tokens, figure.next)) ? figure.next + 1 : figure.next;
  // "12 in blocks 5 in border": the names stand behind
  return NAME.test(w(tokens, end)) && figureBehind(tokens, end) === undefined ? undefined : end;
}

/** Do the words before `at` end in a figure, told of a size by its name or of a width by a length? */
function endsSize(tokens: Token[], at: number): boolean {
  let k = at - 1;
  if (/^(?:wide|long|deep|apart|each|high)$/.test(w(tokens, k))) k--;
  const unit = Object.hasOwn(UNIT_WORDS, w(tokens, k)) && UNITS.test(w(tokens, k));
  if (unit) k--;
  let from = k + 1;
  while (
    from > 0 &&
    at - from < 6 &&
    (isNumberAt(tokens, from - 1) || /^(?:and|ft|feet|'|-)$/.test(w(tokens, from - 1)))
  )
    from--;
  while (from <= k && !isNumberAt(tokens, from)) from++;
  if (from > k) return unit && /^(?:wide|long|high)$/.test(w(tokens, k));
  if (k < at - 1 && !unit) return true;
  const before = w(tokens, from - 1);
  return NAME.test(before) || LEADS.test(before) || /^(?:about|roughly|nearly|just|only|of)$/.test(before);
}

/** "70 min for the 2 | overhang 8 cm": how many things the time was for. */
const isCount = (tokens: Token[], at: number, end: number): boolean =>
  UNITS.test(w(tokens, end - 1)) &&
  isNumberAt(tokens, at - 1) &&
  /^(?:the|all|both|these|those)$/.test(w(tokens, at - 2)) &&
  w(tokens, at - 3) === 'for';

/** "seventy wide eighty-eight long inches": a unit said once, behind all figures. */
const isUnitForAll = (tokens: Token[], i: number): boolean =>
  UNITS.test(w(tokens, i)) &&
  /^(?:wide|long|high)$/.test(w(tokens, i - 1)) &&
  (isNumberAt(tokens, i - 2) || /^(?:quarters?|half|eighths?|thirds?)$/.test(w(tokens, i - 2)));

/** "(border 4 1/2 in) | edge frayed all round", "(seams 1/4) | squared it up": behind a size with its unit or a fraction a deed or a part of the quilt. */
function beginsStatement(tokens: Token[], i: number): boolean {
  const before = w(tokens, i - 1);
  const next = tokens[i];
  if (
    !next ||
    next.kind === 'mark' ||
    !(UNITS.test(before) || w(tokens, i - 2) === '/' || before.includes('/'))
  )
    return false;
  if (
    NAME.test(next.w) ||
    /^(?:cut|finished|sewn|pressed|overlapped|doubled|back|top|bottom|left|right|sides?)$/.test(next.w)
  )
    return false;
  return (
    LEXICON.longestAt(tokens, i)?.payloads.some(
      (s) =>
        (s.k === 'action' && s.form === 'past') ||
        (s.k === 'part' && /^(?:edge|binding|backing|batting)/.test(s.v)),
    ) ?? false
  );
}
