import type { Item } from '../item.ts';
import { wordsBetween } from '../words-between.ts';
import { areNeighbours } from './grid.ts';
import type { PlaceContext } from './place-found.ts';

const SEAM_WITH = / (?:seams?|joins?) (?:it shares |shared )?(?:with|to|against|onto|towards?) (?:block )?$/;

/**
 * "4-1 is torn and the seam with 4-2 has gone", "…, closed the seam to 4-2": the other side of that seam is the block just
 * spoken of, where the two lie side by side. Where the seam has a block of its own ("4-1's seam with 4-2") both are told already.
 */
export function seamWith(items: Item[], { focus }: PlaceContext): void {
  const at = items.length - 1;
  const place = items[at]!.place!;
  const [here] = focus;
  if (focus.length !== 1 || place.kind !== 'blocks' || place.places.length !== 1) return;
  if (!SEAM_WITH.test(wordsBetween(items, at - 5, at)) || place.places[0] === here) return;
  if (!areNeighbours(here!, place.places[0]!)) return;
  place.places = [here!, ...place.places];
}
