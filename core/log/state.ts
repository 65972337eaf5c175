import type { z } from 'zod';
import type { Entry, LocalMinute, Origin } from '../../shared/entry.ts';
import type { EstimatePlan } from '../../shared/estimate-plan.ts';
import type { Photo, Recording } from '../../shared/event.ts';
import type { Conversation, Note, Reading } from '../../shared/note.ts';
import type { Quilt } from '../../shared/quilt.ts';
import type { Task } from '../../shared/vocabulary.ts';

/** An entry that stands in the log now. */
export type LoggedEntry = {
  id: string;
  /** The note it came from; absent where it was put in by hand without one. */
  noteId?: string;
  /** When it was said (its note's `at`), or, for one put in without a note, when it was put in. */
  at: string;
  entry: Entry;
  /** Slot name -> the rule and the words it stands on. Empty for entries made by hand. */
  origins: Record<string, Origin>;
  reason?: string;
  confirmed: boolean;
  byHand: boolean;
};

/** A note with how it was read; notes never leave the log, even when they are taken back. */
export type LoggedNote = {
  note: Note;
  /** Absent between taking and reading, and for notes that could not be read. */
  reading?: Reading;
  /** Ids of the entries that it gave and that still stand. */
  entryIds: string[];
  /** Set when a later note took this one back or replaced it. */
  replacedBy?: string;
  /** The earlier note that this one took back or replaced. */
  replaces?: string;
  refiledAs?: 'aside' | 'work';
  /** Place of the note in the journal. */
  seq?: number;
  /** Something of it was confirmed, corrected, added, removed or refiled by hand: no re-reading touches it. */
  touched?: true;
  /** What it had logged before a later note, or a refiling, took that back. */
  setAside?: LoggedEntry[];
};

export type RecordAsking = { field: string; passed: readonly string[]; document?: string; at: string };

/** A stretch of work set by hand. */
export type HandSpan = {
  spanId: string;
  task?: Task;
  start: z.infer<typeof LocalMinute>;
  end: z.infer<typeof LocalMinute>;
  minutes?: number;
  entryIds: string[];
};

/**
 * The log of one quilt, folded from its events: equal journals give equal states. `notes` and
 * `entries` are in the order of the moments they were said (a recording dropped in later takes its
 * true place), then of the journal. Read it, never write to it. The lists of a folded log are made
 * on first use and kept: read them off the state, don't spread it.
 */
export type QuiltState = {
  seq: number;
  quilt: Quilt;
  notes: LoggedNote[];
  entries: LoggedEntry[];
  /** What the next note's words stand on. */
  conversation: Conversation;
  confirmedDays: string[];
  /** The same with the place in the journal at which each day was last confirmed. */
  dayConfirmations?: readonly { date: string; seq: number }[];
  handSpans: HandSpan[];
  /** Ids of computed stretches of work that were taken out by hand (see core/hours). */
  removedSpans?: string[];
  /** User's own figures for the estimate: JSON path ("backing.overage") -> value. */
  estimateSettings: Record<string, unknown>;
  /** The same path -> the note that told the figure. Typed into the page, it has none. */
  settingNotes?: Record<string, { noteId: string; seq: number }>;
  /** document -> passage -> edit */
  recordEdits: Record<string, Record<string, { text: string; facts: string }>>;
  /** What the record asks now, `at` the instant since when; undefined where it asks nothing. */
  recordAsking?: RecordAsking | undefined;
  /** Detail of the quilt -> the note that told it. Typed into a form, it has none. */
  detailNotes?: Record<string, { noteId: string; seq: number }>;
  /** Ways of doing the work set side by side, once they were touched. */
  plans?: readonly EstimatePlan[] | undefined;
  /** Where in the journal the record was last said to be made. */
  recordMade?: { seq: number } | undefined;
  agreements: { how: 'signature' | 'word'; by: string; at: string; note: string; seq: number }[];
  photos: Photo[];
  recordings: Recording[];
  removedAudio: string[];
};
