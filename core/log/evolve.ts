import { List } from 'immutable';
import type { LogEvent, LoggedReading, NumberedEvent } from '../../shared/event.ts';
import type { Note } from '../../shared/note.ts';
import { Log, type LogParts, type NoteRow } from './log.ts';
import type { LoggedEntry, LoggedNote } from './state.ts';

const CHECKPOINT_EVERY = 256;
const MOST_CHECKPOINTS = 16;

/** Which talk a note belongs to: each recording is one of its own, all that is live is ''. */
export const threadOf = (note: Note): string => note.audio?.recordingId ?? '';

/**
 * The log after one more event. Pure: the log it is given stays as it was. Events that point at
 * something that is not there (because the change that made it was undone) change nothing.
 */
export function evolve(log: Log, numbered: NumberedEvent): Log {
  const { event } = numbered;
  if (event.type !== 'change-undone') return step(log, numbered, false);
  const withIt = step(log, numbered, true);
  const root = undoRoot(withIt, event.seq);
  if (root === undefined) return withIt;
  // Fold again from the last checkpoint before the change, leaving out what is undone.
  const kept = log.parts.checkpoints.takeWhile((point) => point.seq < root);
  const point = kept.last();
  const base = point ? new Log({ ...point.parts, checkpoints: kept.pop() }) : Log.EMPTY;
  return replay(base, withIt.eventsSince(base.seq));
}

/** Folds a journal from nothing; `evolve` event by event gives the same log. */
export function fold(events: readonly NumberedEvent[]): Log {
  return replay(Log.EMPTY, events);
}

/**
 * Folds the events that came after a snapshot onto its log; the same as all of them from nothing. Where one of them
 * takes back a change from before the snapshot, they are folded from nothing.
 */
export function foldOnto(base: Log, events: readonly NumberedEvent[]): Log {
  const reachesBack = events.some(({ event }) => event.type === 'change-undone' && event.seq <= base.seq);
  return reachesBack ? fold([...base.eventsSince(0), ...events]) : replay(base, events);
}

function replay(base: Log, events: readonly NumberedEvent[]): Log {
  const undone = undoneBy(events);
  let log = base;
  for (const numbered of events) {
    log = step(log, numbered, undone.has(numbered.seq) || numbered.event.type === 'change-undone');
  }
  return log;
}

/**
 * The numbers of the events that are undone in the end. Read from the last: an undoing that is
 * itself undone counts for nothing, so undoing it again brings the change back.
 */
function undoneBy(events: readonly NumberedEvent[]): Set<number> {
  const undone = new Set<number>();
  for (let i = events.length - 1; i >= 0; i--) {
    const { seq, event } = events[i]!;
    if (event.type === 'change-undone' && !undone.has(seq) && event.seq < seq) undone.add(event.seq);
  }
  return undone;
}

/** The change that an undoing is about in the end: through undoings of undoings. */
function undoRoot(log: Log, target: number): number | undefined {
  let seq = target;
  for (;;) {
    const found = log.eventAt(seq);
    if (!found) return undefined;
    if (found.event.type !== 'change-undone' || found.event.seq >= seq) return seq;
    seq = found.event.seq;
  }
}

/** One event into the log; `skip` for events that are undone, which count but do nothing. */
function step(log: Log, numbered: NumberedEvent, skip: boolean): Log {
  const before = log.parts;
  const changed = skip ? before : apply(before, numbered.event, numbered);
  const events = before.events.push(numbered);
  const isDue = events.size % CHECKPOINT_EVERY === 0 && before.seq > 0;
  const checkpoints = isDue ? thinned(before.checkpoints.push(bare(log))) : before.checkpoints;
  return new Log({ ...changed, seq: numbered.seq, events, checkpoints });
}

/** Without checkpoints of its own, which would keep every earlier one alive. */
const bare = (log: Log): Log => new Log({ ...log.parts, checkpoints: List() });

/** Keeps the last few and ever fewer of the older ones: each holds on to parts that have changed since. */
function thinned(points: List<Log>): List<Log> {
  if (points.size <= MOST_CHECKPOINTS) return points;
  const recent = points.size - MOST_CHECKPOINTS / 4;
  return points.filter((_, i) => i % 2 === 0 || i >= recent);
}

