import { createHash } from 'node:crypto';
import { mkdir, open, rm } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import type { Readable } from 'node:stream';
import yauzl from 'yauzl';
import { fold } from '../../../core/log/evolve.ts';
import { LOG_VERSION, migrate } from '../../../core/log/migrations.ts';
import { LogEvent, type NumberedEvent } from '../../../shared/event.ts';
import type { Quilt } from '../../../shared/quilt.ts';
import { ARCHIVE_VERSION, type ArchivedFile, ArchiveManifest } from '../../../shared/quilt-export.ts';
import { formatMark } from '../../store/check-format.ts';
import { readLine, writeLine } from '../../store/journal-line.ts';
import { ARCHIVED_MEDIA } from './archived-media.ts';

/** An archive that is not taken; `message` says what was expected, what was found, and that nothing was changed. */
export class ArchiveRefused extends Error {
  readonly statusCode = 422;
}

const MOST_FILES = 50_000;
const MOST_BYTES = 40_000_000_000;
const MOST_MANIFEST_BYTES = 20_000_000;
const MOST_JOURNAL_BYTES = 1_000_000_000;
/** Text packs to a tenth or so; what packs to less than a two-hundredth was made to burst. */
const MOST_RATIO = 200;
const RATIO_COUNTS_FROM = 1_000_000;
const SAFE_PATH = /^[A-Za-z0-9_-][A-Za-z0-9_.-]{0,99}(?:\/[A-Za-z0-9_-][A-Za-z0-9_.-]{0,149}){0,3}$/;

export type ImportedArchive = {
  quilt: Quilt;
  events: NumberedEvent[];
  /** Files taken, journal and media; papers and tables are checked and left out, for they are made anew. */
  files: ArchivedFile[];
};

const refuse = (why: string): ArchiveRefused => new ArchiveRefused(`${why} Nothing was taken from it.`);

/**
 * Reads an archive written by `writeArchive` into `folder`, which must not exist yet: `journal.jsonl`,
 * `format.json`, `audio` and `photos`, each fsynced. Every file's size and SHA-256 is checked against the
 * manifest and every event against its checksum and schema first or on the way; on any trouble the folder
 * is removed and `ArchiveRefused` thrown. With `newId` the quilt gets another id, to stand beside the one
 * that is here already.
 */
export async function importArchive(path: string, folder: string, newId?: string): Promise<ImportedArchive> {
  await mkdir(dirname(folder), { recursive: true });
  await mkdir(folder, { mode: 0o700 });
  let zip: yauzl.ZipFile | undefined;
  try {
    zip = await openZip(path);
    return await take(zip, folder, newId);
  } catch (error) {
    await rm(folder, { recursive: true, force: true });
    throw error instanceof ArchiveRefused || isDiskTrouble(error)
      ? error
      : refuse(`The archive could not be read: ${error instanceof Error ? error.message : String(error)}.`);
  } finally {
    zip?.close();
  }
}

const isDiskTrouble = (error: unknown): boolean =>
  ['ENOSPC', 'EDQUOT', 'EIO', 'EACCES', 'EROFS'].includes((error as NodeJS.ErrnoException).code ?? '');

function openZip(path: string): Promise<yauzl.ZipFile> {
  return new Promise((resolve, reject) => {
    yauzl.open(
      path,
      {
        lazyEntries: true,
        autoClose: false,
        validateEntrySizes: true,
        strictFileNames: true,
        decodeStrings: true,
      },
      (error, zip) => {
        if (error)
          reject(
            refuse(
              `This is no whole zip file (${error.message}); it may be cut short or another kind of file.`,
            ),
          );
        else resolve(zip);
      },
    );
  });
}

async function take(zip: yauzl.ZipFile, folder: string, newId: string | undefined): Promise<ImportedArchive> {
  const entries = await listEntries(zip);
  const manifest = await readManifest(zip, entries);
  matchManifest(entries, manifest);

  let journal: Buffer | undefined;
  const taken: ArchivedFile[] = [];
  for (const file of manifest.files) {
    const entry = entries.get(file.path)!;
    if (file.path === 'journal.jsonl') {
      if (file.bytes > MOST_JOURNAL_BYTES) throw refuse('The journal in the archive is larger than 1 GB.');
      journal = await readWhole(zip, entry, file);
      taken.push(file);
    } else if (ARCHIVED_MEDIA.test(file.path)) {
      await extract(zip, entry, file, join(folder, file.path));
      taken.push(file);
    } else await checkOnly(zip, entry, file);
  }
  if (!journal) throw refuse('The archive has no journal.jsonl, so there is no log in it.');
  const events = readJournal(journal, manifest);
  const first = events[0]!;
  if (newId !== undefined && first.event.type === 'quilt-made') {
    events[0] = { ...first, event: { ...first.event, quilt: { ...first.event.quilt, id: newId } } };
  }
  const log = fold(events);
  await writeSynced(join(folder, 'journal.jsonl'), Buffer.from(events.map(writeLine).join('')));
  await writeSynced(join(folder, 'format.json'), formatMark(LOG_VERSION));
  return { quilt: log.quilt, events, files: taken };
}

