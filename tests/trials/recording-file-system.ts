import { dirname } from 'node:path';
import type { FileSystem, OpenFile } from '../../server/store/file-system.ts';

/** One call that changed the disk, in the order it was made. */
type Written =
  | { call: 'make'; path: string }
  | { call: 'write'; path: string; position: number; data: Uint8Array }
  | { call: 'truncate'; path: string; length: number }
  | { call: 'sync'; path: string }
  | { call: 'rename'; from: string; to: string }
  | { call: 'remove'; path: string }
  | { call: 'sync-folder'; path: string };

/**
 * A disk in memory that remembers each call, so that a power cut can be played after any of them: what
 * was synced is there, what was not may be there, be missing, or be there in part and in another order.
 * It stands at the same boundary as the real one and is part of the trials only.
 */
export class RecordingFileSystem implements FileSystem {
  readonly calls: Written[] = [];
  readonly files = new Map<string, Uint8Array>();
  readonly folders = new Set<string>();

  constructor(files: ReadonlyMap<string, Uint8Array> = new Map()) {
    for (const [path, data] of files) {
      this.files.set(path, data.slice());
      this.folders.add(dirname(path));
    }
  }

  async open(path: string, flags: 'r+' | 'w' | 'wx'): Promise<OpenFile> {
    const missing = !this.files.has(path);
    if (flags === 'r+' && missing) throw Object.assign(new Error('ENOENT'), { code: 'ENOENT' });
    if (flags === 'wx' && !missing) throw Object.assign(new Error('EEXIST'), { code: 'EEXIST' });
    if (flags !== 'r+') {
      this.#do(missing ? { call: 'make', path } : { call: 'truncate', path, length: 0 });
    }
    return {
      write: async (data, position) => this.#do({ call: 'write', path, position, data: data.slice() }),
      sync: async () => this.#do({ call: 'sync', path }),
      truncate: async (length) => this.#do({ call: 'truncate', path, length }),
      close: async () => undefined,
    };
  }
  async readFile(path: string): Promise<Uint8Array> {
    const data = this.files.get(path);
    if (!data) throw Object.assign(new Error('ENOENT'), { code: 'ENOENT' });
    return data.slice();
  }
  async stat(path: string) {
    const data = this.files.get(path);
    if (data) return { size: data.length, modifiedMs: 0, isFolder: false };
    return this.folders.has(path) ? { size: 0, modifiedMs: 0, isFolder: true } : undefined;
  }
  async list(path: string): Promise<string[]> {
    return [...this.files.keys()]
      .filter((file) => dirname(file) === path)
      .map((file) => file.slice(path.length + 1))
      .sort();
  }
  async makeFolder(path: string): Promise<void> {
    this.folders.add(path);
  }
  async rename(from: string, to: string): Promise<void> {
    this.#do({ call: 'rename', from, to });
  }
  async remove(path: string): Promise<void> {
    if (this.files.has(path)) this.#do({ call: 'remove', path });
  }
  async removeFolder(path: string): Promise<void> {
    for (const file of [...this.files.keys()]) if (file.startsWith(`${path}/`)) await this.remove(file);
  }
  async syncFolder(path: string): Promise<void> {
    this.#do({ call: 'sync-folder', path });
  }

  #do(call: Written): void {
    this.calls.push(call);
    play(this.files, call);
  }

  /**
   * The disk after the power went at `count` calls. `survives` says, for each thing that was not yet
   * synced, whether it got there; for a write, how much of it (0 to 1).
   */
  afterPowerCut(count: number, survives: (index: number) => number): RecordingFileSystem {
    const calls = this.calls.slice(0, count);
    const files = new Map<string, Uint8Array>();
    for (const [index, call] of calls.entries()) {
      if (call.call === 'sync' || call.call === 'sync-folder') continue;
      if (isSafe(calls, index)) {
        play(files, call);
        continue;
      }
      const share = survives(index);
      if (share <= 0) continue;
      play(
        files,
        call.call === 'write'
          ? { ...call, data: call.data.slice(0, Math.ceil(call.data.length * share)) }
          : call,
      );
    }
    return new RecordingFileSystem(files);
  }
}

/** Whether a later sync has made this call last. A name is safe with its folder, content with its file. */
function isSafe(calls: readonly Written[], index: number): boolean {
  const call = calls[index]!;
  const later = calls.slice(index + 1);
  if (call.call === 'write' || call.call === 'truncate') {
    return later.some((one) => one.call === 'sync' && one.path === call.path);
  }
  const path = call.call === 'rename' ? call.to : 'path' in call ? call.path : '';
  return later.some(
    (one) =>
      (one.call === 'sync-folder' && one.path === dirname(path)) ||
      // Common file systems keep a new file's name with its first fsync; the store syncs the folder all the same.
      (call.call === 'make' && one.call === 'sync' && one.path === path),
  );
}

function play(files: Map<string, Uint8Array>, call: Written): void {
  switch (call.call) {
    case 'make':
      files.set(call.path, new Uint8Array());
      return;
    case 'write': {
      const old = files.get(call.path);
      // Content can't outlive a name that never got to the disk.
      if (!old) return;
      const grown = new Uint8Array(Math.max(old.length, call.position + call.data.length));
      grown.set(old);
      grown.set(call.data, call.position);
      files.set(call.path, grown);
      return;
    }
    case 'truncate': {
      const old = files.get(call.path);
      if (!old) return;
      const cut = new Uint8Array(call.length);
      cut.set(old.subarray(0, call.length));
      files.set(call.path, cut);
      return;
    }
    case 'rename': {
      const data = files.get(call.from);
      if (!data) return;
      files.delete(call.from);
      files.set(call.to, data);
      return;
    }
    case 'remove':
      files.delete(call.path);
      return;
    case 'sync':
    case 'sync-folder':
      return;
  }
}
