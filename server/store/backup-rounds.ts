import { type Backup, backUp, isBackedUp, lastBackup } from './backups.ts';
import type { Library } from './library.ts';

const EVERY_MS = 10 * 60_000;

/** Backs up, from time to time and at the stop, each quilt that has changed, where a folder is set for it. */
export class BackupRounds {
  readonly #done = new Map<string, Backup>();
  /** Quilts that nobody has opened and whose last backup was found to be whole. */
  readonly #known = new Set<string>();
  #trouble: string | undefined;
  #timer: NodeJS.Timeout | undefined;
  #running: Promise<void> | undefined;

  constructor(readonly library: Library) {}

  start(): void {
    this.#timer = setInterval(() => void this.round(), EVERY_MS).unref();
    void this.#remember();
  }

  /** How old the backups are is known from the start, before the first round. */
  async #remember(): Promise<void> {
    const folder = this.library.settings.data.backupFolder;
    if (!folder) return;
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

  round(): Promise<void> {
    this.#running ??= this.#round().finally(() => {
      this.#running = undefined;
    });
    return this.#running;
  }

  async close(): Promise<void> {
    clearInterval(this.#timer);
    await this.round();
  }

  async #round(): Promise<void> {
    const folder = this.library.settings.data.backupFolder;
    if (!folder) return;
    this.#trouble = undefined;
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