function apply(parts: LogParts, event: LogEvent, { seq, at }: NumberedEvent): LogParts {
  switch (event.type) {
    case 'quilt-made':
      return { ...parts, quilt: event.quilt };
    case 'quilt-changed':
      return changeDetails(parts, event, seq);
    case 'record-asked': {
      const { field, passed, document } = event;
      return {
        ...parts,
        recordAsking: field === null ? undefined : { field, passed, at, ...(document ? { document } : {}) },
      };
    }
    case 'note-taken': {
      if (parts.noteIndex.has(event.note.id)) return parts;
      const row: NoteRow = {
        logged: { note: event.note, entryIds: [], seq },
        ms: Date.parse(event.note.at),
        seq,
      };
      return {
        ...parts,
        noteIndex: parts.noteIndex.set(event.note.id, parts.notes.size),
        lastOfThread: parts.lastOfThread.set(threadOf(event.note), event.note.id),
        notes: parts.notes.push(row),
      };
    }
    case 'note-read':
      return readAnew(parts, [{ noteId: event.noteId, reading: event.reading }]);
    case 'notes-reread':
      return readAnew(parts, event.readings);
    case 'note-refiled':
      return refile(parts, event.noteId, event.as);
    case 'entry-added': {
      if (parts.entries.has(event.entryId)) return parts;
      const noteAt = event.noteId === undefined ? undefined : noteRow(parts, event.noteId)?.logged.note.at;
      const entry: LoggedEntry = {
        id: event.entryId,
        ...(noteAt === undefined ? {} : { noteId: event.noteId }),
        at: noteAt ?? at,
        entry: event.entry,
        origins: {},
        confirmed: false,
        byHand: true,
      };
      const entries = parts.entries.set(entry.id, entry);
      if (entry.noteId === undefined) {
        const ms = Date.parse(at);
        return { ...parts, entries, loose: parts.loose.push({ id: entry.id, ms, seq }) };
      }
      return changeNote({ ...parts, entries }, entry.noteId, (logged) => ({
        ...logged,
        touched: true,
        entryIds: [...logged.entryIds, entry.id],
      }));
    }
    case 'entry-corrected': {
      const old = parts.entries.get(event.entryId);
      if (!old) return parts;
      const entries = parts.entries.set(old.id, { ...old, entry: event.entry, byHand: true });
      return touch({ ...parts, entries }, old);
    }
    case 'entry-removed': {
      const old = parts.entries.get(event.entryId);
      if (!old) return parts;
      const entries = parts.entries.delete(old.id);
      if (old.noteId === undefined) {
        return { ...parts, entries, loose: parts.loose.filter((row) => row.id !== old.id) };
      }
      return changeNote({ ...parts, entries }, old.noteId, (logged) => ({
        ...logged,
        touched: true,
        entryIds: logged.entryIds.filter((id) => id !== old.id),
      }));
    }
    case 'entries-confirmed':
      return event.entryIds.reduce(confirm, parts);
    case 'day-confirmed': {
      const rest = parts.confirmedDays.filter((day) => day.date !== event.date);
      return { ...parts, confirmedDays: [...rest, { date: event.date, seq }] };
    }
    case 'span-set': {
      const { type: _, entryIds = [], ...span } = event;
      const rest = parts.handSpans.filter((old) => old.spanId !== event.spanId);
      return {
        ...parts,
        handSpans: [...rest, { ...span, entryIds }],
        removedSpans: parts.removedSpans.filter((id) => id !== event.spanId),
      };
    }
    case 'span-removed':
      return {
        ...parts,
        handSpans: parts.handSpans.filter((span) => span.spanId !== event.spanId),
        removedSpans: [...parts.removedSpans.filter((id) => id !== event.spanId), event.spanId],
      };
    case 'estimate-set': {
      const { [event.path]: _, ...rest } = parts.estimateSettings;
      const { [event.path]: _told, ...settingNotes } = parts.settingNotes;
      const cleared = event.value === undefined || event.value === null;
      return {
        ...parts,
        estimateSettings: cleared ? rest : { ...rest, [event.path]: event.value },
        settingNotes:
          cleared || event.noteId === undefined
            ? settingNotes
            : { ...settingNotes, [event.path]: { noteId: event.noteId, seq } },
      };
    }
    case 'plans-set':
      return { ...parts, plans: event.plans };
    case 'record-made':
      return { ...parts, recordMade: { seq } };
    case 'record-edited': {
      const { [event.passage]: _, ...rest } = parts.recordEdits[event.document] ?? {};
      const passages =
        event.text === null ? rest : { ...rest, [event.passage]: { text: event.text, facts: event.facts } };
      return { ...parts, recordEdits: { ...parts.recordEdits, [event.document]: passages } };
    }
    case 'agreement-noted': {
      const { type: _, ...agreement } = event;
      return { ...parts, agreements: [...parts.agreements, { ...agreement, seq }] };
    }
    case 'photo-added':
      return { ...parts, photos: [...parts.photos, event.photo] };
    case 'photo-changed':
      return {
        ...parts,
        photos: parts.photos.map((photo) => (photo.id === event.photo.id ? event.photo : photo)),
      };
    case 'photo-removed':
      return { ...parts, photos: parts.photos.filter((photo) => photo.id !== event.photoId) };
    case 'recording-added':
      return { ...parts, recordings: [...parts.recordings, event.recording] };
    case 'audio-removed':
      return { ...parts, removedAudio: [...new Set([...parts.removedAudio, ...event.files])] };
    case 'word-taught': {
      const taught = { ...parts.quilt.taught, [event.heard]: event.means };
      return { ...parts, quilt: { ...parts.quilt, taught } };
    }
    case 'change-undone':
    case 'event-lost':
      return parts;
  }
}

