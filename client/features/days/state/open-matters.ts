import { neededMaterials, openMatters as openIn, plannedWork } from '../../../../core/log/open-matters.ts';
import type { LoggedEntry, QuiltState } from '../../../../core/log/state.ts';
import type { MaterialEntry, Place, TreatmentEntry } from '../../../../shared/entry.ts';
import type { Topic } from '../../../../shared/vocabulary.ts';

type OpenTreatment = { logged: LoggedEntry; entry: TreatmentEntry; places: Place[] };

export type OpenMatters = {
  /** Ways still in question, by the places that they are in question for. */
  undecided: { places: Place[]; ways: OpenTreatment[] }[];
  /** Matters of the whole job that stand open. */
  decisions: { logged: LoggedEntry; about: Topic }[];
  /** Decided, not yet done. */
  toDo: OpenTreatment[];
  toBuy: { logged: LoggedEntry; entry: MaterialEntry }[];
  /** How many wait for a decision. */
  count: number;
};

const known = new WeakMap<QuiltState, OpenMatters>();

/** What stands open in the log, worked out once for each state of it. */
export function openMatters(state: QuiltState): OpenMatters {
  const already = known.get(state);
  if (already) return already;
  const { choices, matters } = openIn(state);
  const undecided = choices.map(({ places, entries }) => ({
    places,
    ways: entries.flatMap((logged) =>
      logged.entry.kind === 'treatment' ? [{ logged, entry: logged.entry, places }] : [],
    ),
  }));
  const result: OpenMatters = {
    undecided,
    decisions: matters.flatMap(({ about, entries }) => {
      const logged = entries.at(-1);
      return logged ? [{ logged, about }] : [];
    }),
    toDo: plannedWork(state).flatMap(({ entry: logged, places }) =>
      logged.entry.kind === 'treatment' ? [{ logged, entry: logged.entry, places }] : [],
    ),
    toBuy: neededMaterials(state).map(({ entry: logged, words }) => ({ logged, entry: words })),
    count: choices.length + matters.length,
  };
  known.set(state, result);
  return result;
}
