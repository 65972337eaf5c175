import type { LoggedReading } from '../../shared/event.ts';
import type { Conversation, Note, Reading } from '../../shared/note.ts';
import { putIn, threadOf, withdraw } from './evolve.ts';
import { lastStandingNote } from './last-standing-note.ts';
import type { Log, LogParts } from './log.ts';
import type { LoggedNote } from './state.ts';

/** Reads one note in the conversation before it: `readNote` with the quilt filled in. */
export type ReadAgain = (
  note: Note,
  conversation: Conversation,
) => { reading: Reading; conversation: Conversation };

/** An answer to the record's questions is no note on the work: no re-reading may make one of it. */
const isForRecord = ({ reading }: LoggedNote): boolean =>
  reading?.answers !== undefined && reading.entries.length === 0;

/**
 * Reads notes again with today's rules, in order, each in the conversation that the ones before now
 * give. Notes that were confirmed or changed by hand are left as they are. Answers with the readings
 * that came out otherwise than they stand, for a `notes-reread` event.
 */
export function rereadNotes(
  log: Log,
  read: ReadAgain,
  given: { rules: string; id: () => string; noteIds?: readonly string[] },
): { noteId: string; reading: LoggedReading }[] {
  const wanted = given.noteIds && new Set(given.noteIds);
  const rows = log.parts.notes.toArray();
  const isOpen = (i: number): boolean => {
    const logged = rows[i]!.logged;
    return (
      !isForRecord(logged) && logged.touched !== true && (wanted === undefined || wanted.has(logged.note.id))
    );
  };
  let parts = log.parts;
  for (let i = rows.length - 1; i >= 0; i--) if (isOpen(i)) parts = withdraw(parts, rows[i]!.logged.note.id);

  const conversations = new Map<string, Conversation>();
  const changed: { noteId: string; reading: LoggedReading }[] = [];
  for (const [i, { logged }] of rows.entries()) {
    if (isForRecord(logged)) continue;
    const thread = threadOf(logged.note);
    const answer = read(logged.note, conversations.get(thread) ?? {});
    conversations.set(thread, answer.conversation);
    if (!isOpen(i)) continue;
    const { act } = answer.reading;
    const target =
      act === 'amend' || act === 'undo'
        ? (emptiedByHand(parts, logged.replaces) ?? lastStandingNote(parts, thread, i))
        : undefined;
    const same =
      target === logged.replaces && JSON.stringify(answer.reading) === JSON.stringify(logged.reading);
    const oldIds = logged.entryIds.length > 0 ? logged.entryIds : (logged.setAside ?? []).map((e) => e.id);
    const reading: LoggedReading = {
      ...answer.reading,
      entryIds: answer.reading.entries.map((_, k) => (same ? oldIds[k] : undefined) ?? given.id()),
      ...(target === undefined ? {} : { targetNoteId: target }),
      rules: given.rules,
      conversation: answer.conversation,
    };
    parts = putIn(parts, logged.note.id, reading);
    const isLast = parts.lastOfThread.get(thread) === logged.note.id;
    if (!same || (isLast && changed.length > 0)) changed.push({ noteId: logged.note.id, reading });
  }
  return changed;
}

/**
 * The note that this one was about, where all its entries have been removed by hand since: nothing of it stands for the rules
 * to find again, and what was changed by hand is not to be told otherwise by a later reading.
 */
function emptiedByHand(parts: LogParts, replaced: string | undefined): string | undefined {
  if (replaced === undefined) return undefined;
  const at = parts.noteIndex.get(replaced);
  const logged = at === undefined ? undefined : parts.notes.get(at)?.logged;
  return logged?.touched && logged.entryIds.length === 0 ? replaced : undefined;
}
