import { threadOf } from './evolve.ts';
import type { LogParts } from './log.ts';
import type { LoggedNote } from './state.ts';

/**
 * The note that "scratch that" or an amendment is about: the last of its thread that logged something
 * which still stands. Questions and talk aside don't count; where the last one is already taken back,
 * it is the one before. `before` looks only at notes before that place in the journal's order, as they stood there: what a
 * note behind it has taken back stood then.
 */
export function lastStandingNote(
  parts: LogParts,
  thread: string,
  before: number = parts.notes.size,
): string | undefined {
  for (let i = before - 1; i >= 0; i--) {
    const logged = parts.notes.get(i)?.logged;
    if (!logged?.reading || threadOf(logged.note) !== thread) continue;
    const logs = logged.reading.act === 'log' || logged.reading.act === 'amend';
    if (logs && stoodBefore(parts, logged, before)) return logged.note.id;
  }
  return undefined;
}

function stoodBefore(
  parts: LogParts,
  { replacedBy, entryIds, setAside }: LoggedNote,
  before: number,
): boolean {
  if (replacedBy === undefined) return entryIds.length > 0;
  const at = parts.noteIndex.get(replacedBy);
  return at !== undefined && at >= before && entryIds.length + (setAside?.length ?? 0) > 0;
}
