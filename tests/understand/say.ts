import { readNote, SILENCE } from '../../core/conversation/read-note.ts';
import type { Entry } from '../../shared/entry.ts';
import type { Conversation, Reading } from '../../shared/note.ts';
import type { QuiltGrid } from '../../shared/quilt.ts';

/** An invented quilt of seven rows of five. */
export const QUILT: QuiltGrid = {
  rows: 7,
  blocks: 5,
  fabrics: { 'blue lawn': ['3-3'], 'red spot': ['1-2', '4-4'] },
};
/** A Saturday evening, half past nine. */
export const EVENING = '2026-03-14T21:30:00+00:00';

/** Reads notes of one conversation in turn and gives the reading of the last. */
export function say(notes: string | string[], at = EVENING): Reading {
  let conversation: Conversation = SILENCE;
  let reading: Reading | undefined;
  for (const text of [notes].flat()) {
    const answer = readNote(text, { at, quilt: QUILT, conversation });
    conversation = answer.conversation;
    reading = answer.reading;
  }
  return reading!;
}

/** The entries of one kind that the last note gave, without their kind, the words for things and places. */
export function entriesOf(
  kind: Entry['kind'],
  notes: string | string[],
  at = EVENING,
): Record<string, unknown>[] {
  return say(notes, at)
    .entries.map((e) => e.entry)
    .filter((e) => e.kind === kind)
    .map((e) => {
      const {
        kind: _kind,
        name: _name,
        places: _places,
        fabric: _fabric,
        ...rest
      } = e as Record<string, unknown>;
      return rest;
    });
}
