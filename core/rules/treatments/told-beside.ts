import type { Action, RemovedObject, Stitch, TreatmentState } from '../../../shared/vocabulary.ts';
import type { Draft } from '../draft.ts';
import type { ReaderState } from '../reader-state.ts';

type Source = { action?: Action; state: TreatmentState; places?: string[] | undefined };
type Beside = { action: Action; object?: RemovedObject; stitch?: Stitch };

/** What "same again" carries on beside the deed told last: the other ways in question, or the rest of one mend. */
export const toldBeside = (state: ReaderState, source: Source, last: Draft | undefined): Beside[] =>
  source.state === 'considering' ? otherWays(state, source) : mendedWith(state, source, last);

/** The ways that stand in question beside this one, at the same places. */
function otherWays(state: ReaderState, source: Source): Beside[] {
  if (!source.places?.length) return [];
  const here = source.places.join(' ');
  const told = state.drafts.flatMap(({ entry: e }) =>
    e.kind === 'treatment' && e.state === 'considering' && e.action && e.places?.join(' ') === here
      ? [{ action: e.action, ...(e.object ? { object: e.object } : {}) }]
      : [],
  );
  const open = told.length ? told : state.memory.open.filter((o) => !o.passed && o.places.join(' ') === here);
  return open.filter((o) => o.action !== source.action);
}

/** Deeds that make one mend where they are told together: "fused interfacing behind it and zigzagged the tear", "tulle laid over and basted down". */
const MENDS = /^(?:stabilize|resew|darn|patch|overlay|baste)$/;

/** What else the damage was mended with, told in one sentence and of one place with the deed that is carried on. */
function mendedWith(state: ReaderState, source: Source, last: Draft | undefined): Beside[] {
  if (!/^(?:done|doing)$/.test(source.state) || !MENDS.test(source.action ?? '')) return [];
  const here = source.places?.join(' ');
  const told =
    last?.entry === source
      ? state.drafts.filter((d) => d.sentence === last.sentence)
      : (state.memory.last?.entries ?? []);
  return told.flatMap(({ entry: e }) =>
    e.kind === 'treatment' &&
    e.state === source.state &&
    e.action !== undefined &&
    e.action !== source.action &&
    MENDS.test(e.action) &&
    e.places?.join(' ') === here
      ? [{ action: e.action, ...(e.stitch ? { stitch: e.stitch } : {}) }]
      : [],
  );
}
