import { expect, it } from 'vitest';
import { readLast, treatmentsSaid } from './bench-quilt.ts';

/** Common practice, no source: a plan is told done by pointing at it. */
it.each<[notes: string[], said: string[]]>([
  [['I will patch 3-2 tomorrow.', 'That is done now, by hand, 20 minutes.'], ['patch done hand 20min 3-2']],
  [
    ['Going to put muslin behind 2-3.', "So I've done that, hand stitched all round."],
    ['stabilize done hand 2-3'],
  ],
  [
    [
      '5-2 and 5-3 have holes',
      'going to patch both of those',
      'did both of those just now, blanket stitch, half an hour',
    ],
    ['patch done blanket 30min 5-2 5-3'],
  ],
  [['4-1 wants a patch', 'the backing is stained', '4-1 done as planned'], ['patch done 4-1']],
  [
    ['started tying at nine', "that's row one done, on to row two"],
    ['tie done 1-1 1-2 1-3 1-4 1-5 1-6', 'tie doing 2-1 2-2 2-3 2-4 2-5 2-6'],
  ],
  [
    ["one row tied, I'm on the second"],
    ['tie done 1-1 1-2 1-3 1-4 1-5 1-6', 'tie doing 2-1 2-2 2-3 2-4 2-5 2-6'],
  ],
  [["I'm on row four and there's a tear in block two"], []],
  [
    ['tied rows one to five', 'the rest is tied now'],
    ['tie done 6-1 6-2 6-3 6-4 6-5 6-6 7-1 7-2 7-3 7-4 7-5 7-6'],
  ],
  [['tied the first two rows', 'and I am on row three'], ['tie doing 3-1 3-2 3-3 3-4 3-5 3-6']],
  [['I am sewing up the seam in 3-2 by hand now.', "That's finished."], ['resew done hand 3-2']],
  [
    ['For 4-4 either net over it or linen behind it.', "I'll go with the second of those ways."],
    ['stabilize planned 4-4'],
  ],
  [
    ['4-4: patch it or darn it?', "Darning won. I'm at it now, and have been since 1:35."],
    ['darn doing 4-4'],
  ],
  [['4-4: patch it or darn it?', 'the patch won, doing it now'], ['patch doing 4-4']],
  [['going to darn 2-2 and 2-4 tomorrow', 'doing both now'], ['darn doing 2-2 2-4']],
  [
    ['4-4: patch it or darn it?', "Darning won. I'm at it now.", 'The darn is finished. So no patch there.'],
    ['darn done 4-4', 'patch dropped 4-4'],
  ],
  [['I need to ring the owner', 'doing that now'], []],
  // nothing was planned
  [['There is a tear in 3-2.', 'So that is done.'], []],
])('%j', (notes, said) => {
  expect(treatmentsSaid(notes)).toEqual(said);
});

it('the size of a hole is no measure of the quilt', () => {
  const kinds = readLast('That hole in 2-3, it is about an inch across.').entries.map(
    ({ entry }) => entry.kind,
  );
  expect(kinds).toEqual(['condition']);
});
