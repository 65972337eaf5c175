import { describe, expect, it } from 'vitest';
import { placesSaid, readLast } from './bench-quilt.ts';

const row = (r: number): string[] => [1, 2, 3, 4, 5, 6].map((b) => `${r}-${b}`);
const column = (b: number): string[] => [1, 2, 3, 4, 5, 6, 7].map((r) => `${r}-${b}`);

/** value <- many phrasings, on a quilt of seven rows of six. */
const TABLE: [value: string[], phrasings: string[]][] = [
  [
    ['6-2'],
    [
      'row six block two is stained',
      'r6 b2 stained',
      '6-2 stained',
      'six two is stained',
      'the second block of row six is stained',
      'stain on block two, row six',
      'the sixth row, second block along, is stained',
      'bottom row but one, second block: stain',
    ],
  ],
  [
    row(3),
    [
      'row three is stained',
      'the third row is stained all along',
      'every block in row three is stained',
      'all of row three is stained',
    ],
  ],
  [
    [...row(2), ...row(3), ...row(4)],
    ['rows two to four are stained', 'stain across rows 2-4', 'rows two three and four are stained'],
  ],
  [
    column(6),
    [
      'column six is stained',
      'the right-hand column is stained',
      'the last column is stained',
      'stain down the sixth column',
    ],
  ],
  [
    ['1-6'],
    [
      'the top right block is stained',
      'the block in the top right-hand corner is stained',
      'top right-hand block: stain',
    ],
  ],
  [
    ['1-1', '1-6', '7-1', '7-6'],
    ['stain on the four corner blocks', 'the corner blocks are stained'],
  ],
  [['corner-top-right'], ['the top right corner of the quilt is stained', 'TR corner of quilt stained']],
  [
    ['border-left'],
    ['stain on the left border', 'the border on the left is stained', 'left-hand border stained'],
  ],
  [
    ['edge-bottom'],
    [
      'stain along the bottom of the binding',
      'the binding is stained along the bottom',
      'bottom edge stained',
    ],
  ],
  [
    ['border-top', 'border-left'],
    ['stains on the top and left borders', 'top and left borders stained'],
  ],
  [['backing'], ['the backing is stained', 'stain on the back']],
  [
    ['2-1', '2-5'],
    [
      'blocks one and five of row two are stained',
      '2-1 and 2-5 are stained',
      'stained: 2-1, 2-5',
      'r2 b1 & b5 stained',
    ],
  ],
  [
    ['2-1', '2-2'],
    ['the first two blocks of row two are stained', 'row two, the first two blocks, stained'],
  ],
  [
    ['2-4', '2-5', '2-6'],
    ['the last three in row two are stained', 'row two blocks four to six are stained'],
  ],
  [['2-5'], ['the last but one in row two is stained', 'the second to last block in row two is stained']],
  [['2-1', '2-3', '2-5'], ['every other block in row two is stained']],
  [
    ['4-3', '4-4'],
    ['the plum silk is stained', 'stain on all the plum silk'],
  ],
  [
    ['1-1', '2-4', '5-6'],
    ['all the gingham ones are stained', 'every gingham block is stained'],
  ],
  [['3-2'], ['the brown stripe in row three is stained', 'row two, no, row three block two is stained']],
  [
    ['1-1', '5-6'],
    ["the gingham's stained, all bar 2-4", 'the gingham is stained except in 2-4'],
  ],
  [
    ['2-1', '2-2', '2-3', '2-4', '2-5'],
    ['row two is stained except for the last block', 'row two is stained bar the end one'],
  ],
  [
    ['2-1', '2-2', '2-4', '2-5', '2-6'],
    [
      'row two is stained bar the third one along',
      "all of row two's stained but for the third from the left",
      'every block in row two is stained except the third one along',
    ],
  ],
  [['7-5', '7-6'], ['mould in the last two columns, just the bottom row of them']],
  [
    ['2-1', '3-1'],
    ['seam between 2-1 and 3-1 is split', 'the seam 2-1/3-1 has gone'],
  ],
];

