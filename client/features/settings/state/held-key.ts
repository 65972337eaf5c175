import { signal } from '@preact/signals';

const STORED = 'quiltside.held-key';
const stored = typeof localStorage === 'undefined' ? null : localStorage.getItem(STORED);

/** The key that is held to talk: a `KeyboardEvent.code`. A foot pedal is a keyboard with one key. */
export const heldKey = signal(stored ?? 'Space');

export function setHeldKey(code: string): void {
  heldKey.value = code;
  localStorage.setItem(STORED, code);
}

/** The key's name as a person reads it: `KeyB` -> "B", `F13` -> "F13", `Space` -> "Space bar". */
export function keyWords(code: string): string {
  if (code === 'Space') return 'Space bar';
  return code.replace(/^Key|^Digit/, '').replace(/([a-z])([A-Z0-9])/g, '$1 $2');
}
