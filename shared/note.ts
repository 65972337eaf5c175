import { z } from 'zod';
import { Place, ReadEntry } from './entry.ts';
import { ACTS, ASK_SLOTS, QUERIES, TASKS, TOPICS } from './vocabulary.ts';

/** ISO 8601 with offset, to the second or finer. */
export const Instant = z
  .string()
  .regex(
    /^\d{4}-\d\d-\d\dT\d\d:\d\d(:\d\d(\.\d+)?)?(Z|[+-]\d\d:\d\d)$/,
    'a moment is written 2026-03-14T10:30:00-05:00',
  );

/** The piece of a recording that a note was heard from. */
export const NoteAudio = z.object({
  /** Name of the file in the quilt's audio folder. */
  file: z.string(),
  startS: z.number().nonnegative(),
  endS: z.number().nonnegative(),
  /** Mean probability that the recogniser gave its words, 0 to 1. */
  confidence: z.number().min(0).max(1).optional(),
  /** Each word as recognised with its share of confidence. */
  words: z.array(z.object({ text: z.string(), confidence: z.number() })).optional(),
  recordingId: z.string().optional(),
  /**
   * The stretch of live sound that it was said in, and the moment in that at which it ends, to the millisecond: a page that did
   * not hear of its being kept sends it again.
   */
  stretch: z.object({ id: z.string(), endAt: Instant }).optional(),
});
export type NoteAudio = z.infer<typeof NoteAudio>;

export const NOTE_SOURCES = ['typed', 'spoken', 'recording'] as const;

/** One thing said or typed, with its words as said. */
export const Note = z.object({
  id: z.string(),
  at: Instant,
  text: z.string(),
  source: z.enum(NOTE_SOURCES),
  audio: NoteAudio.optional(),
});
export type Note = z.infer<typeof Note>;

export const Ask = z.object({ slot: z.enum(ASK_SLOTS), question: z.string() });
export type Ask = z.infer<typeof Ask>;

/** A word that was read otherwise than it was heard, with its place in the text. */
export const Slip = z.object({
  heard: z.string(),
  read: z.string(),
  from: z.number().int(),
  to: z.number().int(),
  rule: z.string(),
});
export type Slip = z.infer<typeof Slip>;

export const QueryArguments = z.object({
  task: z.enum(TASKS).optional(),
  date: z.string().optional(),
  places: z.array(Place).optional(),
  about: z.enum(TOPICS).optional(),
});

/** How a note was understood. `entries` is empty for undo, query and aside. */
export const Reading = z.object({
  act: z.enum(ACTS),
  entries: z.array(ReadEntry),
  /** `record`: a field of the record that is missing, asked for by the record and not by this note. */
  ask: Ask.extend({ slot: z.enum([...ASK_SLOTS, 'record']) }).nullable(),
  reply: z.string(),
  query: z.enum(QUERIES).optional(),
  arguments: QueryArguments.optional(),
  slips: z.array(Slip).optional(),
  /** The field of the record that this note answers, or `round` where it only steers the record's questions. */
  answers: z.string().max(40).optional(),
});
export type Reading = z.infer<typeof Reading>;

/**
 * What later words stand on: the last places, the last treatment, the running task, the open
 * question. Part of the log, so that a reading can be repeated from any point. The shape is the
 * reader's own business (core/conversation); everyone else carries it unopened.
 */
export const Conversation = z.record(z.string(), z.unknown());
export type Conversation = z.infer<typeof Conversation>;
