import type { LoggedEntry, QuiltState } from '../../../../core/log/state.ts';
import type { MaterialEntry, Place, TreatmentEntry } from '../../../../shared/entry.ts';
import type { Action, Topic } from '../../../../shared/vocabulary.ts';

type OpenTreatment = { logged: LoggedEntry; entry: TreatmentEntry; places: Place[] };

export type OpenMatters = {
  /** Ways still in question, by the places that they are in question for. */
  undecided: { places: Place[]; ways: OpenTreatment[] }[];
  /** Matters of the whole job that stand open. */
  decisions: { logged: LoggedEntry; about: Topic }[];
  /** Decided, not yet done. */
  toDo: OpenTreatment[];
  toBuy: { logged: LoggedEntry; entry: MaterialEntry }[];
  count: number;
};

const known = new WeakMap<QuiltState, OpenMatters>();

/** Choosing one of these at a place settles what else was in question there. */
const SETTLES = new Set<Action>([
  'replace',
  'patch',
  'stabilize',
  'overlay',
  'resew',
  'darn',
  'leave',
  'clean',
  'wash',
]);

/** What stands open in the log: the last word on each way at each place counts. */
export function openMatters(state: QuiltState): OpenMatters {
  const already = known.get(state);
  if (already) return already;

  const last = new Map<string, { index: number; state: TreatmentEntry['state'] }>();
  const settledAt = new Map<Place, number>();
  const topics = new Map<Topic, { logged: LoggedEntry; open: boolean }>();
  const bought = new Map<string, number>();
  const key = (entry: TreatmentEntry, place: Place) => `${entry.action ?? ''}|${entry.object ?? ''}|${place}`;
  const placesOf = (entry: TreatmentEntry): Place[] => (entry.places?.length ? entry.places : ['']);
  const cloth = (entry: MaterialEntry) => (entry.name ?? entry.material ?? '').toLowerCase();

  state.entries.forEach((logged, index) => {
    const { entry } = logged;
    if (entry.kind === 'treatment') {
      for (const place of placesOf(entry)) {
        last.set(key(entry, place), { index, state: entry.state });
        if (
          entry.action &&
          SETTLES.has(entry.action) &&
          entry.state !== 'considering' &&
          entry.state !== 'dropped'
        ) {
          settledAt.set(place, index);
        }
      }
    } else if (entry.kind === 'decision') {
      topics.set(entry.about, { logged, open: entry.status === 'open' });
    } else if (entry.kind === 'material' && entry.use !== 'needed') bought.set(cloth(entry), index);
  });

  const toDo: OpenTreatment[] = [];
  const groups = new Map<string, OpenMatters['undecided'][number]>();
  const toBuy: OpenMatters['toBuy'] = [];
  state.entries.forEach((logged, index) => {
    const { entry } = logged;
    if (entry.kind === 'treatment' && (entry.state === 'planned' || entry.state === 'considering')) {
      const standing = placesOf(entry).filter((place) => last.get(key(entry, place))?.index === index);
      if (entry.state === 'planned') {
        if (standing.length) toDo.push({ logged, entry, places: standing.filter(Boolean) });
        return;
      }
      const open = standing.filter((place) => (settledAt.get(place) ?? -1) < index);
      if (!open.length) return;
      const places = open.filter(Boolean);
      const id = places.join(' ');
      const group = groups.get(id) ?? { places, ways: [] };
      group.ways.push({ logged, entry, places });
      groups.set(id, group);
    } else if (entry.kind === 'material' && entry.use === 'needed') {
      if ((bought.get(cloth(entry)) ?? -1) < index) toBuy.push({ logged, entry });
    }
  });
  const decisions = [...topics].flatMap(([about, { logged, open }]) => (open ? [{ logged, about }] : []));
  const undecided = [...groups.values()];
  const result = {
    undecided,
    decisions,
    toDo,
    toBuy,
    count: undecided.length + decisions.length,
  };
  known.set(state, result);
  return result;
}
