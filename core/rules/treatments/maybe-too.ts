import type { Clause } from '../clause/clause.ts';
import type { ClauseView } from '../clause-view.ts';
import { type Draft, makeDraft } from '../draft.ts';
import type { ClausePlaces } from '../places/places-of-clause.ts';
import type { ReaderState } from '../reader-state.ts';
import { wordsBetween } from '../words-between.ts';
import { isTreatment } from './is-treatment.ts';

const MAYBE = / (?:maybe|perhaps|possibly|probably) /;
const LIGHT = /^(and|but|the|then|,|maybe|perhaps|possibly|probably|too|as|well|also|blocks?)$/;

/** "2-3 gets a patch, 2-4 maybe": what was just told of another place is in question here. */
export function maybeToo(
  state: ReaderState,
  clause: Clause,
  v: ClauseView,
  placed: ClausePlaces,
): Draft | undefined {
  // "net over 2-2, 3-3 maybe": the net that was used for it stands between
  const last = state.drafts.findLast(isTreatment);
  if (placed.kind !== 'specific' || !last || last.clause !== v.index - 1) return undefined;
  const { entry: e } = last;
  if (!e.action || e.state === 'dropped' || e.places?.some((p) => placed.places.includes(p)))
    return undefined;
  const { items } = clause;
  if (!MAYBE.test(wordsBetween(items)) || !items.every((x) => x.place || LIGHT.test(x.w))) return undefined;
  return makeDraft(
    'treatment',
    v,
    {
      action: [e.action, 'treatment.maybe-too', undefined, 'implied'],
      state: ['considering', 'treatment.maybe-too', items],
      ...(e.object ? { object: [e.object, 'treatment.maybe-too', undefined, 'implied'] as const } : {}),
      places: [placed.places, 'place.said', placed.items],
    } as Parameters<typeof makeDraft>[2],
    'said',
  );
}
