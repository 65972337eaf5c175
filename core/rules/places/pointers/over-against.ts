import { readCount } from '../../../text/read-number.ts';
import type { Token } from '../../../text/tokenise.ts';
import { wordAt as w } from '../../../text/word-at.ts';
import { blockAt, splitBlock } from '../grid.ts';
import type { PlaceContext, PlaceFound } from '../place-found.ts';
import { pointingInside } from './pointing-to.ts';

const FACING: Record<string, string> = {
  top: 'bottom',
  bottom: 'top',
  left: 'right',
  right: 'left',
  'top-left': 'bottom-right',
  'bottom-right': 'top-left',
  'top-right': 'bottom-left',
  'bottom-left': 'top-right',
};

/** "took that border off and the one opposite too", "the opposite side", "the one across from it": the side that lies over against it. */
export function oppositeSide(tokens: Token[], i: number, ctx: PlaceContext): PlaceFound | undefined {
  let j = i;
  if (/^(the|its)$/.test(w(tokens, j))) j++;
  if (w(tokens, j) === 'opposite' && /^(one|side|edge|border|corner|number)$/.test(w(tokens, j + 1))) j += 2;
  else if (w(tokens, j) === 'one' && w(tokens, j + 1) === 'opposite') j += 2;
  else if (w(tokens, j) === 'one' && w(tokens, j + 1) === 'across' && w(tokens, j + 2) === 'from') j += 3;
  else return undefined;
  const [side] = ctx.focus;
  const told = ctx.focus.length === 1 ? /^(border|edge|corner)-(.+)$/.exec(side!) : undefined;
  if (!told) return undefined;
  if (/^(to|it|that)$/.test(w(tokens, j))) j++;
  return pointingInside(j, [`${told[1]}-${FACING[told[2]!]}`], 'place.opposite-side');
}

/**
 * "the corner diagonally opposite", "the opposite corner", "the corner block diagonally across from it at the bottom right": as far
 * from the block last spoken of, on the other side of the middle.
 */
export function oppositeCorner(
  tokens: Token[],
  i: number,
  { grid }: PlaceContext,
  base: string | undefined,
): PlaceFound | undefined {
  if (!base) return undefined;
  let k = i;
  if (w(tokens, k) === 'opposite' && w(tokens, k + 1) === 'corner') k += 2;
  else {
    while (/^(the|its|corner|one|block|square)$/.test(w(tokens, k)) && k < i + 4) k++;
    if (w(tokens, k) !== 'diagonally' || !/^(opposite|across)$/.test(w(tokens, k + 1))) return undefined;
    // "the one diagonally across to the left" is next to it
    if (w(tokens, k + 1) === 'across' && w(tokens, k + 2) !== 'from') return undefined;
    k += 2;
    if (/^(from|to)$/.test(w(tokens, k)) && /^(it|that|this)$/.test(w(tokens, k + 1))) {
      k += 2;
      if (w(tokens, k) === 'one') k++;
    }
  }
  const at = splitBlock(base)!;
  const block = blockAt(grid, grid.rows + 1 - at.row, grid.blocks + 1 - at.block);
  // "at the bottom right": the corner that it is
  if (/^(at|in)$/.test(w(tokens, k)) && w(tokens, k + 1) === 'the') {
    const [up, side] = [w(tokens, k + 2), w(tokens, k + 3)];
    const row = up === 'top' ? 1 : up === 'bottom' ? grid.rows : 0;
    const column = side === 'left' ? 1 : side === 'right' ? grid.blocks : 0;
    if (block === `${row}-${column}`) {
      k += 4;
      if (w(tokens, k) === 'hand') k++;
      if (w(tokens, k) === 'corner') k++;
    }
  }
  return pointingInside(k, [block], 'place.opposite-corner');
}

/** "the other end of the row", "opposite end of that column", "the far end of its row": seen from the block last spoken of. */
export function otherEnd(
  tokens: Token[],
  j: number,
  { grid }: PlaceContext,
  base: string | undefined,
): PlaceFound | undefined {
  const at = base && splitBlock(base);
  if (
    !at ||
    !/^(other|opposite|far)$/.test(w(tokens, j)) ||
    w(tokens, j + 1) !== 'end' ||
    w(tokens, j + 2) !== 'of'
  )
    return undefined;
  let k = j + 3;
  while (/^(the|that|this|its|same)$/.test(w(tokens, k))) k++;
  if (k === j + 3) return undefined;
  const line = w(tokens, k);
  if (line === 'row' && !readCount(tokens, k + 1))
    return pointingInside(
      k + 1,
      [blockAt(grid, at.row, at.block * 2 > grid.blocks ? 1 : grid.blocks)],
      'place.other-end',
    );
  if (/^(column|col)$/.test(line) && !readCount(tokens, k + 1))
    return pointingInside(
      k + 1,
      [blockAt(grid, at.row * 2 > grid.rows ? 1 : grid.rows, at.block)],
      'place.other-end',
    );
  return undefined;
}
