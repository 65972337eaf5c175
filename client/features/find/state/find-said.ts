import type { Log } from '../../../../core/log/log.ts';
import type { LoggedEntry, LoggedNote, QuiltState } from '../../../../core/log/state.ts';
import { entryWords } from '../../../words/entry-words.ts';
import { localTime } from '../../../words/local-time.ts';

/** A log: its lists, and each entry by its id. */
type Searched = QuiltState & Pick<Log, 'entry' | 'looseEntries'>;
type Found = { note?: LoggedNote; entryIds: string[]; date: string; time: string; words: string };
type Indexed = Found & { haystack: string };

const NOTES_A_TURN = 250;
/** Well under the tenth of a second within which an answer seems to come at once (common practice, no source). */
const TURN_MS = 12;
const LINES_A_LOOK = 16;
/** What was worked out for a note or entry stays while that is the same object, whatever else changes. */
const lines = new WeakMap<object, Indexed>();

/** Simple letters for comparison: no case, no accents, hyphens as spaces. */
const plain = (text: string): string =>
  text
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[-–/.,;:“”"'’!?()]/g, ' ');

/** An entry that was put in by hand, without a note. */
function lineOfLoose(entry: LoggedEntry, state: Searched): Indexed {
  const before = lines.get(entry);
  if (before) return before;
  const { date, time } = localTime(entry.at, state.quilt.zone);
  const { what, where } = entryWords(entry.entry, state.quilt);
  const places = 'places' in entry.entry ? (entry.entry.places ?? []).join(' ') : '';
  const haystack = plain(`${what} ${where} ${places} ${date}`);
  const line = { entryIds: [entry.id], date, time, words: what, haystack };
  lines.set(entry, line);
  return line;
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
    else for (const entry of state.looseEntries) lineOfLoose(entry, state);
  };
  timer = setTimeout(go);
  return () => clearTimeout(timer);
}

const wordsOf = (asked: string): string[] => plain(asked).split(/\s+/).filter(Boolean);

/** `isAll`: the whole log was looked through. */
export type Findings = { found: Found[]; total: number; isAll: boolean };

/**
 * Everything said that holds all the words asked for, the newest first; at most `limit`. It looks in turns so short that
 * typing is not held up: `tell` is given what was found so far after each, the first time before this returns. Where the
 * lines are ready one turn is enough. Returns what breaks it off.
 */
export function findSaid(
  state: Searched,
  asked: string,
  tell: (so: Findings) => void,
  limit = 100,
): () => void {
  const words = wordsOf(asked);
  const found: Found[] = [];
  let total = 0;
  let timer: ReturnType<typeof setTimeout> | undefined;
  const { notes } = state;
  const loose = state.looseEntries;
  let left = words.length > 0 ? notes.length + loose.length : 0;
  const turn = (): void => {
    const end = performance.now() + TURN_MS;
    for (let n = 1; left > 0; n++) {
      left--;
      const line =
        left < notes.length ? lineOf(notes[left]!, state) : lineOfLoose(loose[left - notes.length]!, state);
      if (words.every((word) => line.haystack.includes(word))) {
        total++;
        if (found.length < limit) found.push(line);
      }
      // The clock is not free either.
      if (n % LINES_A_LOOK === 0 && performance.now() > end) break;
    }
    if (left > 0) timer = setTimeout(turn);
    tell({ found: [...found], total, isAll: left === 0 });
  };
  turn();
  return () => clearTimeout(timer);
}
