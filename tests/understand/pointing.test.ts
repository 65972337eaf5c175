import { describe, expect, it } from 'vitest';
import { conditionsSaid, readLast, treatmentsSaid } from './bench-quilt.ts';

describe('the thing last spoken of is taken off', () => {
  it.each<[notes: string[], said: string[]]>([
    [["the batting's all gone to lumps so it has to come out"], ['remove planned batting batting']],
    [
      ["there's an old patch glued on 3-3", "it's off, after an hour of picking"],
      ['remove done old-patch 60min 3-3'],
    ],
    [["the binding's frayed along the bottom so off it came"], ['remove done binding binding']],
    [['the old batting is clumped, out it came'], ['remove done batting batting']],
    [['binding worn top and bottom, so all of it off'], ['remove done binding binding']],
    [['that twine snipped out of the top row'], ['remove done ties 1-1 1-2 1-3 1-4 1-5 1-6']],
    [
      ['ties are loose in row two', 'pulled them, half an hour'],
      ['remove done ties 30min 2-1 2-2 2-3 2-4 2-5 2-6'],
    ],
    [
      ['ties are broken across rows six and seven', 'mildew in 1-5', 'took the ties out of both those rows'],
      ['remove done ties 6-1 6-2 6-3 6-4 6-5 6-6 7-1 7-2 7-3 7-4 7-5 7-6'],
    ],
    // in short hand, without "the"
    [['tear in 3-2', 'Tear darned, 20 min'], ['darn done 20min 3-2']],
    [['milk stain on 2-2', 'Milk stain spot-cleaned w. a dab of white vinegar'], ['clean done 2-2']],
    [['worn spot on 1-2', 'worn spot backed with muslin'], ['stabilize done 1-2']],
    [
      [
        'two seams open, 3-2 to 4-2 and 4-2 to 4-3',
        'those two seams now shut again, ladder stitch, 22 min the pair',
      ],
      ['resew done ladder 22min 3-2 4-2 4-3'],
    ],
    [['the seam in 2-2 is open', 'the seam in 2-2 will not shut'], []],
    [['tear in 2-3', 'seen to that now. 12 min'], ['? done 12min 2-3']],
    [['4-4 is torn. darn or patch?', 'patch is off'], ['patch dropped 4-4']],
    // by where alone, or by a pronoun
    [
      ['taking the binding off', "it's off the top edge and the left edge, fifty minutes"],
      ['remove done binding 50min edge-top edge-left'],
    ],
    [
      ['took the binding off the top and left edges', 'other two sides are off too now'],
      ['remove done binding edge-right edge-bottom'],
    ],
    [
      ['taking the ties out of row two', 'those are out and row four too'],
      ['remove done ties 2-1 2-2 2-3 2-4 2-5 2-6 4-1 4-2 4-3 4-4 4-5 4-6'],
    ],
    [['taking the binding off', "that's the left side off"], ['remove done binding edge-left']],
    [
      ['unpicking the quilting in row five', "row five's out"],
      ['remove done quilting 5-1 5-2 5-3 5-4 5-5 5-6'],
    ],
    [
      ["the binding's off the bottom too, the ties come out next and after that the backing"],
      ['remove done binding edge-bottom', 'remove planned ties', 'remove planned backing backing'],
    ],
    [['old patch on 3-3, ugly. comes off later'], ['remove planned old-patch 3-3']],
    [['found two pins in 3-2 and took them out'], ['remove done pins 3-2']],
    [['r3 ties out, r2 ties mostly snapped'], ['remove done ties 3-1 3-2 3-3 3-4 3-5 3-6']],
    [["the backing's away, it came off in one piece"], ['remove done backing backing']],
    [['took the batting out', "it's out on the line"], ['dry doing batting']],
    [['took the old batting out', '3-3 is torn', 'cut it out and pieced in new twill'], ['replace done 3-3']],
    // work that goes from row to row goes on with the next
    [
      ['quilted row one tonight', 'did row two, running stitch, two hours'],
      ['quilt done running 120min 2-1 2-2 2-3 2-4 2-5 2-6'],
    ],
    [['tied row one', "row two's half done"], ['tie doing 2-1 2-2 2-3 2-4 2-5 2-6']],
    [['patched 2-2', 'did row three'], ['? done 3-1 3-2 3-3 3-4 3-5 3-6']],
    [
      ['tied row one', 'the knots in row one were too loose so I did them again'],
      ['tie done 1-1 1-2 1-3 1-4 1-5 1-6'],
    ],
    [
      ['new binding on the top', "it's slip-stitched down along the bottom edge"],
      ['bind done ladder edge-bottom'],
    ],
    [['4-4 is worn', 'requilted round it'], ['quilt done 4-4']],
    // no thing to take off
    [["it's off to the shop with me now"], []],
    [['the stain came out'], []],
  ])('%j', (notes, said) => {
    expect(treatmentsSaid(notes)).toEqual(said);
  });
});

