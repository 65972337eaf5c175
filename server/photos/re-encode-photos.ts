import { once } from 'node:events';
import { forkTypeScript } from '../speech/fork-typescript.ts';
import { DiskTrouble } from '../store/disk-trouble.ts';
import type { FileSystem } from '../store/file-system.ts';
import { Refusal } from '../store/quilt-store.ts';
import type { PhotosDone, PhotoTask } from './photo-process.ts';

const PROCESS = new URL('./photo-process.ts', import.meta.url);
/** The largest pictures of phones take some seconds on a slow machine. */
const MOST_MS = 60_000;

/** One process at a time, so that a hundred photographs dropped at once take the memory of one. */
let line: Promise<unknown> = Promise.resolve();

/**
 * Writes pictures anew, each to its `to`, which is on the disk when this returns: turned upright, without place, camera,
 * or anything else but what can be seen. Throws `Refusal` (422) where one is no whole picture; then none is left.
 *
 * @param name what the person calls the file, for the message
 */
export function reEncodePhotos(fs: FileSystem, tasks: readonly PhotoTask[], name: string): Promise<void> {
  const mine = line.then(() => reEncode(fs, tasks, name));
  line = mine.catch(() => undefined);
  return mine;
}

async function reEncode(fs: FileSystem, tasks: readonly PhotoTask[], name: string): Promise<void> {
  const child = forkTypeScript(PROCESS, []);
  child.stderr?.resume();
  const timer = setTimeout(() => child.kill('SIGKILL'), MOST_MS);
  let done: PhotosDone | undefined;
  child.once('message', (answer: PhotosDone) => {
    done = answer;
  });
  child.send(tasks);
  await once(child, 'exit');
  clearTimeout(timer);
  try {
    if (!done?.ok) {
      throw new Refusal(
        `${name} could not be read as a picture (${done?.why ?? 'its decoder gave up'}). Export it anew as JPEG, PNG or WebP and choose that.`,
        422,
        'file',
      );
    }
    for (const { to } of tasks) {
      const file = await fs.open(to, 'r+');
      await file.sync().finally(() => file.close());
    }
  } catch (error) {
    for (const { to } of tasks) await fs.remove(to).catch(() => undefined);
    throw error instanceof Refusal ? error : new DiskTrouble('The photograph could not be kept.', error);
  }
}
