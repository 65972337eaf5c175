import { join } from 'node:path';
import { LOG_VERSION, MIGRATIONS, type Migration, migrate } from '../../core/log/migrations.ts';
import { formatMark } from './check-format.ts';
import type { FileSystem } from './file-system.ts';
import { type Damage, readJournal } from './journal.ts';
import { writeLine } from './journal-line.ts';
import { writeWholeFile } from './write-whole-file.ts';

/** The steps that lead to a version; others than today's in tests only. */
export type Versions = { migrations: readonly Migration[]; version: number };
export const TODAY: Versions = { migrations: MIGRATIONS, version: LOG_VERSION };

/**
 * Brings the folder of a quilt written at an older version up to this program's. The journal as it was stays beside, in
 * `before-version-<n>/`; every try begins from there, so that one broken off by a crash is simply done again. Returns the
 * damage found in the old journal.
 */
export async function bringUpToDate(
  fs: FileSystem,
  folder: string,
  from: number,
  { migrations, version }: Versions = TODAY,
): Promise<Damage[]> {
  if (from === version) return [];
  const journal = join(folder, 'journal.jsonl');
  const beside = join(folder, `before-version-${version}`);
  const kept = join(beside, 'journal.jsonl');
  if (!(await fs.stat(kept))) {
    if (!(await fs.stat(journal))) return [];
    await fs.makeFolder(beside);
    await writeWholeFile(fs, join(beside, 'format.json'), formatMark(from));
    await writeWholeFile(fs, kept, await fs.readFile(journal));
    await fs.syncFolder(folder);
  }
  const { events, damage } = readJournal(await fs.readFile(kept));
  const changed = migrate(events, from, migrations, version);
  await writeWholeFile(fs, journal, Buffer.from(changed.map(writeLine).join(''), 'utf8'));
  await writeWholeFile(fs, join(folder, 'format.json'), formatMark(version));
  return damage;
}
