import { describe, expect, it } from 'vitest';
import { readLast, treatmentsSaid } from './bench-quilt.ts';

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
    [['took the batting out', "it's out on the line"], []],
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