describe('the same goes on', () => {
  it.each<[notes: string[], said: string[]]>([
    [['trimmed the left edge', 'same on the bottom'], ['trim done edge-bottom']],
    [['pressed the right border', 'and the same on the left'], ['press done border-left']],
    [
      ['got the binding off first and then the backing'],
      ['remove done binding binding', 'remove done backing backing'],
    ],
    [
      ['backing has to come off for that, ties first'],
      ['remove planned backing backing', 'remove planned ties'],
    ],
    [
      ['going to put muslin behind 2-5 and 3-5', '2-5 done, 3-5 to follow'],
      ['stabilize done 2-5', 'stabilize planned 3-5'],
    ],
    [["I'll darn 4-1 tonight", 'all done, 20 minutes'], ['darn done 20min 4-1']],
    [
      ['planning to patch 2-2 and darn 2-3', 'done, both of them'],
      ['patch done 2-2', 'darn done 2-3'],
    ],
    [['patched 1-1 by hand. 1-2 next'], ['patch done hand 1-1', 'patch planned 1-2']],
    [['darned 1-1 with a running stitch', 'patched 2-1, same stitch'], ['patch done running 2-1']],
    // an order of things that names no work before it
    [['row two, then tea'], []],
  ])('%j', (notes, said) => {
    expect(treatmentsSaid(notes)).toEqual(said);
  });
});

it('a stain is worked on with what cleans it', () => {
  expect(treatmentsSaid(["there's a stain on 4-4", 'tried vinegar on it'])).toEqual(['clean done 4-4']);
  expect(treatmentsSaid('going to put a bit of peroxide on that stain on 2-2')).toEqual([
    'clean planned 2-2',
  ]);
  expect(treatmentsSaid('bought vinegar and a new brush')).toEqual([]);
});

it('a plan told by the word is a plan', () => {
  expect(treatmentsSaid('for row three the plan is a fresh piece of muslin sewn in behind each one')).toEqual(
    ['stabilize planned 3-1 3-2 3-3 3-4 3-5 3-6'],
  );
});

it('damage that only tells which block is meant is not found again', () => {
  const { entries } = readLast([
    "there's moth in 2-1, 2-2 and 2-3",
    'those three with the moth want a support behind',
  ]);
  expect(entries.map(({ entry }) => entry.kind)).toEqual(['treatment']);
});

/** Conditions and treatments of the last note. */
const saidOf = (notes: string[]): string[] => [...conditionsSaid(notes), ...treatmentsSaid(notes)];

describe('places seen from those spoken of', () => {
  it.each<[notes: string[], said: string[]]>([
    [['3-1: the seam with the one below is open'], ['split-seam 3-1 4-1']],
    [
      ['plum silk is worn in 4-3 and the block right next to it on the right has a hole in it'],
      ['fraying 4-3', 'hole 4-4'],
    ],
    [['4-2 and 4-3 are stained', 'also the two right under those'], ['stain 5-2 5-3']],
    [
      ['1-5 and 2-5 will get muslin behind, the other five in that column I leave alone'],
      ['stabilize planned 1-5 2-5', 'leave done 3-5 4-5 5-5 6-5 7-5'],
    ],
    [['2-1 is torn', 'the others in that row look all right'], ['sound 2-2 2-3 2-4 2-5 2-6']],
    [['batting clumped in 7-1 and the other left hand corner'], ['lumpy-batting 7-1 1-1']],
    [['3-3 thin. fused interfacing behind that & 2-1'], ['thin 3-3', 'stabilize done 3-3 2-1']],
    [['4-2 is worn', 'worn one gets fusible behind'], ['stabilize planned 4-2']],
    [['1-4 torn, 2-2 stained', 'torn one patched'], ['patch done 1-4']],
    [
      ['4-4 is thin', 'that one has a split seam at the outside edge. whipstitched it'],
      ['split-seam 4-4', 'resew done whipstitch 4-4'],
    ],
    [['all the blue gingham ones pressed except bottom right'], ['press done 1-1 2-4']],
    [['in row two the middle two blocks are torn'], ['tear 2-3 2-4']],
    [['a tear in 3-2', 'and another on the one below'], ['tear 4-2']],
    [["3-2's torn", 'and one in the block over it'], ['tear 2-2']],
    [['found a hole in 2-2', 'one more in row five, block two'], ['hole 5-2']],
    [
      ['the left edge is frayed', "so's the top", 'the other two are all right'],
      ['sound edge-right edge-bottom'],
    ],
    [["column two's faded", 'the second and third ones down have little holes in'], ['hole 2-2 3-2']],
    [['3-1 and 3-4 are torn', "between them it's all sound"], ['sound 3-2 3-3']],
    [
      ['both of the right-hand columns are musty'],
      ['mildew 1-5 2-5 3-5 4-5 5-5 6-5 7-5 1-6 2-6 3-6 4-6 5-6 6-6 7-6'],
    ],
    [['one of the plum silks is torn, the left-hand one'], ['tear 4-3']],
    [["all the blue gingham's rotten", "the one in the middle's in ribbons"], ['shattered 2-4']],
    [
      ['the bottom border is stained its whole length, and the left one just at the bottom'],
      ['stain border-bottom border-left'],
    ],
    [
      ["a hole in 4-2 and same on the one below it and um there's newspaper behind 2-1 with a date on it"],
      ['hole 4-2 5-2'],
    ],
    [
      ["the left border's all ravelled the blue gingham though is sound"],
      ['fraying border-left', 'sound 1-1 2-4 5-6'],
    ],
    [["that's the top two corner blocks stained"], ['stain 1-1 1-6']],
    [
      [
        'going along the second row now',
        "first one's sound second one's faded",
        "third one's got a slit in it",
      ],
      ['tear 2-3'],
    ],
    [['4-4 has a hole', "it's too near the edge so I left it"], ['leave done 4-4']],
    // where nobody knows
    [['stains on 1-1 and 3-2', 'another stain here, a big one'], ['stain']],
    [['4-2 is torn', "oh and I see a seam that's split"], ['split-seam']],
    // what is no pointing
    [['2-2 has a hole in it and 3-3'], ['hole 2-2 3-3']],
    [['3-3 is torn', "I'm happy with that"], []],
  ])('%j', (notes, said) => {
    expect(saidOf(notes)).toEqual(said);
  });
});

