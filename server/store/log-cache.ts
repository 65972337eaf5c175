import { createHash } from 'node:crypto';
import { join } from 'node:path';
import { setImmediate } from 'node:timers/promises';
import type { OlderEvents } from '../../core/log/event-trail.ts';
import type { Log } from '../../core/log/log.ts';
import { readSnapshotLines, writeSnapshotLines } from '../../core/log/log-snapshot.ts';
import type { FileSystem } from './file-system.ts';
import { foldFingerprint } from './fold-fingerprint.ts';
import type { JournalPosition } from './journal.ts';
import { hashOf } from './journal-segments.ts';

/** May be deleted at any time: the journal alone is the log. */
const NAME = 'snapshot.jsonl';
const LINE_FEED = 10;

type Head = { fold: string; upTo: JournalPosition };

/** A log as it was at a place in its journal, not yet believed: the journal has to be what it was up to there. */
export type CachedLog = { upTo: JournalPosition; log: (older: OlderEvents) => Log };

/** The snapshot in `folder`; undefined where there is none, or it is damaged, or other code folds the journal now. */
export async function readLogCache(fs: FileSystem, folder: string): Promise<CachedLog | undefined> {
  const path = join(folder, NAME);
  if (!(await fs.stat(path))) return undefined;
  const bytes = Buffer.from(await fs.readFile(path));
  const bodyEnd = bytes.lastIndexOf(LINE_FEED) + 1;
  try {
    const { sha256 } = JSON.parse(bytes.toString('utf8', bodyEnd)) as { sha256: string };
    if (bodyEnd === 0 || sha256 !== hashOf(bytes.subarray(0, bodyEnd))) return undefined;
    const lines = bytes.toString('utf8', 0, bodyEnd - 1).split('\n');
    const { fold, upTo } = JSON.parse(lines[0]!) as Head;
    if (fold !== (await foldFingerprint())) return undefined;
    return { upTo, log: (older) => readSnapshotLines(lines.slice(1), older) };
  } catch {
    return undefined;
  }
}

/**
 * Writes the snapshot of a log that holds exactly the events up to `upTo`. Others are let work between its lines; it is
 * given up, without a word, where the disk refuses it.
 */
export async function writeLogCache(
  fs: FileSystem,
  folder: string,
  log: Log,
  upTo: JournalPosition,
): Promise<void> {
  const path = join(folder, NAME);
  const temporary = `${path}.part`;
  try {
    const head: Head = { fold: await foldFingerprint(), upTo };
    const file = await fs.open(temporary, 'w');
    const hash = createHash('sha256');
    let end = 0;
    const write = async (line: string): Promise<void> => {
      const bytes = Buffer.from(line, 'utf8');
      hash.update(bytes);
      await file.write(bytes, end);
      end += bytes.length;
    };
    try {
      await write(`${JSON.stringify(head)}\n`);
      for (const line of writeSnapshotLines(log)) {
        await write(`${line}\n`);
        await setImmediate();
      }
      await file.write(Buffer.from(JSON.stringify({ sha256: hash.digest('hex') })), end);
      await file.sync();
    } finally {
      await file.close();
    }
    await fs.rename(temporary, path);
  } catch {
    await fs.remove(temporary).catch(() => undefined);
  }
}
