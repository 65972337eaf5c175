import type { Clause } from '../clause/clause.ts';
import type { ClauseView } from '../clause-view.ts';
import { type Draft, makeDraft } from '../draft.ts';
import { carriedPlaces } from '../places/carried-places.ts';
import type { ClausePlaces } from '../places/places-of-clause.ts';
import type { ReaderState } from '../reader-state.ts';
import { isTreatment } from './is-treatment.ts';
import { type stitchOf, TAKES_STITCH } from './stitch-of.ts';

/** "(3-1 sewn with backstitch) and 3-2 with whipstitch": the same treatment elsewhere, with a stitch of its own. */
export function gapped(
  state: ReaderState,
  v: ClauseView,
  clause: Clause,
  placed: ClausePlaces,
  stitch: NonNullable<ReturnType<typeof stitchOf>>,
): Draft | undefined {
  if (!/^(and|,|but|&)$/.test(clause.joint)) return undefined;
  const last = state.drafts.findLast((d) => d.entry.kind !== 'material');
  if (!last || !isTreatment(last) || last.sentence !== v.sentence || last.clause !== v.index - 1)
    return undefined;
  const { action, state: status, stitch: before } = last.entry;
  if (!action || !before || before === stitch.stitch || !TAKES_STITCH.has(action)) return undefined;
  const at = v.items.indexOf(stitch.item);
  if (v.items.slice(0, at).some((x) => x.action || x.fail || /^(is|'s|was|are|were|i)$/.test(x.w)))
    return undefined;
  const places = placed.kind === 'specific' ? placed.places : carriedPlaces(state, v, undefined, placed);
  if (!places?.length) return undefined;
  const said = placed.kind === 'specific';
  return makeDraft(
    'treatment',
    v,
    {
      action: [action, 'treatment.gapped', undefined, 'implied'],
      state: [status, 'treatment.gapped', undefined, 'implied'],
      places: [
        places,
        said ? 'place.said' : 'place.carried',
        said ? placed.items : undefined,
        said ? 'said' : 'implied',
      ],
      stitch: [stitch.stitch, `stitch.${stitch.stitch}`, stitch.item],
    },
    said ? 'said' : 'carried',
  );
}
