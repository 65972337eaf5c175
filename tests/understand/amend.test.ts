import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Entry, ReadEntry } from '../../shared/entry.ts';
import { outcome, QUILT, tell } from './conversation.ts';

/** Notes of our own; what each should come to follows from the conventions of the log, no outside source. */
describe('a note that mends the last one', () => {
  test.each([
    ['3-2 has a tear | no, row four', ['condition: @4-2 tear']],
    ["stain in row two block two | it's the third row, I've just counted again", ['condition: @3-2 stain']],
    ['row nine block two has a hole | did I say nine? Four.', ['condition: @4-2 hole']],
    ['3-2 has a tear | I said three two but it was three three I was looking at', ['condition: @3-3 tear']],
    ['3-2 has a tear | sorry I meant row five block two', ['condition: @5-2 tear']],
    ['3-2 and 3-3 are torn | not 3-3', ['condition: @3-2 tear']],
    [
      '3-2 has a tear and 3-4 is stained | make the tear a hole',
      ['condition: @3-2 hole', 'condition: @3-4 stain'],
    ],
    [
      "3-2 has a tear and 3-4 is stained | the tear's in 2-2, sorry",
      ['condition: @2-2 tear', 'condition: @3-4 stain'],
    ],
    [
      '4-4 has a hole. 4-5 is stained | swap those: 4-5 has the hole and 4-4 the stain',
      ['condition: @4-4 stain', 'condition: @4-5 hole'],
    ],
    ['3-4 is torn | I got that back to front, 4-3', ['condition: @4-3 tear']],
    ['3-4 is torn | sry, 4-2', ['condition: @4-2 tear']],
    ['sewed up the seam in block four by hand | um row two', ['treatment: @2-4 done hand resew']],
    [
      "darned 3-2 and 3-3 | no I only did 3-2, 3-3's for tomorrow",
      ['treatment: @3-2 darn done', 'treatment: @3-3 darn planned'],
    ],
    [
      "darned 2-3 and 4-3 | wait no I only did the top one the other one's still to do",
      ['treatment: @2-3 darn done', 'treatment: @4-3 darn planned'],
    ],
    // a run of blocks in the row told in part
    [
      'the first row is tied and, in the third, blocks 1 to 3 | that last should be blocks 1 to 4',
      ['treatment: @1-1,1-2,1-3,1-4,1-5,3-1,3-2,3-3,3-4 done tie'],
    ],
    [
      'row one is tied and row three blocks one to three | no it was one to two I had it right the first time',
      ['treatment: @1-1,1-2,1-3,1-4,1-5,3-1,3-2 done tie'],
    ],
    // a part of the one list
    ['tied row three | 3-1 to 3-3 only', ['treatment: @3-1,3-2,3-3 done tie']],
    ['tied row three | first three only', ['treatment: @3-1,3-2,3-3 done tie']],
    ['darned 3-1, 3-2, 4-1 and 4-2 | actually only did the top two', ['treatment: @3-1,3-2 darn done']],
    [
      'darned 3-1, 3-2, 4-1 and 4-2 | only the top two actually, the lower ones are for tomorrow',
      ['treatment: @3-1,3-2 darn done', 'treatment: @4-1,4-2 darn planned'],
    ],
    [
      "darned 3-1, 3-2 and 4-2 | 4-2 isn't done yet actually",
      ['treatment: @3-1,3-2 darn done', 'treatment: @4-2 darn planned'],
    ],
    [
      'patched 3-3 blanket stitch, same on 4-5 | take the four five bit off again i never touched that one',
      ['treatment: @3-3 blanket done patch'],
    ],
    ["patched 3-3 and 4-5 | forget 4-5, haven't touched it", ['treatment: @3-3 done patch']],
    ['patched 3-3 and 4-5 | strike the 4-5 bit', ['treatment: @3-3 done patch']],
    ['darned 3-1 and 3-2 | and 3-3, forgot that one', ['treatment: @3-1,3-2,3-3 darn done']],
    ['darned 3-1 and 3-2 | 3-3 as well, should have said', ['treatment: @3-1,3-2,3-3 darn done']],
    [
      "row two's stained | except 2-4, that's just faded",
      ['condition: @2-1,2-2,2-3,2-5 stain', 'condition: @2-4 fading'],
    ],
    // a part of the quilt for another
    ['washed the top | it was the backing actually', ['treatment: @backing done wash']],
    ['washed the top | the backing, I mean', ['treatment: @backing done wash']],
    [
      "so it's a cold hand wash, that's final. Backing will be cream. | take back the cream, backing's still open",
      ['decision: backing open', 'decision: settled washing'],
    ],
    // what was asked for
    ['found another seam open | between five three and five four', ['condition: @5-3,5-4 split-seam']],
    [
      '4-1 is torn. did 2-3 | sewed up the seam between it and two two',
      ['condition: @4-1 tear', 'treatment: @2-2,2-3 done resew'],
    ],
    [
      'I did some quilting at the weekend | 2 to 3.30 on sunday',
      ['work: 2026-05-03T14:00 2026-05-03T15:30 quilting'],
    ],
    ['patched 3-3 | no wait, that was a darn', ['treatment: @3-3 darn done']],
    // a time denied by its bare hour
    ['mending 8 to 11:20 | started 8:30 not 8', ['work: 08:30 11:20 mending']],
    ['mended from 7.30 to 9.15 | no, 9.30, not 9.15', ['work: 07:30 09:30 mending']],
    // why it was wrong mends nothing
    ['patched 2-1, 25 min | no thirty cause i had to redo the corner', ['treatment: 30 @2-1 done patch']],
    ['3-2 has a stain | four-four, I think. Yes, four-four.', ['condition: @4-4 stain']],
    [
      'bought 2 skeins of red wool and 2 fat quarters of blue | scratch the fat quarters, they were for another job',
      ['material: 2 bought skein tie-thread'],
    ],
    ["going to patch 3-3 | actually I'll darn it", ['treatment: @3-3 darn planned']],
    ['tied 3-1 to 3-4 | to 3-5 I mean', ['treatment: @3-1,3-2,3-3,3-4,3-5 done tie']],
    [
      'tied 3-1 to 3-4 | that should be three one to three five',
      ['treatment: @3-1,3-2,3-3,3-4,3-5 done tie'],
    ],
    [
      'removed the ties from rows one to three | no, one and two',
      ['treatment: @1-1,1-2,1-3,1-4,1-5,2-1,2-2,2-3,2-4,2-5 done remove ties'],
    ],
    ['the top border is torn | bottom, not top', ['condition: @border-bottom tear']],
    ['the left side of the binding is worn | right, I mean', ['condition: @edge-right fraying']],
    ['backing is stained | I said backing, I meant the binding', ['condition: @binding stain']],
    ['3-2 has a hole, patched it | *4-2', ['condition: @4-2 hole', 'treatment: @4-2 done patch']],
    [
      '3-2 has a hole, patched it | not row three, row four',
      ['condition: @4-2 hole', 'treatment: @4-2 done patch'],
    ],
    ['3-2 has a hole, patched it | there was no hole', ['treatment: @3-2 done patch']],
    ['3-2 has a hole, patched it | forget the bit about the hole', ['treatment: @3-2 done patch']],
    ['3-2 has a hole, patched it | no hole there', ['treatment: @3-2 done patch']],
    [
      "3-2 has a hole, patched it | no I didn't patch it, I darned it",
      ['condition: @3-2 hole', 'treatment: @3-2 darn done'],
    ],
    ['3-2 has a hole, patched it | I meant darned', ['condition: @3-2 hole', 'treatment: @3-2 darn done']],
    [
      "3-2 has a hole, patched it | I haven't patched it yet",
      ['condition: @3-2 hole', 'treatment: @3-2 patch planned'],
    ],
    [
      "darned 4-4 and 4-5 | the second one isn't done yet",
      ['treatment: @4-4 darn done', 'treatment: @4-5 darn planned'],
    ],
    ["patched 3-3 | I mean I'm going to", ['treatment: @3-3 patch planned']],
    ['the left border is torn | other side', ['condition: @border-right tear']],
    ['washed it with soap | no soap actually', ['treatment: @quilt done wash']],
    [
      'tied rows one and two | all but the last block of row two, that one I left out',
      ['treatment: @1-1,1-2,1-3,1-4,1-5,2-1,2-2,2-3,2-4 done tie'],
    ],
    ['pressed 2-2 | should have said 2-3', ['treatment: @2-3 done press']],
    ["3-2 has a tear | that's wrong, it was 3-3", ['condition: @3-3 tear']],
    ['3-2 has a tear | did I say two? I meant three', ['condition: @3-3 tear']],
    ["3-2 has a tear | looking closer it's only a stain", ['condition: @3-2 stain']],
    ["3-2 has a tear and a stain | no stain, it's just a shadow", ['condition: @3-2 tear']],
    ['3-2 has a tear and a stain | forget the second bit', ['condition: @3-2 tear']],
    ['3-2 has a tear and a stain | only the tear', ['condition: @3-2 tear']],
    ["3-2 has a tear and a stain | the stain's on 3-3", ['condition: @3-2 tear', 'condition: @3-3 stain']],
    ['3-2 and 4-2 are torn | the second one should be 4-3', ['condition: @3-2,4-3 tear']],
    ['3-2 and 4-2 are torn | scratch the second one', ['condition: @3-2 tear']],
    ["3-2 and 4-2 are torn | 4-2 isn't", ['condition: @3-2 tear']],
    ['3-2 and 4-2 are torn | and 5-2, sorry, three of them', ['condition: @3-2,4-2,5-2 tear']],
    ['patched 3-3 | oh, whipstitched', ['treatment: @3-3 done patch whipstitch']],
    ['patched 3-3 | by hand, I should say', ['treatment: @3-3 done hand patch']],
    [
      'tied rows one and two | row two I only got to block three',
      ['treatment: @1-1,1-2,1-3,1-4,1-5,2-1,2-2,2-3 done tie'],
    ],
    [
      'tied row one | row two I only got to block two | make that block three',
      ['treatment: @2-1,2-2,2-3 done tie'],
    ],
    ['seam between 3-2 and 3-3 is split | no, between 3-3 and 3-4', ['condition: @3-3,3-4 split-seam']],
  ])('places and words: %s', (notes, entries) => {
    expect(outcome(notes.split(' | '))).toEqual({ act: 'amend', ask: null, entries });
  });

  test.each([
    [
      'patched 3-2 and 3-3 with zigzag | 3-3 was blanket stitch',
      ['treatment: @3-2 done patch zigzag', 'treatment: @3-3 blanket done patch'],
    ],
    [
      'patched 3-2 and 3-3 with zigzag | no, only the first one is zigzag, the other is a running stitch',
      ['treatment: @3-2 done patch zigzag', 'treatment: @3-3 done patch running'],
    ],
    ['darned 3-3 | forgot to say, backstitch', ['treatment: @3-3 backstitch darn done']],
    ['darned 3-3 | add backstitch to that', ['treatment: @3-3 backstitch darn done']],
    ['darned 3-3 in 25 minutes | closer to forty', ['treatment: 40 @3-3 darn done']],
    ['darned 3-3 in 25 minutes | 35 minutes I mean, not 25', ['treatment: 35 @3-3 darn done']],
    ['darned 3-3 in 25 minutes | leave the time out', ['treatment: @3-3 darn done']],
    ['darned 3-3 | by hand I should have said', ['treatment: @3-3 darn done hand']],
  ])('stitches: %s', (notes, entries) => {
    expect(outcome(notes.split(' | '))).toEqual({ act: 'amend', ask: null, entries });
  });

  test.each([
    [
      'bought 2 yards of linen for 18 and 3 skeins of floss at 2.10 | the floss was 2.20',
      ['material: $18 2 bought fabric yd', 'material: $2.2 each 3 bought skein tie-thread'],
    ],
    ['bought 2 yards of linen for 18 | 16 not 18', ['material: $16 2 bought fabric yd']],
    ['bought 2 yards of linen for 18 | metres, not yards', ['material: $18 2 bought fabric m']],
    [
      'bought a pack of needles and a spool of thread | scratch the needles',
      ['material: 1 bought spool thread'],
    ],
    [
      'the quilt is 60 by 72 inches | length is 74',
      ['measurement: 60 @quilt in width', 'measurement: 74 @quilt in length'],
    ],
    ['patched 3-2 | oh and it took 20 minutes', ['treatment: 20 @3-2 done patch']],
    ['patched 3-2 | took twenty', ['treatment: 20 @3-2 done patch']],
    ['patched 3-2 | twenty minutes, that', ['treatment: 20 @3-2 done patch']],
    ['worked on it from two to four | make that five', ['work: 14:00 17:00']],
    ['worked on it from two to four | less ten minutes for tea, I forgot', ['work: 110 14:00 16:00']],
    ['worked on it from two to four | with half an hour off for lunch', ['work: 14:00 16:00 90']],
    [
      'worked on it from two to four | that was yesterday, not today',
      ['work: 2026-05-05T14:00 2026-05-05T16:00'],
    ],
    ['started mending at two | I should have said cleaning', ['work: 14:00 cleaning start']],
    [
      'the quilt is 60 by 72 inches | 74 long',
      ['measurement: 60 @quilt in width', 'measurement: 74 @quilt in length'],
    ],
    ['started cutting at two | I meant ten past two', ['work: 14:10 cutting start']],
    [
      'Worked on the binding from two to four | correction, that was quilting, not binding',
      ['work: 14:00 16:00 quilting'],
    ],
  ])('numbers: %s', (notes, entries) => {
    expect(outcome(notes.split(' | '))).toEqual({ act: 'amend', ask: null, entries });
  });

  test('several slips of one purchase in one breath', () => {
    const { entries } = outcome([
      'bought four metres of calico at 5.20 a metre, two reels of thread at 3 each, a pack of pins for 2.50',
      'pins were 2.75, thread was three reels, and the calico was four and a half metres',
    ]);
    expect(entries).toEqual([
      'material: $2.75 1 bought pack pins',
      'material: $3 each 3 bought spool thread',
      'material: $5.2 each 4.5 bought fabric m',
    ]);
  });

  test('questions and talk in between are not the last note', () => {
    expect(outcome(['3-2 has a hole', 'what have I spent so far', 'the phone again', 'sorry, 3-3'])).toEqual({
      act: 'amend',
      ask: null,
      entries: ['condition: @3-3 hole'],
    });
  });

  test('what is told beside the mending is kept', () => {
    const { entries } = outcome(['3-2 is frayed', 'not 3-2, 3-3, and 4-4 is stained']);
    expect(entries).toContain('condition: @3-3 fraying');
  });
});

