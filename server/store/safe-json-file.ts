import { dirname } from 'node:path';
import type { Adapter } from 'lowdb';
import { DiskTrouble } from './disk-trouble.ts';
import type { FileSystem } from './file-system.ts';
import { writeWholeFile } from './write-whole-file.ts';

/**
 * Keeps one JSON value in a file, for lowdb. Its own presets write without fsync, and keep nothing at
 * all where NODE_ENV is `test`; this one survives a power cut and keeps the last good copy beside it.
 */
export class SafeJsonFile<T> implements Adapter<T> {
  #last: Promise<void> = Promise.resolve();

  constructor(
    readonly fs: FileSystem,
    readonly path: string,
  ) {}

  /** The value; that of the last good copy where the file is damaged; null where there is neither. */
  async read(): Promise<T | null> {
    const now = await this.#readOne(this.path);
    if (now.found !== undefined) return now.found;
    const before = await this.#readOne(this.#previous);
    if (now.damaged) await this.fs.rename(this.path, `${this.path}.damaged`);
    return before.found ?? null;
  }

  /** One write at a time, in the order they were asked for. */
  write(value: T): Promise<void> {
    const bytes = Buffer.from(`${JSON.stringify(value, null, 2)}\n`, 'utf8');
    const mine = this.#last.catch(() => undefined).then(() => this.#writeOne(bytes));
    this.#last = mine;
    return mine;
  }

  get #previous(): string {
    return `${this.path}.previous`;
  }

  async #readOne(path: string): Promise<{ found?: T; damaged: boolean }> {
    if (!(await this.fs.stat(path))) return { damaged: false };
    try {
      return {
        found: JSON.parse(Buffer.from(await this.fs.readFile(path)).toString('utf8')) as T,
        damaged: false,
      };
    } catch (error) {
      if (error instanceof SyntaxError) return { damaged: true };
      throw error;
    }
  }

  async #writeOne(bytes: Uint8Array): Promise<void> {
    try {
      await this.fs.makeFolder(dirname(this.path));
      const old = await this.#readOne(this.path);
      if (old.found !== undefined) {
        await writeWholeFile(this.fs, this.#previous, await this.fs.readFile(this.path));
      }
      await writeWholeFile(this.fs, this.path, bytes);
    } catch (error) {
      throw new DiskTrouble('The settings or the list of quilts could not be saved.', error);
    }
  }
}
