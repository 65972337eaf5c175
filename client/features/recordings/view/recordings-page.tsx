import type { JSX } from 'preact';

export function RecordingsPage(): JSX.Element {
  return <h1>RecordingsPage</h1>;
}
