import type { JSX } from 'preact';

export function EstimatePage(): JSX.Element {
  return <h1>EstimatePage</h1>;
}
