import type { Action } from '../../../shared/vocabulary.ts';
import type { Clause } from '../clause/clause.ts';
import type { ClauseView } from '../clause-view.ts';
import { type Draft, makeDraft } from '../draft.ts';
import type { Item } from '../item.ts';
import { carriedPlaces } from '../places/carried-places.ts';
import type { ClausePlaces } from '../places/places-of-clause.ts';
import type { ReaderState } from '../reader-state.ts';
import { wordsBetween } from '../words-between.ts';
import { isNet } from './is-cloth.ts';

const LATER =
  /^(tomorrow|tmrw|tonight|later|next|week|wk|time|mon|tue|tues|wed|thu|thurs|fri|sat|sun|monday|tuesday|wednesday|thursday|friday|saturday|sunday)$/;
const NEED =
  /^(needs?|wants?|to|get|gets|getting|have|having|going|put|down|for|marked|earmarked|will|'ll|shall|is|are|'s|least|at)$/;
/** "2-2 will have crepeline", "the one in row five is to get net" */
const WILL_HAVE = / (?:will|'ll|shall|is to|are to|'s to|going to|to) (?:at least )?(?:have|get) /;
/** "put 2-2 down for net", "3-4 down for fusible" */
const DOWN_FOR = / (?:down|marked|earmarked) for /;
const LIGHT =
  /^(and|&|\+|both|all|one|ones|in|a|an|the|some|over|on|top|it|maybe|perhaps|or|then|of|bit|layer|seam|-|:|,|so)$/;

/** What the stuff or the name of the work stands for by itself. */
const deedOf = (x: Item): Action | undefined =>
  isNet(x)
    ? 'overlay'
    : x.material === 'interfacing'
      ? 'stabilize'
      : x.action?.form === 'ing' && !x.part && !x.object && /^(clean|wash|darn|patch|press)$/.test(x.action.v)
        ? x.action.v
        : undefined;

/** "2-3: net?", "5-2 stain. cleaning?", "2-3 thin - net next wk", "3-2 needs net": the stuff alone, where the place is told, is a thought or a plan. */
export function bareStuff(
  state: ReaderState,
  clause: Clause,
  v: ClauseView,
  placed: ClausePlaces,
): Draft | undefined {
  const { items } = clause;
  const deeds = items.filter((x) => deedOf(x));
  const later =
    items.some((x) => LATER.test(x.w) || /^(needs?|wants?)$/.test(x.w)) ||
    DOWN_FOR.test(wordsBetween(items)) ||
    WILL_HAVE.test(wordsBetween(items));
  if (deeds.length !== 1 || !(clause.asked || later) || items.some((x) => x.quantity || x.cost))
    return undefined;
  if (!items.every((x) => deedOf(x) || x.place || LIGHT.test(x.w) || NEED.test(x.w) || LATER.test(x.w)))
    return undefined;
  const told =
    placed.kind === 'specific'
      ? placed.places
      : state.topic?.sentence === v.sentence || state.drafts.some((d) => d.entry.kind === 'condition')
        ? carriedPlaces(state, v, undefined, placed)
        : undefined;
  if (!told?.length) return undefined;
  return makeDraft(
    'treatment',
    v,
    {
      action: [deedOf(deeds[0]!), 'treatment.bare-stuff', deeds[0]],
      state: [clause.asked ? 'considering' : 'planned', 'treatment.bare-stuff', items.at(-1)],
      places: [told, 'place.carried', undefined, 'implied'],
    },
    placed.kind === 'specific' ? 'said' : 'carried',
  );
}
