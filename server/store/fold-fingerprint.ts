import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';

/** What a snapshot's content hangs on besides the journal. */
const SOURCES = ['evolve', 'log', 'log-snapshot', 'event-trail'].map(
  (name) => new URL(`../../core/log/${name}.ts`, import.meta.url),
);
let known: Promise<string> | undefined;

/**
 * Names the code that folds a journal, so that a snapshot made by other code is thrown away without anybody having to
 * remember a version number. Where the program is packed into one file, that file is it.
 */
export function foldFingerprint(): Promise<string> {
  known ??= hashFiles(SOURCES).catch(() => hashFiles([new URL(import.meta.url)]));
  return known;
}

async function hashFiles(files: readonly URL[]): Promise<string> {
  const hash = createHash('sha256');
  for (const file of files) hash.update(await readFile(fileURLToPath(file)));
  return hash.digest('hex');
}
