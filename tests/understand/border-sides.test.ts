import { describe, expect, it } from 'vitest';
import { readNote, SILENCE } from '../../core/conversation/read-note.ts';
import { AFTERNOON, QUILT } from './two-cloths.ts';

const widths = (text: string): [string[] | undefined, number | undefined][] =>
  readNote(text, { at: AFTERNOON, quilt: QUILT, conversation: SILENCE }).reading.entries.flatMap(
    ({ entry: e }) => (e.kind === 'measurement' && e.of === 'border' ? [[e.places, e.value]] : []),
  );

describe('the widths of a border, side by side', () => {
  it.each([
    ['border five and three quarters inches at the top and four and a half down either side'],
    ['border widths: top 5 3/4, sides 4 1/2 inches'],
  ])('%s', (text) => {
    expect(widths(text)).toEqual([
      [['border-top'], 5.75],
      [['border-left', 'border-right'], 4.5],
    ]);
  });

  it('leaves the sides of the quilt alone', () => {
    expect(widths('border 5 in, top 60, right 72, bottom 61, left 72')).toEqual([[['border'], 5]]);
    expect(widths('measured the top at 61 inches by 74, then a new border goes on all four sides')).toEqual(
      [],
    );
  });
});
