import { blocksOfLine } from '../grid.ts';
import { spokenTogether } from '../group-spoken-of.ts';
import { wholeLines } from '../line-spoken.ts';
import type { PlaceContext } from '../place-found.ts';
import { seamsInHand } from '../seams-in-hand.ts';

/**
 * What one is picked from: blocks, sides, whole rows or columns, or seams that were told of together. Each is the list of its
 * places, in the order told.
 */
export function unitsInHand(ctx: PlaceContext): string[][] | undefined {
  return linesInHand(ctx) ?? seamsInHand(ctx) ?? spokenTogether(ctx)?.map((p) => [p]);
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
