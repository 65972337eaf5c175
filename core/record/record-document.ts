import type { Hours } from '../hours/hours.ts';
import type { QuiltState } from '../log/state.ts';
import { applyEdits } from './apply-edits.ts';
import type { DocumentKind, RecordDocument, Section } from './document-model.ts';
import { bill } from './documents/bill.ts';
import { conditionRecord } from './documents/condition-record.ts';
import { ownersLetter } from './documents/owners-letter.ts';
import type { Paper } from './documents/paper.ts';
import { proposal } from './documents/proposal.ts';
import { treatmentRecord } from './documents/treatment-record.ts';
import { type RecordEstimate, recordHours, withWholePrice } from './record-figures.ts';
import { recordView } from './record-view.ts';
import { localeOf } from './wording/figure-phrases.ts';
import { localClock } from './wording/local-clock.ts';

const PAPERS: Record<DocumentKind, { title: string; write: (paper: Paper) => Section[] }> = {
  condition: { title: 'Condition record before work', write: conditionRecord },
  proposal: { title: 'Proposal for treatment', write: proposal },
  treatment: { title: 'Record of treatment', write: treatmentRecord },
  letter: { title: 'A letter to the owner', write: ownersLetter },
  bill: { title: 'Bill', write: bill },
};

/**
 * Writes one of a quilt's papers from its log. Pure: the same log, moment, hours and estimate give the
 * same document. `at` is the moment it is written for (ISO 8601). Edits made by hand are in place.
 */
export function recordDocument(
  state: QuiltState,
  kind: DocumentKind,
  given: { at: string; hours?: Hours; estimate?: RecordEstimate },
): RecordDocument {
  const view = recordView(state);
  const { date } = localClock(given.at, view.quilt.zone);
  const paper: Paper = {
    view,
    date,
    ...(given.hours ? { hours: recordHours(given.hours) } : {}),
    ...(given.estimate ? { estimate: withWholePrice(given.estimate) } : {}),
  };
  const { title, write } = PAPERS[kind];
  const written: RecordDocument = {
    kind,
    title,
    subject: view.quilt.number ? `${view.quilt.name} (${view.quilt.number})` : view.quilt.name,
    language: localeOf(view.spelling),
    date,
    author: view.quilt.mender,
    sections: write(paper),
    heldBack: view.heldBack,
  };
  return applyEdits(written, state.recordEdits[kind]);
}
