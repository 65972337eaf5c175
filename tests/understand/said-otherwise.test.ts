import { describe, expect, it } from 'vitest';
import { readNote, SILENCE } from '../../core/conversation/read-note.ts';
import type { Conversation } from '../../shared/note.ts';
import type { QuiltGrid } from '../../shared/quilt.ts';
import { devThreads, type GoldNote, wrongPoints } from './gold-notes.ts';

type Known = { note: GoldNote; quilt: QuiltGrid; conversation: Conversation };

/** Every this manieth note. */
const STRIDE = 20;

const isRight = ({ note, quilt, conversation }: Known, text: string): boolean => {
  const { act = 'log', query, ask, entries } = note.gold;
  const { reading } = readNote(text, { at: note.at, quilt, conversation });
  return (
    reading.act === act &&
    reading.query === query &&
    reading.ask?.slot === ask?.slot &&
    !wrongPoints(
      entries,
      reading.entries.map((e) => e.entry),
    )
  );
};

/** The notes that are read rightly as they stand, with what was said before them. */
const RIGHT: Known[] = [];
let told = 0;
for (const notes of devThreads()) {
  const quilt = notes[0]!.quilt!;
  let conversation: Conversation = SILENCE;
  for (const note of notes) {
    const known = { note, quilt, conversation };
    if (told++ % STRIDE === 0 && isRight(known, note.text)) RIGHT.push(known);
    conversation = readNote(note.text, { at: note.at, quilt, conversation }).conversation;
  }
}

const small = (text: string): string =>
  /^(?:I\b|[A-Z]{2})/.test(text) ? text : text[0]!.toLowerCase() + text.slice(1);
const WAYS: [string, (text: string) => string][] = [
  ['in small letters', (t) => t.toLowerCase()],
  ['in capitals', (t) => t.toUpperCase()],
  ['with a breath here and there', (t) => t.replace(/(?<=[a-z,]) (?=(?:the|and|on|in|of|it)\b)/g, ' um ')],
  ['with a small word stammered', (t) => t.replace(/\b(the|and|is|in|of)\b/, '$1 $1')],
  ['with "&" for "and"', (t) => t.replaceAll(' and ', ' & ')],
  ['with apostrophes as a printer sets them', (t) => t.replaceAll("'", '’')],
  ['just to say', (t) => `just to say ${small(t)}`],
  ['good evening', (t) => `Good evening. ${t}`],
  ['let me see', (t) => `let me see, ${small(t)}`],
  ['you know', (t) => t.replace(/, /, ', you know, ')],
  ['so there we are', (t) => (/\?\s*$/.test(t) ? t : `${t.replace(/[.!]?\s*$/, '')}, so there we are.`)],
];

describe('a note says the same, however it is written and whatever is said around it', () => {
  it.each(WAYS)('%s', (_way, change) => {
    const changed = RIGHT.filter(({ note }) => change(note.text) !== note.text);
    const wrong = changed.filter((known) => !isRight(known, change(known.note.text)));
    console.log(
      `${wrong.length} of ${changed.length}`,
      wrong
        .slice(0, 5)
        .map(({ note }) => change(note.text))
        .join('\n'),
    );
    expect(changed.length).toBeGreaterThan(20);
    expect(wrong.length / changed.length).toBeLessThanOrEqual(0.05);
  });
});
