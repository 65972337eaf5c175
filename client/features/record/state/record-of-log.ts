import type { Hours } from '../../../../core/hours/hours.ts';
import type { QuiltState } from '../../../../core/log/state.ts';
import type { DocumentKind, RecordDocument } from '../../../../core/record/document-model.ts';
import { recordDocument } from '../../../../core/record/record-document.ts';
import type { RecordEstimate } from '../../../../core/record/record-figures.ts';

/** One of the papers as it reads now. */
export function paperOf(
  state: QuiltState,
  kind: DocumentKind,
  given: { at: string; hours: Hours; estimate?: RecordEstimate },
): RecordDocument {
  return recordDocument(state, kind, given);
}
