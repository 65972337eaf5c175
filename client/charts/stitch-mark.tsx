import type { JSX } from 'preact';
import { ACTION_DRAWINGS } from '../../core/record/figures/mark-drawings.ts';
import type { Action } from '../../shared/vocabulary.ts';
import { DrawnMark, type MarkPlace } from './drawn-mark.tsx';

/** The drawing of a treatment. */
export function StitchMark({ action, ...place }: MarkPlace & { action: Action }): JSX.Element {
  return <DrawnMark {...place} name={action} drawing={ACTION_DRAWINGS[action]} fineWidth={1.3} />;
}
