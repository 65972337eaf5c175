import { signal } from '@preact/signals';
import type { Command } from '../../../../shared/wire.ts';
import { openQuilt } from '../../link/state/open-quilt.ts';

/** The last change made by hand in this window, to be taken back with one key; `seqs` in the order in which it was made. */
export const lastChange = signal<{ seqs: readonly number[]; words: string } | null>(null);
export const changeFault = signal<string | null>(null);

/** Makes a change to the log; remembers it for undo; false where it was refused (and says why). */
export const changeLog = (command: Command, words: string): Promise<boolean> =>
  changeTogether([command], words);

/**
 * Makes a change that takes several commands, such as cutting a stretch in two: it is taken back as one. Where one of them is
 * refused, those before it are taken back again, so that nothing is done by half.
 */
export async function changeTogether(commands: readonly Command[], words: string): Promise<boolean> {
  const link = openQuilt.peek();
  if (!link) return false;
  const seqs: number[] = [];
  try {
    for (const command of commands) {
      const done = await link.send(command);
      if (!done.unchanged) seqs.push(done.seq);
    }
    changeFault.value = null;
    if (seqs.length) lastChange.value = { seqs, words };
    return true;
  } catch (why) {
    changeFault.value = why instanceof Error ? why.message : String(why);
    await takeBack(seqs).catch(() => undefined);
    return false;
  }
}

/** Takes the last change back. */
export async function undoLastChange(): Promise<void> {
  const change = lastChange.peek();
  if (!change) return;
  try {
    await takeBack(change.seqs);
    lastChange.value = null;
    changeFault.value = null;
  } catch (why) {
    changeFault.value = why instanceof Error ? why.message : String(why);
  }
}

async function takeBack(seqs: readonly number[]): Promise<void> {
  const link = openQuilt.peek();
  if (!link) return;
  for (const seq of [...seqs].reverse()) await link.send({ type: 'undo-change', seq });
}
