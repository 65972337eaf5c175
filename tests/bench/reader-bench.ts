import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { readNote, SILENCE } from '../../core/conversation/read-note.ts';
import type { Conversation } from '../../shared/note.ts';
import type { QuiltGrid } from '../../shared/quilt.ts';

type Measured = { name: string; value: string; target: string };
type CorpusNote = { thread: string; at: string; text: string; quilt?: QuiltGrid };

const CORPUS = fileURLToPath(new URL('../corpus', import.meta.url));
const ROUNDS = 5;

/** The reader on one core: notes a second over the development corpora, and notes far longer than any that is spoken. */
export async function benchReader(): Promise<Measured[]> {
  const notes = corpusNotes();
  readAll(notes);
  let ms = 0;
  for (let round = 0; round < ROUNDS; round++) ms += processorMs(() => readAll(notes));
  const perSecond = (notes.length * ROUNDS) / (ms / 1000);
  const longest = notes.map((n) => n.text).join(' ');
  const long = (chars: number): number =>
    processorMs(() =>
      readNote(longest.repeat(Math.ceil(chars / longest.length)).slice(0, chars), circumstances()),
    );
  long(50_000);
  const half = long(50_000);
  const whole = long(100_000);
  return [
    {
      name: `notes read, of ${notes.length} of the corpora`,
      value: `${Math.round(perSecond).toLocaleString('en')} a second`,
      target: '≥ 5,000 a second',
    },
    { name: 'a note of 100,000 characters', value: `${whole.toFixed(0)} ms`, target: '≤ 1 s' },
    { name: 'the same beside one of 50,000', value: `${(whole / half).toFixed(2)} ×`, target: '≤ 2.5 ×' },
  ];
}

function corpusNotes(): CorpusNote[] {
  const files = [
    'examples.jsonl',
    'demo.jsonl',
    ...readdirSync(`${CORPUS}/dev`)
      .filter((name) => name.endsWith('.jsonl'))
      .map((name) => `dev/${name}`),
  ];
  return files.flatMap((name) =>
    readFileSync(`${CORPUS}/${name}`, 'utf8')
      .split('\n')
      .filter(Boolean)
      .map((line) => JSON.parse(line) as CorpusNote),
  );
}

/** Every thread from its beginning, each note standing on those before it. */
function readAll(notes: CorpusNote[]): void {
  const threads = new Map<string, { quilt: QuiltGrid; conversation: Conversation }>();
  for (const note of notes) {
    const known = threads.get(note.thread);
    const quilt = note.quilt ?? known?.quilt ?? { rows: 6, blocks: 6 };
    const { conversation } = readNote(note.text, {
      at: note.at,
      quilt,
      conversation: known?.conversation ?? SILENCE,
    });
    threads.set(note.thread, { quilt, conversation });
  }
}

const circumstances = (): Parameters<typeof readNote>[1] => ({
  at: '2026-03-14T10:30:00-05:00',
  quilt: { rows: 7, blocks: 6, fabrics: { 'blue gingham': ['1-1', '2-4'] } },
  conversation: SILENCE,
});

/** Processor time, which other work on the machine does not lengthen. */
function processorMs(work: () => void): number {
  const before = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
}
