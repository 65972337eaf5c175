import { signal } from '@preact/signals';

const STORED = 'quiltside.single-keys';

/** Whether single letters do something on the Frame: off for who talks to the keyboard (WCAG 2.2, 2.1.4). */
export const singleKeys = signal(
  typeof localStorage === 'undefined' || localStorage.getItem(STORED) !== 'off',
);

export function setSingleKeys(on: boolean): void {
  singleKeys.value = on;
  localStorage.setItem(STORED, on ? 'on' : 'off');
}
