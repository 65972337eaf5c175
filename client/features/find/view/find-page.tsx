import type { JSX } from 'preact';

export function FindPage(): JSX.Element {
  return <h1>FindPage</h1>;
}
