import { readNote, SILENCE } from '../../core/conversation/read-note.ts';
import type { Entry } from '../../shared/entry.ts';
import type { Conversation, Reading } from '../../shared/note.ts';
import type { QuiltGrid } from '../../shared/quilt.ts';

/** An invented quilt: six rows of five, with two reds so that "the red" is in doubt. */
export const QUILT: QuiltGrid = {
  rows: 6,
  blocks: 5,
  fabrics: {
    'blue gingham': ['1-1', '4-2'],
    'pink sprig': ['1-3', '3-2'],
    'red check': ['5-5'],
    'red stripe': ['6-1'],
  },
};

/** Reads the notes one after the other, a minute apart, and gives every reading and the conversation after it. */
export function tell(
  notes: string[],
  quilt: QuiltGrid = QUILT,
): { readings: Reading[]; conversations: Conversation[] } {
  const readings: Reading[] = [];
  const conversations: Conversation[] = [];
  let conversation: Conversation = SILENCE;
  notes.forEach((text, k) => {
    const at = `2026-05-06T16:${String(10 + k).padStart(2, '0')}:00+01:00`;
    const read = readNote(text, { at, quilt, conversation });
    conversation = read.conversation;
    readings.push(read.reading);
    conversations.push(conversation);
  });
  return { readings, conversations };
}

/** An entry in one line: kind, then slots without names or cloth, so that a table of cases stays readable. */
export function line(entry: Entry): string {
  const parts: string[] = [];
  for (const [slot, value] of Object.entries(entry)) {
    if (slot === 'kind' || slot === 'name' || slot === 'fabric') continue;
    if (slot === 'places') parts.push(`@${[...(value as string[])].sort().join(',')}`);
    else if (slot === 'cost') {
      const cost = value as { amount: number; each?: boolean };
      parts.push(`$${cost.amount}${cost.each ? ' each' : ''}`);
    } else parts.push(String(value).replace(/^2026-05-06T/, ''));
  }
  return `${entry.kind}: ${parts.sort().join(' ')}`;
}

/** Act, open question and entries of the last of the notes. */
export function outcome(
  notes: string[],
  quilt?: QuiltGrid,
): { act: string; ask: string | null; entries: string[] } {
  const reading = tell(notes, quilt).readings.at(-1)!;
  return {
    act: reading.act,
    ask: reading.ask?.slot ?? null,
    entries: reading.entries.map((read) => line(read.entry)).sort(),
  };
}
