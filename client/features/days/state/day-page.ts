import type { LoggedEntry, LoggedNote, QuiltState } from '../../../../core/log/state.ts';
import { localTime } from '../../../words/local-time.ts';

/** The headings of a day's page, in the order in which they stand. */
export const DAY_HEADINGS = ['found', 'done', 'bought', 'measured', 'decided', 'open', 'passing'] as const;
export type DayHeading = (typeof DAY_HEADINGS)[number];

export type DayLine = { entry: LoggedEntry; note?: LoggedNote; time: string; unsure: boolean };
export type DayPage = {
  date: string;
  lines: Record<DayHeading, DayLine[]>;
  /** Talk that is no part of the work, and notes that gave no entry. */
  asides: { note: LoggedNote; time: string }[];
  /** Answers to the record's questions. */
  told: { note: LoggedNote; time: string }[];
  /** Words whose reading asked for something that no later word answered. */
  asked: { note: LoggedNote; time: string; question: string }[];
  entryCount: number;
  unconfirmed: LoggedEntry[];
};

/** Under this the recogniser's own figure counts as doubtful. */
const UNSURE_BELOW = 0.6;

/** All dates that anything was said on, in order. */
export function datesOf(state: QuiltState): string[] {
  const dates = new Set<string>();
  for (const { note } of state.notes) dates.add(localTime(note.at, state.quilt.zone).date);
  for (const entry of state.entries) dates.add(localTime(entry.at, state.quilt.zone).date);
  return [...dates].sort();
}

/** One day of the log as a workbook page. */
export function dayPage(state: QuiltState, date: string): DayPage {
  const lines: DayPage['lines'] = {
    found: [],
    done: [],
    bought: [],
    measured: [],
    decided: [],
    open: [],
    passing: [],
  };
  const notes = new Map(state.notes.map((logged) => [logged.note.id, logged]));
  const unconfirmed: LoggedEntry[] = [];
  let entryCount = 0;
  for (const entry of state.entries) {
    const local = localTime(entry.at, state.quilt.zone);
    if (local.date !== date) continue;
    const heading = headingOf(entry);
    const note = entry.noteId === undefined ? undefined : notes.get(entry.noteId);
    entryCount++;
    if (!entry.confirmed) unconfirmed.push(entry);
    if (heading === null) continue;
    lines[heading].push({
      entry,
      ...(note ? { note } : {}),
      time: local.time,
      unsure: isUnsure(entry, note),
    });
  }
  for (const list of Object.values(lines)) list.sort((a, b) => Number(b.unsure) - Number(a.unsure));
  const asides: DayPage['asides'] = [];
  const told: DayPage['told'] = [];
  const asked: DayPage['asked'] = [];
  for (const note of state.notes) {
    const local = localTime(note.note.at, state.quilt.zone);
    if (local.date !== date) continue;
    if (note.refiledAs === 'aside' || (note.reading?.act === 'aside' && note.refiledAs !== 'work')) {
      asides.push({ note, time: local.time });
    }
    const { answers } = note.reading ?? {};
    if (answers && answers !== 'round' && !note.entryIds.length && !note.replacedBy) {
      told.push({ note, time: local.time });
    }
    if (
      note.reading?.ask &&
      asksAbout(note) &&
      !note.replacedBy &&
      note.entryIds.some((id) => stillAsks(state, id))
    ) {
      asked.push({ note, time: local.time, question: note.reading.ask.question });
    }
  }
  return { date, lines, asides, told, asked, entryCount, unconfirmed };
}

function stillAsks(state: QuiltState, entryId: string): boolean {
  const found = state.entries.find((entry) => entry.id === entryId);
  return found !== undefined && !found.byHand && !found.confirmed;
}

/** Work entries have no heading: they are the day's hours. */
function headingOf({ entry }: LoggedEntry): DayHeading | null {
  switch (entry.kind) {
    case 'condition':
      return 'found';
    case 'treatment':
      if (entry.state === 'done' || entry.state === 'doing')
        return entry.action === 'leave' ? 'decided' : 'done';
      return entry.state === 'considering' ? 'open' : 'decided';
    case 'material':
      return 'bought';
    case 'measurement':
      return 'measured';
    case 'decision':
      return entry.status === 'open' ? 'open' : 'decided';
    case 'work':
      return null;
    case 'remark':
      return 'passing';
  }
}

/** Whether a note's own words left something open; what the record asks after it is no doubt about it. */
export const asksAbout = (note: LoggedNote | undefined): boolean =>
  Boolean(note?.reading?.ask) && note?.reading?.ask?.slot !== 'record';

function isUnsure(entry: LoggedEntry, note: LoggedNote | undefined): boolean {
  if (entry.confirmed || entry.byHand) return false;
  return (note?.note.audio?.confidence ?? 1) < UNSURE_BELOW || asksAbout(note);
}
