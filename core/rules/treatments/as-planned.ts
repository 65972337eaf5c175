import type { ClauseView } from '../clause-view.ts';
import { type Draft, makeDraft } from '../draft.ts';
import type { ReaderState } from '../reader-state.ts';
import { type stitchOf, TAKES_STITCH } from './stitch-of.ts';

/** "so I've done that", "that's done now, by hand", after a plan: the plan carried out. */
export function doneAsPlanned(
  state: ReaderState,
  v: ClauseView,
  words: string,
  stitch: ReturnType<typeof stitchOf>,
): Draft | undefined {
  if (
    !/ (?:i 've|i have|'ve|have|i|all|just|now|and|so) (?:now |just |already )?(?:done|did) (?:that|it|them|those|both)(?: one| ones| all)? | (?:that|it|those|they)(?: one| ones)? (?:'s|is|are|'re) (?:all |now )*done /.test(
      words,
    )
  )
    return undefined;
  const plan = state.memory.last?.entries.findLast(({ entry: e }) => e.kind === 'treatment')?.entry;
  if (plan?.kind !== 'treatment' || plan.state !== 'planned' || !plan.action) return undefined;
  return makeDraft(
    'treatment',
    v,
    {
      action: [plan.action, 'treatment.as-planned', undefined, 'implied'],
      state: ['done', 'treatment.as-planned', v.items],
      ...(plan.object ? { object: [plan.object, 'treatment.as-planned', undefined, 'implied'] } : {}),
      places: [plan.places ?? [], 'place.carried', undefined, 'implied'],
      ...(stitch && TAKES_STITCH.has(plan.action)
        ? { stitch: [stitch.stitch, `stitch.${stitch.stitch}`, stitch.item] }
        : {}),
    },
    'carried',
  );
}
