import type { Token } from '../../../text/tokenise.ts';
import { wordAt as w } from '../../../text/word-at.ts';
import type { PlaceFound } from '../place-found.ts';
import { readSides } from './read-sides.ts';
import { sidesFound } from './sides-found.ts';

/** "bottom bound, 35 min", "top and left hemmed": only an edge is. */
export function boundSide(tokens: Token[], i: number): PlaceFound | undefined {
  if (!/^(|[.,;:\n]|the|then|and|&|\+|now)$/.test(w(tokens, i - 1))) return undefined;
  const read = readSides(tokens, i);
  return read && /^(bound|rebound|hemmed|rehemmed)$/.test(w(tokens, read.next))
    ? sidesFound('edge', read.sides, read.next, 'place.bound-side')
    : undefined;
}
