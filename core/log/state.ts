import type { z } from 'zod';
import type { Entry, LocalMinute, Origin } from '../../shared/entry.ts';
import type { Photo, Recording } from '../../shared/event.ts';
import type { Conversation, Note, Reading } from '../../shared/note.ts';
import type { Quilt } from '../../shared/quilt.ts';
import type { Task } from '../../shared/vocabulary.ts';

/** An entry that stands in the log now. */
export type LoggedEntry = {
  id: string;
  /** The note it came from; absent where it was put in by hand without one. */
  noteId?: string;
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
  refiledAs?: 'aside' | 'work';
};

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
 * The log of one quilt, folded from its events. A plain value: equal journals give equal states.
 * Lists are in the order of the events that made them.
 */
export type QuiltState = {
  seq: number;
  quilt: Quilt;
  notes: LoggedNote[];
  entries: LoggedEntry[];
  /** What the next note's words stand on. */
  conversation: Conversation;
  confirmedDays: string[];
  handSpans: HandSpan[];
  /** User's own figures for the estimate: JSON path ("backing.overage") -> value. */
  estimateSettings: Record<string, unknown>;
  /** document -> passage -> edit */
  recordEdits: Record<string, Record<string, { text: string; facts: string }>>;
  agreements: { how: 'signature' | 'word'; by: string; at: string; note: string; seq: number }[];
  photos: Photo[];
  recordings: Recording[];
  removedAudio: string[];
};
