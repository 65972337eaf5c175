import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { Readable, Transform } from 'node:stream';
import { finished } from 'node:stream/promises';
import yazl from 'yazl';
import { LOG_VERSION } from '../../../core/log/migrations.ts';
import type { NumberedEvent } from '../../../shared/event.ts';
import { ARCHIVE_VERSION, type ArchivedFile, type ArchiveManifest } from '../../../shared/quilt-export.ts';
import { writeLine } from '../../store/journal-line.ts';
import { ARCHIVED_MEDIA } from './archived-media.ts';

export type ArchivePart = { path: string; content: () => Promise<string | Buffer | Readable> };

/**
 * Everything of a quilt as one zip: the journal, sound and photographs, the given papers and tables, and a
 * manifest with the SHA-256 of each. It is written as it is read, so its size is no matter of memory.
 * `madeAt` is the date of every file in it: the same quilt gives the same bytes.
 */
export function writeArchive(given: {
  quilt: { id: string; name: string };
  events: readonly NumberedEvent[];
  /** Folder with `audio` and `photos`. */
  folder: string;
  parts: readonly ArchivePart[];
  madeAt: Date;
}): Readable {
  const zip = new yazl.ZipFile();
  const output = zip.outputStream as unknown as Readable;
  fill(zip, given).catch((error: unknown) => {
    output.destroy(error instanceof Error ? error : new Error(String(error)));
  });
  return output;
}

async function fill(zip: yazl.ZipFile, given: Parameters<typeof writeArchive>[0]): Promise<void> {
  const files: ArchivedFile[] = [];
  // Sound and pictures are packed already; packing them again only costs time.
  const add = async (path: string, content: Readable, compress: boolean): Promise<void> => {
    const hash = createHash('sha256');
    let bytes = 0;
    const counted = new Transform({
      transform(chunk: Buffer, _encoding, done) {
        hash.update(chunk);
        bytes += chunk.length;
        done(null, chunk);
      },
    });
    content.on('error', (error) => counted.destroy(error));
    content.pipe(counted);
    zip.addReadStream(counted, path, { mtime: given.madeAt, mode: 0o100644, compress });
    await finished(counted, { readable: true, writable: false });
    files.push({ path, bytes, sha256: hash.digest('hex') });
  };

  for (const part of given.parts) {
    const content = await part.content();
    await add(part.path, content instanceof Readable ? content : Readable.from([Buffer.from(content)]), true);
  }
  await add('journal.jsonl', Readable.from(lines(given.events)), true);
  for (const kind of ['audio', 'photos'] as const) {
    const names = await readdir(join(given.folder, kind)).catch(() => [] as string[]);
    for (const name of names.filter((one) => ARCHIVED_MEDIA.test(`${kind}/${one}`)).sort()) {
      await add(`${kind}/${name}`, createReadStream(join(given.folder, kind, name)), false);
    }
  }
  const manifest: ArchiveManifest = {
    format: 'quiltside-archive',
    version: ARCHIVE_VERSION,
    logVersion: LOG_VERSION,
    quilt: { id: given.quilt.id, name: given.quilt.name },
    events: given.events.length,
    files,
  };
  zip.addBuffer(Buffer.from(`${JSON.stringify(manifest, null, 1)}\n`), 'manifest.json', {
    mtime: given.madeAt,
    mode: 0o100644,
  });
  zip.end();
}

/** In pieces of some hundred lines, so that a long journal is never one string. */
function* lines(events: readonly NumberedEvent[]): Generator<Buffer> {
  for (let i = 0; i < events.length; i += 500) {
    yield Buffer.from(
      events
        .slice(i, i + 500)
        .map(writeLine)
        .join(''),
    );
  }
}
