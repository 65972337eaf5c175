import { describe, expect, it } from 'vitest';
import { conditionsSaid, readLast } from './bench-quilt.ts';

/** value <- many phrasings. */
const TABLE: [value: string[], phrasings: string[]][] = [
  [
    ['tear 2-4'],
    ['2-4 is torn', "there's a rip in 2-4", 'a gash along the middle of 2-4', '2-4 has a nasty tear in it'],
  ],
  [
    ['hole 2-4'],
    ['2-4, hole burnt right through', 'mouse has chewed a hole in 2-4', "there's a hole in 2-4"],
  ],
  [['insect-damage 2-4'], ['moths have been at 2-4', '2-4 has moth holes', 'moth in 2-4']],
  [
    ['thin 2-4'],
    [
      'the cloth in 2-4 is so thin you can see the batting through it',
      '2-4 has gone ever so thin',
      '2-4 tender',
    ],
  ],
  [['shattered 2-4'], ["2-4's gone to ribbons", '2-4 is shattered']],
  [
    ['fraying 2-4'],
    ['2-4 is rubbed bare along one side', 'threadbare, 2-4', 'edge of 2-4 ravelling', '2-4 worn'],
  ],
  [['dye-bleed 2-4'], ['blue dye has run into 2-4', 'the red in 2-4 has bled']],
  [['fading 2-4'], ['2-4 has lost its colour', "sun's had 2-4, faded to nothing"]],
  [
    ['stain 2-4'],
    ["2-4's gone a bit yellow", '2-4 has gone rather brown', "2-4's got something spilled down it"],
  ],
  [
    ['sound 2-4'],
    ["can't find anything wrong with 2-4", '2-4 looks alright to me', '2-4 in pretty good nick'],
  ],
  [['old-repair 2-4'], ['2-4 has a darn somebody did years ago', "there's an old iron-on patch on 2-4"]],
  [['split-seam 2-4'], ['seam on the left side of 2-4 has popped']],
  [['puckering 2-4'], ['2-4 puckers where somebody pulled the stitches too tight']],
  [['stain 2-4'], ['brown tide lines on 2-4', "something's been spilt on 2-4", 'tea stain, 2-4']],
  [['stain backing'], ['rust marks all over the back']],
  [['mildew backing'], ['black spots of mould on the back', 'mildew on the back']],
  [
    ['split-seam 2-4'],
    ['the seam on the right of 2-4 has popped', 'seams gone all round 2-4', '2-4: seam open'],
  ],
  [['broken-stitching 2-4 2-5'], ['the stitching between 2-4 and 2-5 has let go']],
  [['broken-stitching 2-4'], ['the quilting has come out of 2-4', 'quilting stitches broken in 2-4']],
  [['lumpy-batting batting'], ["batting's migrated", 'the batting has bunched up']],
  [['missing 2-4'], ['a piece is missing from the corner of 2-4', 'a bit of 2-4 is gone']],
  [
    ['old-repair 2-4'],
    [
      "someone's darned 2-4 at some point",
      'previous repair in 2-4, machine zigzag',
      '2-4 has been patched over before',
    ],
  ],
  [['out-of-square quilt'], ["the quilt's out of square", "one corner sticks out, it isn't square"]],
  [['puckering 2-4'], ['2-4 is puckered', 'puckers in 2-4']],
  [['puckering border-left'], ['the border ripples all down the left']],
  [['sound 2-4 2-5'], ['2-4 and 2-5 are sound', 'nothing wrong with 2-4 and 2-5']],
  [['fading 1-1 2-4 5-6'], ["the gingham has faded wherever there's sun"]],
  [['tear 2-4', 'stain 2-4', 'fraying 2-4'], ['2-4: tear, stain and fraying']],
  [
    ['tear 2-4', 'hole 2-5'],
    ['tear in 2-4, hole in 2-5, both near the edge', '2-4 torn, 2-5 holed'],
  ],
  [['tear 2-4 2-5'], ['tear in 2-4 and another in 2-5', 'tears in 2-4 and 2-5']],
  [
    ['fraying 1-1 1-3', 'fading 5-2'],
    ['r1 b1, b3 - fraying | r5 b2 - faded', '1-1, 1-3 - fraying // 5-2 - faded'],
  ],
  [['tear 2-1 2-6'], ['row two: the first and the last are torn', 'first and last in row two are torn']],
  [['split-seam 2-4 3-4'], ['the seam below 2-4 is open', 'seam beneath 2-4: open']],
  [
    ['sound 4-3 4-4', 'tear 1-1'],
    ['plum silk - sound. 1-1 torn', 'row four block three and block four, sound. 1-1 torn'],
  ],
  [
    ['stain 1-1', 'tear 1-2', 'fading 1-3'],
    ['1-1 stained, 1-2 torn, 1-3 faded', '1-1 is stained and 1-2 is torn and 1-3 has faded'],
  ],
];

