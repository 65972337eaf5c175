import type { QuiltGrid } from '../../../../shared/quilt.ts';
import type { Token } from '../../../text/tokenise.ts';
import { wordAt as w } from '../../../text/word-at.ts';
import { cornerPhrase } from '../find-corner.ts';
import { cornerBlock, splitBlock } from '../grid.ts';
import type { PlaceContext, PlaceFound } from '../place-found.ts';
import { groupsBack, pointingTo } from './pointing-to.ts';

/** "the corner": the one where the two sides just told meet, or the one told last. */
export function theCorner(tokens: Token[], i: number, ctx: PlaceContext): PlaceFound | undefined {
  if (w(tokens, i + 2) === 'of') return undefined;
  // "frayed along the left and the bottom, gone completely at the corner": where the two sides meet
  const meeting = cornerBetween(ctx.focus);
  if (meeting) return pointingTo(i + 2, [meeting], 'place.the-corner');
  // "the corner block, top right" says which
  if (cornerPhrase(tokens, i + 1, ctx)) return undefined;
  const groups = groupsBack(ctx);
  const corner =
    groups.find((g) => g.some((p) => p.startsWith('corner'))) ??
    groups.find((g) => g.some((p) => isCornerBlock(ctx.grid, p)));
  return (
    corner &&
    pointingTo(
      i + 2,
      corner.filter((p) => p.startsWith('corner') || isCornerBlock(ctx.grid, p)),
      'place.the-corner',
    )
  );
}

/** "the other left hand corner", "the other bottom corner block", after the one at that side was told of: the one at its other end. */
export function otherCorner(tokens: Token[], k: number, ctx: PlaceContext): PlaceFound | undefined {
  const side = w(tokens, k);
  if (!/^(left|right|top|bottom|upper|lower)$/.test(side)) return undefined;
  let next = k + 1;
  if (w(tokens, next) === 'hand') next++;
  if (w(tokens, next) !== 'corner') return undefined;
  next++;
  const block = /^(block|square|one)$/.test(w(tokens, next));
  if (block) next++;
  const upright = /^(top|bottom|upper|lower)$/.test(side);
  const at = /^(top|upper)$/.test(side) ? 'top' : side === 'lower' ? 'bottom' : side;
  for (const place of groupsBack(ctx).flat()) {
    const [kind, row, edge] = place.split('-');
    const told = splitBlock(place);
    const corner =
      kind === 'corner' && !block
        ? { row: row!, edge: edge! }
        : told && isCornerBlock(ctx.grid, place)
          ? { row: told.row === 1 ? 'top' : 'bottom', edge: told.block === 1 ? 'left' : 'right' }
          : undefined;
    if (!corner || (upright ? corner.row : corner.edge) !== at) continue;
    if (upright) corner.edge = corner.edge === 'left' ? 'right' : 'left';
    else corner.row = corner.row === 'top' ? 'bottom' : 'top';
    const places = [
      told
        ? cornerBlock(ctx.grid, corner.row === 'top', corner.edge === 'left')
        : `corner-${corner.row}-${corner.edge}`,
    ];
    return { next, places, how: 'implied', rule: 'place.other-corner', kind: told ? 'blocks' : 'part' };
  }
  return undefined;
}

/** Is it a block at a corner of the top? */
const isCornerBlock = (grid: QuiltGrid, place: string): boolean => {
  const at = splitBlock(place);
  return (
    at !== undefined && (at.row === 1 || at.row === grid.rows) && (at.block === 1 || at.block === grid.blocks)
  );
};

/** The corner of the quilt at which two sides meet. */
function cornerBetween(focus: string[]): string | undefined {
  const sides = focus.map((p) => /^(?:edge|border)-(\w+)$/.exec(p)?.[1]);
  if (sides.length !== 2 || sides.includes(undefined)) return undefined;
  const upright = sides.find((s) => s === 'top' || s === 'bottom');
  const across = sides.find((s) => s === 'left' || s === 'right');
  return upright && across ? `corner-${upright}-${across}` : undefined;
}
