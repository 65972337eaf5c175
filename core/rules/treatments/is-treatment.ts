import type { Draft } from '../draft.ts';

export type TreatmentDraft = Draft & { entry: Extract<Draft['entry'], { kind: 'treatment' }> };

export const isTreatment = (d: Draft): d is TreatmentDraft => d.entry.kind === 'treatment';
