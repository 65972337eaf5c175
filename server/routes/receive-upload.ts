import { createHash } from 'node:crypto';
import { once } from 'node:events';
import { createWriteStream } from 'node:fs';
import { open } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import type { FastifyRequest } from 'fastify';
import { DiskTrouble } from '../store/disk-trouble.ts';
import type { FileSystem } from '../store/file-system.ts';
import { newId } from '../store/new-id.ts';
import { Refusal } from '../store/quilt-store.ts';

/** A file of a form, on the disk under a name of our own: its own name is only ever shown. */
export type Uploaded = { path: string; name: string; bytes: number; sha256: string; head: Uint8Array };
export type Upload = { files: Map<string, Uploaded>; fields: Map<string, string> };

const HEAD_BYTES = 64 * 1024;

/**
 * Streams the files of a multipart form to `folder`, each fsynced under a temporary name, and collects
 * its fields. `limitBytes` holds for each file. On any trouble what was written is removed again.
 */
export async function receiveUpload(
  request: FastifyRequest,
  fs: FileSystem,
  folder: string,
  limitBytes: number,
): Promise<Upload> {
  if (!request.isMultipart()) {
    throw new Refusal(
      'A file is sent as a form (multipart/form-data) with the file in the field "file".',
      415,
    );
  }
  const files = new Map<string, Uploaded>();
  const fields = new Map<string, string>();
  const written: string[] = [];
  try {
    await fs.makeFolder(folder);
    const parts = request.parts({
      limits: { fileSize: limitBytes, files: 2, fields: 10, fieldSize: 10_000 },
    });
    for await (const part of parts) {
      if (part.type === 'field') {
        fields.set(part.fieldname, String(part.value));
        continue;
      }
      const path = join(folder, `${newId()}.part`);
      written.push(path);
      const hash = createHash('sha256');
      const head: Buffer[] = [];
      let bytes = 0;
      const out = createWriteStream(path, { flags: 'wx', mode: 0o600 });
      const failed = once(out, 'error').then(([error]) => Promise.reject(error));
      failed.catch(() => undefined);
      for await (const chunk of part.file as AsyncIterable<Buffer>) {
        if (bytes < HEAD_BYTES) head.push(chunk);
        bytes += chunk.length;
        hash.update(chunk);
        if (!out.write(chunk)) await Promise.race([once(out, 'drain'), failed]);
      }
      await Promise.race([new Promise<void>((done) => out.end(done)), failed]);
      if (part.file.truncated) {
        throw new Refusal(
          `The file is larger than ${Math.round(limitBytes / 1_000_000)} MB, the most that is taken here. Cut it in parts and send those.`,
          413,
          'file',
        );
      }
      const handle = await open(path, 'r+');
      await handle.sync();
      await handle.close();
      const name = (part.filename || 'without a name').replace(/[\p{Cc}\p{Cf}]/gu, '').slice(-200);
      files.set(part.fieldname, {
        path,
        name,
        bytes,
        sha256: hash.digest('hex'),
        head: Buffer.concat(head).subarray(0, HEAD_BYTES),
      });
    }
    await fs.syncFolder(folder);
    return { files, fields };
  } catch (error) {
    for (const path of written) await fs.remove(path).catch(() => undefined);
    const code = (error as NodeJS.ErrnoException).code ?? '';
    if (/^E[A-Z]+$/.test(code)) throw new DiskTrouble('The file could not be kept.', error);
    throw error;
  }
}

/** Gives an uploaded file its lasting name. */
export async function placeUpload(
  fs: FileSystem,
  upload: Pick<Uploaded, 'path'>,
  path: string,
): Promise<void> {
  await fs.makeFolder(dirname(path));
  await fs.rename(upload.path, path);
  await fs.syncFolder(dirname(path));
}
