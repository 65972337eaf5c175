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
