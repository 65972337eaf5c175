import type { Plan } from '../../conversation/memory.ts';
import type { ClauseView } from '../clause-view.ts';
import { type Draft, makeDraft } from '../draft.ts';
import type { ReaderState } from '../reader-state.ts';
import { type stitchOf, TAKES_STITCH } from './stitch-of.ts';

const THOSE =
  '(?:that|it|them|those|both|these|the (?:lot|pair|two|three|four)|all (?:two|three|four|of (?:it|them|those))|both of (?:them|those|these))(?: (?:one|ones|two|three|all|lot|pair))?';
/** "so I've done that", "did both of those just now", "that's done now, by hand", "got the pair done". */
const DONE = new RegExp(
  ` (?:i 've|i have|'ve|have|i|all|just|now|and|so|,|) ?(?:now |just |already |finally )*(?:done|did|managed|finished) ${THOSE} (?!off)| (?:${THOSE}) (?:'s|is|are|'re|all) (?:all |now |both |finally )*done | (?:got|have|had) ${THOSE} (?:all )?done `,
);

/** The plan that was told last, carried out. */
export function doneAsPlanned(
  state: ReaderState,
  v: ClauseView,
  words: string,
  stitch: ReturnType<typeof stitchOf>,
): Draft | undefined {
  if (!DONE.test(words) || / (?:not|n't|never|when|once|after|if|before|until) /.test(words))
    return undefined;
  const told = state.memory.last?.entries.findLast(({ entry: e }) => e.kind === 'treatment')?.entry;
  const last: Plan | undefined =
    told?.kind === 'treatment' && told.state === 'planned' && told.action
      ? {
          action: told.action,
          places: told.places ?? [],
          ...(told.object ? { object: told.object } : {}),
        }
      : undefined;
  const plan = last ?? planFor(state, state.memory.focus);
  if (!plan) return undefined;
  return makeDraft(
    'treatment',
    v,
    {
      action: [plan.action, 'treatment.as-planned', undefined, 'implied'],
      state: ['done', 'treatment.as-planned', v.items],
      ...(plan.object ? { object: [plan.object, 'treatment.as-planned', undefined, 'implied'] } : {}),
      places: [[...plan.places], 'place.carried', undefined, 'implied'],
      ...(stitch && TAKES_STITCH.has(plan.action)
        ? { stitch: [stitch.stitch, `stitch.${stitch.stitch}`, stitch.item] }
        : {}),
    },
    'carried',
  );
}

/** The one thing that is planned for all of these places; nothing where two are, or none. */
export function planFor(state: ReaderState, places: string[]): Plan | undefined {
  if (!places.length) return undefined;
  const plans = (state.memory.plans ?? []).filter((p) => places.every((q) => p.places.includes(q)));
  const first = plans[0];
  return first && plans.every((p) => p.action === first.action && p.object === first.object)
    ? { ...first, places: [...places] }
    : undefined;
}
