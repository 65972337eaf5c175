import type { LoggedEntry, LoggedNote, QuiltState } from '../../../../core/log/state.ts';
import { entryWords } from '../../../words/entry-words.ts';
import { localTime } from '../../../words/local-time.ts';

/** A log: its lists, and each entry by its id. */
type Searched = QuiltState & { entry(id: string): LoggedEntry | undefined };
type Found = { note?: LoggedNote; entryIds: string[]; date: string; time: string; words: string };
type Indexed = Found & { haystack: string };

const NOTES_A_TURN = 250;
const indexes = new WeakMap<Searched, Indexed[]>();
/** What was worked out for a note or entry stays while that is the same object, whatever else changes. */
const lines = new WeakMap<object, Indexed>();

/** Simple letters for comparison: no case, no accents, hyphens as spaces. */
const plain = (text: string): string =>
  text
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[-–/.,;:“”"'’!?()]/g, ' ');

function indexOf(state: Searched): Indexed[] {
  const known = indexes.get(state);
  if (known) return known;
  const index: Indexed[] = state.notes.map((note) => lineOf(note, state));
  for (const entry of state.entries) {
    if (entry.noteId !== undefined) continue;
    const { date, time } = localTime(entry.at, state.quilt.zone);
    const { what, where } = entryWords(entry.entry, state.quilt);
    const places = 'places' in entry.entry ? (entry.entry.places ?? []).join(' ') : '';
    index.push({
      entryIds: [entry.id],
      date,
      time,
      words: what,
      haystack: plain(`${what} ${where} ${places} ${date}`),
    });
  }
  indexes.set(state, index);
  return index;
}

function lineOf(note: LoggedNote, state: Searched): Indexed {
  const before = lines.get(note);
  if (before) return before;
  const { date, time } = localTime(note.note.at, state.quilt.zone);
  const said = note.entryIds.flatMap((id) => {
    const entry = state.entry(id);
    if (!entry) return [];
    const { what, where } = entryWords(entry.entry, state.quilt);
    return [`${what} ${where} ${'places' in entry.entry ? (entry.entry.places ?? []).join(' ') : ''}`];
  });
  const line = {
    note,
    entryIds: note.entryIds,
    date,
    time,
    words: note.note.text,
    haystack: plain(`${note.note.text} ${said.join(' ')} ${date}`),
  };
  lines.set(note, line);
  return line;
}

/**
 * Reads a long log into lines while nobody waits, some hundred notes at a time, so that the first search finds them ready.
 * Returns what breaks it off.
 */
export function prepareFind(state: Searched): () => void {
  let at = 0;
  let timer: ReturnType<typeof setTimeout> | undefined;
  const go = (): void => {
    const end = Math.min(at + NOTES_A_TURN, state.notes.length);
    for (; at < end; at++) lineOf(state.notes[at]!, state);
    if (at < state.notes.length) timer = setTimeout(go);
    else indexOf(state);
  };
  timer = setTimeout(go);
  return () => clearTimeout(timer);
}

/** Everything said that holds all the words asked for, the newest first; at most `limit`. */
export function findSaid(state: Searched, asked: string, limit = 100): { found: Found[]; total: number } {
  const words = plain(asked).split(/\s+/).filter(Boolean);
  if (!words.length) return { found: [], total: 0 };
  const found: Found[] = [];
  let total = 0;
  const index = indexOf(state);
  for (let i = index.length - 1; i >= 0; i--) {
    const line = index[i]!;
    if (!words.every((word) => line.haystack.includes(word))) continue;
    total++;
    if (found.length < limit) found.push(line);
  }
  return { found, total };
}
