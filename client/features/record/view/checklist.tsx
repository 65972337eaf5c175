import type { JSX } from 'preact';
import type { Log } from '../../../../core/log/log.ts';
import type { DocumentKind } from '../../../../core/record/document-model.ts';

export function Checklist(_props: { log: Log; kind: DocumentKind }): JSX.Element | null {
  return null;
}
