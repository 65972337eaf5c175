import type { Clause } from '../clause/clause.ts';
import { mentionsOf } from '../mentions-of.ts';
import type { ReaderState } from '../reader-state.ts';
import { findMention } from './find-mention.ts';
import { splitBlock } from './grid.ts';
import type { ClausePlaces } from './places-of-clause.ts';

/** "sewed up the tear", "the worn ones want net": the places that such a thing was told of before. */
export function spokenOf(state: ReaderState, clause: Clause, told: ClausePlaces): ClausePlaces | undefined {
  if (told.outside || told.unknown || state.topic?.sentence === clause.sentence) return undefined;
  const here = mentionsOf(state.drafts);
  const places =
    findMention(clause.items, here) ??
    findMention(
      clause.items,
      // what this note is about comes before what others were about
      (state.memory.mentions ?? []).filter(
        (m) => !state.carried.some((p) => splitBlock(p)) || m.places.some((p) => state.carried.includes(p)),
      ),
    );
  return places ? { ...told, kind: 'specific', places } : undefined;
}

/** "closed the seam in row two", where one seam of that row was found open: that seam. */
export function oneWithin(state: ReaderState, clause: Clause, told: ClausePlaces): ClausePlaces | undefined {
  if (told.kind !== 'specific' || told.items.length !== 1 || told.places.length < 3) return undefined;
  const inside = [...(state.memory.mentions ?? []), ...mentionsOf(state.drafts)].filter(
    (m) => m.finding && m.places.length <= 2 && m.places.every((p) => told.places.includes(p)),
  );
  const places = findMention(clause.items, inside);
  return places && places.length <= 2 ? { ...told, places } : undefined;
}
