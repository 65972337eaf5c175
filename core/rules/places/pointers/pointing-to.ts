import { unique } from '../grid.ts';
import type { PlaceContext, PlaceFound } from '../place-found.ts';

/** What words that point back stand on. `next` is the index behind them. */
export const pointingTo = (next: number, places: string[], rule: string): PlaceFound => ({
  next,
  places,
  how: 'implied',
  rule,
  kind: 'pointer',
});

/** The groups of places spoken of, newest first. */
export const groupsBack = ({ focus, earlier }: PlaceContext): string[][] => [
  focus,
  ...[...earlier].reverse(),
];

/** As `pointingTo`, of blocks of which some may lie outside the quilt. */
export const pointingInside = (next: number, places: (string | undefined)[], rule: string): PlaceFound => {
  const inside = places.filter((p): p is string => p !== undefined);
  return {
    next,
    places: unique(inside),
    how: 'implied',
    rule,
    kind: 'pointer',
    ...(inside.length < places.length || !inside.length ? { outside: true } : {}),
  };
};
