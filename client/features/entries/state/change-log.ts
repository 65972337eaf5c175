import { signal } from '@preact/signals';
import type { Command } from '../../../../shared/wire.ts';
import { openQuilt } from '../../link/state/open-quilt.ts';

/** The last change made by hand in this window, to be taken back with one key. */
export const lastChange = signal<{ seq: number; words: string } | null>(null);
export const changeFault = signal<string | null>(null);

/** Makes a change to the log; remembers it for undo; false where it was refused (and says why). */
export async function changeLog(command: Command, words: string): Promise<boolean> {
  const link = openQuilt.peek();
  if (!link) return false;
  try {
    const done = await link.send(command);
    changeFault.value = null;
    lastChange.value = { seq: done.seq, words };
    return true;
  } catch (why) {
    changeFault.value = why instanceof Error ? why.message : String(why);
    return false;
  }
}

/** Takes the last change back. */
export async function undoLastChange(): Promise<void> {
  const change = lastChange.peek();
  const link = openQuilt.peek();
  if (!change || !link) return;
  try {
    await link.send({ type: 'undo-change', seq: change.seq });
    lastChange.value = null;
    changeFault.value = null;
  } catch (why) {
    changeFault.value = why instanceof Error ? why.message : String(why);
  }
}