async function listEntries(zip: yauzl.ZipFile): Promise<Map<string, yauzl.Entry>> {
  if (zip.entryCount > MOST_FILES)
    throw refuse(`The archive names ${zip.entryCount} files; at most ${MOST_FILES} are taken.`);
  const entries = new Map<string, yauzl.Entry>();
  let total = 0;
  await new Promise<void>((resolve, reject) => {
    zip.on('error', reject);
    zip.on('end', () => resolve());
    zip.on('entry', (entry: yauzl.Entry) => {
      try {
        total += checkEntry(entry, entries);
        if (total > MOST_BYTES) throw refuse('The archive would unpack to more than 40 GB.');
        entries.set(entry.fileName, entry);
        zip.readEntry();
      } catch (error) {
        reject(error);
      }
    });
    zip.readEntry();
  });
  return entries;
}

function checkEntry(entry: yauzl.Entry, before: ReadonlyMap<string, yauzl.Entry>): number {
  const { fileName: name, compressedSize, uncompressedSize } = entry;
  const shown = name.slice(0, 80);
  if (!SAFE_PATH.test(name) || name.split('/').includes('..')) {
    throw refuse(
      `The archive holds a file named “${shown}”, which is no name that an archive of this program has.`,
    );
  }
  if (before.has(name)) throw refuse(`The archive holds “${shown}” twice.`);
  if (entry.isEncrypted()) throw refuse(`“${shown}” is encrypted.`);
  if (entry.compressionMethod !== 0 && entry.compressionMethod !== 8)
    throw refuse(`“${shown}” is packed in a way that is not read here.`);
  const mode = (entry.externalFileAttributes >>> 16) & 0o170000;
  if (mode !== 0 && mode !== 0o100000) throw refuse(`“${shown}” is no plain file but a link or a folder.`);
  if (uncompressedSize > RATIO_COUNTS_FROM && uncompressedSize > compressedSize * MOST_RATIO) {
    throw refuse(
      `“${shown}” would grow from ${compressedSize} to ${uncompressedSize} bytes, as no file of such an archive does.`,
    );
  }
  return uncompressedSize;
}

async function readManifest(
  zip: yauzl.ZipFile,
  entries: ReadonlyMap<string, yauzl.Entry>,
): Promise<ArchiveManifest> {
  const entry = entries.get('manifest.json');
  if (!entry)
    throw refuse(
      'The zip has no manifest.json, so it is no archive of this program, or it was packed again.',
    );
  if (entry.uncompressedSize > MOST_MANIFEST_BYTES) throw refuse('The manifest of the archive is too large.');
  const bytes = await collect(await streamOf(zip, entry));
  let raw: unknown;
  try {
    raw = JSON.parse(bytes.toString('utf8'));
  } catch {
    throw refuse('The manifest of the archive is damaged: it is no JSON.');
  }
  const { format, version, logVersion } = (raw ?? {}) as Record<string, unknown>;
  if (format !== 'quiltside-archive') throw refuse('The manifest says that this is no archive of a quilt.');
  if ((Number(version) || 0) > ARCHIVE_VERSION || (Number(logVersion) || 0) > LOG_VERSION) {
    throw refuse(
      `The archive was written by a newer Quiltside (archive version ${version}, log version ${logVersion}; this one reads up to ${ARCHIVE_VERSION} and ${LOG_VERSION}). Use the newer program.`,
    );
  }
  const parsed = ArchiveManifest.safeParse(raw);
  if (!parsed.success) {
    const issue = parsed.error.issues[0];
    throw refuse(
      `The manifest of the archive is not as expected (${issue?.path.join('.')}: ${issue?.message}).`,
    );
  }
  return parsed.data;
}

function matchManifest(entries: ReadonlyMap<string, yauzl.Entry>, manifest: ArchiveManifest): void {
  const listed = new Set<string>();
  for (const { path, bytes } of manifest.files) {
    if (listed.has(path)) throw refuse(`The manifest lists “${path.slice(0, 80)}” twice.`);
    listed.add(path);
    const entry = entries.get(path);
    if (!entry) throw refuse(`The archive lacks “${path.slice(0, 80)}”, which its manifest lists.`);
    if (entry.uncompressedSize !== bytes) {
      throw refuse(`“${path.slice(0, 80)}” has ${entry.uncompressedSize} bytes; the manifest says ${bytes}.`);
    }
  }
  for (const name of entries.keys()) {
    if (name !== 'manifest.json' && !listed.has(name))
      throw refuse(`The archive holds “${name.slice(0, 80)}”, which its manifest does not list.`);
  }
}

