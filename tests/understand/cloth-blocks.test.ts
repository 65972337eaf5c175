import { expect, it } from 'vitest';
import { placesSaid } from './bench-quilt.ts';

/** Common practice, no source: one of several blocks of a cloth is told by where it lies. */
it.each<[said: string, places: string[]]>([
  ['The lower plum silk is torn.', ['4-3', '4-4']], // both lie in one row: no lower one
  ['The left-hand plum silk is torn.', ['4-3']],
  ['The plum silk furthest right is torn.', ['4-4']],
  ['The upper brown stripe has a hole.', ['1-5']],
  ['The middle gingham one is thin.', ['2-4']],
  ['The last blue gingham is stained.', ['5-6']],
  ['The brown stripe at the bottom has a tear.', ['3-2']],
  ['The first of the three ginghams is worn.', ['1-1']],
  ['The right-hand one of the two silk blocks is frayed.', ['4-4']],
  ['The brown stripe in row three is torn.', ['3-2']],
  ['The brown stripe at top right has a hole.', ['1-5']],
  ['The ginghams in the second row have faded.', ['2-4']],
  ['The stripe in the first row is worn, and there is a stain somewhere.', ['1-5']],
])('%s', (said, places) => {
  expect(placesSaid(said).sort()).toEqual(places);
});
