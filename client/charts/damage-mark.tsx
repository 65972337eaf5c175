import type { JSX } from 'preact';
import { FINDING_DRAWINGS } from '../../core/record/figures/mark-drawings.ts';
import type { Finding } from '../../shared/vocabulary.ts';
import { DrawnMark, type MarkPlace } from './drawn-mark.tsx';

/** The drawing of a finding. */
export function DamageMark({ finding, ...place }: MarkPlace & { finding: Finding }): JSX.Element {
  return <DrawnMark {...place} name={finding} drawing={FINDING_DRAWINGS[finding]} fineWidth={1.4} />;
}
