import type { Entry, Origin, ReadEntry } from '../../shared/entry.ts';
import type { AskSlot } from '../../shared/vocabulary.ts';
import { type Draft, isNoAmount } from '../rules/draft.ts';
import type { Item } from '../rules/item.ts';

/** What the last note logged, as it stands until it is mended, answered or taken back. */
export type LastNote = {
  entries: ReadEntry[];
  /** Its words, on which the origins of its entries stand. */
  said: string;
  /** The question that it left open. */
  ask: AskSlot | null;
  /** A block that was named outside the grid: row and block as heard. */
  heard?: { row: number; block: number };
  /** Which of its entries have blocks of the grid beside one that was named outside it. */
  short?: number[];
};

/** An entry of the last note while a later note works on it; `was` is how it stood before. */
export type Standing = { draft: Draft; was: Entry };

/** The last note's entries, ready to be mended. Their origins keep the words that they stand on. */
export function standingOf(last: LastNote): Standing[] {
  return last.entries.map((read) => {
    const origins: Record<string, Origin> = {};
    for (const [slot, origin] of Object.entries(read.origins))
      origins[slot] = {
        ...origin,
        words: origin.words ?? last.said.slice(origin.from, Math.min(origin.to, origin.from + 500)),
      };
    const draft: Draft = {
      entry: copyOf(read.entry),
      origins,
      placed: 'said',
      clause: -1,
      sentence: -1,
      ...(read.reason === undefined ? {} : { reason: read.reason }),
    };
    return { draft, was: copyOf(read.entry) };
  });
}

/** A copy of plain data, twenty times as fast as `structuredClone`, which serialises it. */
function copyOf<T>(value: T): T {
  if (typeof value !== 'object' || value === null) return value;
  if (Array.isArray(value)) return value.map(copyOf) as T;
  const copy = {} as Record<string, unknown>;
  for (const [key, own] of Object.entries(value)) copy[key] = copyOf(own);
  return copy as T;
}

/** Places of an entry; empty where it has none or can have none. */
export const placesOf = (entry: Entry): string[] => ('places' in entry ? (entry.places ?? []) : []);

/** A second entry beside one, which starts as that one stands: for a part of its places that is told otherwise. */
export const twinOf = ({ draft, was }: Standing): Standing => ({
  was: { ...was },
  draft: { ...draft, entry: { ...draft.entry }, origins: { ...draft.origins } },
});

/** Are these the same places, in whatever order? */
export const areSamePlaces = (a: string[], b: string[]): boolean =>
  [...a].sort().join() === [...b].sort().join();

/** Takes places out of those of an entry. */
export function takePlaces({ draft, was }: Standing, gone: string[], rule: string, items: Item[]): void {
  put(
    draft,
    'places',
    placesOf(was).filter((p) => !gone.includes(p)),
    rule,
    items,
  );
}

/** Sets one slot and points it to the words of this note that gave it; `undefined` takes the slot away. */
export function put(draft: Draft, slot: string, value: unknown, rule: string, items: Item[]): void {
  const entry = draft.entry as Record<string, unknown>;
  if (value === undefined || isNoAmount(slot, value)) {
    delete entry[slot];
    delete draft.origins[slot];
    return;
  }
  entry[slot] = value;
  const from = Math.min(...items.map((x) => x.token.from));
  const to = Math.max(...items.map((x) => x.end ?? x.token.to));
  draft.origins[slot] = items.length
    ? { rule, how: 'said', from, to }
    : { rule, how: 'implied', from: 0, to: 0 };
}
