import type { JSX } from 'preact';

export function HelpPage(): JSX.Element {
  return <h1>HelpPage</h1>;
}
