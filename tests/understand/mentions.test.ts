import { expect, it } from 'vitest';
import { placesSaid } from './bench-quilt.ts';

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
