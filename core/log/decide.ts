import type { LogEvent, LoggedReading } from '../../shared/event.ts';
import type { Conversation, Note, NoteAudio, Reading } from '../../shared/note.ts';
import type { Quilt, QuiltDetails } from '../../shared/quilt.ts';
import type { Command } from '../../shared/wire.ts';
import { faultOfSetting } from '../estimate/fault-of-setting.ts';
import { faultOfShape } from '../shape/fault-of-shape.ts';
import { threadOf } from './evolve.ts';
import { lastStandingNote } from './last-standing-note.ts';
import type { Log } from './log.ts';
import { noSuchDay, timesOf } from './no-such-day.ts';
import { sameEntry } from './same-entry.ts';

/** What a decision needs from outside: the moment, new ids, and how a note was read. */
export type Circumstances = {
  /** ISO 8601 with the offset of the quilt's place; a note's own moment unless its command gives one. */
  at: string;
  id: () => string;
  /** For `take-note`: how the words were read. Left out, the note is kept unread. */
  reading?: { reading: Reading; conversation: Conversation; rules: string };
  /** For `take-note` and `ask-record`: what the words do to the record and its questions. */
  record?: ForRecord;
  /** For `take-note`: where the words came from; typed, where left out. */
  heard?: { source: 'spoken' | 'recording'; audio: NoteAudio };
  /** For `reread-notes`: the new readings, from `rereadNotes`. */
  readings?: { noteId: string; reading: LoggedReading }[];
};

/** What an answer to the record's questions does. Worked out by core/record, which knows the fields. */
export type ForRecord = {
  /** Details of the quilt that the note tells. */
  details?: Partial<QuiltDetails>;
  /** Figures of the estimate that the note tells: path -> value. */
  settings?: Record<string, number>;
  /** The note says that the record is made. */
  made?: true;
  agreement?: Omit<Extract<LogEvent, { type: 'agreement-noted' }>, 'type'>;
  /** The change that is taken back. */
  undone?: number;
  /** The answer that this one takes the place of, or takes back. */
  targetNoteId?: string;
  /** What is asked from now on; null: nothing; left out: as before. */
  asking?: Omit<Extract<LogEvent, { type: 'record-asked' }>, 'type'>;
};

/** What happens, or why it can't: `refused` says what was expected and what to do, `field` which value is wrong. */
export type Decision = { events: LogEvent[] } | { refused: string; field?: string };

const refuse = (refused: string): Decision => ({ refused });
const happen = (...events: LogEvent[]): Decision => ({ events });

/**
 * Turns a command into what happens. Pure, and no parsing in it: a note's reading is passed in. A note
 * already taken under the same `clientId` gives no events, so that a command may safely come twice.
 */
