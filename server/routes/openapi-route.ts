import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import { NumberedEvent } from '../../shared/event.ts';
import { Reading } from '../../shared/note.ts';
import { QuiltDetails } from '../../shared/quilt.ts';
import { PairedDevice, Pairing, QuiltCard, Settings } from '../../shared/settings.ts';
import { Command, Job } from '../../shared/wire.ts';
import { PairingAttempt } from './device-routes.ts';
import { SoundToDelete } from './retention-routes.ts';

const Trouble = z.object({
  message: z.string().describe('What was expected, what was got, and what to do.'),
  fields: z.record(z.string(), z.string()).optional().describe('Name of a field -> what is wrong with it.'),
});
const Outcome = z.object({
  seq: z.number().int(),
  noteId: z.string().optional(),
  reading: Reading.optional(),
  answer: z.object({ text: z.string(), working: z.array(z.string()) }).optional(),
});
const RecordingForm = z.object({
  file: z.string().meta({ format: 'binary' }),
  startAt: z.string().optional().describe('The moment at which it begins, where the file does not say.'),
});
const PhotoForm = z.object({
  file: z.string().meta({ format: 'binary' }),
  thumbnail: z.string().meta({ format: 'binary' }).optional(),
  stage: z.enum(['before', 'during', 'after']).optional(),
  places: z.string().optional().describe('A JSON list of places.'),
  caption: z.string().optional(),
  takenAt: z.string().optional(),
});

type Operation = { summary: string; body?: z.ZodType; form?: z.ZodType; answer?: z.ZodType; status?: number };

/** Every address of the server with what it takes and gives, from the schemas that check it. */
const OPERATIONS: Record<string, Partial<Record<'get' | 'put' | 'post' | 'delete', Operation>>> = {
  '/api/health': { get: { summary: 'Whether the server is well, and what was found wrong at its start.' } },
  '/api/settings': {
    get: { summary: 'The settings of this machine.', answer: Settings },
    put: { summary: 'Changes some of them.', body: Settings.partial(), answer: Settings },
  },
  '/api/pairing': {
    get: { summary: 'The code that lets a device in; told to the machine itself only.', answer: Pairing },
    post: {
      summary: 'Lets a device in by the code.',
      body: PairingAttempt,
      answer: PairedDevice,
      status: 201,
    },
  },
  '/api/pairing/renew': {
    post: { summary: 'Makes another code; the machine itself only.', answer: Pairing },
  },
  '/api/devices': { get: { summary: 'The devices that were let in.', answer: z.array(PairedDevice) } },
  '/api/devices/{id}': { delete: { summary: 'Sends a device away.', answer: z.array(PairedDevice) } },
  '/api/quilts': {
    get: { summary: 'The quilts, the one worked on last first.', answer: z.array(QuiltCard) },
    post: { summary: 'Makes a quilt.', body: QuiltDetails, status: 201 },
  },
  '/api/quilts/import': {
    post: {
      summary: 'Takes in an archive of a quilt.',
      form: z.object({ file: z.string().meta({ format: 'binary' }) }),
      status: 201,
    },
  },
  '/api/quilts/{id}': {
    get: { summary: 'A quilt, how far its log goes, and what of it was damaged.' },
    delete: {
      summary:
        'Moves a quilt into the trash folder; with ?for=good removes it, with ?for=owner all quilts of its owner, and says what stays in backups until when.',
    },
  },
  '/api/quilts/{id}/events': {
    get: {
      summary: 'The events after `since`.',
      answer: z.object({ seq: z.number().int(), events: z.array(NumberedEvent) }),
    },
  },
  '/api/quilts/{id}/commands': {
    post: { summary: 'One command; answered when it is on the disk.', body: Command, answer: Outcome },
  },
  '/api/quilts/{id}/recordings': {
    post: { summary: 'A recording to be heard, as a job.', form: RecordingForm, answer: Job, status: 202 },
  },
  '/api/quilts/{id}/jobs': { get: { summary: 'The recordings in the queue.', answer: z.array(Job) } },
  '/api/quilts/{id}/jobs/{jobId}/pause': { post: { summary: 'Pauses a recording.', answer: Job } },
  '/api/quilts/{id}/jobs/{jobId}/resume': {
    post: { summary: 'Takes up a paused or failed one.', answer: Job },
  },
  '/api/quilts/{id}/jobs/{jobId}/cancel': { post: { summary: 'Calls a recording off.', answer: Job } },
  '/api/quilts/{id}/audio-to-delete': {
    get: { summary: 'The sound that may go by the setting, because all its words are in the log.' },
    post: { summary: 'Deletes files of that list, named one by one.', body: SoundToDelete },
  },
  '/api/quilts/{id}/photos': { post: { summary: 'Adds a photograph.', form: PhotoForm, status: 201 } },
  '/api/quilts/{id}/photos/{file}': { get: { summary: 'A photograph.' } },
  '/api/quilts/{id}/audio/{file}': { get: { summary: 'Sound, in byte ranges.' } },
  '/api/quilts/{id}/export/{format}': { get: { summary: 'The papers, the tables and the archive.' } },
};

const schemaOf = (schema: z.ZodType, io: 'input' | 'output'): unknown => {
  const { $schema: _, ...rest } = z.toJSONSchema(schema, { io, unrepresentable: 'any' }) as Record<
    string,
    unknown
  >;
  return rest;
};

/** `GET /api/openapi.json`: OpenAPI 3.1. */
export function openapiRoute(app: FastifyInstance): void {
  let made: unknown;
  app.get('/api/openapi.json', async () => {
    made ??= describeAll();
    return made;
  });
}

function describeAll(): unknown {
  const trouble = {
    description: 'Not done.',
    content: { 'application/json': { schema: schemaOf(Trouble, 'output') } },
  };
  const paths = Object.entries(OPERATIONS).map(([path, methods]) => {
    const parameters = [...path.matchAll(/\{(\w+)\}/g)].map(([, name]) => ({
      name,
      in: 'path',
      required: true,
      schema: { type: 'string' },
    }));
    const operations = Object.entries(methods).map(
      ([method, { summary, body, form, answer, status = 200 }]) => {
        const content = body
          ? { 'application/json': { schema: schemaOf(body, 'input') } }
          : form && { 'multipart/form-data': { schema: schemaOf(form, 'input') } };
        const given = answer && { content: { 'application/json': { schema: schemaOf(answer, 'output') } } };
        return [
          method,
          {
            summary,
            ...(content ? { requestBody: { required: true, content } } : {}),
            responses: { [status]: { description: 'Done.', ...given }, default: trouble },
          },
        ];
      },
    );
    return [path, { parameters, ...Object.fromEntries(operations) }];
  });
  return {
    openapi: '3.1.0',
    info: {
      title: 'Quiltside',
      version: '1',
      description:
        'The server of one machine. The live socket at /live speaks the messages of shared/wire.ts.',
    },
    paths: Object.fromEntries(paths),
  };
}
