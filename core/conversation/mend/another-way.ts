import type { Action } from '../../../shared/vocabulary.ts';
import type { Draft } from '../../rules/draft.ts';
import type { Item } from '../../rules/item.ts';
import { unique } from '../../rules/places/grid.ts';
import type { ReaderState } from '../../rules/reader-state.ts';
import { placesOf, put, type Standing, standingOf } from '../standing.ts';
import { POINTERS } from './items.ts';

/** "the last one in row four, make that net on the face instead" */
const INSTEAD = /(?:^| )make (?:that|it|this|them|those|the|\d).* (?:instead|rather)\b/;
/** "actually don't leave 2-2, put it down for net", "no, 3-4 should have the muslin as well", "on second thoughts I'll darn 3-3" */
const THOUGHT_AGAIN =
  /^(?:(?:oh|ah|um|uh|er|well|hmm|and|but|right|ok|okay|,|-|\.) )*(?:actually|no|nope|sorry|wait|hang on|hold on|(?:on|up on) (?:second thoughts?|reflection)|second thoughts?|do n't (?:leave|net|patch|darn|replace)|changed my mind)\b/;

/**
 * Another treatment for blocks for which the last note planned one, or which it left as they are: it is planned there in its place, and what
 * stands of the other blocks is kept.
 */
export function anotherWayThere(state: ReaderState, items: Item[], words: string): Draft[] | undefined {
  const again = THOUGHT_AGAIN.test(words);
  if (items.length > 22 || !(again || INSTEAD.test(words))) return undefined;
  const standing = standingOf(state.memory.last!);
  const told = state.drafts.filter(({ entry: e }) => e.kind !== 'material');
  const [way] = told;
  if (told.length > 1) return undefined;
  const same = again ? sameStuff(standing, items) : undefined;
  if (same) return moved(standing, same.places, same.action, undefined, same.items, false);
  if (way?.entry.kind !== 'treatment' || !way.entry.places?.length || !way.entry.action) return undefined;
  if (
    way.entry.action === 'leave' ||
    /^(?:done|doing)$/.test(way.entry.state) ||
    way.entry.minutes !== undefined
  )
    return undefined;
  return moved(standing, way.entry.places, way.entry.action, way, [], !again);
}

/** "3-3 gets the muslin too": what was planned with that stuff for others. */
function sameStuff(
  standing: Standing[],
  items: Item[],
): { action: Action; places: string[]; items: Item[] } | undefined {
  const k = items.findIndex(
    (x, at) => (x.material || x.fabric) && items[at - 1]?.w === 'the' && GETS.test(items[at - 2]?.w ?? ''),
  );
  const stuff = items[k];
  if (!stuff || !/^(?:too|as|as well|also|instead)$/.test(items[k + 1]?.w ?? '')) return undefined;
  const named = items
    .slice(0, k)
    .filter((x) => x.place?.kind === 'blocks' && x.place.places.length && !POINTERS.has(x.place.rule));
  const word = stuff.w.split(' ').at(-1)!;
  const like = standing.filter(
    ({ was, draft }) =>
      was.kind === 'treatment' &&
      was.state === 'planned' &&
      Object.values(draft.origins).some(({ words }) => words?.toLowerCase().includes(word)),
  );
  const [s] = like;
  if (named.length !== 1 || like.length !== 1 || s?.was.kind !== 'treatment' || !s.was.action)
    return undefined;
  return { action: s.was.action, places: named[0]!.place!.places, items: [named[0]!, stuff] };
}
const GETS = /^(?:gets?|have|has|had|wants?|needs?|getting|having)$/;

/** The whole set, with these blocks taken from the treatment that stood there and given to the other. */
function moved(
  standing: Standing[],
  places: string[],
  action: Action,
  way: Draft | undefined,
  items: Item[],
  orOpen: boolean,
): Draft[] | undefined {
  // a choice that stood open is settled, which is news and no mend
  const planned = standing.find(
    ({ was: e }) =>
      e.kind === 'treatment' &&
      (e.state === 'planned' ||
        (e.action === 'leave' && e.state === 'done') ||
        (orOpen && e.state === 'considering')) &&
      e.action !== action &&
      places.every((p) => e.places?.includes(p)),
  );
  if (planned?.was.kind !== 'treatment') return undefined;
  const left = placesOf(planned.was).filter((p) => !places.includes(p));
  put(planned.draft, 'places', left, 'amend.another-way', items);
  const like = standing.find(
    ({ was: e }) =>
      e.kind === 'treatment' && e.action === action && e.state === 'planned' && e !== planned.was,
  );
  const stitch = way?.entry.kind === 'treatment' ? way.entry.stitch : undefined;
  const joins = like?.was.kind === 'treatment' && like.was.stitch === stitch;
  if (like && (joins || !way))
    put(like.draft, 'places', unique([...placesOf(like.was), ...places]), 'amend.another-way', items);
  else if (way?.entry.kind === 'treatment')
    way.entry.state = planned.was.action === 'leave' ? way.entry.state : planned.was.state;
  else return undefined;
  const kept = standing.filter((s) => s !== planned || left.length).map((s) => s.draft);
  return like && (joins || !way) ? kept : [...kept, way!];
}
