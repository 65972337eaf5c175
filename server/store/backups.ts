import { createHash } from 'node:crypto';
import { basename, join } from 'node:path';
import { fold } from '../../core/log/evolve.ts';
import type { FileSystem } from './file-system.ts';
import { readJournal } from './journal.ts';
import type { QuiltStore } from './quilt-store.ts';
import { writeWholeFile } from './write-whole-file.ts';

/** Snapshots kept of each quilt: the last few, then one a day, so that a mistake found late can be gone back on. */
const KEEP_LAST = 5;
const KEEP_DAYS = 30;
const MEDIA = ['audio', 'photos'] as const;

export type Backup = { file: string; at: string; seq: number };

/**
 * Writes a snapshot of a quilt's journal to a second folder, with the sound and the photographs that are
 * not there yet (they never change once written), reads it again and folds it, and keeps it only where it
 * gives the log that it was taken of. Old snapshots go by the rolling rule; media stay.
 */
export async function backUp(fs: FileSystem, store: QuiltStore, backupFolder: string): Promise<Backup> {
  const folder = join(backupFolder, store.id);
  const { log } = store;
  const at = new Date().toISOString();
  const file = `journal-${at.replaceAll(/[:.]/g, '-')}.jsonl`;
  await fs.makeFolder(folder);
  const bytes = (await fs.readFile(join(store.folder, 'journal.jsonl'))) as Uint8Array;
  await writeWholeFile(fs, join(folder, file), bytes);
  await writeWholeFile(fs, join(folder, 'format.json'), await fs.readFile(join(store.folder, 'format.json')));
  for (const kind of MEDIA) {
    await fs.makeFolder(join(folder, kind));
    const there = new Set(await fs.list(join(folder, kind)));
    for (const name of await fs.list(join(store.folder, kind))) {
      if (there.has(name)) continue;
      await writeWholeFile(fs, join(folder, kind, name), await fs.readFile(join(store.folder, kind, name)));
    }
  }
  await verify(fs, join(folder, file), bytes, log.seq);
  await dropOld(fs, folder);
  return { file: basename(file), at, seq: log.seq };
}

/** Reads a snapshot as a restore would. Throws, and removes it, where it is not what was written. */
async function verify(fs: FileSystem, path: string, written: Uint8Array, seq: number): Promise<void> {
  const read = await fs.readFile(path);
  const hash = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');
  const folded = fold(readJournal(read).events);
  if (hash(read) === hash(written) && folded.seq >= seq) return;
  await fs.remove(path);
  throw new Error(`The backup ${path} could not be read again as it was written. Check the disk it is on.`);
}

async function dropOld(fs: FileSystem, folder: string): Promise<void> {
  const snapshots = (await fs.list(folder))
    .filter((name) => /^journal-.*\.jsonl$/.test(name))
    .sort()
    .reverse();
  const days = new Set<string>();
  for (const [i, name] of snapshots.entries()) {
    const day = name.slice('journal-'.length, 'journal-2026-03-14'.length);
    const isFirstOfDay = !days.has(day);
    days.add(day);
    if (i < KEEP_LAST || (isFirstOfDay && days.size <= KEEP_DAYS)) continue;
    await fs.remove(join(folder, name));
  }
}
