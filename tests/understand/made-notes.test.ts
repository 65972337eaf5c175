import { expect, it } from 'vitest';
import { readNote, SILENCE } from '../../core/conversation/read-note.ts';
import { tally } from './gold-notes.ts';
import { MADE_QUILT, makeNotes } from './made-notes.ts';
import { AFTERNOON } from './two-cloths.ts';

/**
 * Plain sentences that nobody wrote: a grammar makes them, with their answer. They show a rule that reaches over a joint into
 * the next statement, or stops before the end of a list. Common ways of talking, no source.
 */
it('notes made from a grammar are read as it made them', () => {
  const notes = makeNotes(1500, 5);
  const wrong = notes.flatMap(({ text, entries }) => {
    const { reading } = readNote(text, { at: AFTERNOON, quilt: MADE_QUILT, conversation: SILENCE });
    const { miss, extra } = tally(
      entries,
      reading.entries.map((e) => e.entry),
    );
    return reading.act === 'log' && !miss.length && !extra.length
      ? []
      : [`${text}\n    missing ${miss.join(' ')}; too much ${extra.join(' ')}`];
  });
  console.log(`${wrong.length} of ${notes.length} misread\n${wrong.slice(0, 12).join('\n')}`);
  expect(wrong.length / notes.length).toBeLessThanOrEqual(0.05);
});
