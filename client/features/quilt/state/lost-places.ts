import type { QuiltState } from '../../../../core/log/state.ts';
import { shapeOf } from '../../../../core/shape/shape-of.ts';
import type { Place } from '../../../../shared/entry.ts';
import type { QuiltGrid } from '../../../../shared/quilt.ts';
import { blockOf } from '../../../words/place-words.ts';

/** A block that the quilt has not got: its grid was changed after the block was spoken of. */
export function isLost(grid: QuiltGrid, place: Place): boolean {
  const block = blockOf(place);
  return block !== null && shapeOf(grid).at(block[0], block[1]) !== place;
}

/** The blocks that entries or photographs name and the quilt has not got now. */
export function lostPlaces(state: QuiltState): Place[] {
  const lost = new Set<Place>();
  const look = (places: readonly Place[] | undefined): void => {
    for (const place of places ?? []) if (isLost(state.quilt, place)) lost.add(place);
  };
  for (const { entry } of state.entries) if ('places' in entry) look(entry.places);
  for (const photo of state.photos) look(photo.places);
  return [...lost].sort(new Intl.Collator('en', { numeric: true }).compare);
}
