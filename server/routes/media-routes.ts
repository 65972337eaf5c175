import { join } from 'node:path';
import multipart from '@fastify/multipart';
import type { FastifyInstance, FastifyReply } from 'fastify';
import { z } from 'zod';
import { localInstant } from '../../core/log/local-instant.ts';
import { Place } from '../../shared/entry.ts';
import { type Photo, STAGES } from '../../shared/event.ts';
import { isHeic } from '../../shared/is-heic.ts';
import { Instant } from '../../shared/note.ts';
import { reEncodePhotos } from '../photos/re-encode-photos.ts';
import { parseInput } from '../plugins/answer-errors.ts';
import type { RecordingQueue } from '../recordings/recording-queue.ts';
import { sniffAudioKind } from '../speech/sniff-audio-kind.ts';
import type { Library } from '../store/library.ts';
import { newId } from '../store/new-id.ts';
import { Refusal } from '../store/quilt-store.ts';
import { placeUpload, receiveUpload, type Uploaded } from './receive-upload.ts';
import { recordingStartedAt } from './recording-started-at.ts';
import { sniffImageKind } from './sniff-image-kind.ts';

const RECORDING_BYTES = 2_000_000_000;
/** The largest photograph that is taken. */
export const PHOTO_BYTES = 30_000_000;
/** Names that we give; anything else asked for is not there. */
const FILE_NAME = /^[A-Za-z0-9_-]{1,80}(-small)?\.[a-z0-9]{2,4}$/;
const EXTENSIONS = {
  wav: 'wav',
  flac: 'flac',
  mp3: 'mp3',
  'ogg-vorbis': 'ogg',
  'ogg-opus': 'ogg',
  m4a: 'm4a',
  webm: 'webm',
} as const;

const RecordingFields = z.object({ startAt: Instant.optional() });
export const PhotoFields = z.object({
  stage: z.enum(STAGES).default('during'),
  places: z
    .string()
    .default('[]')
    .transform((text, context) => {
      try {
        return JSON.parse(text) as unknown;
      } catch {
        context.addIssue({ code: 'custom', message: 'a JSON list of places, such as ["3-2"]' });
        return z.NEVER;
      }
    })
    .pipe(z.array(Place).max(3600)),
  caption: z.string().max(500).default(''),
  takenAt: Instant.optional(),
});

type WithId = { Params: { id: string } };
type WithJob = { Params: { id: string; jobId: string } };
type WithFile = { Params: { id: string; file: string } };

