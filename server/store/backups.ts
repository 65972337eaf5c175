import { createHash } from 'node:crypto';
import { join } from 'node:path';
import type { FileSystem } from './file-system.ts';
import { readWholeJournal } from './journal-segments.ts';
import { QuiltStore } from './quilt-store.ts';
import { writeWholeFile } from './write-whole-file.ts';

/** Snapshots kept of each quilt: the last few, then one a day, so that a mistake found late can be gone back on. */
const KEEP_LAST = 5;
const KEEP_DAYS = 30;
const MEDIA = ['audio', 'photos'] as const;
const SNAPSHOT = /^journal-(\d{4}-\d\d-\d\d)T(\d\d)-(\d\d)-(\d\d)-(\d{3})Z\.jsonl$/;

export type Backup = { file: string; at: string; seq: number };

/**
 * Writes a snapshot of a quilt's journal to a second folder, with the sound and the photographs that are
 * not there whole yet (they never change once written), and restores it on a copy; it is kept only where
 * that gives the log that it was taken of. Where the last snapshot has all there is, that one is tried
 * again. A snapshot is one file, however many the journal has, so that it can be put in the place of all of them. Old
 * ones go by the rolling rule; media stay.
 */
export async function backUp(fs: FileSystem, store: QuiltStore, backupFolder: string): Promise<Backup> {
  const folder = join(backupFolder, store.id);
  const { log } = store;
  await fs.makeFolder(folder);
  const bytes = await readWholeJournal(fs, store.folder);
  const format = await fs.readFile(join(store.folder, 'format.json'));
  for (const kind of MEDIA) {
    await fs.makeFolder(join(folder, kind));
    for (const name of await lacking(fs, join(store.folder, kind), join(folder, kind))) {
      const copy = join(folder, kind, name);
      const media = await fs.readFile(join(store.folder, kind, name));
      await writeWholeFile(fs, copy, media);
      if (hash(await fs.readFile(copy)) !== hash(media)) throw notAsWritten(copy);
    }
  }
  const last = await lastBackup(fs, backupFolder, store.id);
  const isLast = last && hash(await fs.readFile(join(folder, last.file))) === hash(bytes);
  const at = isLast ? last.at : new Date().toISOString();
  const file = isLast ? last.file : `journal-${at.replaceAll(/[:.]/g, '-')}.jsonl`;
  if (!isLast) {
    await writeWholeFile(fs, join(folder, 'format.json'), format);
    await writeWholeFile(fs, join(folder, file), bytes);
  }
  await tryRestore(fs, store, folder, file, bytes, log.seq);
  await dropOld(fs, folder);
  return { file, at, seq: log.seq };
}

/** The newest snapshot of a quilt there is; its `seq`, which its name does not tell, is given as 0. */
export async function lastBackup(
  fs: FileSystem,
  backupFolder: string,
  id: string,
): Promise<Backup | undefined> {
  const file = (await fs.list(join(backupFolder, id))).filter((name) => SNAPSHOT.test(name)).at(-1);
  const [, day, hour, minute, second, ms] = SNAPSHOT.exec(file ?? '') ?? [];
  return file === undefined ? undefined : { file, at: `${day}T${hour}:${minute}:${second}.${ms}Z`, seq: 0 };
}

/** Whether the backup of a quilt has its journal byte for byte, and its media, seen without opening it. */
export async function isBackedUp(
  fs: FileSystem,
  folder: string,
  backupFolder: string,
  id: string,
): Promise<boolean> {
  const last = await lastBackup(fs, backupFolder, id);
  if (!last) return false;
  for (const kind of MEDIA)
    if ((await lacking(fs, join(folder, kind), join(backupFolder, id, kind))).length > 0) return false;
  const copy = await fs.readFile(join(backupFolder, id, last.file));
  return hash(copy) === hash(await readWholeJournal(fs, folder));
}

/** Files that are not in `to` whole; media never change once they are written. */
async function lacking(fs: FileSystem, from: string, to: string): Promise<string[]> {
  const names: string[] = [];
  for (const name of await fs.list(from)) {
    const size = (await fs.stat(join(from, name)))?.size;
    if (size !== undefined && (await fs.stat(join(to, name)))?.size !== size) names.push(name);
  }
  return names;
}

/** Opens a copy of a snapshot as a restored quilt is opened. Throws, and removes the snapshot, where it is not what was written. */
async function tryRestore(
  fs: FileSystem,
  store: QuiltStore,
  folder: string,
  file: string,
  written: Uint8Array,
  seq: number,
): Promise<void> {
  const path = join(folder, file);
  const read = await fs.readFile(path);
  const trial = join(folder, 'tried');
  await fs.makeFolder(trial);
  await writeWholeFile(fs, join(trial, 'journal.jsonl'), read);
  await writeWholeFile(fs, join(trial, 'format.json'), await fs.readFile(join(folder, 'format.json')));
  const restored = await QuiltStore.open(fs, store.id, trial, { snapshotEvery: Infinity }).catch(
    () => undefined,
  );
  const isWhole = restored !== undefined && restored.log.seq >= seq && hash(read) === hash(written);
  await restored?.close();
  await fs.remove(join(trial, 'journal.jsonl'));
  if (isWhole) return;
  await fs.remove(path);
  throw notAsWritten(path);
}

const hash = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

const notAsWritten = (path: string): Error =>
  new Error(`The backup ${path} could not be read again as it was written. Check the disk it is on.`);

async function dropOld(fs: FileSystem, folder: string): Promise<void> {
  const snapshots = (await fs.list(folder))
    .filter((name) => SNAPSHOT.test(name))
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
