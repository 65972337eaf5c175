import type { FileSystem, OpenFile } from '../../server/store/file-system.ts';

export type Fault = {
  code: string;
  at: 'write' | 'sync' | 'open' | 'rename' | 'truncate';
  partial?: boolean;
};

/** The real disk, which fails at a chosen kind of call for as long as it is told to. */
export class FailingFileSystem implements FileSystem {
  fault: Fault | undefined;

  constructor(readonly real: FileSystem) {}

  #check(at: Fault['at']): void {
    if (this.fault?.at !== at) return;
    throw Object.assign(new Error(`${this.fault.code}: injected`), { code: this.fault.code });
  }

  async open(path: string, flags: 'r+' | 'w' | 'wx'): Promise<OpenFile> {
    this.#check('open');
    const file = await this.real.open(path, flags);
    return {
      write: async (data, position) => {
        // A full disk takes what still fits.
        if (this.fault?.at === 'write' && this.fault.partial) {
          await file.write(data.subarray(0, Math.floor(data.length / 2)), position);
        }
        this.#check('write');
        return file.write(data, position);
      },
      sync: async () => {
        this.#check('sync');
        return file.sync();
      },
      truncate: async (length) => {
        this.#check('truncate');
        return file.truncate(length);
      },
      close: () => file.close(),
    };
  }
  readFile = (path: string) => this.real.readFile(path);
  stat = (path: string) => this.real.stat(path);
  list = (path: string) => this.real.list(path);
  makeFolder = (path: string) => this.real.makeFolder(path);
  remove = (path: string) => this.real.remove(path);
  removeFolder = (path: string) => this.real.removeFolder(path);
  syncFolder = (path: string) => this.real.syncFolder(path);
  async rename(from: string, to: string): Promise<void> {
    this.#check('rename');
    return this.real.rename(from, to);
  }
}
