import { mkdir, open, readdir, readFile, rename, rm, stat } from 'node:fs/promises';

/** An open file. `write` writes all of `data` or throws. */
export type OpenFile = {
  write(data: Uint8Array, position: number): Promise<void>;
  /** Returns once everything written is on the disk itself. */
  sync(): Promise<void>;
  truncate(length: number): Promise<void>;
  close(): Promise<void>;
};

/**
 * Everything the store asks of a disk. Narrow on purpose: what is promised about crashes rests on
 * these calls alone, and a trial can put a failing disk behind them.
 */
export type FileSystem = {
  /** `r+` needs the file, `w` makes or empties it, `wx` fails where there is one. */
  open(path: string, flags: 'r+' | 'w' | 'wx'): Promise<OpenFile>;
  readFile(path: string): Promise<Uint8Array>;
  /** Undefined where there is nothing of that name. */
  stat(path: string): Promise<{ size: number; modifiedMs: number; isFolder: boolean } | undefined>;
  list(path: string): Promise<string[]>;
  makeFolder(path: string): Promise<void>;
  rename(from: string, to: string): Promise<void>;
  /** Nothing of that name is no error. */
  remove(path: string): Promise<void>;
  /** A folder with all that is in it; nothing of that name is no error. */
  removeFolder(path: string): Promise<void>;
  /** Makes names made, changed or removed in the folder last through a power cut. */
  syncFolder(path: string): Promise<void>;
};

const isCode = (error: unknown, ...codes: string[]): boolean =>
  codes.includes((error as NodeJS.ErrnoException | undefined)?.code ?? '');

/** The disk of this machine. */
export const nodeFileSystem: FileSystem = {
  async open(path, flags) {
    const handle = await open(path, flags);
    return {
      async write(data, position) {
        let done = 0;
        while (done < data.length) {
          const { bytesWritten } = await handle.write(data, done, data.length - done, position + done);
          done += bytesWritten;
        }
      },
      sync: () => handle.datasync(),
      truncate: (length) => handle.truncate(length),
      close: () => handle.close(),
    };
  },
  readFile: (path) => readFile(path),
  async stat(path) {
    try {
      const found = await stat(path);
      return { size: found.size, modifiedMs: found.mtimeMs, isFolder: found.isDirectory() };
    } catch (error) {
      if (isCode(error, 'ENOENT', 'ENOTDIR')) return undefined;
      throw error;
    }
  },
  async list(path) {
    try {
      return (await readdir(path)).sort();
    } catch (error) {
      if (isCode(error, 'ENOENT')) return [];
      throw error;
    }
  },
  async makeFolder(path) {
    await mkdir(path, { recursive: true, mode: 0o700 });
  },
  rename,
  remove: (path) => rm(path, { force: true }),
  removeFolder: (path) => rm(path, { recursive: true, force: true }),
  async syncFolder(path) {
    let handle: Awaited<ReturnType<typeof open>> | undefined;
    try {
      handle = await open(path, 'r');
      await handle.sync();
    } catch (error) {
      // Windows opens no folders; its file system keeps names in its own journal.
      if (!isCode(error, 'EPERM', 'EISDIR', 'EACCES', 'EINVAL')) throw error;
    } finally {
      await handle?.close();
    }
  },
};
