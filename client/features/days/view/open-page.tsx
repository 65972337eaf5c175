import type { JSX } from 'preact';

export function OpenPage(): JSX.Element {
  return <h1>OpenPage</h1>;
}
