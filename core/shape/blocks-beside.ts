import type { QuiltGrid } from '../../shared/quilt.ts';
import type { LaidBlock } from './lay-out-blocks.ts';
import { shapeOf } from './shape-of.ts';

export type Side = 'above' | 'below' | 'left' | 'right';

/** Share of the smaller block's side that must touch: corners that just meet are no neighbours. */
const TOUCHING = 0.2;
const HAIR = 1e-6;

/** The blocks that touch this one on one side, from the left or from the top. In a shape that is no plain grid there may be several. */
export function blocksBeside(grid: QuiltGrid, place: string, side: Side): string[] {
  const { blocks } = shapeOf(grid).laid;
  const from = blocks.find((block) => block.place === place);
  if (!from) return [];
  return blocks.filter((block) => touches(from, block, side)).map((block) => block.place);
}

function touches({ box: a }: LaidBlock, { box: b }: LaidBlock, side: Side): boolean {
  const upright = side === 'above' || side === 'below';
  const gap =
    side === 'above'
      ? b.bottom - a.top
      : side === 'below'
        ? b.top - a.bottom
        : side === 'left'
          ? b.right - a.left
          : b.left - a.right;
  if (Math.abs(gap) > HAIR) return false;
  const shared = upright
    ? Math.min(a.right, b.right) - Math.max(a.left, b.left)
    : Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
  const smaller = upright
    ? Math.min(a.right - a.left, b.right - b.left)
    : Math.min(a.bottom - a.top, b.bottom - b.top);
  return shared > smaller * TOUCHING;
}
