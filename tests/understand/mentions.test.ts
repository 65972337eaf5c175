import { expect, it } from 'vitest';
import { conditionsSaid, placesSaid, treatmentsSaid } from './bench-quilt.ts';

const SURVEY = [
  'There is a tear in 2-3 and a stain on 4-4.',
  '3-1, 3-2 and 5-6 are badly worn.',
  'The seam between 1-2 and 1-3 is open.',
  'An old patch on 6-4.',
];

/** Common practice, no source: a thing of the conversation is named again by what it is. */
it.each<[said: string, places: string[]]>([
  ['Stitched the tear closed.', ['2-3']],
  ['The worn ones want net over them.', ['3-1', '3-2', '5-6']],
  ['Those three worn blocks are now netted.', ['3-1', '3-2', '5-6']],
  ['Whipped the seam.', ['1-2', '1-3']],
  ['That old patch can come off.', ['6-4']],
  ['Dabbed at the stain with water.', ['4-4']],
  ['The stained one I am leaving.', ['4-4']],
  ['Stitched that nasty three-cornered tear closed.', ['2-3']],
  ['The old coffee stain is staying, I am leaving it be.', ['4-4']],
  ['I stitched the tear shut over the top.', ['2-3']],
  // which of them
  ['Felt in behind the first two of the worn ones.', ['3-1', '3-2']],
  ['Darned the last of the worn ones.', ['5-6']],
  ['Darned the lower of the worn ones.', ['5-6']],
  // what is named here is meant, whatever was told before
  ['Stitched the tear in 5-2.', ['5-2']],
  ['5-2: closed the seam.', ['5-2']],
])('%s', (said, places) => {
  expect(placesSaid([...SURVEY, said]).sort()).toEqual(places);
});

it('the seam still open comes before one that is closed', () => {
  expect(
    placesSaid([
      ...SURVEY,
      'Also the seam in 5-5 has split.',
      'Closed that seam.',
      'Now sewed the open seam.',
    ]),
  ).toEqual(['1-2', '1-3']);
});

it('"it" after an exception is what was excepted, and one seam of a row is the seam in that row', () => {
  const noted = 'Row one looks fine except the first block, there is a small hole in it.';
  expect(placesSaid(noted)).toEqual(['1-2', '1-3', '1-4', '1-5', '1-6', '1-1']);
  expect(placesSaid([noted, 'Patched the hole.'])).toEqual(['1-1']);
  expect(placesSaid([...SURVEY, 'Closed the seam in row one with a ladder stitch.'])).toEqual(['1-2', '1-3']);
});

it('"the other worn one" is the one nothing was done to, and a worn side is no block', () => {
  const worn = '3-1 and 5-6 are worn, the left edge is frayed and the top right corner is torn.';
  expect(placesSaid([worn, 'Darned 3-1.', 'Same again on the other worn one.'])).toEqual(['5-6']);
  expect(placesSaid([worn, 'Darned 5-6.', 'The other worn one wants a patch.'])).toEqual(['3-1']);
  expect(placesSaid([worn, 'The frayed side is re-stitched.'])).toEqual(['edge-left']);
});

it('a gap in a row is where the cloth was found gone', () => {
  expect(
    placesSaid(['There is cloth missing in row six, block two.', 'Laid net over the gap in row six.']),
  ).toEqual(['6-2']);
});

it('"had one too" finds the same damage there', () => {
  const notes = [
    '5-3 has a tear, sewed it back on the machine, zigzag.',
    '3-4 had one too so I gave it the same treatment.',
  ];
  expect(conditionsSaid(notes)).toEqual(['tear 3-4']);
  expect(placesSaid(notes)).toEqual(['3-4']);
});

it('where damage sits may be told behind what it might be', () => {
  expect(conditionsSaid('A brown ring, coffee I would say, that sits right across 4-4 and 4-5.')).toEqual([
    'stain 4-4 4-5',
  ]);
  expect(
    conditionsSaid("There's a rust spot, from a pin by the look of it, which goes right through 5-1."),
  ).toEqual(['stain 5-1']);
});

it('of a cloth in several blocks: the one that was told so, those two, the row it is in', () => {
  const told = [
    '2-4 is ravelling.',
    'The gingham that was ravelling I have darned and pressed the row it is in.',
  ];
  expect(treatmentsSaid(told)).toEqual(['darn done 2-4', 'press done 2-1 2-2 2-3 2-4 2-5 2-6']);
  const both = [...told, "I'll do the other two gingham ones likewise tomorrow."];
  expect(treatmentsSaid(both)).toEqual(['darn planned 1-1 5-6']);
  expect(treatmentsSaid([...both, 'Those two gingham ones are darned now.'])).toEqual(['darn done 1-1 5-6']);
});

it('the very same way, an exclamation that ends once, what is told together', () => {
  const told = 'The seam between 2-1 and 2-2 has let go so I whipped it.';
  expect(treatmentsSaid([told, "3-3's seam had gone too so I went and did it the very same way."])).toEqual([
    'resew done whipstitch 3-3',
  ]);
  expect(treatmentsSaid('patched 2-2!! took like 20 min, blanket stitch all round')).toEqual([
    'patch done blanket 20min 2-2',
  ]);
  expect(treatmentsSaid('4-4 resewn, 4-5 darned. 22 min tog.')).toEqual(['resew done 4-4', 'darn done 4-5']);
  expect(treatmentsSaid('4-4 has holes, that one needs a fresh piece cutting in')).toEqual([
    'replace planned 4-4',
  ]);
  expect(treatmentsSaid('I put a patch on the left border')).toEqual(['patch done border-left']);
  expect(treatmentsSaid('I shall proceed with the net on 3-2')).toEqual(['overlay planned 3-2']);
});

it('damage named first and then what might be done to it', () => {
  const told = ['5-1 has a thumb hole. The seam between 1-2 and 1-3 is open.', 'That seam I whipped shut.'];
  expect(
    treatmentsSaid([
      ...told,
      'Now the thumb hole, torn between setting in a new block and laying net over it.',
    ]),
  ).toEqual(['replace considering 5-1', 'overlay considering 5-1']);
  expect(treatmentsSaid([...told, 'The thumb hole I might net or I might leave it.'])).toEqual([
    'overlay considering 5-1',
    'leave considering 5-1',
  ]);
});

it('a seam between a block told before and its neighbour; what was told before and a place beside it', () => {
  expect(placesSaid(['3-2 has a tear.', 'The seam between that and the one below is open.'])).toEqual([
    '3-2',
    '4-2',
  ]);
  expect(
    placesSaid([
      '1-1 has a hole.',
      'The seam beside it, the one going to its right-hand neighbour, I closed by hand.',
    ]),
  ).toEqual(['1-1', '1-2']);
  expect(placesSaid(['2-2 has a tear.', 'Sewed up the tear and the one in 3-3 as well.'])).toEqual([
    '2-2',
    '3-3',
  ]);
  expect(placesSaid(['2-2 has a tear.', 'Sewed up the tear in 2-4 and 3-3 too.'])).toEqual(['2-4', '3-3']);
});
