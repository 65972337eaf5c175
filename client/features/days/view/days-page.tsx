import type { JSX } from 'preact';

export function DaysPage(): JSX.Element {
  return <h1>DaysPage</h1>;
}
