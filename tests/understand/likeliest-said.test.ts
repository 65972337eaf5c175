import { expect, it } from 'vitest';
import { type Heard, likeliestSaid } from '../../core/conversation/likeliest-said.ts';
import { readNote, SILENCE } from '../../core/conversation/read-note.ts';

const quilt = { rows: 6, blocks: 5, fabrics: { 'brown gingham': ['1-2', '4-4'] } };
const chosen = (...hearings: [Heard, ...Heard[]]): string =>
  likeliestSaid(
    hearings,
    (text) =>
      readNote(text, { at: '2026-03-14T14:10:00-05:00', quilt, conversation: SILENCE, spoken: true }).reading,
  ).text;
const heard = (text: string, behind = 0): Heard => ({ text, behind });

it('takes the hearing of which more is understood where the sound leaves it open', () => {
  const meant = 'Row 3, block 2, patched it by machine.';
  expect(chosen(heard('Row 3, block 2, pledged it by machine.'), heard(meant, 0.5))).toBe(meant);
  // a block that this quilt does not have
  expect(chosen(heard('Patched 3-7.'), heard('Patched 3-5.', 0.2))).toBe('Patched 3-5.');
  expect(chosen(heard('Scratch hat.'), heard('Scratch that.', 0.3))).toBe('Scratch that.');
});

it('stays with the sound where both make as much sense, and where it is clearly surer of one', () => {
  expect(chosen(heard('Patched 3-4.'), heard('Patched 3-5.', 0.01))).toBe('Patched 3-4.');
  expect(chosen(heard('The kettle is on.'), heard('Darned 2-2.', 9))).toBe('The kettle is on.');
  expect(chosen(heard('Patched 3-4.'))).toBe('Patched 3-4.');
});
