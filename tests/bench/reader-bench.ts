import { readdirSync, readFileSync } from 'node:fs';
import { readNote, SILENCE } from '../../core/conversation/read-note.ts';
import type { Conversation } from '../../shared/note.ts';
import type { QuiltGrid } from '../../shared/quilt.ts';

type Line = { thread: string; at: string; text: string; quilt?: QuiltGrid };

const CORPUS = new URL('../corpus/dev/', import.meta.url);

/** Reads the development corpus from beginning to end, each thread with its own conversation. */
function readAll(notes: Line[]): void {
  const threads = new Map<string, { quilt: QuiltGrid; conversation: Conversation }>();
  for (const note of notes) {
    const thread = threads.get(note.thread) ?? {
      quilt: note.quilt ?? { rows: 6, blocks: 6 },
      conversation: SILENCE,
    };
    thread.conversation = readNote(note.text, { at: note.at, ...thread }).conversation;
    threads.set(note.thread, thread);
  }
}

/** How fast notes are read, in time of the processor, on one core. */
export async function benchReader(): Promise<{ name: string; value: string; target: string }[]> {
  const notes = readdirSync(CORPUS)
    .filter((name) => name.endsWith('.jsonl'))
    .flatMap((name) => readFileSync(new URL(name, CORPUS), 'utf8').split('\n').filter(Boolean))
    .map((line) => JSON.parse(line) as Line);
  readAll(notes);
  const before = process.cpuUsage();
  readAll(notes);
  const used = process.cpuUsage(before);
  const perSecond = notes.length / ((used.user + used.system) / 1e6);
  const long = 'row two block three has a tear and '.repeat(2860);
  const longBefore = process.cpuUsage();
  readNote(long, {
    at: '2026-03-14T10:30:00Z',
    quilt: { rows: 6, blocks: 6 },
    conversation: SILENCE,
  });
  const longUsed = process.cpuUsage(longBefore);
  return [
    { name: 'notes read in a second', value: perSecond.toFixed(0), target: '>= 5000' },
    {
      name: `a note of ${long.length} characters`,
      value: `${((longUsed.user + longUsed.system) / 1e3).toFixed(0)} ms`,
      target: '<= 1000 ms',
    },
  ];
}