describe('a note that only sounds like a mend', () => {
  test.each([
    ['3-2 is frayed | sorry the cat jumped up'],
    ['3-2 is frayed | no more than I expected really'],
    ['patched 3-2 | hold on, 3-3 has a hole in it'],
    ['patched 3-2 | actually the batting has shifted in row five'],
    ['patched 3-2 | wait, I need two spools of white thread'],
    ['patched 3-3 | no, 3-4 needs a patch as well'],
    ['the backing is sound | no holes in it at all'],
    ['the left side of the binding is worn | right, on to the patching'],
    ['3-2 and 3-3 are torn | 3-3 is fine actually'],
    ["labelled it | measured 3-3, it's 10 inches"],
    ['tied row one | row two I only got to block three'],
    ['bought two yards of linen for 18 | and two spools of thread'],
    ["the left border is torn | right so that's done"],
    ['patched 3-2 in 10 minutes | oh that is a good one'],
    ['3-2 has a tear | looking again there is a hole in 4-4'],
    ["3-2 has a tear | there's a stain on 3-3"],
    ['patched 3-2 | 3-3 next, whipstitch'],
  ])('%s', (notes) => {
    expect(outcome(notes.split(' | ')).act).not.toBe('amend');
  });

  test('after taking back, telling it anew is a log', () => {
    expect(outcome(['3-2 has a hole', 'scratch that', '3-3 has a hole'])).toEqual({
      act: 'log',
      ask: null,
      entries: ['condition: @3-3 hole'],
    });
    expect(outcome(['3-2 has a hole', 'scratch that', 'no, row four']).act).not.toBe('amend');
  });
});

