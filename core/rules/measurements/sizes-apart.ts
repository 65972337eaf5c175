import { UNIT_WORDS } from '../../lexicon/units.ts';
import { readNumber } from '../../text/read-number.ts';
import { isNumberAt } from '../../text/starts-number.ts';
import type { Token } from '../../text/tokenise.ts';
import { wordAt as w } from '../../text/word-at.ts';

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
export function withSizesApart(tokens: Token[]): Token[] {
  const cuts = new Set<number>();
  for (let i = 2; i < tokens.length - 1; i++) {
    if (!NAME.test(tokens[i]!.w)) continue;
    const from = /^(?:the|and|&)$/.test(w(tokens, i - 1)) ? i - 1 : i;
    if (figureBehind(tokens, i) !== undefined && endsSize(tokens, from)) cuts.add(from);
  }
  if (!cuts.size) return tokens;
  return tokens.flatMap((t, i): Token[] =>
    cuts.has(i) ? [{ w: ',', from: t.from, to: t.from, kind: 'mark', glued: false }, t] : [t],
  );
}

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
