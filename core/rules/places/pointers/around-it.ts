import { readCount } from '../../../text/read-number.ts';
import type { Token } from '../../../text/tokenise.ts';
import { wordAt as w } from '../../../text/word-at.ts';
import { blockFrom } from '../grid.ts';
import type { PlaceContext, PlaceFound } from '../place-found.ts';
import { pointingInside } from './pointing-to.ts';

/** "the four around it", "the blocks around it", "the eight surrounding it". */
export function around(
  tokens: Token[],
  j: number,
  ctx: PlaceContext,
  base: string | undefined,
): PlaceFound | undefined {
  if (!base) return undefined;
  const n = readCount(tokens, j);
  let k = n ? n.next : j;
  if (!n && !/^(ones|blocks)$/.test(w(tokens, k))) return undefined;
  if (/^(ones|blocks|squares)$/.test(w(tokens, k))) k++;
  if (w(tokens, k) === 'all') k++;
  if (!/^(around|round|surrounding)$/.test(w(tokens, k)) || !/^(it|that)$/.test(w(tokens, k + 1)))
    return undefined;
  const steps = [
    [-1, 0],
    [1, 0],
    [0, -1],
    [0, 1],
    ...(n?.value === 4
      ? []
      : [
          [-1, -1],
          [-1, 1],
          [1, -1],
          [1, 1],
        ]),
  ] as [number, number][];
  const inside = steps.map(([r, b]) => blockFrom(ctx.grid, base, r, b)).filter((p) => p !== undefined);
  return { ...pointingInside(k + 2, inside, 'place.around'), outside: false };
}

/** "the block diagonally below", "the one diagonally above it to the left". */
export function diagonal(
  tokens: Token[],
  j: number,
  ctx: PlaceContext,
  base: string | undefined,
): PlaceFound | undefined {
  if (
    !base ||
    !/^(one|block|square)$/.test(w(tokens, j)) ||
    !/^(diagonally|diagonal)$/.test(w(tokens, j + 1))
  )
    return undefined;
  const down = /^(below|beneath|under|down)$/.test(w(tokens, j + 2));
  if (!down && !/^(above|over|up)$/.test(w(tokens, j + 2))) return undefined;
  let next = j + 3;
  if (w(tokens, next) === 'it') next++;
  let k = next;
  while (/^(and|to|on|the|its)$/.test(w(tokens, k)) && k < next + 3) k++;
  const side = /^(left|right)$/.test(w(tokens, k)) ? w(tokens, k) : undefined;
  const inside = [-1, 1]
    .filter((d) => !side || d === (side === 'left' ? -1 : 1))
    .map((d) => blockFrom(ctx.grid, base, down ? 1 : -1, d))
    .filter((p) => p !== undefined);
  // without a side it is only known where the quilt's edge leaves but one
  return {
    ...pointingInside(side ? k + 1 : next, inside.length === 1 ? inside : [], 'place.diagonal'),
    outside: false,
  };
}
