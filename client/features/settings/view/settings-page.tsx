import type { JSX } from 'preact';

export function SettingsPage(): JSX.Element {
  return <h1>SettingsPage</h1>;
}
