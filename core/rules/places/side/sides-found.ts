import type { PlaceFound } from '../place-found.ts';

/** Sides of the border or of the edge. `next` is the index behind their words. */
export const sidesFound = (
  part: 'border' | 'edge',
  sides: string[],
  next: number,
  rule: string,
  how: 'said' | 'implied' = 'said',
): PlaceFound => ({ next, places: sides.map((side) => `${part}-${side}`), how, rule, kind: 'part' });
