import { z } from 'zod';
import { Entry, LocalMinute } from './entry.ts';
import { EstimatePlans } from './estimate-plan.ts';
import { NumberedEvent, STAGES } from './event.ts';
import { Instant, Reading } from './note.ts';
import { LIMITS, QuiltDetails } from './quilt.ts';
import { TASKS } from './vocabulary.ts';

const id = z.string().min(1).max(80);

/**
 * What a page may ask for: one command goes up, one numbered event stream comes down. The same
 * commands are taken by `POST /api/quilts/:id/commands` and by the live socket.
 */
export const Command = z.discriminatedUnion('type', [
  /** `clientId` makes the command safe to send twice: the second time answers as the first did. */
  z.object({
    type: z.literal('take-note'),
    clientId: id,
    text: z.string().min(1).max(LIMITS.noteChars),
    at: Instant.optional(),
  }),
  z.object({ type: z.literal('change-quilt'), changes: QuiltDetails.partial() }),
  /** `was`: what the entry said when it was opened to be put right; it is refused where it says something else by now. */
  z.object({ type: z.literal('correct-entry'), entryId: id, entry: Entry, was: Entry.optional() }),
  z.object({ type: z.literal('add-entry'), entry: Entry, noteId: id.optional() }),
  z.object({ type: z.literal('remove-entry'), entryId: id }),
  z.object({ type: z.literal('confirm-entries'), entryIds: z.array(id).min(1).max(20_000) }),
  z.object({ type: z.literal('confirm-day'), date: z.iso.date() }),
  z.object({ type: z.literal('refile-note'), noteId: id, as: z.enum(['aside', 'work']) }),
  z.object({
    type: z.literal('set-span'),
    spanId: id.optional(),
    task: z.enum(TASKS).optional(),
    start: LocalMinute,
    end: LocalMinute,
    minutes: z.number().positive().optional(),
    entryIds: z.array(id).optional(),
  }),
  z.object({ type: z.literal('remove-span'), spanId: id }),
  z.object({ type: z.literal('set-estimate'), path: z.string().max(200), value: z.unknown() }),
  z.object({
    type: z.literal('edit-record'),
    document: z.string().max(40),
    passage: z.string().max(200),
    text: z.string().max(20_000).nullable(),
    facts: z.string().max(200),
  }),
  /** Begins the record's round of questions, at one field or at the first that is missing; null ends it. */
  z.object({
    type: z.literal('ask-record'),
    field: z.string().max(40).nullable().optional(),
    document: z.string().max(40).optional(),
  }),
  /** The ways of doing the work that are set side by side. */
  z.object({ type: z.literal('set-plans'), plans: EstimatePlans }),
  /** The work is finished and the record made: from now on sound from before may go, where the setting says so. */
  z.object({ type: z.literal('make-record') }),
  z.object({
    type: z.literal('note-agreement'),
    how: z.enum(['signature', 'word']),
    by: z.string().min(1).max(200),
    at: Instant,
    note: z.string().max(2000).default(''),
  }),
  z.object({
    type: z.literal('change-photo'),
    photoId: id,
    places: z.array(z.string()).optional(),
    stage: z.enum(STAGES).optional(),
    caption: z.string().max(500).optional(),
  }),
  z.object({ type: z.literal('remove-photo'), photoId: id }),
  z.object({
    type: z.literal('teach-word'),
    heard: z.string().min(1).max(60),
    means: z.string().min(1).max(60),
  }),
  /** Reads the unconfirmed notes again with the rules of today. */
  z.object({ type: z.literal('reread-notes'), noteIds: z.array(id).optional() }),
  z.object({ type: z.literal('undo-change'), seq: z.number().int().positive() }),
]);
export type Command = z.infer<typeof Command>;

export const LISTENING_WAYS = ['always', 'held', 'on-call'] as const;

/** A time for which she has said not to be listened to; `until` null: until she calls. */
export const ListeningPause = z.object({ from: Instant, until: Instant.nullable() });
export type ListeningPause = z.infer<typeof ListeningPause>;

