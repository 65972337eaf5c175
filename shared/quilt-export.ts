import { z } from 'zod';
import { Entry, LocalMinute, Origin } from './entry.ts';
import { Photo, Recording } from './event.ts';
import { Instant, Note, Reading } from './note.ts';
import { Quilt } from './quilt.ts';
import { TASKS } from './vocabulary.ts';

/** Version of the exported JSON. It goes up when a field changes its meaning or goes away. */
export const EXPORT_VERSION = 1;

export const ExportedEntry = z.object({
  id: z.string(),
  noteId: z.string().optional(),
  /** When it was said. */
  at: z.string(),
  entry: Entry,
  origins: z.record(z.string(), Origin),
  reason: z.string().optional(),
  confirmed: z.boolean(),
  byHand: z.boolean(),
});
export type ExportedEntry = z.infer<typeof ExportedEntry>;

/** One line of the notes as JSON Lines. */
export const ExportedNote = z.object({
  note: Note,
  /** Absent where the note could not be read. */
  reading: Reading.optional(),
  entryIds: z.array(z.string()),
  replacedBy: z.string().optional(),
  replaces: z.string().optional(),
  refiledAs: z.enum(['aside', 'work']).optional(),
});
export type ExportedNote = z.infer<typeof ExportedNote>;

export const ExportedSpan = z.object({
  id: z.string(),
  task: z.enum(TASKS).optional(),
  how: z.enum(['hand', 'said', 'length', 'inferred']),
  start: LocalMinute,
  end: LocalMinute,
  minutes: z.number().nonnegative(),
  noteIds: z.array(z.string()),
  entryIds: z.array(z.string()),
});

/** Everything that stands in a quilt's log, in one JSON document; its JSON Schema is published beside it. */
export const QuiltExport = z.object({
  format: z.literal('quiltside-quilt'),
  version: z.literal(EXPORT_VERSION),
  /** Number of the last event it was written from. */
  seq: z.number().int().nonnegative(),
  quilt: Quilt,
  notes: z.array(ExportedNote),
  entries: z.array(ExportedEntry),
  hours: z.object({ totalMin: z.number(), spans: z.array(ExportedSpan) }),
  confirmedDays: z.array(z.string()),
  estimateSettings: z.record(z.string(), z.unknown()),
  recordEdits: z.record(z.string(), z.record(z.string(), z.object({ text: z.string(), facts: z.string() }))),
  agreements: z.array(
    z.object({
      how: z.enum(['signature', 'word']),
      by: z.string(),
      at: Instant,
      note: z.string(),
      seq: z.number().int(),
    }),
  ),
  photos: z.array(Photo),
  recordings: z.array(Recording),
});
export type QuiltExport = z.infer<typeof QuiltExport>;

/** One file of an archive. */
export const ArchivedFile = z.strictObject({
  path: z.string().min(1).max(300),
  bytes: z.number().int().nonnegative(),
  sha256: z.string().regex(/^[0-9a-f]{64}$/, '64 hexadecimal digits'),
});
export type ArchivedFile = z.infer<typeof ArchivedFile>;

/** Version of the archive's layout. */
export const ARCHIVE_VERSION = 1;

/** `manifest.json` of an archive: what is in it, and by which a reader can tell that nothing is missing. */
export const ArchiveManifest = z.object({
  format: z.literal('quiltside-archive'),
  version: z.number().int().positive(),
  /** Version of the journal's events. */
  logVersion: z.number().int().positive(),
  quilt: z.object({ id: z.string().min(1).max(80), name: z.string() }),
  events: z.number().int().positive(),
  files: z.array(ArchivedFile).max(50_000),
});
export type ArchiveManifest = z.infer<typeof ArchiveManifest>;
