import type { Token } from '../../../text/tokenise.ts';
import { wordAt as w } from '../../../text/word-at.ts';
import { blocksBetween } from '../grid.ts';
import type { PlaceContext, PlaceFound } from '../place-found.ts';
import { pointingTo } from '../pointers/pointing-to.ts';

/** "(the block) between 3-2 and 3-4", "(the ones) in between 2-1 and 2-5": what lies between two blocks of one row or column. */
export function betweenTwo(
  tokens: Token[],
  i: number,
  { grid }: PlaceContext,
  placeAt: (j: number) => PlaceFound | undefined,
): PlaceFound | undefined {
  const k = w(tokens, i) === 'in' ? i + 1 : i;
  if (w(tokens, k) !== 'between') return undefined;
  const first = placeAt(k + 1);
  if (first?.places.length !== 1 || !/^(and|&)$/.test(w(tokens, first.next))) return undefined;
  const last = placeAt(first.next + 1);
  if (last?.places.length !== 1) return undefined;
  const places = blocksBetween(grid, first.places[0]!, last.places[0]!);
  return places.length ? pointingTo(last.next, places, 'place.in-between') : undefined;
}