/**
 * Puts readings in place of those the notes had. All are withdrawn before any is put in, so that a
 * note which took another back lets go of it before it is read anew.
 */
export function readAnew(
  parts: LogParts,
  readings: readonly { noteId: string; reading: LoggedReading }[],
): LogParts {
  const open = readings.filter(({ noteId }) => noteRow(parts, noteId)?.logged.touched !== true);
  const withdrawn = open.reduceRight((sofar, { noteId }) => withdraw(sofar, noteId), parts);
  return open.reduce((sofar, { noteId, reading }) => putIn(sofar, noteId, reading), withdrawn);
}

/** Takes the effects of a note's reading out of the log: what it logged, and what it took back. */
export function withdraw(parts: LogParts, noteId: string): LogParts {
  const logged = noteRow(parts, noteId)?.logged;
  if (!logged?.reading) return parts;
  let next = parts;
  const target = logged.replaces === undefined ? undefined : noteRow(parts, logged.replaces)?.logged;
  if (target?.replacedBy === noteId) {
    next = restore(next, target.note.id);
    // Undoing a replacement had brought up the note before it, which now goes down again.
    if (logged.reading.act === 'undo' && target.replaces !== undefined) {
      next = takeBack(next, target.replaces, target.note.id);
    }
  }
  next = { ...next, entries: next.entries.deleteAll(logged.entryIds) };
  return changeNote(next, noteId, (old) => {
    const { reading: _reading, setAside: _setAside, replaces: _replaces, ...rest } = old;
    return { ...rest, entryIds: [] };
  });
}

/** Puts a reading's effects into the log: takes back its target, then lets its own entries stand. */
export function putIn(parts: LogParts, noteId: string, logged: LoggedReading): LogParts {
  const row = noteRow(parts, noteId);
  if (!row) return parts;
  const { entryIds, rules: _rules, conversation, targetNoteId, ...reading } = logged;
  const { note, replacedBy } = row.logged;
  let next = parts;
  if (targetNoteId !== undefined) {
    const target = noteRow(parts, targetNoteId)?.logged;
    next = takeBack(next, targetNoteId, noteId);
    // Undoing a note that had itself replaced an earlier one lets the earlier one stand again.
    if (reading.act === 'undo' && target?.replaces !== undefined) {
      const before = noteRow(next, target.replaces)?.logged;
      if (before?.replacedBy === targetNoteId) next = restore(next, target.replaces);
    }
  }
  const made = reading.entries.map(
    (read, i): LoggedEntry => ({
      id: entryIds[i] ?? `${noteId}.${i}`,
      noteId,
      at: note.at,
      entry: read.entry,
      origins: read.origins,
      ...(read.reason === undefined ? {} : { reason: read.reason }),
      confirmed: false,
      byHand: false,
    }),
  );
  if (next.lastOfThread.get(threadOf(note)) === noteId) {
    next = { ...next, conversations: next.conversations.set(threadOf(note), conversation) };
  }
  const replaces = targetNoteId === undefined ? {} : { replaces: targetNoteId };
  if (replacedBy !== undefined) {
    return changeNote(next, noteId, (old) => ({ ...old, ...replaces, reading, setAside: made }));
  }
  next = { ...next, entries: next.entries.merge(made.map((entry) => [entry.id, entry])) };
  return changeNote(next, noteId, (old) => ({
    ...old,
    ...replaces,
    reading,
    entryIds: made.map((entry) => entry.id),
  }));
}

