import { once } from 'node:events';
import { forkTypeScript } from '../speech/fork-typescript.ts';
import { DiskTrouble } from '../store/disk-trouble.ts';
import type { FileSystem } from '../store/file-system.ts';
import { Refusal } from '../store/quilt-store.ts';
import type { PhotoDone, PhotoTask } from './photo-process.ts';

const PROCESS = new URL('./photo-process.ts', import.meta.url);
/** The largest pictures of phones take some seconds on a slow machine. */
const MOST_MS = 60_000;
const GAVE_UP = 'its decoder gave up';
export const NOT_TRIED = 'it was not looked at, for too many before it broke their decoder';

/** One process at a time, so that a hundred photographs dropped at once take the memory of one. */
let line: Promise<unknown> = Promise.resolve();

/**
 * Writes pictures anew, each to its `to`, which is on the disk when this returns: turned upright, without place, camera,
 * or anything else but what can be seen. Throws `Refusal` (422) where one is no whole picture; then none is left.
 *
 * @param name what the person calls the file, for the message
 */
export async function reEncodePhotos(
  fs: FileSystem,
  tasks: readonly PhotoTask[],
  name: string,
): Promise<void> {
  const [why] = (await reEncodeEach(fs, tasks)).filter((one) => one !== undefined);
  if (why === undefined) return;
  for (const { to } of tasks) await fs.remove(to);
  throw new Refusal(
    `${name} could not be read as a picture (${why}). Export it anew as JPEG, PNG or WebP and choose that.`,
    422,
    'file',
  );
}

/**
 * Writes each picture anew that can be read. Returns for each why it could not be, or undefined; of one that could not
 * nothing is left. Throws `DiskTrouble` where there is no room.
 *
 * @param goesOn asked after a picture that ended its process; where it says no, the rest are not looked at
 */
export function reEncodeEach(
  fs: FileSystem,
  tasks: readonly PhotoTask[],
  goesOn: () => boolean = () => true,
): Promise<readonly (string | undefined)[]> {
  const mine = line.then(async () => {
    const done: (string | undefined)[] = [];
    // A process ends early over a picture that broke it or took too long; the rest go to the next one.
    while (done.length < tasks.length) {
      const some = await inOneProcess(tasks.slice(done.length));
      done.push(...some);
      if (done.length === tasks.length) break;
      done.push(GAVE_UP);
      if (!goesOn()) done.push(...tasks.slice(done.length).map(() => NOT_TRIED));
    }
    try {
      for (const [i, { to }] of tasks.entries()) {
        if (done[i] !== undefined) await fs.remove(to);
        else {
          const file = await fs.open(to, 'r+');
          await file.sync().finally(() => file.close());
        }
      }
    } catch (error) {
      for (const { to } of tasks) await fs.remove(to).catch(() => undefined);
      throw new DiskTrouble('The photograph could not be kept.', error);
    }
    return done;
  });
  line = mine.catch(() => undefined);
  return mine;
}

/** What became of the tasks that a process came to, in their order. */
async function inOneProcess(tasks: readonly PhotoTask[]): Promise<(string | undefined)[]> {
  const child = forkTypeScript(PROCESS, []);
  child.stderr?.resume();
  const done: (string | undefined)[] = [];
  const tooLong = (): void => void child.kill('SIGKILL');
  let timer = setTimeout(tooLong, MOST_MS);
  child.on('message', ({ why }: PhotoDone) => {
    done.push(why);
    clearTimeout(timer);
    timer = setTimeout(tooLong, MOST_MS);
  });
  child.send(tasks);
  await once(child, 'close');
  clearTimeout(timer);
  return done;
}