export function decide(log: Log, command: Command, given: Circumstances): Decision {
  switch (command.type) {
    case 'take-note':
      return takeNote(log, command, given);
    case 'change-quilt':
      return changeQuilt(log, command.changes);
    case 'correct-entry': {
      const now = log.entry(command.entryId);
      if (!now) return noEntry(command.entryId);
      if (command.was && !sameEntry(command.was, now.entry)) {
        return {
          refused:
            'This entry was changed in another window while it was being put right here. Look at what it says now, and choose.',
          field: 'was',
        };
      }
      const unreal = noSuchDay(timesOf(command.entry));
      if (unreal) return refuse(unreal);
      return happen({ type: 'entry-corrected', entryId: command.entryId, entry: command.entry });
    }
    case 'add-entry': {
      const unreal = noSuchDay(timesOf(command.entry));
      if (unreal) return refuse(unreal);
      if (command.noteId !== undefined && !log.note(command.noteId)) return noNote(command.noteId);
      return happen({
        type: 'entry-added',
        entryId: given.id(),
        ...(command.noteId === undefined ? {} : { noteId: command.noteId }),
        entry: command.entry,
      });
    }
    case 'remove-entry':
      if (!log.entry(command.entryId)) return noEntry(command.entryId);
      return happen({ type: 'entry-removed', entryId: command.entryId });
    case 'confirm-entries': {
      const missing = command.entryIds.find((id) => !log.entry(id));
      if (missing !== undefined) return noEntry(missing);
      const open = [...new Set(command.entryIds)].filter((id) => log.entry(id)?.confirmed === false);
      return open.length === 0 ? happen() : happen({ type: 'entries-confirmed', entryIds: open });
    }
    case 'confirm-day':
      return happen({ type: 'day-confirmed', date: command.date });
    case 'refile-note':
      return refileNote(log, command.noteId, command.as, given);
    case 'set-span': {
      const unreal = noSuchDay([command.start, command.end]);
      if (unreal) return refuse(unreal);
      if (command.end <= command.start) {
        return refuse(
          `A stretch of work has to end after it starts; this one starts ${command.start} and ends ${command.end}. Change one of the two.`,
        );
      }
      const { type: _type, spanId, ...span } = command;
      return happen({ type: 'span-set', spanId: spanId ?? given.id(), ...span });
    }
    case 'remove-span':
      return happen({ type: 'span-removed', spanId: command.spanId });
    case 'set-estimate': {
      const fault = faultOfSetting(log, command.path, command.value);
      if (fault) return { refused: `${fault.message}. The estimate stays as it was.`, field: fault.field };
      return happen({ type: 'estimate-set', path: command.path, value: command.value ?? null });
    }
    case 'edit-record': {
      const { type: _type, ...edit } = command;
      return happen({ type: 'record-edited', ...edit });
    }
    case 'set-plans':
      return happen({ type: 'plans-set', plans: command.plans });
    case 'make-record':
      return happen({ type: 'record-made' });
    case 'ask-record': {
      const asking = given.record?.asking;
      if (asking === undefined) {
        return refuse(
          'The record asks nothing more that can be answered by word. Look at its list of fields.',
        );
      }
      return asking.field === null && !log.recordAsking
        ? happen()
        : happen({ type: 'record-asked', ...asking });
    }
    case 'note-agreement': {
      const { type: _type, ...agreement } = command;
      return happen({ type: 'agreement-noted', ...agreement });
    }
    case 'change-photo': {
      const photo = log.photos.find((one) => one.id === command.photoId);
      if (!photo) return noPhoto(command.photoId);
      const { type: _type, photoId: _photoId, ...changes } = command;
      return happen({ type: 'photo-changed', photo: { ...photo, ...changes } });
    }
    case 'remove-photo':
      if (!log.photos.some((one) => one.id === command.photoId)) return noPhoto(command.photoId);
      return happen({ type: 'photo-removed', photoId: command.photoId });
    case 'teach-word':
      if (command.heard.trim().toLowerCase() === command.means.trim().toLowerCase()) {
        return refuse('A word taught has to mean something other than itself. Give the word that is meant.');
      }
      return happen({
        type: 'word-taught',
        heard: command.heard.trim().toLowerCase(),
        means: command.means.trim(),
      });
    case 'reread-notes': {
      const readings = given.readings ?? [];
      return readings.length === 0 ? happen() : happen({ type: 'notes-reread', readings });
    }
    case 'undo-change':
      return undoChange(log, command.seq);
  }
}

function takeNote(
  log: Log,
  command: Extract<Command, { type: 'take-note' }>,
  { at, id, reading, heard, record }: Circumstances,
): Decision {
  if (log.note(command.clientId)) return happen();
  const note: Note = {
    id: command.clientId,
    at: command.at ?? at,
    text: command.text,
    source: heard?.source ?? 'typed',
    ...(heard ? { audio: heard.audio } : {}),
  };
  const taken: LogEvent = { type: 'note-taken', note };
  if (!reading) return happen(taken);
  const takesBack = reading.reading.act === 'amend' || reading.reading.act === 'undo';
  const target =
    record?.targetNoteId ?? (takesBack ? lastStandingNote(log.parts, threadOf(note)) : undefined);
  const read: LogEvent = {
    type: 'note-read',
    noteId: note.id,
    reading: {
      ...reading.reading,
      entryIds: reading.reading.entries.map(id),
      ...(target === undefined ? {} : { targetNoteId: target }),
      rules: reading.rules,
      conversation: reading.conversation,
    },
  };
  return happen(taken, read, ...forRecord(log, note.id, record));
}