describe('blocks and parts, in many words', () => {
  for (const [value, phrasings] of TABLE)
    it.each(phrasings)('%s', (said) => {
      expect(placesSaid(said).sort()).toEqual([...value].sort());
    });
});

describe('places that rest on what was said before', () => {
  it.each([
    [['stain on 2-2', 'the one below is stained too'], ['3-2']],
    [['stain on 2-2', 'and the one to the right of it is stained'], ['2-3']],
    [['stain on 2-2', 'so is the whole of that row'], row(2)],
    [
      ['stain on 2-2 and 5-5', 'both are torn as well'],
      ['2-2', '5-5'],
    ],
    [['stain on 2-2 and 5-5', 'the first of them is torn as well'], ['2-2']],
    [
      ['stain on 2-2', 'stained on either side of it as well'],
      ['2-1', '2-3'],
    ],
    [['stain on 2-2', 'the block diagonally below it to the left is stained'], ['3-1']],
    [
      ['stain on 2-2', 'the four around it are torn'],
      ['1-2', '2-1', '2-3', '3-2'],
    ],
    [
      ['stain on 2-2', 'the seam on its left is open'],
      ['2-1', '2-2'],
    ],
    [
      ['stain on 2-2', 'the seam below has split'],
      ['2-2', '3-2'],
    ],
    [['stain on 1-1', 'the seam above it has split'], ['1-1']],
    [['the left border is stained', 'the right one is torn'], ['border-right']],
    [
      ['the left border is stained', 'so are the other three'],
      ['border-top', 'border-right', 'border-bottom'],
    ],
  ])('%j', (notes, places) => {
    expect(placesSaid(notes).sort()).toEqual([...places].sort());
  });
});

describe('all but a line, and all beyond one', () => {
  it.each([
    ['everything below row five is filthy', [...row(6), ...row(7)]],
    ['all the blocks above row three are sound', [...row(1), ...row(2)]],
    ['everything to the left of column two has faded', column(1)],
    ['the left half is faded', [...column(1), ...column(2), ...column(3)]],
    ["2-3 is torn, everything else in row two's fine", ['2-3', ...row(2).filter((p) => p !== '2-3')]],
    [
      'row two: the third one is torn, everything else is fine',
      ['2-3', ...row(2).filter((p) => p !== '2-3')],
    ],
    // of the block, of the border, of the note
    ['2-3 is stained in the left half', ['2-3']],
    ['2-3 is torn at the bottom edge', ['2-3']],
    ['the border is frayed along the left half', ['border']],
    [['2-3 is torn', 'make it a hole, everything else stands'], ['2-3']],
  ])('%j', (said, places) => {
    expect(placesSaid(said).sort()).toEqual([...places].sort());
  });
});

describe('squares are blocks', () => {
  it.each([
    ['squares 3-1 and 3-2 have been pressed', ['3-1', '3-2']],
    ['squares 3-1, 4-2 and 5-1: worn', ['3-1', '4-2', '5-1']],
    ['patched square three one and square 4-2', ['3-1', '4-2']],
  ])('%s', (said, places) => {
    expect(placesSaid(said)).toEqual(places);
  });
});

describe('what names no block', () => {
  it.each([
    'bought three yards at two pounds a yard',
    'two or three more ties would do it',
    'phone rang twice, half one and ten to two',
    'it took four goes to thread the needle',
  ])('%s', (said) => {
    expect(placesSaid(said).filter((p) => /^\d/.test(p))).toEqual([]);
  });

  it('asks for the place of a block that the quilt has not got, and logs none', () => {
    const reading = readLast("there's a stain on row nine block two");
    expect(reading.ask?.slot).toBe('place');
    expect(placesSaid("there's a stain on row nine block two")).toEqual([]);
  });

  it('asks which, where one of several is meant and cannot be known', () => {
    expect(readLast('one of the gingham ones is stained').ask?.slot).toBe('place');
  });
});