/** Recordings and their queue, photographs, and the sound of notes. */
export async function mediaRoutes(
  app: FastifyInstance,
  library: Library,
  ears: RecordingQueue | undefined,
): Promise<void> {
  await app.register(multipart);

  const theQueue = (): RecordingQueue => {
    if (ears) return ears;
    throw new Refusal(
      'There is no recogniser here, so recordings can not be heard. Typed notes are taken as ever.',
      409,
    );
  };

  app.post<WithId>('/api/quilts/:id/recordings', async (request, reply) => {
    const queue = theQueue();
    const store = await library.quilt(request.params.id);
    const upload = await receiveUpload(request, store.fs, join(store.folder, 'incoming'), RECORDING_BYTES);
    const file = theFile(upload.files);
    try {
      const { startAt } = parseInput(RecordingFields, Object.fromEntries(upload.fields));
      if (file.bytes === 0)
        throw new Refusal(`${file.name} is empty. Record or export it again.`, 422, 'file');
      const kind = sniffAudioKind(file.head);
      if (!kind) {
        throw new Refusal(
          `${file.name} is no recording that can be read here. Expected WAV, FLAC, MP3, Ogg (Vorbis or Opus), M4A or WebM.`,
          415,
          'file',
        );
      }
      const twin = await queue.findTwin(store, file.sha256);
      if (twin !== undefined) {
        throw new Refusal(
          `This is the same recording as “${twin}”, which is here already. It was not taken twice.`,
          409,
          'file',
        );
      }
      const offset = localInstant(new Date().toISOString(), store.log.quilt.zone).slice(19);
      const at = startAt ?? (await recordingStartedAt(file.path, offset));
      if (at === undefined) {
        throw new Refusal(
          `${file.name} does not say when it was recorded. Give the moment at which it begins, so that its notes get their true times.`,
          422,
          'startAt',
        );
      }
      const name = `${newId()}.${EXTENSIONS[kind]}`;
      await placeUpload(store.fs, file, join(store.folder, 'audio', name));
      const startLocal = localInstant(at, store.log.quilt.zone);
      const job = await queue.add(store, {
        file: name,
        name: file.name,
        sha256: file.sha256,
        startAt: startLocal,
      });
      return await reply.code(202).send(job);
    } finally {
      await discard(store.fs, upload.files);
    }
  });

  app.get<WithId>('/api/quilts/:id/jobs', async ({ params }) => {
    const store = await library.quilt(params.id);
    return ears ? ears.list(store) : [];
  });
  app.post<WithJob>('/api/quilts/:id/jobs/:jobId/pause', async ({ params }) =>
    theQueue().pause(await library.quilt(params.id), params.jobId),
  );
  app.post<WithJob>('/api/quilts/:id/jobs/:jobId/resume', async ({ params }) =>
    theQueue().carryOn(await library.quilt(params.id), params.jobId),
  );
  app.post<WithJob>('/api/quilts/:id/jobs/:jobId/cancel', async ({ params }) =>
    theQueue().cancel(await library.quilt(params.id), params.jobId),
  );

  app.post<WithId>('/api/quilts/:id/photos', async (request, reply) => {
    const store = await library.quilt(request.params.id);
    const upload = await receiveUpload(request, store.fs, join(store.folder, 'incoming'), PHOTO_BYTES);
    try {
      const fields = parseInput(PhotoFields, Object.fromEntries(upload.fields));
      const file = theFile(upload.files);
      const kind = imageKind(file);
      const small = upload.files.get('thumbnail');
      const smallKind = small && imageKind(small);
      const id = newId();
      const photo: Photo = { id, file: `${id}.${kind}`, ...fields };
      if (smallKind) photo.thumbnail = `${id}-small.${smallKind}`;
      const pictures = [{ name: photo.file, kind, from: file.path }];
      if (small && smallKind) pictures.push({ name: photo.thumbnail!, kind: smallKind, from: small.path });
      const anew = pictures.map((one) => ({ ...one, to: join(store.folder, 'incoming', one.name) }));
      await reEncodePhotos(store.fs, anew, file.name);
      for (const { name, to } of anew)
        await placeUpload(store.fs, { path: to }, join(store.folder, 'photos', name));
      await store.commit(() => ({ events: [{ type: 'photo-added', photo }] }));
      return await reply.code(201).send(photo);
    } finally {
      await discard(store.fs, upload.files);
    }
  });

  app.get<WithFile>('/api/quilts/:id/audio/:file', async ({ params }, reply) =>
    sendKept(reply, join((await library.quilt(params.id)).folder, 'audio'), params.file, 'sound'),
  );
  app.get<WithFile>('/api/quilts/:id/photos/:file', async ({ params }, reply) =>
    sendKept(reply, join((await library.quilt(params.id)).folder, 'photos'), params.file, 'photograph'),
  );
}

/** Byte ranges and validators are the static plugin's. */
function sendKept(reply: FastifyReply, folder: string, file: string, what: string): FastifyReply {
  if (!FILE_NAME.test(file)) throw new Refusal(`There is no ${what} of that name.`, 404);
  return reply.sendFile(file, folder, { maxAge: '1y', immutable: true, dotfiles: 'deny' });
}

function theFile(files: Map<string, Uploaded>): Uploaded {
  const file = files.get('file');
  if (!file) throw new Refusal('The form has no file in the field "file".', 422, 'file');
  return file;
}

function imageKind(file: Uploaded): NonNullable<ReturnType<typeof sniffImageKind>> {
  const kind = sniffImageKind(file.head);
  if (!kind && isHeic(file.head)) {
    throw new Refusal(
      `${file.name} is a HEIC photograph, which few browsers can show. Save it as JPEG, or set the camera to JPEG, and send that.`,
      415,
      'file',
    );
  }
  if (!kind) {
    throw new Refusal(
      `${file.name} is no photograph that can be shown here. Expected JPEG, PNG or WebP; export it as one of these.`,
      415,
      'file',
    );
  }
  return kind;
}

/** What was not given a lasting name goes. */
async function discard(fs: Library['fs'], files: Map<string, Uploaded>): Promise<void> {
  for (const { path } of files.values()) await fs.remove(path).catch(() => undefined);
}