function forRecord(log: Log, noteId: string, record: ForRecord | undefined): LogEvent[] {
  if (!record) return [];
  const { details, settings = {}, made, agreement, undone, asking } = record;
  return [
    ...(undone === undefined || !log.eventAt(undone)
      ? []
      : [{ type: 'change-undone' as const, seq: undone }]),
    ...(details ? [{ type: 'quilt-changed' as const, changes: details, noteId }] : []),
    ...Object.entries(settings).map(([path, value]) => ({
      type: 'estimate-set' as const,
      path,
      value,
      noteId,
    })),
    ...(made ? [{ type: 'record-made' as const }] : []),
    ...(agreement ? [{ type: 'agreement-noted' as const, ...agreement }] : []),
    ...(asking ? [{ type: 'record-asked' as const, ...asking }] : []),
  ];
}

const SHAPING = new Set(['rows', 'blocks', 'shape', 'placeNames']);

function changeQuilt(log: Log, changes: Partial<QuiltDetails>): Decision {
  const known = Object.entries(changes).filter(([, value]) => value !== undefined);
  const before = log.quilt as unknown as Record<string, unknown>;
  const changed = known.filter(([key, value]) => JSON.stringify(before[key]) !== JSON.stringify(value));
  if (changed.length === 0) return happen();
  const fault = changed.some(([key]) => SHAPING.has(key))
    ? faultOfShape({ ...log.quilt, ...changes } as Quilt)
    : undefined;
  if (fault) return { refused: fault.message, field: fault.field };
  return happen({ type: 'quilt-changed', changes: Object.fromEntries(changed) });
}

function refileNote(log: Log, noteId: string, as: 'aside' | 'work', given: Circumstances): Decision {
  const logged = log.note(noteId);
  if (!logged) return noNote(noteId);
  const isAside = logged.refiledAs ? logged.refiledAs === 'aside' : logged.reading?.act === 'aside';
  if (isAside === (as === 'aside')) return happen();
  const refiled: LogEvent = { type: 'note-refiled', noteId, as };
  const gives = (logged.setAside ?? []).length;
  if (as === 'aside' || gives > 0) return happen(refiled);
  // Talk that was work after all has given no entry: keep its words in the log as a remark.
  return happen(refiled, { type: 'entry-added', entryId: given.id(), noteId, entry: { kind: 'remark' } });
}

const NEVER_UNDONE: ReadonlySet<LogEvent['type']> = new Set([
  'quilt-made',
  'note-taken',
  'note-read',
  'event-lost',
]);

function undoChange(log: Log, seq: number): Decision {
  const found = log.eventAt(seq);
  if (!found) {
    return refuse(`There is no change number ${seq}; the log runs from 1 to ${log.seq}.`);
  }
  if (found.event.type === 'event-lost') {
    return refuse(`Change number ${seq} was lost in a damaged journal, so it can't be undone.`);
  }
  if (NEVER_UNDONE.has(found.event.type)) {
    return refuse(
      `Number ${seq} is ${found.event.type === 'quilt-made' ? 'the making of the quilt' : 'a note'}, and what was said stays in the log. Say "scratch that", correct its entries or take them out.`,
    );
  }
  return happen({ type: 'change-undone', seq });
}

const noEntry = (id: string): Decision =>
  refuse(
    `There is no entry ${id} in the log now; it may have been taken out in another window. Look at the log again.`,
  );
const noNote = (id: string): Decision => refuse(`There is no note ${id} in this quilt's log.`);
const noPhoto = (id: string): Decision =>
  refuse(`There is no photograph ${id} in this quilt; it may have been removed in another window.`);
