import type { Entry } from '../../../shared/entry.ts';
import type { Stitch } from '../../../shared/vocabulary.ts';
import { STITCH_PHRASES } from '../../lexicon/stitches.ts';
import type { Draft } from '../../rules/draft.ts';
import type { Item } from '../../rules/item.ts';
import { unique } from '../../rules/places/grid.ts';
import { placesOf, put, type Standing } from '../standing.ts';
import { takesStitch } from './is-mend.ts';
import { best } from './likest.ts';
import { change, type Segment, type Work } from './mending.ts';

/** The most particular stitch that a stretch names. */
export function stitchIn(items: Item[]): { stitch: Stitch; item: Item } | undefined {
  let top: { stitch: Stitch; item: Item } | undefined;
  for (const x of items)
    if (x.stitch && (!top || STITCH_PHRASES[x.stitch].rank > STITCH_PHRASES[top.stitch].rank))
      top = { stitch: x.stitch, item: x };
  return top;
}

export function mendStitch(work: Work, segment: Segment, items: Item[], lean: Item[], at: Item[]): void {
  const found = stitchIn(items);
  if (!found) return;
  const { stitch, item } = found;
  const treatments = work.standing.filter(({ draft }) => draft.entry.kind === 'treatment');
  const wrongStitch = [...work.wrong].find((x) => x.stitch && x.stitch !== stitch)?.stitch;
  const set = (list: Standing[]): void => {
    for (const s of list) change(work, s, 'stitch', stitch, 'stitch', [item]);
  };
  if (wrongStitch) {
    const holding = treatments.filter(({ was }) => was.kind === 'treatment' && was.stitch === wrongStitch);
    if (holding.length) {
      set(holding);
      return;
    }
  }
  const places = unique(at.flatMap((x) => x.place!.places));
  if (places.length) {
    const holding = treatments.filter(
      ({ was }) => places.every((p) => placesOf(was).includes(p)) && takesStitch(was),
    );
    const target = holding.findLast(({ was }) => was.kind === 'treatment' && was.stitch) ?? holding.at(-1);
    if (target) {
      const all = placesOf(target.was);
      if (places.length < all.length) {
        split(work, target, places, stitch, item, at);
        return;
      }
      set([target]);
      return;
    }
  }
  if (treatments.some(({ was }) => was.kind === 'treatment' && was.stitch === stitch)) {
    work.used.add(item);
    return;
  }
  if (work.cue === 'none' && !at.length && !wrongStitch) return;
  const meant = best(treatments, lean, new Set([item]));
  const stitched = treatments.filter(({ was }) => was.kind === 'treatment' && was.stitch);
  const able = treatments.filter(({ was }) => takesStitch(was));
  const pool = meant.length ? meant : stitched.length ? stitched : able.length ? able : treatments;
  const last = pool.at(-1);
  if (!last) return;
  const all = / (all|both|each|every|throughout) /.test(segment.words);
  const same = pool.filter(
    ({ was }) =>
      was.kind === 'treatment' &&
      last.was.kind === 'treatment' &&
      (all || (was.stitch === last.was.stitch && was.action === last.was.action)),
  );
  set(same);
}

/** Some places of an entry got another stitch: they become an entry of their own. */
function split(work: Work, s: Standing, places: string[], stitch: Stitch, item: Item, at: Item[]): void {
  if (s.was.kind !== 'treatment') return;
  if (s.was.stitch === stitch) {
    work.used.add(item);
    return;
  }
  const left = placesOf(s.draft.entry).filter((p) => !places.includes(p));
  if (!left.length) {
    change(work, s, 'stitch', stitch, 'stitch', [item]);
    return;
  }
  put(s.draft, 'places', left, 'amend.place', at);
  const draft: Draft = {
    ...s.draft,
    entry: { ...structuredClone(s.was), minutes: undefined } as Entry,
    origins: { ...s.draft.origins },
  };
  delete (draft.entry as { minutes?: number }).minutes;
  delete draft.origins['minutes'];
  put(draft, 'places', places, 'amend.place', at);
  put(draft, 'stitch', stitch, 'amend.stitch', [item]);
  work.standing.splice(work.standing.indexOf(s) + 1, 0, { draft, was: structuredClone(draft.entry) });
  for (const x of [item, ...at]) work.used.add(x);
  work.changed = true;
}
