import type { LoggedEntry, QuiltState } from '../log/state.ts';

/** A moment at which something was logged: she was at work, or telling of it. */
export type Sign = {
  /** Minutes since 1970, UTC, cut to the minute. */
  at: number;
  /** Its note's id; for an entry put in by hand without one, the entry's. */
  id: string;
  noteId?: string;
  entries: LoggedEntry[];
};

/** The notes of a log that logged something, in the order of their moments. */
export function signsOfWork(state: QuiltState): Sign[] {
  const signs: Sign[] = [];
  let last: Sign | undefined;
  for (const entry of state.entries) {
    const id = entry.noteId ?? entry.id;
    if (last?.id === id) {
      last.entries.push(entry);
      continue;
    }
    last = {
      at: Math.floor(Date.parse(entry.at) / 60_000),
      id,
      ...(entry.noteId === undefined ? {} : { noteId: entry.noteId }),
      entries: [entry],
    };
    signs.push(last);
  }
  return signs.sort((a, b) => a.at - b.at);
}
