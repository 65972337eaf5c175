import type { Item } from './item.ts';

/** Does the item tell where, in words of its own? "It" and "that one" lean on what was said before. */
export const tellsPlace = (x: Item): boolean =>
  x.place !== undefined && x.place.kind !== 'pointer' && x.place.places.length > 0;
