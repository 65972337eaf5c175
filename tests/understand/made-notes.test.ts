import { expect, it } from 'vitest';
import { readNote, SILENCE } from '../../core/conversation/read-note.ts';
// @ts-expect-error the contract's own scorer is plain JavaScript
import { compare } from '../contract/score.mjs';
import { MADE_QUILT, makeNotes } from './made-notes.ts';
import { AFTERNOON } from './two-cloths.ts';

type Tally = { miss: string[]; extra: string[] };

/**
 * Plain sentences that nobody wrote: a grammar makes them, with their answer. They show a rule that reaches over a joint into
 * the next statement, or stops before the end of a list. Common ways of talking, no source.
 */
it('notes made from a grammar are read as it made them', () => {
  const notes = makeNotes(1500, 5);
  const wrong = notes.flatMap(({ text, entries }) => {
    const { reading } = readNote(text, { at: AFTERNOON, quilt: MADE_QUILT, conversation: SILENCE });
    const { miss, extra } = compare(
      entries,
      reading.entries.map((e) => e.entry),
    ) as Tally;
    return reading.act === 'log' && !miss.length && !extra.length
      ? []
      : [`${text}\n    missing ${miss.join(' ')}; too much ${extra.join(' ')}`];
  });
  console.log(`${wrong.length} of ${notes.length} misread\n${wrong.slice(0, 12).join('\n')}`);
  expect(wrong.length / notes.length).toBeLessThanOrEqual(0.05);
});