function readJournal(bytes: Buffer, manifest: ArchiveManifest): NumberedEvent[] {
  const lines = bytes.toString('utf8').split('\n');
  if (lines.pop() !== '') throw refuse('The last line of the journal is cut short.');
  const read = lines.map((line, i) => {
    const event = readLine(line);
    if (!event) throw refuse(`Line ${i + 1} of the journal does not match its checksum.`);
    return event;
  });
  const events = migrate(read, manifest.logVersion);
  events.forEach((event, i) => {
    if (event.seq !== i + 1) throw refuse(`Event ${i + 1} of the journal has the number ${event.seq}.`);
    const parsed = LogEvent.safeParse(event.event);
    if (!parsed.success) {
      const issue = parsed.error.issues[0];
      throw refuse(
        `Event ${event.seq} of the journal is not as expected (${issue?.path.join('.')}: ${issue?.message}).`,
      );
    }
  });
  for (const { seq, event } of events) {
    for (const file of mediaOf(event)) {
      if (!ARCHIVED_MEDIA.test(file))
        throw refuse(
          `Event ${seq} of the journal names a file “${file.slice(0, 80)}”, which is no name this program gives.`,
        );
    }
  }
  const first = events[0]?.event;
  if (first?.type !== 'quilt-made') throw refuse('The journal does not begin with the making of a quilt.');
  if (events.length !== manifest.events)
    throw refuse(`The journal has ${events.length} events; the manifest says ${manifest.events}.`);
  if (first.quilt.id !== manifest.quilt.id || !/^[A-Za-z0-9_-]{1,80}$/.test(first.quilt.id)) {
    throw refuse('The journal is that of another quilt than the manifest names.');
  }
  return events;
}

/** The files that an event names, as they lie in the quilt's folder. */
function mediaOf(event: LogEvent): string[] {
  switch (event.type) {
    case 'photo-added':
    case 'photo-changed': {
      const { file, thumbnail } = event.photo;
      return [`photos/${file}`, ...(thumbnail === undefined ? [] : [`photos/${thumbnail}`])];
    }
    case 'recording-added':
      return [`audio/${event.recording.file}`];
    case 'note-taken':
      return event.note.audio ? [`audio/${event.note.audio.file}`] : [];
    default:
      return [];
  }
}

function streamOf(zip: yauzl.ZipFile, entry: yauzl.Entry): Promise<Readable> {
  return new Promise((resolve, reject) => {
    zip.openReadStream(entry, (error, stream) => (error ? reject(error) : resolve(stream)));
  });
}

async function collect(stream: Readable): Promise<Buffer> {
  const chunks: Buffer[] = [];
  for await (const chunk of stream) chunks.push(chunk as Buffer);
  return Buffer.concat(chunks);
}

const altered = (file: ArchivedFile): ArchiveRefused =>
  refuse(`“${file.path.slice(0, 80)}” is not as it was written: its SHA-256 is not the one in the manifest.`);

async function readWhole(zip: yauzl.ZipFile, entry: yauzl.Entry, file: ArchivedFile): Promise<Buffer> {
  const bytes = await collect(await streamOf(zip, entry));
  if (createHash('sha256').update(bytes).digest('hex') !== file.sha256) throw altered(file);
  return bytes;
}

async function checkOnly(zip: yauzl.ZipFile, entry: yauzl.Entry, file: ArchivedFile): Promise<void> {
  const hash = createHash('sha256');
  for await (const chunk of await streamOf(zip, entry)) hash.update(chunk as Buffer);
  if (hash.digest('hex') !== file.sha256) throw altered(file);
}

async function extract(
  zip: yauzl.ZipFile,
  entry: yauzl.Entry,
  file: ArchivedFile,
  to: string,
): Promise<void> {
  await mkdir(dirname(to), { recursive: true, mode: 0o700 });
  const hash = createHash('sha256');
  const handle = await open(to, 'wx', 0o600);
  try {
    for await (const chunk of await streamOf(zip, entry)) {
      hash.update(chunk as Buffer);
      await handle.write(chunk as Buffer);
    }
    await handle.sync();
  } finally {
    await handle.close();
  }
  if (hash.digest('hex') !== file.sha256) throw altered(file);
}

async function writeSynced(path: string, bytes: Uint8Array): Promise<void> {
  const handle = await open(path, 'wx', 0o600);
  try {
    await handle.writeFile(bytes);
    await handle.sync();
  } finally {
    await handle.close();
  }
}
