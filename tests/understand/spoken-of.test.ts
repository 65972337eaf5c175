import { expect, it } from 'vitest';
import { conditionsSaid, placesSaid } from './bench-quilt.ts';

/** Common practice, no source: what "both of those", "the second one", "it" stand on, over several notes. */
it.each<[notes: string[], places: string[]]>([
  [
    ['3-2 has a tear', '5-3 is stained', 'both of those want a patch'],
    ['3-2', '5-3'],
  ],
  // a mended place counts as if it had been said at once
  [
    ['3-2 has a tear', 'no, 4-2', '5-3 is stained', 'both of those want a patch'],
    ['4-2', '5-3'],
  ],
  [
    ['3-2 has a tear', '5-3 is stained', '6-5 is worn', 'those three want a patch'],
    ['3-2', '5-3', '6-5'],
  ],
  [
    ['3-2 has a tear', '5-3 is stained', 'both of those want a patch', 'the second one I might just darn'],
    ['5-3'],
  ],
  // the blocks of a cloth are spoken of as if they had been named
  [
    [
      '2-2 has a hole',
      'the plum silk is shattered',
      '2-2 and 2-3 are dirty',
      'the plum silk gets net',
      'the first one I did today, couched',
    ],
    ['4-3'],
  ],
  [['2-2 has a hole', '5-5 is worn', 'the hole I patched', 'whipstitched it'], ['2-2']],
  [['took the binding off both sides', 'and the top'], ['edge-top']],
])('%j', (notes, places) => {
  expect(placesSaid(notes).sort()).toEqual(places);
});

/** Sides told by their name alone after the border or the edge that they are of. */
it.each<[note: string, conditions: string[]]>([
  ['border: left frayed, right ok', ['fraying border-left', 'sound border-right']],
  ['border R frayed, L ok', ['fraying border-right', 'sound border-left']],
  [
    'border: top frayed, bottom ok, sides fine',
    ['fraying border-top', 'sound border-bottom border-left border-right'],
  ],
  ["binding worn on the left, right's fine", ['fraying edge-left', 'sound edge-right']],
  ["3-2's torn and 3-3's fine", ['tear 3-2', 'sound 3-3']],
])('%s', (note, conditions) => {
  expect(conditionsSaid(note)).toEqual(conditions);
});

/** Exceptions told by their cloth, and told of at once. */
it.each<[note: string, conditions: string[]]>([
  ['row four is all sound except the plum silk which is faded', ['sound 4-1 4-2 4-5 4-6', 'fading 4-3 4-4']],
  ['every block in row six is thin but the rosebud is fine', ['thin 6-2 6-3 6-4 6-5 6-6', 'sound 6-1']],
  ['row one is worn apart from the gingham one', ['fraying 1-2 1-3 1-4 1-5 1-6']],
  [
    'every block in row six is thin but the batting is good',
    ['thin 6-1 6-2 6-3 6-4 6-5 6-6', 'sound batting'],
  ],
])('%s', (note, conditions) => {
  expect(conditionsSaid(note)).toEqual(conditions);
});
