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
    ['the seam that joins three, two, to three, three, is open', 'the seam that joins 3-2 to 3-3, is open'],
    ['in one, two and two five it is torn', 'in 1-2 and 2-5 it is torn'],
    ['1 to 3, the rabbit has a tear', '1-3, the rabbit has a tear'],
    ['no 2 for those two are torn', 'no 2-4 those two are torn'],
    ['the piece in 4 to it was frayed', 'the piece in 4-2 it was frayed'],
    ['moth in 1, 1 and 1 to 4, net over', 'moth in 1-1 and 1-4, net over'],
    ['tear 2 to 4, moth in the tan check', 'tear 2-4, moth in the tan check'],
    ['1 to 3, patch or darn', '1-3, patch or darn'],
    ['squares 2 to 3 and 2 to 4, moth', 'squares 2-3 and 2-4, moth'],
    ['R1 be 2 and be 3 are torn', 'r1 b 2 and b 3 are torn'],
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
    ['layered it for an overhang', 'layered it four in overhang'],
    ['top 62 and a half in bottom 63', 'top 62 and a half inches bottom 63'],
    ['1-hr-20 for both', '1 hr 20 for both'],
    ['mending since 6.20 cm', 'mending since 6.20 pm'],
    ['15 minoiling the machine', '15 min oiling the machine'],
    ['strips at a m inches', 'strips at inches'],
    ['another and ten minutes', 'an hour and ten minutes'],
    ['in hour and 10 for the cutting', 'an hour and 10 for the cutting'],
    ['strips to and a half inches', 'strips two and a half inches'],
    ['a yard and 5 8 of muslin', 'a yard and 5/8 of muslin'],
    ['a spool of thread for 475', 'a spool of thread for 4.75'],
    ['thread 2 pound 10 each', 'thread 2.10 pound each'],
    ['mending 13, 10 to 16, 40', 'mending 13:10 to 16:40'],
    ['cleaning 10-05-11-15', 'cleaning 10:05 to 11:15'],
    ['finished at 14-10', 'finished at 14:10'],
    ['thread, 2 point for 0', 'thread, 2.40'],
    ['ten centimbers apart', 'ten cm apart'],
    ['four scoops of red worsted', 'four skeins of red worsted'],
    ['98 and 3-4 the other way', '98 and 3/4 the other way'],
    ['washed 905950', 'washed 9:05 to 9:50'],
    ['15 30 start mending', '15:30 start mending'],
    ['5 and 20 past 3', '25 past 3'],
    ['strips to and an eighth inches', 'strips two and an eighth inches'],
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
    ['leave a replace', 'leave or replace'],
    ['darn or patch and decided', 'darn or patch , undecided.'],
    ['rays stitch the loose edge', 'restitched the loose edge'],
    ['next i hold piece the border', "next i 'll piece the border"],
    ['umon picked that piece', 'unpicked that piece'],
    ['one that quarter pink print', 'one fat quarter pink print'],
    ['split, close by machine', 'split, closed by machine'],
    ['started at seven brush the dust off', 'started at seven brushed the dust off'],
    ['so the bottom one back down', 'sewed the bottom one back down'],
    ['and unpatched one five', 'and patched one five'],
    ['and pick the binding off', 'unpicked the binding off'],
    ["one's staining as it is", "one's staying as it is"],
    ["the column's tight except", "the column's tied except"],
    ['the wadding is will', 'the wadding is wool'],
    ['a crat line over it', 'a crepeline over it'],
    ['quilt the looking over', 'quit the looking over'],
    ['the four throw', 'the fourth row'],
    ['those one ones', 'those worn ones'],
    ['tell it is, on all', 'tulle it is, on all'],
    ['accept for blocks two and three', 'except for blocks two and three'],
    ['it has to rust stain', 'it has a rust stain'],
    ['vacuaming of the front', 'vacuuming of the front'],
    ['must by 5 m of that', 'must buy 5 m of that'],
    ['i got a by half a yard', 'i got to buy half a yard'],
    ['took the binding of the bottom edge', 'took the binding off the bottom edge'],
    ['to it that old patch off', 'took that old patch off'],
    ['no way, the patch was red', 'no wait, the patch was red'],
    ['cut out and replace with red', 'cut out and replaced with red'],
    ['worn once, net over', 'worn ones, net over'],
  ],
  'the end of a statement': [
    ['still open, tie it or quilt it', 'still open: tie it or quilt it'],
    ['not decided yet tie it or quilt it', 'not decided yet: tie it or quilt it'],
    ['open, thread, settled, cold wash only', 'open: thread. settled: cold wash only'],
    ["that's settled it gets tied", "that's settled, it gets tied"],
    ['running stitch grey thread', 'running stitch, grey thread'],
    ['backing sound no holes', 'backing sound, no holes'],
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
  'so the top is sound',
  'so it came back',
  'tied it and decided on wool',
  '3-2 seam with a hole',
  'another and a half yards',
  'nothing over it',
  'two ounces of soap',
  'the block to its left',
  'the binding is tight',
  'it has to tear it off',
  'raffled off in 74 and kept',
])('heard and left as it is: %s', (said) => {
  expect(read(said, true)).toBe(said);
});

it.each(['not 3-3-3-2', '3 to 5 patched', 'call for, tulle over it', 'the top three know the top four'])(
  'typed, and left as it is: %s',
  (said) => {
    expect(read(said, false)).toBe(said);
  },
);
