import { z } from 'zod';
import { Entry, LocalMinute } from './entry.ts';
import { EstimatePlans } from './estimate-plan.ts';
import { STAGES } from './limits.ts';
import { Conversation, Instant, Note, Reading } from './note.ts';
import { Quilt, QuiltDetails } from './quilt.ts';
import { TASKS } from './vocabulary.ts';

export { STAGES };

const id = z.string().min(1).max(80);

/** A reading as it went into the log: each entry has got an id. */
export const LoggedReading = Reading.extend({
  entryIds: z.array(id),
  /** The note whose entries an `amend` replaces or an `undo` takes back. */
  targetNoteId: id.optional(),
  /** Version of the rules that read it. */
  rules: z.string(),
  conversation: Conversation,
});
export type LoggedReading = z.infer<typeof LoggedReading>;

export const Photo = z.object({
  id,
  file: z.string(),
  thumbnail: z.string().optional(),
  places: z.array(z.string()),
  stage: z.enum(STAGES),
  caption: z.string().max(500).default(''),
  takenAt: Instant.optional(),
});
export type Photo = z.infer<typeof Photo>;

export const Recording = z.object({
  id,
  file: z.string(),
  name: z.string(),
  sha256: z.string(),
  startAt: Instant,
  durationS: z.number().nonnegative(),
});
export type Recording = z.infer<typeof Recording>;

/**
 * What happened, in the past tense. The journal of a quilt is a list of these; everything else is
 * computed from it. A correction is a new event; nothing is rewritten.
 */
export const LogEvent = z.discriminatedUnion('type', [
  z.object({ type: z.literal('quilt-made'), quilt: Quilt }),
  /** `noteId`: the note whose words these are, where they were said and not typed into a form. */
  z.object({ type: z.literal('quilt-changed'), changes: QuiltDetails.partial(), noteId: id.optional() }),
  z.object({ type: z.literal('note-taken'), note: Note }),
  z.object({ type: z.literal('note-read'), noteId: id, reading: LoggedReading }),
  /** Better rules or a newly taught word read old notes anew; confirmed entries are left alone. */
  z.object({
    type: z.literal('notes-reread'),
    readings: z.array(z.object({ noteId: id, reading: LoggedReading })),
  }),
  /** An aside that was work after all, or the other way round. */
  z.object({ type: z.literal('note-refiled'), noteId: id, as: z.enum(['aside', 'work']) }),
  z.object({ type: z.literal('entry-added'), entryId: id, noteId: id.optional(), entry: Entry }),
  z.object({ type: z.literal('entry-corrected'), entryId: id, entry: Entry }),
  z.object({ type: z.literal('entry-removed'), entryId: id }),
  z.object({ type: z.literal('entries-confirmed'), entryIds: z.array(id) }),
  z.object({ type: z.literal('day-confirmed'), date: z.string() }),
  /** A stretch of work drawn or changed by hand; `entryId` names the work entry it stands for, if any. */
  z.object({
    type: z.literal('span-set'),
    spanId: id,
    task: z.enum(TASKS).optional(),
    start: LocalMinute,
    end: LocalMinute,
    minutes: z.number().positive().optional(),
    entryIds: z.array(id).optional(),
  }),
  z.object({ type: z.literal('span-removed'), spanId: id }),
  /** `noteId`: the note that told the figure; typed into the page, it has none. */
  z.object({
    type: z.literal('estimate-set'),
    path: z.string(),
    value: z.unknown(),
    noteId: id.optional(),
  }),
  z.object({
    type: z.literal('record-edited'),
    document: z.string(),
    passage: z.string(),
    /** Null takes the edit back. */
    text: z.string().max(20_000).nullable(),
    /** Fingerprint of the facts that the passage was written from when it was edited. */
    facts: z.string(),
  }),
  z.object({ type: z.literal('plans-set'), plans: EstimatePlans }),
  /** The record stands as made: what it tells is all that the owner is to have. */
  z.object({ type: z.literal('record-made') }),
  /** The record asks for one of its missing fields; null: it asks nothing more. */
  z.object({
    type: z.literal('record-asked'),
    field: z.string().max(40).nullable(),
    /** Fields put off in this round of questions. */
    passed: z.array(z.string().max(40)),
    /** The paper that the round is for; all papers where it is left out. */
    document: z.string().max(40).optional(),
  }),
  z.object({
    type: z.literal('agreement-noted'),
    how: z.enum(['signature', 'word']),
    by: z.string().max(200),
    at: Instant,
    note: z.string().max(2000).default(''),
  }),
  z.object({ type: z.literal('photo-added'), photo: Photo }),
  z.object({ type: z.literal('photo-changed'), photo: Photo }),
  z.object({ type: z.literal('photo-removed'), photoId: id }),
  z.object({ type: z.literal('recording-added'), recording: Recording }),
  z.object({ type: z.literal('audio-removed'), files: z.array(z.string()) }),
  z.object({ type: z.literal('word-taught'), heard: z.string(), means: z.string() }),
  /** Takes back one hand-made change (never a note): the state is folded as if `seq` had not been. */
  z.object({ type: z.literal('change-undone'), seq: z.number().int().positive() }),
  /** Stands in for a number whose event a damaged journal has lost; served, never written. */
  z.object({ type: z.literal('event-lost') }),
]);
export type LogEvent = z.infer<typeof LogEvent>;

/** An event with its place in the journal. `at` is the server's instant of writing. */
export const NumberedEvent = z.object({
  seq: z.number().int().positive(),
  at: z.string(),
  event: LogEvent,
});
export type NumberedEvent = z.infer<typeof NumberedEvent>;
