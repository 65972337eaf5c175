import { expect, it } from 'vitest';
import { readNote, SILENCE } from '../../core/conversation/read-note.ts';
import type { Conversation } from '../../shared/note.ts';
import { devThreads, type GoldNote, together, wrongPoints } from './gold-notes.ts';

type Gold = GoldNote['gold'];

/** Every this manieth thread of the development corpora. */
const STRIDE = 6;

/** Left out: hours, which hang on the note's own moment, and what the second says again of the first (a choice, a start and its end). */
const isPlain = ({ act = 'log', ask, entries }: Gold): boolean =>
  act === 'log' && !ask && entries.length > 0 && entries.every((e) => e.kind !== 'work');
const isApart = (a: Gold, b: Gold): boolean =>
  !a.entries.some((e) => e.kind === 'treatment' && e.state === 'considering') &&
  !a.entries.some((e) => e.kind === 'decision' && b.entries.some((o) => o.kind === 'decision'));

it('two notes that are read rightly are read rightly as two sentences of one', () => {
  let right = 0;
  const wrong: string[] = [];
  for (const notes of devThreads().filter((_t, n) => n % STRIDE === 0)) {
    const quilt = notes[0]!.quilt!;
    let conversation: Conversation = SILENCE;
    let before: { note: GoldNote; conversation: Conversation } | undefined;
    for (const note of notes) {
      const from = conversation;
      const read = readNote(note.text, { at: note.at, quilt, conversation: from });
      conversation = read.conversation;
      const good =
        isPlain(note.gold) &&
        read.reading.act === 'log' &&
        !read.reading.ask &&
        !wrongPoints(
          note.gold.entries,
          read.reading.entries.map((e) => e.entry),
        );
      if (good && before && isApart(before.note.gold, note.gold)) {
        const text = `${before.note.text.trim().replace(/[.;,]+$/, '')}. ${note.text.trim()}`;
        const both = readNote(text, { at: note.at, quilt, conversation: before.conversation }).reading;
        const found = both.entries.map((e) => e.entry);
        const gold = [...before.note.gold.entries, ...note.gold.entries];
        if (!wrongPoints(together(gold), found) || !wrongPoints(gold, found)) right++;
        else wrong.push(`${before.note.id}+${note.id} ${text}`);
      }
      before = good ? { note, conversation: from } : undefined;
    }
  }
  console.log(`${right} of ${right + wrong.length}`, wrong.slice(0, 10).join('\n'));
  expect(right).toBeGreaterThan(100);
  expect(right / (right + wrong.length)).toBeGreaterThanOrEqual(0.9);
});
