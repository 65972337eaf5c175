import { join } from 'node:path';
import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import { DOCUMENT_KINDS } from '../../core/record/document-model.ts';
import { writePhotosAnew } from '../photos/write-photos-anew.ts';
import { parseInput } from '../plugins/answer-errors.ts';
import type { Library } from '../store/library.ts';
import { newId } from '../store/new-id.ts';
import { Refusal } from '../store/quilt-store.ts';
import { PHOTO_BYTES } from './media-routes.ts';
import { receiveUpload } from './receive-upload.ts';

const ARCHIVE_BYTES = 40_000_000_000;

export const ExportChoices = z.object({
  document: z.enum(DOCUMENT_KINDS).optional(),
  recording: z.string().max(80).optional(),
  moment: z.enum(['found', 'proposed', 'now']).optional(),
});
const ImportChoices = z.object({ as: z.enum(['itself', 'copy']).default('itself') });
type WithFormat = { Params: { id: string; format: string } };

/** The setting of PDF takes seconds to load, so it is loaded when a paper is first asked for, not at the start. */
const loadExport = () => import('../export/export-quilt.ts');

/** A quilt taken away in one of the formats, and an archive brought in. */
export function exportRoutes(app: FastifyInstance, library: Library): void {
  app.get<WithFormat>('/api/quilts/:id/export/:format', async (request, reply) => {
    const { EXPORT_FORMATS, exportQuilt } = await loadExport();
    const format = EXPORT_FORMATS.find((one) => one === request.params.format);
    if (!format) {
      throw new Refusal(
        `“${request.params.format.slice(0, 40)}” is no format that a quilt is written in. Expected one of ${EXPORT_FORMATS.join(', ')}.`,
        404,
      );
    }
    const { document, recording, moment } = parseInput(ExportChoices, request.query);
    const { log, folder } = await library.quilt(request.params.id);
    if (format === 'vtt' && !log.recordings.some((one) => one.id === recording)) {
      throw new Refusal(
        'Say which recording with ?recording= and its id; the list is in the quilt’s log.',
        404,
      );
    }
    const out = await exportQuilt(
      format,
      { state: log, events: log.eventsSince(0), folder, idleMin: library.settings.data.idleMin },
      {
        ...(document ? { document } : {}),
        ...(recording ? { recordingId: recording } : {}),
        ...(moment ? { moment } : {}),
      },
    );
    const way = format === 'vtt' ? 'inline' : 'attachment';
    return reply
      .header('content-type', out.contentType)
      .header('content-disposition', `${way}; filename="${out.fileName}"`)
      .header('cache-control', 'no-store')
      .send(out.body);
  });

  app.post('/api/quilts/import', async (request, reply) => {
    const { importArchive } = await import('../export/archive/import-archive.ts');
    const incoming = join(library.folder, 'incoming');
    const upload = await receiveUpload(request, library.fs, incoming, ARCHIVE_BYTES);
    const unpacked = join(incoming, newId());
    try {
      const file = upload.files.get('file');
      if (!file) throw new Refusal('The form has no file in the field "file".', 422, 'file');
      const { as } = parseInput(ImportChoices, Object.fromEntries(upload.fields));
      const taken = await importArchive(file.path, unpacked, as === 'copy' ? newId() : undefined);
      const { id, name } = taken.quilt;
      await library.index();
      if (library.has(id)) {
        throw new Refusal(
          `“${name}” is here already, so the archive was not taken. Bring it in as a copy, or move the one that is here to the trash first.`,
          409,
          'file',
        );
      }
      const leftOut = await writePhotosAnew(library.fs, unpacked, PHOTO_BYTES);
      const store = await library.adoptQuilt(id, unpacked);
      return await reply.code(201).send({
        id: store.id,
        quilt: store.log.quilt,
        seq: store.log.seq,
        files: taken.files.length,
        leftOut,
      });
    } finally {
      await library.fs.removeFolder(unpacked).catch(() => undefined);
      for (const { path } of upload.files.values()) await library.fs.remove(path).catch(() => undefined);
    }
  });
}
