import { randomUUID } from 'node:crypto';
import { link, mkdir, readFile, rename, rm, stat, utimes, writeFile } from 'node:fs/promises';
import { hostname } from 'node:os';
import { join } from 'node:path';

/** Another server holds the data folder. */
export class FolderInUse extends Error {}

type Holder = { pid: number; startedAt: string; host: string; birth: string; token: string };

const HEARTBEAT_MS = 5_000;
/** A lock whose holder can't be checked is stale when its heartbeat is this old. */
const STALE_MS = 30_000;

/**
 * Takes the data folder for this process: two servers writing one journal would ruin it. A lock left by
 * a crash is recognised (its process is gone, or its number now belongs to another) and taken over.
 * Returns what gives the folder free again. Throws `FolderInUse`.
 *
 * The lock uses the machine's own file system, not the store's narrow view of it: it needs hard links,
 * which either make a name or fail, with nothing in between.
 */
export async function lockFolder(folder: string): Promise<() => Promise<void>> {
  await mkdir(folder, { recursive: true, mode: 0o700 });
  const path = join(folder, 'lock');
  const mine: Holder = {
    pid: process.pid,
    startedAt: new Date().toISOString(),
    host: hostname(),
    birth: await birthOf(process.pid),
    token: randomUUID(),
  };
  const draft = join(folder, `lock.${mine.token}`);
  await writeFile(draft, JSON.stringify(mine), { mode: 0o600 });
  try {
    for (let tries = 0; ; tries++) {
      try {
        await link(draft, path);
        break;
      } catch (error) {
        if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error;
      }
      const held = await readHolder(path);
      if (held && ((await isAlive(held, path)) || tries > 20)) {
        throw new FolderInUse(
          `Quiltside is already running on this data folder (process ${held.pid} on ${held.host}, since ${held.startedAt}). Use the page it serves, or stop it first, or set QUILTSIDE_DATA to another folder. Folder: ${folder}`,
        );
      }
      await takeAway(path, held, join(folder, `lock.stale.${mine.token}`));
    }
  } finally {
    await rm(draft, { force: true });
  }
  const heart = setInterval(() => {
    const now = new Date();
    utimes(path, now, now).catch(() => undefined);
  }, HEARTBEAT_MS);
  heart.unref();
  return async () => {
    clearInterval(heart);
    if ((await readHolder(path))?.token === mine.token) await rm(path, { force: true });
  };
}

/** Moves a stale lock out of the way; puts it back where another server was quicker and it is a new one. */
async function takeAway(path: string, stale: Holder | undefined, aside: string): Promise<void> {
  try {
    await rename(path, aside);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return;
    throw error;
  }
  const taken = await readHolder(aside);
  if (taken && taken.token !== stale?.token) await link(aside, path).catch(() => undefined);
  await rm(aside, { force: true });
}

async function readHolder(path: string): Promise<Holder | undefined> {
  try {
    return JSON.parse(await readFile(path, 'utf8')) as Holder;
  } catch {
    return undefined;
  }
}

async function isAlive(holder: Holder, path: string): Promise<boolean> {
  const beatAgo =
    Date.now() -
    (await stat(path)
      .then((s) => s.mtimeMs)
      .catch(() => 0));
  // On a shared folder the other machine's processes can't be seen: only its heartbeat can.
  if (holder.host !== hostname()) return beatAgo < STALE_MS;
  try {
    process.kill(holder.pid, 0);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ESRCH') return false;
  }
  const birth = await birthOf(holder.pid);
  if (birth !== '' && holder.birth !== '') return birth === holder.birth;
  return beatAgo < STALE_MS;
}

/** When a process began, by the kernel's count since boot, and which boot that was; '' where that can't be known. */
async function birthOf(pid: number): Promise<string> {
  try {
    const line = await readFile(`/proc/${pid}/stat`, 'utf8');
    // Field 22; the command in field 2 may hold spaces and brackets, so count from its closing one.
    const started = line.slice(line.lastIndexOf(')') + 2).split(' ')[19];
    const boot = (await readFile('/proc/sys/kernel/random/boot_id', 'utf8')).trim();
    return `${boot}:${started}`;
  } catch {
    return '';
  }
}