describe('what a mended entry stands on', () => {
  test('unchanged slots keep the words of the earlier note, changed ones point into the new', () => {
    const { readings } = tell(['darned 2-2 in running stitch', 'sorry, 2-3']);
    const read = readings[1]!.entries[0]!;
    expect(read.origins['stitch']?.words).toBe('running stitch');
    const places = read.origins['places']!;
    expect(places.words).toBeUndefined();
    expect('sorry, 2-3'.slice(places.from, places.to)).toBe('2-3');
    expect(() => ReadEntry.parse(read)).not.toThrow();
  });

  test("a second mend still knows the first note's words", () => {
    const { readings } = tell(['darned 2-2 in running stitch', 'sorry, 2-3', 'no, row four']);
    expect(readings[2]!.entries[0]!.origins['stitch']?.words).toBe('running stitch');
  });
});

const NOTES = [
  '3-2 has a tear',
  'row four is stained, and the backing too',
  'patched 5-5 with the red stripe, 20 minutes',
  'darned it in running stitch',
  'bought two yards of linen for 18',
  'started mending at two',
  'stopping there',
  'no, row five',
  'the second one',
  'same again on the next one',
  'patched another one',
  'five two',
  'make that four',
  'what have I spent',
  'the cat is on it',
  'either net over 2-2 or patch it',
  'sorry, 3-3',
  '',
  'not 3-2',
];

