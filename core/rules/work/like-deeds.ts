import type { Draft } from '../draft.ts';
import type { Item } from '../item.ts';
import { unique } from '../places/grid.ts';

/** The same done at several places, told one after the other. */
export const isOneAct = (drafts: Draft[]): boolean =>
  unique(
    drafts.map(({ entry: e }) => {
      const { places: _places, fabric: _fabric, ...how } = e as Record<string, unknown>;
      return JSON.stringify(Object.entries(how).sort());
    }),
  ).length === 1;

/** "40 min", "took me forty minutes": a length, and nothing that says of which. */
export const isBareLength = (items: Item[], k: number): boolean =>
  items.every(
    (x, m) =>
      m === k || /^(?:about|abt|around|roughly|nearly|just|over|took|me|all|in|so|and|,|~)$/.test(x.w),
  );

/** The deeds told last, each of the next places by "same", "likewise" alone, with no length of its own. */
export function likeDeeds(done: Draft[]): Draft[] {
  const chain: Draft[] = [];
  for (const d of [...done].reverse()) {
    if ((d.entry as { minutes?: number }).minutes !== undefined) break;
    if (chain.length && (!isOneAct([d, chain[0]!]) || d.sentence < chain[0]!.sentence - 1)) break;
    chain.unshift(d);
    if (d.origins['action']?.rule !== 'treatment.same-again') break;
  }
  return chain;
}