describe('what is found, in many words', () => {
  for (const [value, phrasings] of TABLE)
    it.each(phrasings)('%s', (said) => {
      expect(conditionsSaid(said).map(sorted)).toEqual(value.map(sorted));
    });
});

const sorted = (line: string): string => {
  const [finding, ...places] = line.split(' ');
  return [finding, ...places.sort()].join(' ');
};

describe('what is no finding', () => {
  it.each([
    'no stains on the back',
    'the back has no holes',
    "2-4 isn't torn, only creased",
    'the sound of the rain',
    'good light today',
    "I'm worn out",
    'my patience is wearing thin',
    'torn between tea and coffee',
    'bought fine net, a good yard of it',
    'cut back to sound cloth at 2-4',
  ])('%s', (said) => {
    expect(conditionsSaid(said)).toEqual([]);
  });

  it.each([
    ['stains in columns three and four but only from row six down to the bottom', ['stain 6-3 7-3 6-4 7-4']],
    ['fading in columns one and two from row six down', ['fading 6-1 7-1 6-2 7-2']],
    ['row three is worn, only the last two blocks', ['fraying 3-5 3-6']],
    ['two seams open: where 3-2 meets 4-2, and 4-2 to 4-3', ['split-seam 3-2 4-2 4-3']],
  ])('of rows and columns only those where both hold: %s', (said, found) => {
    expect(conditionsSaid(said)).toEqual(found);
  });

  it.each([
    ['both corner blocks of the top row are torn', ['tear 1-1 1-6']],
    ['worn up top, both corner blocks', ['fraying 1-1 1-6']],
    ['stains in the bottom two corner blocks', ['stain 7-1 7-6']],
    ['worn spot on 1-2', ['fraying 1-2']],
    ['signature in 4-6 is faded', ['fading 4-6']],
  ])('%s', (said, found) => {
    expect(conditionsSaid(said)).toEqual(found);
  });

  it('a pale thread has not faded', () => {
    expect(conditionsSaid('darned 2-3, pale green thread')).toEqual([]);
    expect(conditionsSaid('2-3 has gone pale')).toEqual(['fading 2-3']);
  });

  it('part of the ties of a row is no block among several', () => {
    expect(conditionsSaid('most of the ties in row two have gone')).toEqual([
      'broken-stitching 2-1 2-2 2-3 2-4 2-5 2-6',
    ]);
    expect(conditionsSaid('some of the blocks in row two are stained')).toEqual(['stain']);
  });

  it.each([
    ["took the batting out. It's stained throughout.", ['stain batting']],
    ["took the backing off. It's torn in three places.", ['tear backing']],
    ['2-4 also torn, edges ravelled', ['tear 2-4', 'fraying 2-4']],
    ['edges ravelled all round', ['fraying edge']],
    ["there's a patch glued on 2-4", ['old-repair 2-4']],
    ['BR corner gone', ['missing corner-bottom-right']],
    ['ties would pull those fans out of shape', []],
    [
      'the stitching holding the quilt together is busted in row two',
      ['broken-stitching 2-1 2-2 2-3 2-4 2-5 2-6'],
    ],
    ["along the bottom of the binding there's a good six inches of it just gone", ['missing edge-bottom']],
    ['2-4 left as is. 2-5 too, moth there as well', ['insect-damage 2-5']],
    ["I've a patch fused on 2-4 now", []],
    ['ties coming out in row two', ['broken-stitching 2-1 2-2 2-3 2-4 2-5 2-6']],
    ['ties: rows 2-3 half gone', ['broken-stitching 2-1 2-2 2-3 2-4 2-5 2-6 3-1 3-2 3-3 3-4 3-5 3-6']],
    ['L side 214, R 216.5, top 178, btm 177.5, all cm, ie out of sq', ['out-of-square quilt']],
  ])('what "it" and the edges are: %s', (said, found) => {
    expect(conditionsSaid(said)).toEqual(found);
  });

  it.each([
    [
      'row one block one sound next thin the two after that stained next same again and the last in the row a hole',
      ['sound 1-1', 'thin 1-2', 'stain 1-3 1-4 1-5', 'hole 1-6'],
    ],
    [
      'road three one to three sound four hole five and six mould',
      ['sound 3-1 3-2 3-3', 'hole 3-4', 'mildew 3-5 3-6'],
    ],
    ['row 2: 1 torn, 2-4 sound, 5 and 6 thin', ['tear 2-1', 'sound 2-2 2-3 2-4', 'thin 2-5 2-6']],
    [
      "second row now. first one's fine, second one's got a tear, rest are thin",
      ['sound 2-1', 'tear 2-2', 'thin 2-3 2-4 2-5 2-6'],
    ],
    ["row three block four's torn, five's frayed, six is fine", ['tear 3-4', 'fraying 3-5', 'sound 3-6']],
    ['1-1 torn, 2 sound, 3 thin', ['tear 1-1', 'sound 1-2', 'thin 1-3']],
    // numbers that count, and names of other blocks
    ['row 3 is sound. 2-4 is torn', ['sound 3-1 3-2 3-3 3-4 3-5 3-6', 'tear 2-4']],
    ['row 3 block 2 torn, two inches long, one thin spot beside it', ['tear 3-2', 'thin 3-2']],
    ['row 4 block 1 has a hole, second hole in block 4', ['hole 4-1 4-4']],
    ['row two block three is torn, both ties are gone', ['tear 2-3', 'broken-stitching 2-3']],
    ['blue gingham: a hole in 1-1, the other two are sound', ['hole 1-1', 'sound 2-4 5-6']],
  ])('one row told block after block: %s', (said, found) => {
    expect(conditionsSaid(said)).toEqual(found);
  });

  it.each([
    [
      "Border's sound apart from the top which has a tide mark.",
      ['sound border-right border-bottom border-left', 'stain border-top'],
    ],
    ["edges sound bar L, that's frayed", ['sound edge-top edge-right edge-bottom', 'fraying edge-left']],
    ['blue gingham ones are all right except the lowest which has gone thin', ['sound 1-1 2-4', 'thin 5-6']],
    ['r7 ok exc b4 thin', ['sound 7-1 7-2 7-3 7-5 7-6', 'thin 7-4']],
    ['row 2 sound except the last two, torn', ['sound 2-1 2-2 2-3 2-4', 'tear 2-5 2-6']],
    ['r6 b1 patch, old, b2 same', ['old-repair 6-1 6-2']],
    ['back: 2 patches, old', ['old-repair backing']],
    ['top right corner chewed, mice', ['hole corner-top-right']],
    ['some mouse or other chewed a hole in 2-4', ['hole 2-4']],
    ["there's a hole at the bottom left", ['hole corner-bottom-left']],
    ['the stitching on the binding is loose at the bottom', ['broken-stitching edge-bottom']],
    ['two of the ties are missing in row six', ['broken-stitching 6-1 6-2 6-3 6-4 6-5 6-6']],
    ['row four is torn and the one below it too', ['tear 4-1 4-2 4-3 4-4 4-5 4-6 5-1 5-2 5-3 5-4 5-5 5-6']],
    ['the plum silk is shattered, long fine slits running all over it', ['shattered 4-3 4-4']],
  ])('what is excepted, and what is told of it: %s', (said, found) => {
    expect(conditionsSaid(said)).toEqual(found);
  });

  it('asks which cloth is meant where the quilt has none of that name, or several', () => {
    expect(readLast('the corduroy is torn').ask?.slot).toBe('fabric');
    expect(readLast('there is a hole in the paisley').ask?.slot).toBe('fabric');
    expect(conditionsSaid('the stripey ones are torn')).toEqual(['tear 1-5 3-2']);
  });

  it('damage that is only what the work was done to', () => {
    expect(conditionsSaid('patched the tear in 2-4')).toEqual([]);
    expect(conditionsSaid('resewed the split seam between 2-4 and 2-5')).toEqual([]);
  });

  it('damage known already and pointed at again', () => {
    expect(conditionsSaid(['2-4 is torn', 'the tear in 2-4 is darned now'])).toEqual([]);
  });

  it('but damage told as the reason is found', () => {
    expect(conditionsSaid('patched 2-4 because it had a hole')).toEqual(['hole 2-4']);
    expect(conditionsSaid('2-4 had a tear so I darned it')).toEqual(['tear 2-4']);
  });
});
