import type { Place } from '../../shared/entry.ts';
import type { Action, Topic } from '../../shared/vocabulary.ts';
import type { LoggedEntry, QuiltState } from './state.ts';

/** Ways that are weighed for some places and none of them chosen yet. */
export type OpenChoice = {
  places: Place[];
  /** In the order they were first named. */
  ways: Action[];
  /** When it was first raised. */
  at: string;
  entries: LoggedEntry[];
};

/** A matter to decide that is no treatment of a place. */
export type OpenMatter = { about: Topic; at: string; entries: LoggedEntry[] };

/** A treatment decided on and not done. */
export type Planned = { action: Action | undefined; places: Place[]; at: string; entry: LoggedEntry };

type Treatment = LoggedEntry & { entry: Extract<LoggedEntry['entry'], { kind: 'treatment' }> };
const isTreatment = (logged: LoggedEntry): logged is Treatment => logged.entry.kind === 'treatment';
/** A treatment without a place is about the quilt as a whole, or a place still to be asked for. */
const NOWHERE = '';
const placesOf = (treatment: Treatment): string[] =>
  treatment.entry.places && treatment.entry.places.length > 0 ? treatment.entry.places : [NOWHERE];

/**
 * What is undecided. A choice is open while a way stands as considered that was neither dropped nor
 * taken up, and no way weighed together with it was chosen, nor the place left as it is. A matter is
 * open while the last thing said of it is that it is.
 */
export function openMatters(state: QuiltState): { choices: OpenChoice[]; matters: OpenMatter[] } {
  /** Place -> what is weighed there, by the note that weighed it. */
  const weighed = new Map<string, Treatment[]>();
  for (const logged of state.entries) {
    if (!isTreatment(logged)) continue;
    const { action, state: status } = logged.entry;
    for (const place of placesOf(logged)) {
      const here = weighed.get(place) ?? [];
      if (status === 'considering') weighed.set(place, [...here, logged]);
      else if (status === 'dropped') {
        weighed.set(
          place,
          here.filter((other) => other.entry.action !== action),
        );
      } else if (action === 'leave') weighed.delete(place);
      else {
        // One way chosen settles all that were weighed with it.
        const groups = new Set(here.filter((o) => o.entry.action === action).map((o) => o.noteId ?? o.id));
        weighed.set(
          place,
          here.filter((other) => !groups.has(other.noteId ?? other.id)),
        );
      }
    }
  }
  return { choices: groupChoices(weighed), matters: openTopics(state) };
}

function groupChoices(weighed: ReadonlyMap<string, readonly Treatment[]>): OpenChoice[] {
  const choices = new Map<string, OpenChoice>();
  for (const [place, treatments] of weighed) {
    if (treatments.length === 0) continue;
    const ways = [...new Set(treatments.flatMap((one) => one.entry.action ?? []))];
    // The same ways weighed in the same notes are one choice for all its places.
    const key = `${ways.join()}|${[...new Set(treatments.map((one) => one.noteId ?? one.id))].join()}`;
    const choice = choices.get(key) ?? { places: [], ways, at: treatments[0]!.at, entries: [] };
    choices.set(key, choice);
    if (place !== NOWHERE) choice.places.push(place as Place);
    for (const one of treatments) if (!choice.entries.includes(one)) choice.entries.push(one);
  }
  return [...choices.values()].sort((a, b) => Date.parse(a.at) - Date.parse(b.at));
}

function openTopics(state: QuiltState): OpenMatter[] {
  const topics = new Map<Topic, OpenMatter>();
  for (const logged of state.entries) {
    const { entry } = logged;
    if (entry.kind !== 'decision') continue;
    if (entry.status === 'settled') topics.delete(entry.about);
    else {
      const matter = topics.get(entry.about) ?? { about: entry.about, at: logged.at, entries: [] };
      matter.entries.push(logged);
      topics.set(entry.about, matter);
    }
  }
  return [...topics.values()];
}

/** What is decided and not done, with the places that are still to do, the oldest plan first. */
export function plannedWork(state: QuiltState): Planned[] {
  /** Action and place -> the plan that stands. */
  const plans = new Map<string, { treatment: Treatment; place: string }>();
  for (const logged of state.entries) {
    if (!isTreatment(logged)) continue;
    const { action, object, state: status } = logged.entry;
    for (const place of placesOf(logged)) {
      const key = `${action ?? ''}|${action === 'remove' ? (object ?? '') : ''}|${place}`;
      if (status === 'planned') {
        if (!plans.has(key)) plans.set(key, { treatment: logged, place });
      } else if (status === 'done' || status === 'dropped') plans.delete(key);
    }
  }
  const byEntry = new Map<string, Planned>();
  for (const { treatment, place } of plans.values()) {
    const { action } = treatment.entry;
    const planned = byEntry.get(treatment.id) ?? { action, places: [], at: treatment.at, entry: treatment };
    byEntry.set(treatment.id, planned);
    if (place !== NOWHERE) planned.places.push(place as Place);
  }
  return [...byEntry.values()].sort((a, b) => Date.parse(a.at) - Date.parse(b.at));
}

export type Needed = { entry: LoggedEntry; words: Extract<LoggedEntry['entry'], { kind: 'material' }> };

/** Materials said to be needed and neither bought nor found on hand since. */
export function neededMaterials(state: QuiltState): Needed[] {
  let needed: Needed[] = [];
  for (const entry of state.entries) {
    const words = entry.entry;
    if (words.kind !== 'material') continue;
    if (words.use === 'needed') needed.push({ entry, words });
    else if (words.use !== 'used') {
      const isSame = (one: Needed): boolean =>
        one.words.material === words.material &&
        (one.words.name === undefined || words.name === undefined || sameName(one.words.name, words.name));
      needed = needed.filter((one) => !isSame(one));
    }
  }
  return needed;
}

const sameName = (a: string, b: string): boolean => {
  const [one, other] = [a.toLowerCase(), b.toLowerCase()];
  return one.includes(other) || other.includes(one);
};
