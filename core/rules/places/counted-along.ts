import { readCount, readOrdinal } from '../../text/read-number.ts';
import type { Token } from '../../text/tokenise.ts';
import { wordAt as w } from '../../text/word-at.ts';
import { ACROSS, VERTICAL } from './corner-rules.ts';
import { blockAt, countUp, gridOfRow, splitBlock } from './grid.ts';
import { wholeLines } from './line-spoken.ts';
import { blocksSaid, type PlaceContext, type PlaceFound } from './place-found.ts';
import { BLOCK_NOUNS } from './place-tokens.ts';

/**
 * Blocks counted along a row that is named beside them or was named just now: "(row two's got moth) from the third block to the fifth",
 * "four in from the left in the second row", "(in row three it's) one, two and five that …"; and "the four blocks in the top left corner".
 */
export function countedAlong(tokens: Token[], i: number, ctx: PlaceContext): PlaceFound | undefined {
  return (
    runOfBlocks(tokens, i, ctx) ??
    inFromSide(tokens, i, ctx) ??
    theseOfRow(tokens, i, ctx) ??
    inCorner(tokens, i, ctx)
  );
}

/** The row that is named behind, "in row three", "of the second row", or the one spoken of as a whole. */
function rowOfIt(
  tokens: Token[],
  i: number,
  { grid, focus }: PlaceContext,
): { row: number; next: number } | undefined {
  if (/^(in|on|of|along)$/.test(w(tokens, i))) {
    const k = /^(the|that|this)$/.test(w(tokens, i + 1)) ? i + 2 : i + 1;
    const named = /^(row|rose|road)$/.test(w(tokens, k)) ? readCount(tokens, k + 1) : undefined;
    if (named) return { row: named.value, next: named.next };
    const end = { top: 1, bottom: grid.rows, last: grid.rows }[w(tokens, k)];
    const nth = end ? { value: end, next: k + 1 } : readOrdinal(tokens, k);
    if (nth && w(tokens, nth.next) === 'row') return { row: nth.value, next: nth.next + 1 };
    if (/^(it|row)$/.test(w(tokens, k)) === false) return undefined;
  }
  const here = wholeLines(grid, focus);
  if (here?.axis !== 'row' || here.lines.length !== 1) return undefined;
  const behind = /^(in|on|of|along)$/.test(w(tokens, i)) ? i + (w(tokens, i + 1) === 'it' ? 2 : 3) : i;
  return { row: here.lines[0]!, next: behind };
}

const isBlock = (word: string): boolean => word === 'one' || BLOCK_NOUNS.has(word);

/** "third block to the fifth", "the second block through to the fourth one". */
function runOfBlocks(tokens: Token[], i: number, ctx: PlaceContext): PlaceFound | undefined {
  const from = readOrdinal(tokens, i);
  if (!from) return undefined;
  const noun = isBlock(w(tokens, from.next));
  let k = noun ? from.next + 1 : from.next;
  if (!/^(to|through|thru|till|until|up|right|along|across|down)$/.test(w(tokens, k))) return undefined;
  while (/^(right|all|along|across|up|down|through|thru|till|until|to)$/.test(w(tokens, k))) k++;
  const the = w(tokens, k) === 'the';
  // "second to last" is one block
  const to = noun || the ? readOrdinal(tokens, the ? k + 1 : k) : undefined;
  if (!to || to.value <= from.value) return undefined;
  const end = isBlock(w(tokens, to.next)) ? to.next + 1 : to.next;
  if (/^(row|rows|column|columns)$/.test(w(tokens, end))) return undefined;
  const line = rowOfIt(tokens, end, ctx);
  if (!line || to.value > gridOfRow(ctx.grid, line.row).blocks) return undefined;
  const places = countUp(from.value, to.value).map((n) => `${line.row}-${n}`);
  return blocksSaid(line.next, places, 'place.run-of-row');
}

/** "four in from the left", "two along from the right-hand end". */
function inFromSide(tokens: Token[], i: number, ctx: PlaceContext): PlaceFound | undefined {
  const n = readCount(tokens, i) ?? readOrdinal(tokens, i);
  if (!n) return undefined;
  let k = isBlock(w(tokens, n.next)) || w(tokens, n.next) === 'blocks' ? n.next + 1 : n.next;
  if (!/^(in|along|across|over)$/.test(w(tokens, k))) return undefined;
  k++;
  if (w(tokens, k) !== 'from') return undefined;
  k++;
  if (w(tokens, k) === 'the') k++;
  const side = ACROSS.get(w(tokens, k));
  if (!side) return undefined;
  k++;
  while (/^(hand|side|end|edge)$/.test(w(tokens, k))) k++;
  const line = rowOfIt(tokens, k, ctx);
  if (!line) return undefined;
  const across = gridOfRow(ctx.grid, line.row).blocks;
  const place = blockAt(ctx.grid, line.row, side === 'left' ? n.value : across + 1 - n.value);
  return place ? blocksSaid(line.next, [place], 'place.in-from-side') : undefined;
}

/** "(row three, it's) two and four (that are torn)". */
function theseOfRow(tokens: Token[], i: number, ctx: PlaceContext): PlaceFound | undefined {
  if (!/^('s|is|only|just|blocks?)$/.test(w(tokens, i - 1))) return undefined;
  const here = wholeLines(ctx.grid, ctx.focus);
  if (here?.axis !== 'row' || here.lines.length !== 1) return undefined;
  const places: string[] = [];
  let k = i;
  for (;;) {
    const n = readCount(tokens, k);
    const place = n && blockAt(ctx.grid, here.lines[0]!, n.value);
    if (!place) return undefined;
    places.push(place);
    k = n.next;
    if (!/^(,|and|&)$/.test(w(tokens, k))) break;
    k++;
    if (/^(and|&)$/.test(w(tokens, k))) k++;
  }
  return /^(that|which|wants?|needs?)$/.test(w(tokens, k))
    ? blocksSaid(k, places, 'place.these-of-row')
    : undefined;
}

/** "the four blocks in the top left corner", "bottom right four blocks": two by two. */
function inCorner(tokens: Token[], i: number, { grid }: PlaceContext): PlaceFound | undefined {
  let k = w(tokens, i) === 'the' ? i + 1 : i;
  const four = (at: number): boolean => /^(four|4)$/.test(w(tokens, at));
  const led =
    four(k) && /^(blocks|ones|squares)$/.test(w(tokens, k + 1)) && /^(in|at)$/.test(w(tokens, k + 2));
  if (led) k += w(tokens, k + 3) === 'the' ? 4 : 3;
  const up = VERTICAL.get(w(tokens, k));
  const side = up && ACROSS.get(w(tokens, k + 1));
  if (!up || !side) return undefined;
  let next = w(tokens, k + 2) === 'hand' ? k + 3 : k + 2;
  if (led) {
    if (w(tokens, next) !== 'corner') return undefined;
    next++;
  } else {
    if (!four(next)) return undefined;
    next++;
    if (/^(blocks|ones|squares)$/.test(w(tokens, next))) next++;
    else if (!/^('re|are|have|is|all|need|want)$/.test(w(tokens, next))) return undefined;
  }
  const rows = up === 'top' ? [1, 2] : [grid.rows - 1, grid.rows];
  const places = rows.flatMap((row) => {
    const { blocks } = gridOfRow(grid, row);
    return (side === 'left' ? [1, 2] : [blocks - 1, blocks]).map((block) => blockAt(grid, row, block));
  });
  return places.every((p) => p !== undefined && splitBlock(p))
    ? blocksSaid(next, places as string[], 'place.corner-cluster')
    : undefined;
}