describe('whatever is said', () => {
  test('taking back after a note puts the memory back to before it', () => {
    fc.assert(
      fc.property(
        fc.array(fc.constantFrom(...NOTES), { maxLength: 6 }),
        fc.constantFrom(...NOTES),
        (before, note) => {
          const { readings, conversations } = tell([...before, note, 'scratch that']);
          fc.pre(readings.at(-2)!.act === 'log');
          const earlier = conversations[before.length - 1]?.['memory'] as Record<string, unknown> | undefined;
          const after = conversations.at(-1)!['memory'] as Record<string, unknown>;
          const plain = ({ before: _b, last: _l, ...rest }: Record<string, unknown>) => rest;
          if (earlier) expect(plain(after)).toEqual(plain(earlier));
          expect(after['last']).toBeNull();
        },
      ),
      { numRuns: 150 },
    );
  });

  test('every mended set is made of valid entries, and no block lies outside the grid', () => {
    fc.assert(
      fc.property(fc.array(fc.constantFrom(...NOTES), { minLength: 2, maxLength: 8 }), (notes) => {
        for (const reading of tell(notes).readings)
          for (const { entry } of reading.entries) {
            expect(Entry.safeParse(entry).success).toBe(true);
            const places = 'places' in entry ? (entry.places ?? []) : [];
            for (const place of places) {
              const block = /^(\d+)-(\d+)$/.exec(place);
              if (!block) continue;
              expect(Number(block[1])).toBeLessThanOrEqual(QUILT.rows);
              expect(Number(block[2])).toBeLessThanOrEqual(QUILT.blocks);
            }
          }
      }),
      { numRuns: 150 },
    );
  });
});
