import type { Clause } from '../clause/clause.ts';
import type { Item } from '../item.ts';
import { mentionsOf } from '../mentions-of.ts';
import type { ReaderState } from '../reader-state.ts';
import { findMention, type Mention } from './find-mention.ts';
import { splitBlock, unique } from './grid.ts';
import type { ClausePlaces } from './places-of-clause.ts';

/** "sewed up the tear", "the worn ones want net": the places that such a thing was told of before. */
export function spokenOf(state: ReaderState, clause: Clause, told: ClausePlaces): ClausePlaces | undefined {
  if (told.outside || told.unknown) return undefined;
  if (state.topic?.sentence === clause.sentence && !namesAnother(state, clause)) return undefined;
  const here = withoutSewnTears(state, clause, mentionsOf(state.drafts));
  const places =
    findMention(clause.items, here) ??
    findMention(
      clause.items,
      // what this note is about comes before what others were about
      (state.memory.mentions ?? []).filter(
        (m) =>
          !state.carried.some((p) => splitBlock(p)) ||
          m.places.some((p) => state.carried.includes(p)) ||
          (m.finding !== undefined && m.places.every((p) => splitBlock(p)) && !namesBlock(state, clause)),
      ),
    );
  return places ? { ...told, kind: 'specific', places: oneInHand(state, clause, places) } : undefined;
}

/** "interfacing behind 2-4, zigzagged the tear", where two blocks were found torn: the one that the sentence speaks of. */
function oneInHand(state: ReaderState, { items, sentence }: Clause, places: string[]): string[] {
  const inHand = places.length > 1 ? places.filter((p) => state.carried.includes(p)) : [];
  const here = state.drafts.some((d) => d.sentence === sentence && d.placed === 'said');
  return inHand.length === 1 && here && items.some(isOneDamage) ? inHand : places;
}

/** "the tear", "that hole": no seam, which two blocks share, and not several. */
const isOneDamage = (x: Item, k: number, items: Item[]): boolean =>
  x.finding !== undefined &&
  !x.seam &&
  !/s$/.test(x.w) &&
  items.slice(Math.max(0, k - 3), k).some((y) => /^(?:the|that|this|its)$/.test(y.w));

/** "the hole I might darn and those rust spots I'm leaving": other damage than what the sentence began with. */
export const namesAnother = ({ topic }: ReaderState, clause: Clause): boolean =>
  topic?.finding !== undefined && clause.items.some((x) => x.finding && x.finding !== topic.finding);

/** Has the note named a block up to this clause, and not only pointed at what was told before? */
const namesBlock = ({ clauses }: ReaderState, clause: Clause): boolean =>
  clauses
    .slice(0, clauses.indexOf(clause))
    .some((c) => c.items.some((x) => x.fabric || (x.place?.kind === 'blocks' && x.place.how === 'said')));

/** "zigzagged over the tear and whipstitched the seam": what was sewn just now was a tear, and is no seam. */
function withoutSewnTears(state: ReaderState, clause: Clause, here: Mention[]): Mention[] {
  if (!here.some((m) => m.action === 'resew') || !clause.items.some((x) => x.seam)) return here;
  const all = [...(state.memory.mentions ?? []), ...here];
  return here.filter(
    (m) =>
      m.action !== 'resew' ||
      !all.some((t) => t.finding === 'tear' && t.places.join() === m.places.join()) ||
      all.some((t) => t.finding === 'split-seam' && t.places.join() === m.places.join()),
  );
}

/** "shut that seam, and the one from 5-4 to 5-5 as well": what was told before, and the place named beside it. */
export function spokenOfToo(
  state: ReaderState,
  clause: Clause,
  told: ClausePlaces,
): ClausePlaces | undefined {
  if (told.kind !== 'specific') return undefined;
  const { items } = clause;
  const joint = items.findIndex((x) => /^(and|&|\+|plus)$/.test(x.w));
  if (joint < 2 || !items.slice(joint).some((x) => /^(too|as well|also|well)$/.test(x.w))) return undefined;
  if (told.items.some((x) => items.indexOf(x) < joint)) return undefined;
  const before = findMention(items.slice(0, joint), state.memory.mentions ?? []);
  return before ? { ...told, places: unique([...before, ...told.places]) } : undefined;
}

/** "closed the seam in row two", where one seam of that row was found open: that seam. */
export function oneWithin(state: ReaderState, clause: Clause, told: ClausePlaces): ClausePlaces | undefined {
  if (told.kind !== 'specific' || told.items.length !== 1 || told.places.length < 3) return undefined;
  // seams of other rows may have been told in the same breath
  const within = (places: string[]): string[] => places.filter((p) => told.places.includes(p));
  const inside = [...(state.memory.mentions ?? []), ...mentionsOf(state.drafts)]
    .map((m) => ({ ...m, places: within(m.places) }))
    .filter((m) => m.finding && m.places.length && m.places.length <= 2);
  const places = within(findMention(clause.items, inside) ?? []);
  return places.length && places.length <= 2 ? { ...told, places } : undefined;
}
