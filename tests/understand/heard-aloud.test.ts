import { describe, expect, it } from 'vitest';
import { putSlipsRight } from '../../core/rules/slips/put-right.ts';
import { tokenise } from '../../core/text/tokenise.ts';

const grid = { rows: 7, blocks: 5, fabrics: { 'blue gingham': ['1-1'], 'tan check': ['2-2'] } };
const read = (text: string, spoken: boolean): string =>
  putSlipsRight(tokenise(text), undefined, grid.fabrics, spoken, grid)
    .tokens.map(({ w, glued }, k) => (k > 0 && !glued ? ` ${w}` : w))
    .join('');

/** What was heard, and what it is read as. */
const MEANT: Record<string, [heard: string, meant: string][]> = {
  "blocks' names": [
    ['not 3-3-3-2', 'not 3-3, 3-2'],
    ['the seam between four and four five', 'the seam between 4-4 and 4-5'],
    ['between 2 to 4 and 3 to 4', 'between 2-4 and 3-4'],
    ['blocks two to three to two to five', 'blocks 2-3 to 2-5'],
    ['stabilized 1 to 5 and 4, 4 from behind', 'stabilized 1-5 and 4-4 from behind'],
    ['3 to 5 patched', '3-5 patched'],
    ['clumped in 55 and loose', 'clumped in 5-5 and loose'],
    ['resewed 6162 by hand', 'resewed 6-1 and 6-2 by hand'],
    ['moth in it, for three has a hole', 'moth in it, 4-3 has a hole'],
    ['seam to one slash to two split', 'seam 2-1 and 2-2 split'],
    ['holes one, one, two, two, four, four, four', 'holes one, one, two, two, four, four'],
    ['patched five five in teal', 'patched 5-5 in teal'],
  ],
  'numbers and units': [
    ['ties, for in apart', 'ties, four in apart'],
    ['four in a part', 'four in apart'],
    ['need to m calico', 'need two m calico'],
    ['100 and 4 cm across', '104 cm across'],
    ['it is 180 to 0.5 cm', 'it is 182.5 cm'],
    ['top 1.6 to m', 'top 1.62 m'],
    ['bought print 3.502 packs needles', 'bought print 3.50, 2 packs needles'],
    ['bought sharps 4.10-500 ml soap', 'bought sharps 4.10, 500 ml soap'],
    ['muslin at 799 slash yard', 'muslin at 7.99 a yard'],
    ['mending 0 8 0 0 to 0 9 4 0', 'mending 0800 to 0940'],
    ['since 6.2 0 pm', 'since 6.20 pm'],
    ['since 1 30 mending', 'since 1:30 mending'],
    ['patched it, 38-man', 'patched it, 38 min'],
    ['border four and a half-in', 'border four and a half inches'],
    ['cutting 25 min, piecing 120', 'cutting 25 min, piecing 1:20'],
  ],
  'marks, sides and short forms': [
    ['else side 80, are side 79', 'left side 80, right side 79'],
    ['label to go on bottom or corner', 'label to go on bottom right corner'],
    ['blanket saint round it', 'blanket stitch round it'],
    ['bound it, let her street', 'bound it, ladder stitch'],
    ['held w the pins', 'held with the pins'],
  ],
  'little words': [
    ['the top three know the top four', 'the top three no the top four'],
    ['all the blue gingham once faded', 'all the blue gingham ones faded'],
    ['they are all faded by the one in the corner', 'they are all faded bar the one in the corner'],
    ['it is Rose X', 'it is row six'],
    ['row force mells musty', 'row four smells musty'],
    ['call for, tulle over it', 'col four, tulle over it'],
    ['the quiltings let go', "the quilting's let go"],
    ['red me back everything', 'read me back everything'],
  ],
  'the end of a statement': [
    ['still open, tie it or quilt it', 'still open: tie it or quilt it'],
    ['2-1 torn, 3-1 puckered', '2-1 torn. 3-1 puckered'],
  ],
};

describe.each(Object.entries(MEANT))('heard: %s', (_, rows) => {
  it.each(rows)('%s', (heard, meant) => {
    expect(read(heard, true)).toBe(meant);
  });
});

it.each([
  'rows 3 to 5 patched',
  'worked from 2 to 4 and 5 to 6',
  'in 55 minutes',
  'it came out in 1942 and went back',
  'the seam between two and four five',
  'i know the top is sound',
  'it went on for hours',
  'enough for yards and yards',
  'need 1.375 yards',
  'once it is dry',
  'done by the one who made it',
  'torn, 3-1, 3-2 and 4-4',
  'our border is on',
])('heard and left as it is: %s', (said) => {
  expect(read(said, true)).toBe(said);
});

it.each(['not 3-3-3-2', '3 to 5 patched', 'call for, tulle over it', 'the top three know the top four'])(
  'typed, and left as it is: %s',
  (said) => {
    expect(read(said, false)).toBe(said);
  },
);
