import { describe, expect, test } from 'vitest';
import { outcome, tell } from './conversation.ts';

/** Notes of our own; which question each leaves open follows from the conventions of the log, no outside source. */
describe('what is asked for', () => {
  test.each([
    ['row nine block two is frayed', 'place'],
    ['3-7 has a hole', 'place'],
    ["there's moth in row eight, block one", 'place'],
    ['patched another one by hand', 'place'],
    ['tied another three blocks', 'place'],
    ['quilted two more blocks', 'place'],
    ['will replace 2-3 and 5-5 with the red', 'fabric'],
    ['another one in row six is torn', 'place'],
    ["there's a stain on one of the ginghams", 'place'],
    ['patched 5-5 with the red', 'fabric'],
    ['all the purple ones are frayed', 'fabric'],
    ["I've finished 2-2 and 2-3", 'action'],
    ['row two block three has also been treated', 'action'],
    ['put a scrap of the red over 3-4', 'fabric'],
    ['used two packs of them', 'material'],
    ['I did some mending today, no idea how long', 'time'],
    ['did some binding, dunno how long', 'time'],
    ['oh and I did some binding on it on Sunday night', 'time'],
    ['got some quilting in before work', 'time'],
    ['also sat surveying it yesterday, forgot to write down the times', 'time'],
    ['quilted on it a little last night as well', 'time'],
    ['worked on it a bit last night too', 'time'],
    ['looked after 2-2 this morning', 'action'],
    ['did the second row today', 'action'],
    ['both the gingham ones are done', 'action'],
    ['block 4-4 is complete', 'action'],
    ['bought five yards of the stuff on sale', 'material'],
    ['paid 18 for three yards', 'material'],
    ['spent 12 dollars at the market', 'material'],
    ['i need uh metres of batting', 'quantity'],
    ["it's 54 inches across and I didn't get the length", 'quantity'],
    ["the border is so many centimetres wide, only I wrote it on my hand and it's washed off", 'quantity'],
    ["there was a hole where somebody's pipe burned it", 'place'],
    ['3-2 is torn, 3-7 too', 'place'],
    ['torn: 3-2, 4-2 and 9-1', 'place'],
    ['patched 5-5, and the cloth I used was the red', 'fabric'],
    ['put a patch on five five in the red with a blanket stitch round it', 'fabric'],
    ['put patches on 5-5 and 4-4, the red fabric', 'fabric'],
    ['the gold satin is fraying, wherever it occurs', 'fabric'],
    ['left border coming off now and nine one is fraying', 'place'],
    ['that was me done with two two', 'action'],
  ])('%s: %s', (note, slot) => {
    expect(outcome([note]).ask).toBe(slot);
  });

  test.each([
    ['3-2 has a tear'],
    ['patched 5-5 with the red check'],
    ['patched 5-5 with a bit of red silk'],
    ['the hole in the red check is mended'],
    ['cut six two inch strips'],
    ["that's me done for today"],
    ['every one of the ginghams is frayed'],
    ['one of the seams between 3-2 and 3-3 is split'],
    ['the last one in row three is torn'],
    ['washed it'],
    ['cut strips at two inches'],
    ['bought a spool of thread'],
    ['started mending at two'],
    ['all the blue ones are frayed'],
    ['trimmed the left edge'],
    ['photographed the back'],
    ['quilted it last night'],
    ['bought some binding on Sunday'],
    ['the morning was taking apart, nine to twelve'],
    ['last night she rang and we talked about the quilting'],
    ['4-1 is not done yet'],
    ["there's a stain left in 5-2 and that's staying"],
    ['a tear in, what is it, 3-4'],
    ["there's a brown ring, coffee I'd say, that sits right across the seam between 3-3 and 3-4"],
    ['did the seam between 3-2 and 3-3 by hand'],
  ])('nothing: %s', (note) => {
    expect(outcome([note]).ask).toBeNull();
  });

  test('one of the others is none that was spoken of', () => {
    expect(outcome(['slipstitched the seam on 3-1', 'then there was a hole in one of the others']).ask).toBe(
      'place',
    );
  });

  test('a block outside the grid is never logged', () => {
    for (const note of ['row nine block two is frayed', '3-7 has a hole', 'patched 7-1', 'moth in row 12'])
      for (const { entry } of tell(['2-2 is stained', note]).readings.at(-1)!.entries)
        expect('places' in entry ? entry.places : []).toEqual([]);
  });
});

