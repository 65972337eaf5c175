import { dirname } from 'node:path';
import type { FileSystem } from './file-system.ts';

/**
 * Writes a file so that after any crash its name holds either the whole new content or the whole old:
 * a temporary file beside it, fsync, rename, fsync of the folder.
 */
export async function writeWholeFile(fs: FileSystem, path: string, data: Uint8Array): Promise<void> {
  const temporary = `${path}.part`;
  const file = await fs.open(temporary, 'w');
  try {
    await file.write(data, 0);
    await file.sync();
  } catch (error) {
    await file.close().catch(() => undefined);
    await fs.remove(temporary).catch(() => undefined);
    throw error;
  }
  await file.close();
  await fs.rename(temporary, path);
  await fs.syncFolder(dirname(path));
}
