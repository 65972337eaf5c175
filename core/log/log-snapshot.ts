import { List, Map as PersistentMap } from 'immutable';
import type { Conversation } from '../../shared/note.ts';
import { EventTrail, type OlderEvents } from './event-trail.ts';
import { Log, type LogParts, type NoteRow } from './log.ts';
import type { LoggedEntry } from './state.ts';

const ROWS_A_LINE = 250;

/** All of a log but its notes, its entries, what follows from these, and its events. */
type Rest = Omit<
  LogParts,
  | 'notes'
  | 'noteIndex'
  | 'entries'
  | 'loose'
  | 'conversations'
  | 'lastOfThread'
  | 'recordAsking'
  | 'events'
  | 'checkpoints'
> & {
  recordAsking?: LogParts['recordAsking'];
  loose: { id: string; ms: number; seq: number }[];
  conversations: [string, Conversation][];
  lastOfThread: [string, string][];
};
/** An entry that stands as its note's reading gave it: id, place of the note, place in its reading, confirmed, by hand. */
type PointedEntry = [id: string, note: number, place: number, confirmed: boolean, byHand: boolean];
type Line = { rest: Rest } | { notes: NoteRow[] } | { entries: (PointedEntry | LoggedEntry)[] };

/**
 * A log as lines of JSON, some hundred notes in each, so that whoever writes them can let others work between two. What
 * an entry shares with the reading of its note is pointed at, not told twice: read again it is shared again.
 */
export function* writeSnapshotLines(log: Log): Generator<string> {
  const { notes, noteIndex: _index, entries, events: _events, checkpoints: _points, ...parts } = log.parts;
  const line = (one: Line): string => JSON.stringify(one);
  yield line({
    rest: {
      ...parts,
      loose: parts.loose.toArray(),
      conversations: [...parts.conversations.entries()],
      lastOfThread: [...parts.lastOfThread.entries()],
    },
  });
  for (let at = 0; at < notes.size; at += ROWS_A_LINE)
    yield line({ notes: notes.slice(at, at + ROWS_A_LINE).toArray() });
  let written: (PointedEntry | LoggedEntry)[] = [];
  for (const entry of entries.values()) {
    written.push(pointAt(entry, log) ?? entry);
    if (written.length < ROWS_A_LINE) continue;
    yield line({ entries: written });
    written = [];
  }
  if (written.length > 0) yield line({ entries: written });
}

/** The log that was written, with its events where `older` has them. Throws on lines that are none. */
export function readSnapshotLines(lines: Iterable<string>, older: OlderEvents): Log {
  let rest: Rest | undefined;
  const notes: NoteRow[] = [];
  const entries: [string, LoggedEntry][] = [];
  for (const text of lines) {
    const line = JSON.parse(text) as Line;
    if ('rest' in line) rest = line.rest;
    else if ('notes' in line) for (const row of line.notes) notes.push(row);
    else
      for (const one of line.entries) {
        const entry = Array.isArray(one) ? pointedEntry(one, notes) : one;
        entries.push([entry.id, entry]);
      }
  }
  if (!rest) throw new Error('Expected the line that holds the rest of the log.');
  const parts: LogParts = {
    ...rest,
    recordAsking: rest.recordAsking,
    notes: List(notes),
    noteIndex: PersistentMap(notes.map((row, at) => [row.logged.note.id, at])),
    entries: PersistentMap(entries),
    loose: List(rest.loose),
    conversations: PersistentMap(rest.conversations),
    lastOfThread: PersistentMap(rest.lastOfThread),
    events: new EventTrail(older, List()),
    checkpoints: List(),
  };
  // A change made after the snapshot is taken back without going to the beginning.
  return new Log({ ...parts, checkpoints: List([new Log(parts)]) });
}

function pointAt(entry: LoggedEntry, log: Log): PointedEntry | undefined {
  const { noteId, id, confirmed, byHand } = entry;
  const note = noteId === undefined ? undefined : log.parts.noteIndex.get(noteId);
  const logged = note === undefined ? undefined : log.parts.notes.get(note)?.logged;
  if (note === undefined || !logged?.reading || logged.note.at !== entry.at) return undefined;
  const place = logged.reading.entries.findIndex(
    (read) =>
      read.entry === entry.entry &&
      read.origins === entry.origins &&
      (read.reason ?? '') === (entry.reason ?? ''),
  );
  return place === -1 ? undefined : [id, note, place, confirmed, byHand];
}

function pointedEntry(
  [id, note, place, confirmed, byHand]: PointedEntry,
  notes: readonly NoteRow[],
): LoggedEntry {
  const { logged } = notes[note]!;
  const read = logged.reading!.entries[place]!;
  return {
    id,
    noteId: logged.note.id,
    at: logged.note.at,
    entry: read.entry,
    origins: read.origins,
    ...(read.reason === undefined ? {} : { reason: read.reason }),
    confirmed,
    byHand,
  };
}
