import type { Origin } from '../../shared/entry.ts';

/** Origins of a piece of a note, so that they stand on the words of the whole; those that keep the words of another note stay. */
export const movedBy = (origins: Record<string, Origin>, by: number): Record<string, Origin> =>
  Object.fromEntries(
    Object.entries(origins).map(([slot, at]) => [
      slot,
      at.words === undefined ? { ...at, from: Math.max(0, at.from + by), to: Math.max(0, at.to + by) } : at,
    ]),
  );