describe('work that goes on from what was done', () => {
  it.each<[notes: string[], said: string[]]>([
    [
      ["top row's tied and I'm on the second one now"],
      ['tie done 1-1 1-2 1-3 1-4 1-5 1-6', 'tie doing 2-1 2-2 2-3 2-4 2-5 2-6'],
    ],
    [
      [
        'doing the second row now, taking the ties out',
        "that one's finished as well and the first three of the next",
      ],
      ['remove done ties 2-1 2-2 2-3 2-4 2-5 2-6 3-1 3-2 3-3'],
    ],
    [
      ['tied the first three of row three', "the rest of that row's tied and the whole of the last one"],
      ['tie done 3-4 3-5 3-6 7-1 7-2 7-3 7-4 7-5 7-6'],
    ],
    [
      ['4-3, 4-4, 5-3 and 5-4 stained', 'dabbed the top two', 'did the other two, 15 min'],
      ['clean done 15min 5-3 5-4'],
    ],
    [
      ['1-3 and 2-2 shattered', 'netted 1-3 first, couched it', 'doing the other one now'],
      ['overlay doing 2-2'],
    ],
    [
      [
        '1-3 and 2-2 shattered',
        'netted 1-3 first, couched it',
        'doing the other one now',
        'done, same stitch, 70 minutes',
      ],
      ['overlay done couching 70min 2-2'],
    ],
    [['patched 3-2', 'and the next'], ['patch done 3-3']],
    [['2-4 has an old patch glued on', "that's got to come off"], ['remove planned old-patch 2-4']],
    [
      ['rows one to five tied', 'other 2 rows tied'],
      ['tie done 6-1 6-2 6-3 6-4 6-5 6-6 7-1 7-2 7-3 7-4 7-5 7-6'],
    ],
    [['top rose tied'], ['tie done 1-1 1-2 1-3 1-4 1-5 1-6']],
    [
      ['borders are on top and bottom', "the two sides go on tomorrow, and the hole in 2-5 I'll patch"],
      ['add-border planned border-left border-right', 'patch planned 2-5'],
    ],
    [
      [
        '4-2 and 4-3 and 5-2 and 5-3 stained',
        'spot cleaned all 4',
        'only the top two actually, the lower ones are for tomorrow',
      ],
      ['clean done 4-2 4-3', 'clean planned 5-2 5-3'],
    ],
    [
      ["the backing's stained and it's got mildew, I'm going to wash it Wednesday"],
      ['stain backing', 'mildew backing', 'wash planned backing'],
    ],
    // nothing goes on
    [['3-2 has a hole', 'all of the top row needs looking at again'], []],
    [
      ['patched 3-2', 'the four corners are still to do'],
      ['patch planned corner-top-left corner-top-right corner-bottom-right corner-bottom-left'],
    ],
    [['pressed 2-3', '2-4 done'], ['? done 2-4']],
    [['row three is stained. the second one is torn'], ['stain 3-1 3-2 3-3 3-4 3-5 3-6', 'tear 3-2']],
  ])('%j', (notes, said) => {
    expect(saidOf(notes)).toEqual(said);
  });
});