/** Messages from the page over the live socket. Binary frames are 16 kHz mono PCM, Int16 little-endian. */
export const ClientMessage = z.discriminatedUnion('type', [
  z.object({ type: z.literal('hello'), quiltId: id, sinceSeq: z.number().int().nonnegative() }),
  z.object({ type: z.literal('command'), ref: id, command: Command }),
  /** Begins a stream of binary frames; `at` is the instant of its first sample. */
  z.object({
    type: z.literal('microphone-on'),
    streamId: id,
    at: Instant,
    way: z.enum(LISTENING_WAYS).default('always'),
    sampleRate: z.literal(16_000),
    /** A pause that was ordered on an earlier stream and may still run: a dropped socket ends none. */
    pause: ListeningPause.optional(),
    /** On call: she had called when this sound was said, on an earlier stream. */
    awake: z.boolean().optional(),
    /** The stretch of sound that this stream is of: the same on each socket on which it is sent on, so that none of it is heard twice. */
    stretchId: id.optional(),
  }),
  /** `lastSample`: total samples sent, so that the server can tell whether it has them all. */
  z.object({ type: z.literal('microphone-off'), streamId: id }),
  /** In the held way: the utterance ends now, without waiting for a pause. */
  z.object({ type: z.literal('utterance-end'), streamId: id }),
  /** The tool is speaking (true) or has finished (false): what is heard meanwhile is its own voice. */
  z.object({ type: z.literal('speaking'), on: z.boolean() }),
  z.object({ type: z.literal('cancel-job'), jobId: id }),
  z.object({ type: z.literal('ping') }),
]);
export type ClientMessage = z.infer<typeof ClientMessage>;

export const RecogniserStatus = z.object({
  state: z.enum(['absent', 'loading', 'ready', 'failed']),
  message: z.string(),
});
export type RecogniserStatus = z.infer<typeof RecogniserStatus>;

export const Job = z.object({
  id,
  quiltId: id,
  name: z.string(),
  state: z.enum(['waiting', 'working', 'paused', 'done', 'cancelled', 'failed']),
  doneS: z.number(),
  totalS: z.number().nullable(),
  notes: z.number().int(),
  message: z.string(),
});
export type Job = z.infer<typeof Job>;

/** Messages to the page. */
export const ServerMessage = z.discriminatedUnion('type', [
  z.object({ type: z.literal('welcome'), seq: z.number().int(), recogniser: RecogniserStatus }),
  /** In order of `seq`, without gaps; after `hello` all events past `sinceSeq`. */
  z.object({ type: z.literal('events'), events: z.array(NumberedEvent) }),
  /** The command is on disk. `reading` for notes. */
  z.object({
    type: z.literal('done'),
    ref: id,
    seq: z.number().int(),
    /** All was so already: there is nothing to take back. */
    unchanged: z.literal(true).optional(),
    noteId: id.optional(),
    reading: Reading.optional(),
    /** The answer to a question put to the log. */
    answer: z.object({ text: z.string(), working: z.array(z.string()) }).optional(),
  }),
  z.object({
    type: z.literal('refused'),
    ref: id.optional(),
    message: z.string(),
    /** The part of the command that cannot be taken, as a path, where it is one part. */
    field: z.string().optional(),
  }),
  z.object({ type: z.literal('recogniser'), status: RecogniserStatus }),
  /**
   * `samples`: how many of the stream's samples the server has taken in, so that a page whose socket
   * dropped sends again exactly what was not yet there (as a new stream that starts at that moment).
   */
  z.object({
    type: z.literal('level'),
    streamId: id,
    level: z.number(),
    speech: z.boolean(),
    samples: z.number().int().nonnegative().optional(),
    /** False while, on call, the phrase that begins the taking of notes has not been said. */
    awake: z.boolean().optional(),
  }),
  z.object({ type: z.literal('partial'), streamId: id, text: z.string() }),
  /** She said not to be listened to for a while, or (null) to be heard again, or the while is over. */
  z.object({ type: z.literal('pause'), streamId: id, pause: ListeningPause.nullable() }),
  /** She said to be listened to in another way; the settings have it already. */
  z.object({ type: z.literal('way'), streamId: id, way: z.enum(LISTENING_WAYS) }),
  z.object({
    type: z.literal('heard'),
    streamId: id,
    noteId: id.optional(),
    text: z.string(),
    confidence: z.number(),
    reading: Reading.optional(),
    answer: z.object({ text: z.string(), working: z.array(z.string()) }).optional(),
    /** Milliseconds from the end of speech: silence waited for, and all the rest. */
    waitedMs: z.number().optional(),
    workedMs: z.number().optional(),
  }),
  z.object({ type: z.literal('job'), job: Job }),
  z.object({ type: z.literal('pong') }),
]);
export type ServerMessage = z.infer<typeof ServerMessage>;
