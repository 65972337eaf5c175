import { readOrdinal } from '../../../text/read-number.ts';
import type { Token } from '../../../text/tokenise.ts';
import { wordAt as w } from '../../../text/word-at.ts';
import { splitBlock } from '../grid.ts';
import { wholeLines } from '../line-spoken.ts';
import type { PlaceContext, PlaceFound } from '../place-found.ts';
import { blocksPicked } from '../place-found.ts';

/**
 * "row three is sound bar the third one along", "(column two's faded,) the second and third ones down have holes", "the bottom one's
 * missing": counted along the row or column just spoken of, and not on from its last block.
 */
export function nthOfLine(tokens: Token[], i: number, ctx: PlaceContext): PlaceFound | undefined {
  const start = w(tokens, i) === 'the' ? i + 1 : i;
  const values: number[] = [];
  let j = start;
  for (;;) {
    const nth = readOrdinal(tokens, j);
    if (!nth) break;
    values.push(nth.value);
    j = nth.next;
    if (!/^(and|&|,)$/.test(w(tokens, j)) || !readOrdinal(tokens, w(tokens, j + 1) === 'the' ? j + 2 : j + 1))
      break;
    j += w(tokens, j + 1) === 'the' ? 2 : 1;
  }
  const end = values.length || j > start ? undefined : endOfLine(w(tokens, start));
  if (!values.length && !end) return undefined;
  if (end) j++;
  if (end && w(tokens, j) === 'hand') j++;
  const noun = /^(ones?|blocks?|squares?|patch|patches)$/.test(w(tokens, j));
  if (noun) j++;
  if (values.length === 1 && noun) {
    const one = oneAlong(tokens, i, j, values[0]!, ctx);
    if (one) return one;
  }
  const line = ctx.focus.filter((p) => splitBlock(p));
  const first = splitBlock(line[0] ?? '');
  if (!first || line.length < 3) return undefined;
  const inRow = line.every((p) => splitBlock(p)!.row === first.row);
  if (!inRow && !line.every((p) => splitBlock(p)!.block === first.block)) return undefined;
  if (end) {
    // "the bottom one", of a column all of which was spoken of
    if (!noun || ctx.cloth || end.down === inRow || (!inRow && line.length < ctx.grid.rows)) return undefined;
    if (/^(of|in|along|on|from|down|up|to)$/.test(w(tokens, j))) return undefined;
    return blocksPicked(j, [end.last ? line.at(-1)! : line[0]!]);
  }
  if (
    !(inRow ? /^(along|across)$/ : /^down$/).test(w(tokens, j)) ||
    /^(from|of|in|on|the|row|to)$/.test(w(tokens, j + 1))
  )
    return undefined;
  const places = values.map((n) => line[n - 1]);
  return places.every((p) => p !== undefined) ? blocksPicked(j + 1, places as string[]) : undefined;
}

/** "going along the second row", then "first one's sound, second one's torn": the blocks of the row that is gone along. */
function oneAlong(
  tokens: Token[],
  i: number,
  j: number,
  nth: number,
  ctx: PlaceContext,
): PlaceFound | undefined {
  if (!/^('s|is|has|was|looks|feels|got)$/.test(w(tokens, j))) return undefined;
  if (
    !/^(|[.,;]|and|um|uh|then|the|but|sound|fine|ok|okay)$/.test(w(tokens, i - 1)) &&
    w(tokens, i) === 'the'
  )
    return undefined;
  const { focus, earlier, grid } = ctx;
  const row = wholeLines(grid, focus)
    ? focus
    : focus.length === 1
      ? earlier.slice(-3).findLast((g) => wholeLines(grid, g)?.lines.length === 1 && g.includes(focus[0]!))
      : undefined;
  const place = row && wholeLines(grid, row)!.lines.length === 1 ? row[nth - 1] : undefined;
  return place ? blocksPicked(j, [place]) : undefined;
}

const endOfLine = (word: string): { last: boolean; down: boolean } | undefined =>
  /^(top|upper|bottom|lower|btm)$/.test(word)
    ? { last: /^(bottom|lower|btm)$/.test(word), down: true }
    : /^(left|right)$/.test(word)
      ? { last: word === 'right', down: false }
      : undefined;

/** "the end | one on the right", "the first | one on the left": counted along a line, and from no block. */
export const isOneOfLine = (tokens: Token[], i: number): boolean =>
  w(tokens, i) === 'one' && /^(end|last|first|top|bottom|outer)$/.test(w(tokens, i - 1));