describe('what was left out of the last note', () => {
  it.each<[notes: string[], said: string[]]>([
    [
      ['the blue gingham is shattered, all of it', "oh, except the one in the top row, that's only thin"],
      ['shattered 2-4 5-6', 'thin 1-1'],
    ],
    [
      ['darned 1-1, 2-2 and 3-4', 'apart from 3-4, I patched that one'],
      ['darn done 1-1 2-2', 'patch done 3-4'],
    ],
    [['there is moth in the corner block bottom left no bottom right'], ['insect-damage 7-6']],
  ])('%j', (notes, said) => {
    expect(saidOf(notes)).toEqual(said);
  });
});

describe('an edge that has come loose is of the block that is spoken of', () => {
  it.each<[notes: string[], said: string[]]>([
    [['4-3, the loose edge is stitched back down'], ['resew done 4-3']],
    [["2-3's ravelling", 'whipstitched the raw edge down'], ['resew done whipstitch 2-3']],
    [['2-5 has lifted, caught the edge down with small stitches'], ['resew done 2-5']],
    // of the quilt, where it is bound or nothing tells that it hung loose
    [['bound the raw edges by machine'], ['bind done machine edge']],
  ])('%j -> %j', (notes, said) => {
    expect(treatmentsSaid(notes)).toEqual(said);
  });
});

describe('of what was told together', () => {
  it.each<[notes: string[], said: string[]]>([
    [['2-3 is torn, 3-5 is faded, 5-1 has a hole', 'all three want washing'], ['wash planned 2-3 3-5 5-1']],
    [['2-2, 3-4 and 5-1 are frayed', 'pressed the first two of those'], ['press done 2-2 3-4']],
    [['2-2, 3-4 and 5-1 are frayed', 'pressed all but the middle one'], ['press done 2-2 5-1']],
    [['2-2, 3-4 and 5-1 are frayed', 'darned all but 3-4'], ['darn done 2-2 5-1']],
    [['2-2 and 2-4 are torn', 'pressed the one on the left'], ['press done 2-2']],
    [['2-2 and 2-4 are torn', 'pressed the one in the middle of them'], ['press done 2-3']],
    [['row three is faded', 'pressed the two end ones'], ['press done 3-1 3-6']],
    [['row three is faded', 'pressed the first and last of it'], ['press done 3-1 3-6']],
    [
      ['the left border is frayed', 'pressed the other three sides'],
      ['press done border-top border-right border-bottom'],
    ],
    [['the bottom left block is faded', 'pressed the other three corners'], ['press done 1-1 1-6 7-6']],
    [['holes in 2-1, 2-3 and 5-5', 'darned the two in row two'], ['darn done 2-1 2-3']],
    [
      ['holes in 2-1, 2-3 and 5-5', 'darned the two in row two', 'the third I will patch'],
      ['patch planned 5-5'],
    ],
    [['patched 4-2 and 4-3', 'and the two above'], ['patch done 3-2 3-3']],
    [
      ['vacuumed rows one to three', 'pressed the other four'],
      [
        'press done 4-1 4-2 4-3 4-4 4-5 4-6 5-1 5-2 5-3 5-4 5-5 5-6 6-1 6-2 6-3 6-4 6-5 6-6 7-1 7-2 7-3 7-4 7-5 7-6',
      ],
    ],
    [
      ["tear in 4-3, I'll patch it and darn the ones either side"],
      ['patch planned 4-3', 'darn planned 4-2 4-4'],
    ],
    // nothing that was told together
    [['row three tied, all but 3-4'], ['tie done 3-1 3-2 3-3 3-5 3-6']],
  ])('%j', (notes, said) => {
    expect(treatmentsSaid(notes)).toEqual(said);
  });

  it.each<[notes: string[], said: string[]]>([
    [['2-3 is torn and 4-2 is faded and both are mouldy'], ['tear 2-3', 'fading 4-2', 'mildew 2-3 4-2']],
    [['2-2, 3-4 and 5-1 are frayed and the last one is mouldy'], ['fraying 2-2 3-4 5-1', 'mildew 5-1']],
    [['2-3 has a hole', 'the next but one is mouldy'], ['mildew 2-5']],
    [['2-3 has a hole', 'two further on is mouldy'], ['mildew 2-5']],
    [['2-3 has a hole', 'the rest of its row is sound'], ['sound 2-1 2-2 2-4 2-5 2-6']],
    [['darned 3-3 the one below is mouldy'], ['mildew 4-3']],
    [
      ['column two is faded, the one to the right of it is mouldy'],
      ['fading 1-2 2-2 3-2 4-2 5-2 6-2 7-2', 'mildew 1-3 2-3 3-3 4-3 5-3 6-3 7-3'],
    ],
  ])('%j', (notes, said) => {
    expect(conditionsSaid(notes)).toEqual(said);
  });
});
