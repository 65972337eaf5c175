import type { Token } from '../../../text/tokenise.ts';
import { areNeighbours, blocksOfLine } from '../grid.ts';
import { spokenTogether } from '../group-spoken-of.ts';
import { wholeLines } from '../line-spoken.ts';
import type { PlaceContext } from '../place-found.ts';

/**
 * What one is picked from: blocks, sides, whole rows or columns, or seams that were told of together. Each is the list of its
 * places, in the order told.
 */
export function unitsInHand(tokens: Token[], i: number, ctx: PlaceContext): string[][] | undefined {
  return linesInHand(ctx) ?? seamsInHand(tokens, i, ctx) ?? spokenTogether(ctx)?.map((p) => [p]);
}

/** "rows two and five are dirty", "column one is faded and column four has a stain": each of the lines. */
function linesInHand({ grid, focus, earlier }: PlaceContext): string[][] | undefined {
  const last = earlier.at(-1) ?? [];
  const here = wholeLines(grid, focus);
  const group = here && here.lines.length > 1 ? here : wholeLines(grid, last);
  const linesOf = (of: NonNullable<typeof here>): string[][] =>
    of.lines.map((n) => blocksOfLine(grid, of.axis, n));
  if (group && group.lines.length > 1 && group.lines.length < 4)
    return group === here || focus.every((p) => last.includes(p)) ? linesOf(group) : undefined;
  return here?.lines.length === 1 &&
    group?.lines.length === 1 &&
    group.axis === here.axis &&
    group.lines[0] !== here.lines[0]
    ? [...linesOf(group), ...linesOf(here)]
    : undefined;
}

/** "open seams at 2-3/2-4 and 5-1/5-2": each of the pairs that a seam joins. */
function seamsInHand(tokens: Token[], i: number, { focus, earlier }: PlaceContext): string[][] | undefined {
  const last = earlier.at(-1) ?? [];
  const cut = (g: string[]): string[][] | undefined => {
    const pairs = [g.slice(0, 2), g.slice(2)];
    return g.length === 4 && pairs.every(arePair) && !areNeighbours(g[1]!, g[2]!) ? pairs : undefined;
  };
  const told = cut(focus);
  if (told) return told;
  const before = cut(last);
  if (before && focus.every((p) => last.includes(p))) return before;
  return arePair(focus) &&
    arePair(last) &&
    !last.some((p) => focus.includes(p)) &&
    tokens.slice(0, i).some((t) => /^seams?$/.test(t.w))
    ? [last, focus]
    : undefined;
}

/** Two blocks that share a seam. */
const arePair = (places: string[]): boolean => places.length === 2 && areNeighbours(places[0]!, places[1]!);
