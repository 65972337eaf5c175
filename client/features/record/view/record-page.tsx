import type { JSX } from 'preact';

export function RecordPage(): JSX.Element {
  return <h1>RecordPage</h1>;
}
