import { splitBlock } from './grid.ts';
import type { PlaceContext } from './place-found.ts';

const lastThat = (ctx: PlaceContext, fits: (place: string) => boolean): string | undefined => {
  if (ctx.lost) return undefined;
  for (const group of [ctx.focus, ...[...ctx.earlier].reverse()]) {
    const block = group.findLast(fits);
    if (block) return block;
  }
  return undefined;
};

const isBlock = (place: string): boolean => splitBlock(place) !== undefined;

/** The block last spoken of. */
export const lastBlock = (ctx: PlaceContext): string | undefined => lastThat(ctx, isBlock);

/** The corner block last spoken of. */
export const lastCorner = (ctx: PlaceContext): string | undefined =>
  lastThat(ctx, (place) => isCorner(ctx, place));

export const isCorner = ({ grid }: PlaceContext, place: string): boolean => {
  const at = splitBlock(place);
  return (
    at !== undefined && (at.row === 1 || at.row === grid.rows) && (at.block === 1 || at.block === grid.blocks)
  );
};
