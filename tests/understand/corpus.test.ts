import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { readNote, SILENCE } from '../../core/conversation/read-note.ts';
import type { Conversation } from '../../shared/note.ts';
import type { QuiltGrid } from '../../shared/quilt.ts';
// @ts-expect-error the contract's own scorer is plain JavaScript
import { compare } from '../contract/score.mjs';

type GoldNote = {
  thread: string;
  at: string;
  text: string;
  quilt?: QuiltGrid;
  gold: { act?: string; query?: string; entries?: unknown[] };
};
type Tally = { hit: string[]; miss: string[]; extra: string[] };

const CORPUS = fileURLToPath(new URL('../corpus', import.meta.url));

/** Slot F1 and the share of whole notes right, by the contract's scorer. */
function score(files: string[]): { slotF1: number; whole: number; notes: number } {
  const threads = new Map<string, { quilt: QuiltGrid; conversation: Conversation }>();
  let hit = 0;
  let wrong = 0;
  let right = 0;
  let notes = 0;
  for (const file of files)
    for (const line of readFileSync(`${CORPUS}/${file}`, 'utf8').split('\n').filter(Boolean)) {
      const note = JSON.parse(line) as GoldNote;
      const known = threads.get(note.thread);
      const quilt = note.quilt ?? known!.quilt;
      const { reading, conversation } = readNote(note.text, {
        at: note.at,
        quilt,
        conversation: known?.conversation ?? SILENCE,
      });
      threads.set(note.thread, { quilt, conversation });
      const t = compare(
        note.gold.entries,
        reading.entries.map((e) => e.entry),
      ) as Tally;
      hit += t.hit.length;
      wrong += t.miss.length + t.extra.length;
      notes++;
      const act =
        (note.gold.act ?? 'log') === reading.act && (note.gold.query ?? null) === (reading.query ?? null);
      if (act && !t.miss.length && !t.extra.length) right++;
    }
  return { slotF1: (2 * hit) / (2 * hit + wrong), whole: right / notes, notes };
}

const dev = readdirSync(`${CORPUS}/dev`)
  .filter((name) => name.endsWith('.jsonl'))
  .map((name) => `dev/${name}`);
/** The sets that the first rules were written with; the later ones were kept aside for a time. */
const first = dev.filter((file) => /\/[a-f]\.jsonl$/.test(file));

/** Six and a half thousand notes take long where other tests run beside them. */
const LONG_MS = 240_000;

describe('the corpora, by the scorer of the contract', () => {
  it.each([
    { name: 'examples', files: ['examples.jsonl'], slotF1: 0.95, whole: 0.85 },
    { name: 'demo', files: ['demo.jsonl'], slotF1: 0.95, whole: 0.9 },
    { name: 'development, the first sets', files: first, slotF1: 0.9, whole: 0.73 },
    { name: 'development', files: dev, slotF1: 0.86, whole: 0.62 },
  ])(
    '$name',
    ({ name, files, slotF1, whole }) => {
      const reached = score(files);
      console.log(
        `${name}: ${reached.notes} notes, slot F1 ${reached.slotF1.toFixed(4)}, whole notes right ${reached.whole.toFixed(4)}`,
      );
      expect(reached.slotF1).toBeGreaterThanOrEqual(slotF1);
      expect(reached.whole).toBeGreaterThanOrEqual(whole);
    },
    LONG_MS,
  );
});
