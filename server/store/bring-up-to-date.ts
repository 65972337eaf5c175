import { join } from 'node:path';
import { LOG_VERSION, MIGRATIONS, type Migration, migrate } from '../../core/log/migrations.ts';
import { formatMark } from './check-format.ts';
import type { FileSystem } from './file-system.ts';
import { type Damage, readEvents } from './journal.ts';
import { writeLine } from './journal-line.ts';
import { listSegments, readSegments, segmentName } from './journal-segments.ts';
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
  const beside = join(folder, `before-version-${version}`);
  const mark = join(beside, 'format.json');
  if (!(await fs.stat(mark))) {
    const files = await listSegments(fs, folder);
    if (files.length > 0) await fs.makeFolder(beside);
    for (const file of files)
      await writeWholeFile(fs, join(beside, file), await fs.readFile(join(folder, file)));
    // The mark comes last: where it is, the copy is whole.
    if (files.length > 0) await writeWholeFile(fs, mark, await fs.readFile(join(folder, 'format.json')));
    await fs.syncFolder(folder);
  }
  const { events, damage } = readEvents(await readSegments(fs, beside));
  const changed = migrate(events, from, migrations, version);
  if (await fs.stat(mark)) {
    await writeWholeFile(
      fs,
      join(folder, segmentName(1)),
      Buffer.from(changed.map(writeLine).join(''), 'utf8'),
    );
    for (const file of await listSegments(fs, folder))
      if (file !== segmentName(1)) await fs.remove(join(folder, file));
    await fs.syncFolder(folder);
  }
  await writeWholeFile(fs, join(folder, 'format.json'), formatMark(version));
  return damage;
}