/** A later note takes back what `targetId` logged. What was confirmed stays. */
function takeBack(parts: LogParts, targetId: string, byNoteId: string): LogParts {
  const target = noteRow(parts, targetId)?.logged;
  if (!target || target.replacedBy !== undefined) return parts;
  const standing = target.entryIds.flatMap((id) => parts.entries.get(id) ?? []);
  const gone = standing.filter((entry) => !entry.confirmed);
  const entries = parts.entries.deleteAll(gone.map((entry) => entry.id));
  return changeNote({ ...parts, entries }, targetId, (old) => ({
    ...old,
    replacedBy: byNoteId,
    setAside: gone,
    entryIds: standing.filter((entry) => entry.confirmed).map((entry) => entry.id),
  }));
}

/** Lets a note's entries stand again that had been taken back. */
function restore(parts: LogParts, noteId: string): LogParts {
  const logged = noteRow(parts, noteId)?.logged;
  if (!logged) return parts;
  const back = logged.setAside ?? [];
  const next = { ...parts, entries: parts.entries.merge(back.map((entry) => [entry.id, entry])) };
  return changeNote(next, noteId, (old) => {
    const { replacedBy: _replacedBy, setAside: _setAside, ...rest } = old;
    return { ...rest, entryIds: [...rest.entryIds, ...back.map((entry) => entry.id)] };
  });
}

function refile(parts: LogParts, noteId: string, as: 'aside' | 'work'): LogParts {
  const logged = noteRow(parts, noteId)?.logged;
  if (!logged || logged.refiledAs === as) return parts;
  if (as === 'work') {
    const standing = logged.replacedBy === undefined ? restore(parts, noteId) : parts;
    return changeNote(standing, noteId, (old) => ({ ...old, touched: true, refiledAs: as }));
  }
  const gone = logged.entryIds.flatMap((id) => parts.entries.get(id) ?? []);
  return changeNote({ ...parts, entries: parts.entries.deleteAll(logged.entryIds) }, noteId, (old) => ({
    ...old,
    touched: true,
    refiledAs: as,
    entryIds: [],
    setAside: [...(old.setAside ?? []), ...gone],
  }));
}

function confirm(parts: LogParts, entryId: string): LogParts {
  const old = parts.entries.get(entryId);
  if (!old) return parts;
  return touch({ ...parts, entries: parts.entries.set(entryId, { ...old, confirmed: true }) }, old);
}

function touch(parts: LogParts, entry: LoggedEntry): LogParts {
  if (entry.noteId === undefined) return parts;
  return changeNote(parts, entry.noteId, (logged) =>
    logged.touched ? logged : { ...logged, touched: true },
  );
}

/** A detail is told by the note that came with it last, or by none. */
function changeDetails(
  parts: LogParts,
  { changes, noteId }: Extract<LogEvent, { type: 'quilt-changed' }>,
  seq: number,
): LogParts {
  const detailNotes = { ...parts.detailNotes };
  for (const key of Object.keys(changes)) {
    if (noteId === undefined) delete detailNotes[key];
    else detailNotes[key] = { noteId, seq };
  }
  return { ...parts, quilt: { ...parts.quilt, ...changes }, detailNotes };
}

function noteRow(parts: LogParts, noteId: string): NoteRow | undefined {
  const index = parts.noteIndex.get(noteId);
  return index === undefined ? undefined : parts.notes.get(index);
}

function changeNote(parts: LogParts, noteId: string, change: (logged: LoggedNote) => LoggedNote): LogParts {
  const index = parts.noteIndex.get(noteId);
  const row = index === undefined ? undefined : parts.notes.get(index);
  if (index === undefined || !row) return parts;
  return { ...parts, notes: parts.notes.set(index, { ...row, logged: change(row.logged) }) };
}
