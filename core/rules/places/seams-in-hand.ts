import { areNeighbours, unique } from './grid.ts';
import type { PlaceContext } from './place-found.ts';

/**
 * "open seams at 2-3/2-4 and 5-1/5-2", "the seam between 2-4 and 3-4, and the one between 3-4 and 3-5": each of the pairs that a seam
 * joins, where two of them are spoken of. What "both" and "the other one" are is a seam then, and no block.
 */
export function seamsInHand(ctx: PlaceContext): string[][] | undefined {
  const { focus } = ctx;
  const last = ctx.earlier.at(-1) ?? [];
  const told = apart(focus, ctx);
  if (told) return told;
  const before = apart(last, ctx);
  if (before && focus.every((p) => last.includes(p))) return before;
  return arePair(focus) &&
    arePair(last) &&
    last.some((p) => !focus.includes(p)) &&
    areSeams(unique([...last, ...focus]), ctx)
    ? [last, focus]
    : undefined;
}

/** The two pairs of a list of four blocks, or of three where the one in the middle belongs to both. */
function apart(group: string[], ctx: PlaceContext): string[][] | undefined {
  const [a, b, c] = group;
  if (group.length === 3)
    return arePair([a!, b!]) && arePair([b!, c!]) && areSeams(group, ctx, true)
      ? [
          [a!, b!],
          [b!, c!],
        ]
      : undefined;
  const pairs = [group.slice(0, 2), group.slice(2)];
  return group.length === 4 &&
    pairs.every(arePair) &&
    (!areNeighbours(group[1]!, group[2]!) || areSeams(group, ctx, true))
    ? pairs
    : undefined;
}

/** Are these blocks told of for their seams, in this note and of nothing else since, or before it? */
function areSeams(places: string[], { items = [], mentions = [] }: PlaceContext, known = false): boolean {
  const seam = known ? -1 : items.findIndex((x) => x.seam);
  return (
    (seam >= 0 && items.slice(seam).every((x) => !x.finding || x.finding === 'split-seam')) ||
    mentions.some((m) => m.finding === 'split-seam' && places.every((p) => m.places.includes(p)))
  );
}

/** Two blocks that share a seam. */
const arePair = (places: string[]): boolean => places.length === 2 && areNeighbours(places[0]!, places[1]!);
