import { join } from 'node:path';
import { Low } from 'lowdb';
import { type Backup, backUp, isBackedUp, lastBackup } from './backups.ts';
import type { Library } from './library.ts';
import { SafeJsonFile } from './safe-json-file.ts';

const EVERY_MS = 10 * 60_000;
const DAY_MS = 86_400_000;
/** As long as the oldest daily backup: a removal that was a mistake can be gone back on till then. */
const REMOVED_STAY_DAYS = 30;

/** What stays of removed quilts: until when, where, and in which folders it could not be looked for. */
export type Stay = { until: string; folders: string[]; away: string[] };

/** Backs up, from time to time and at the stop, each quilt that has changed, where a folder is set for it. */
export class BackupRounds {
  readonly #done = new Map<string, Backup>();
  /** Quilts that nobody has opened and whose last backup was found to be whole. */
  readonly #known = new Set<string>();
  #trouble: string | undefined;
  #timer: NodeJS.Timeout | undefined;
  #running: Promise<void> | undefined;

  /** Removed quilts whose backups are still there: their ids alone, no names. */
  readonly #removed: Low<{ id: string; until: string }[]>;

  /** Every folder that was backed up to, so that a removal reaches those chosen earlier too. */
  readonly #folders: Low<string[]>;

  constructor(readonly library: Library) {
    this.#folders = new Low(new SafeJsonFile(library.fs, join(library.folder, 'backup-folders.json')), []);
    this.#removed = new Low(new SafeJsonFile(library.fs, join(library.folder, 'removed.json')), []);
  }

  start(): void {
    this.#timer = setInterval(() => void this.round(), EVERY_MS).unref();
    void this.#remember();
  }

  /** How old the backups are is known from the start, before the first round. */
  async #remember(): Promise<void> {
    const folder = this.library.settings.data.backupFolder;
    if (!folder) return;
    await this.library.index();
    for (const { id } of this.library.list()) {
      const last = await lastBackup(this.library.fs, folder, id).catch(() => undefined);
      if (last && !this.#done.has(id)) this.#done.set(id, last);
    }
  }

  /** When each quilt was last backed up, and what went wrong last. */
  get state(): { folder?: string; last: Record<string, Backup>; trouble?: string } {
    const folder = this.library.settings.data.backupFolder;
    return {
      ...(folder ? { folder } : {}),
      last: Object.fromEntries(this.#done),
      ...(this.#trouble ? { trouble: this.#trouble } : {}),
    };
  }

  /**
   * Has the backups of removed quilts deleted when their time is over, in folders chosen earlier too. Returns until when
   * they stay, and where, and which folders (`away`) are on no disk that is here now; undefined where nothing was backed up.
   */
  async forget(ids: readonly string[], now = new Date()): Promise<Stay | undefined> {
    const known = await this.#knownFolders();
    if (known.length === 0) return undefined;
    const until = new Date(now.getTime() + REMOVED_STAY_DAYS * DAY_MS).toISOString();
    await this.#removed.read();
    this.#removed.data.push(...ids.map((id) => ({ id, until })));
    await this.#removed.write();
    for (const id of ids) this.#done.delete(id);
    const folders: string[] = [];
    const away: string[] = [];
    for (const folder of known) {
      if (!(await this.library.fs.stat(folder))) away.push(folder);
      else
        for (const id of ids)
          if (await this.library.fs.stat(join(folder, id))) folders.push(join(folder, id));
    }
    return { until, folders, away };
  }

  async #knownFolders(): Promise<string[]> {
    const folder = this.library.settings.data.backupFolder;
    await this.#folders.read();
    return [...new Set([...(folder ? [folder] : []), ...this.#folders.data])];
  }

  async #deleteRemoved(now: Date): Promise<void> {
    await this.#removed.read();
    const over = this.#removed.data.filter(({ until }) => until <= now.toISOString());
    if (over.length === 0) return;
    let isAllHere = true;
    for (const folder of await this.#knownFolders()) {
      if (!(await this.library.fs.stat(folder))) {
        isAllHere = false;
        continue;
      }
      for (const { id } of over) {
        // A quilt of that id that is here again, from an archive, keeps its backups.
        if (!this.library.has(id) && !id.includes('/')) await this.library.fs.removeFolder(join(folder, id));
      }
    }
    // A disk that is put away keeps its backups till it is here again.
    if (!isAllHere) return;
    this.#removed.data = this.#removed.data.filter((one) => !over.includes(one));
    await this.#removed.write();
  }

  round(now = new Date()): Promise<void> {
    this.#running ??= this.#round(now).finally(() => {
      this.#running = undefined;
    });
    return this.#running;
  }

  async close(): Promise<void> {
    clearInterval(this.#timer);
    await this.round();
  }

  async #round(now: Date): Promise<void> {
    await this.library.index();
    this.#trouble = undefined;
    await this.#deleteRemoved(now).catch((error: Error) => {
      this.#trouble = `Backups of removed quilts could not be deleted: ${error.message}`;
    });
    const folder = this.library.settings.data.backupFolder;
    if (!folder) return;
    if (!(await this.#knownFolders()).every((one) => this.#folders.data.includes(one))) {
      this.#folders.data.push(folder);
      // Before anything is in it.
      await this.#folders.write();
    }
    for (const { id, name } of this.library.list()) {
      try {
        if (!this.library.isOpen(id)) {
          // What nobody opened has not changed: it is compared once, and its log is not read for that.
          if (this.#known.has(`${folder}/${id}`)) continue;
          if (await isBackedUp(this.library.fs, this.library.folderOf(id), folder, id)) {
            this.#known.add(`${folder}/${id}`);
            continue;
          }
        }
        const store = await this.library.quilt(id);
        if (this.#done.get(id)?.seq === store.log.seq) continue;
        this.#done.set(id, await backUp(this.library.fs, store, folder));
      } catch (error) {
        this.#trouble = `“${name}” could not be backed up to ${folder}: ${(error as Error).message}`;
      }
    }
  }
}
