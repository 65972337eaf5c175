import type { Item } from './item.ts';

/** Does the item tell where, in words of its own? "It" and "that one" lean on what was said before. */
export const tellsPlace = (x: Item): boolean =>
  x.place !== undefined && x.place.kind !== 'pointer' && x.place.places.length > 0;

/** "the one below", "the other two": places of their own, where "it", "them" and "that one" go on with what was said. */
export const pointsElsewhere = (x: Item): boolean =>
  x.place?.kind === 'pointer' &&
  x.place.places.length > 0 &&
  !/^place\.(it|them|both|those|that-one|all-of-them)$/.test(x.place.rule);