describe('an answer', () => {
  test('another block done without saying how is no answer', () => {
    const { readings } = tell(['looked after 2-2 this morning', 'I fixed 5-3']);
    expect(readings.at(-1)).toMatchObject({ act: 'log', ask: { slot: 'action' } });
  });

  test.each([
    ['row nine block two is frayed | sorry, row five', ['condition: @5-2 fraying']],
    ['row nine block two is frayed | six, not nine', ['condition: @6-2 fraying']],
    ['row nine block two is frayed | block two row four', ['condition: @4-2 fraying']],
    ['row nine block two is frayed | which? oh, six two', ['condition: @6-2 fraying']],
    ['row three block eight is frayed | the last one then', ['condition: @3-5 fraying']],
    ['did some piecing last night | seven to nine', ['work: 2026-05-05T19:00 2026-05-05T21:00 piecing']],
    ['did some piecing last night | forty-five', ['work: 45 piecing']],
    [
      '3-2 and 4-2 are worn | darned three more of them | six one six two and six three',
      ['treatment: @6-1,6-2,6-3 darn done'],
    ],
    ['patched another one by hand | oh that was five three', ['treatment: @5-3 done hand patch']],
    ['another one in row six is torn | block two', ['condition: @6-2 tear']],
    ["there's a stain on one of the ginghams | the lower one", ['condition: @4-2 stain']],
    ["there's a stain on one of the ginghams | one one", ['condition: @1-1 stain']],
    ['patched 5-5 with the red | the stripe one', ['material: fabric used', 'treatment: @5-5 done patch']],
    [
      'patched 5-5 with the red | red stripe, with whipstitch, 20 minutes',
      ['material: fabric used', 'treatment: 20 @5-5 done patch whipstitch'],
    ],
    [
      "all the purple ones are frayed | that's the pink sprig, the light is bad",
      ['condition: @1-3,3-2 fraying'],
    ],
    [
      "I've finished 2-2 and 2-3 | they were darned, both, in backstitch, and it came to fifty minutes",
      ['treatment: 50 @2-2,2-3 backstitch darn done'],
    ],
    [
      "I've finished 2-2 and 2-3 | oh, whipstitched net over the pair of them",
      ['material: net used', 'treatment: @2-2,2-3 done overlay whipstitch'],
    ],
    ['used two packs of them | the curved needles', ['material: 2 needle pack used']],
    ['I did some mending today, no idea how long | about forty minutes', ['work: 40 mending']],
    ['I did some mending today, no idea how long | from two to three', ['work: 14:00 15:00 mending']],
  ])('%s', (notes, entries) => {
    expect(outcome(notes.split(' | '))).toEqual({ act: 'amend', ask: null, entries });
  });

  test('a cloth named in answer goes to the entry by its full name', () => {
    const { readings } = tell(['patched 5-5 with the red', 'Check.']);
    const material = readings[1]!.entries.map((e) => e.entry).find((e) => e.kind === 'material');
    expect(material?.kind === 'material' && material.name).toBe('red check');
  });

  test.each([
    ['patched 5-5 with the red | Darned 2-2, running stitch.'],
    ["I've finished 2-2 and 2-3 | darned 4-4 as well"],
    ['row nine block two is frayed | row two block two is stained'],
    ['patched another one by hand | pressed 3-3'],
    ['used two packs of them | bought 3 yards of linen for 12'],
    ['I did some mending today, no idea how long | 4-2 has a hole'],
  ])('plainly a new note: %s', (notes) => {
    expect(outcome(notes.split(' | ')).act).toBe('log');
  });
});

test('a note too long to be read whole says so, and reads its beginning', () => {
  const { readings } = tell([`row two block three is torn. ${'and then nothing more '.repeat(600)}`]);
  expect(readings[0]!.reply).toContain('Only the first 1500 words were read; all of them are kept.');
  expect(readings[0]!.entries[0]!.entry).toMatchObject({
    kind: 'condition',
    finding: 'tear',
    places: ['2-3'],
  });
});
