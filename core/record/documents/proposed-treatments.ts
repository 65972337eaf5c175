import type { Place } from '../../../shared/entry.ts';
import type { Action } from '../../../shared/vocabulary.ts';
import { type AgreementFact, INTERVENTIONS, type RecordView, type TreatmentFact } from '../record-view.ts';

/** A later change that the owner has to agree to again. */
export type Addendum = {
  since: AgreementFact;
  added: TreatmentFact[];
  dropped: TreatmentFact[];
  agreed?: AgreementFact;
};

/** Part of other work, so no change of plan by itself: pressing a seam, pinning, cutting the patch. */
const ROUTINE: ReadonlySet<Action> = new Set(['press', 'baste', 'dry', 'label', 'piece', 'trim', 'layer']);
export const isRoutine = (fact: TreatmentFact): boolean => ROUTINE.has(fact.action) || fact.object === 'pins';

/**
 * What the proposal covers: everything planned, weighed or left before the first agreement; where none is
 * noted, everything so far. A plan that was later called off or decided another way before the agreement
 * is told by its last word. Damage mended at once without a plan counts as part of the proposal only
 * while nothing has been agreed.
 */
export function proposedTreatments(view: RecordView): TreatmentFact[] {
  const first = view.agreements[0];
  const moment = first ? Date.parse(first.at) : Number.POSITIVE_INFINITY;
  const until = (fact: TreatmentFact): boolean => !first || before(fact, first, moment);
  const facts = view.treatments.filter((fact) => INTERVENTIONS.has(fact.action) || fact.action === 'leave');
  const told = facts.filter(until);
  const planned = told.filter((fact) => fact.state !== 'done' || fact.action === 'leave');
  return lastWords(planned, told);
}

/** Keeps of each place and action the last state; what was weighed and then decided at that place goes. */
function lastWords(planned: readonly TreatmentFact[], told: readonly TreatmentFact[]): TreatmentFact[] {
  const state = new Map<string, TreatmentFact>();
  for (const fact of told) for (const place of placesOf(fact)) state.set(`${fact.action} ${place}`, fact);
  const decided = new Set<Place>();
  for (const fact of told) {
    if (fact.state === 'planned' || fact.state === 'doing' || fact.state === 'done') {
      for (const place of fact.places) decided.add(place);
    }
  }
  return planned.flatMap((fact) => {
    const places = placesOf(fact).filter((place) => {
      const last = state.get(`${fact.action} ${place}`)!;
      if (last !== fact && last.state !== 'done' && last.state !== 'doing') return false;
      return !(fact.state === 'considering' && decided.has(place));
    });
    if (!places.length) return [];
    return [{ ...fact, places: fact.places.filter((place) => places.includes(place)) }];
  });
}

const placesOf = (fact: TreatmentFact): Place[] => (fact.places.length ? fact.places : ['quilt']);

function before(fact: TreatmentFact, agreement: AgreementFact, moment: number): boolean {
  return fact.date < agreement.date || (fact.date === agreement.date && momentOf(fact) <= moment);
}
/** Facts carry local date and time; an agreement of the same day is compared by the same clock. */
function momentOf(fact: TreatmentFact): number {
  return Date.parse(fact.at);
}

/**
 * Changes after an agreement: new interventions where that kind of work was not proposed, and proposed ones
 * called off. Each agreement closes the changes before it.
 */
export function findAddenda(view: RecordView): Addendum[] {
  const [first, ...later] = view.agreements;
  if (!first) return [];
  const proposed = new Set<string>();
  const proposedActions = new Set<Action>();
  for (const fact of proposedTreatments(view)) {
    if (fact.state === 'considering' || fact.state === 'dropped') continue;
    proposedActions.add(fact.action);
    for (const place of placesOf(fact)) proposed.add(`${fact.action} ${place}`);
  }
  const out: Addendum[] = [];
  let since = first;
  for (const agreed of [...later, undefined]) {
    const from = Date.parse(since.at);
    const to = agreed ? Date.parse(agreed.at) : Number.POSITIVE_INFINITY;
    const added: TreatmentFact[] = [];
    const dropped: TreatmentFact[] = [];
    for (const fact of view.treatments) {
      const moment = momentOf(fact);
      if (moment <= from || moment > to || !INTERVENTIONS.has(fact.action)) continue;
      if (fact.state === 'dropped') {
        const places = placesOf(fact).filter((place) => proposed.delete(`${fact.action} ${place}`));
        if (places.length) dropped.push({ ...fact, places });
      } else if (fact.state !== 'considering') {
        const whole = proposed.has(`${fact.action} quilt`);
        const routine = isRoutine(fact);
        const places = placesOf(fact).filter((place) => {
          const key = `${fact.action} ${place}`;
          const is =
            !whole && !routine && !proposed.has(key) && !coveredByWhole(fact, proposedActions, place);
          if (is) proposed.add(key);
          return is;
        });
        if (places.length) added.push({ ...fact, places });
      }
    }
    if (added.length || dropped.length) out.push({ since, added, dropped, ...(agreed ? { agreed } : {}) });
    if (agreed) since = agreed;
  }
  return out;
}

/** Work on the whole quilt that was proposed in another part's name ("bind the edge", "bind the quilt"). */
function coveredByWhole(fact: TreatmentFact, actions: ReadonlySet<Action>, place: Place): boolean {
  const wholePiece: ReadonlySet<Action> = new Set([
    'bind',
    'tie',
    'quilt',
    'wash',
    'clean',
    'square-up',
    'add-border',
  ]);
  return wholePiece.has(fact.action) && actions.has(fact.action) && !/^\d/.test(place);
}
