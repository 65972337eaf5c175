import { join } from 'node:path';
import { LOG_VERSION } from '../../core/log/migrations.ts';
import type { FileSystem } from './file-system.ts';
import { sealLine, unsealLine } from './journal-line.ts';
import { writeWholeFile } from './write-whole-file.ts';

/** A quilt's folder that this program must not touch. */
export class NewerFormat extends Error {
  readonly statusCode = 409;
}

/**
 * Reads the version of a quilt's folder from `format.json`, which is made where it is missing. Throws
 * `NewerFormat`, before anything is changed, where a newer program wrote it.
 */
export async function checkFormat(
  fs: FileSystem,
  folder: string,
  readable: number = LOG_VERSION,
): Promise<number> {
  const path = join(folder, 'format.json');
  if (!(await fs.stat(path))) {
    await fs.makeFolder(folder);
    await writeWholeFile(fs, path, formatMark(readable));
    return readable;
  }
  const text = Buffer.from(await fs.readFile(path)).toString('utf8');
  // A damaged mark is no reason to keep the log from its owner: the journal's own lines are checked. Version 1 had no sum.
  const isWhole = !text.includes('"sum"') || unsealLine(text.trimEnd()) !== undefined;
  const version = Number((isWhole && /"quiltside"\s*:\s*(\d+)/.exec(text)?.[1]) || readable);
  if (version > readable) {
    throw new NewerFormat(
      `This quilt was written by a newer Quiltside (version ${version} of its log; this program reads up to ${readable}). Use the newer program; nothing was changed.`,
    );
  }
  return version;
}

/** What `format.json` holds. */
export const formatMark = (version: number): Uint8Array =>
  Buffer.from(sealLine(JSON.stringify({ quiltside: version })));
