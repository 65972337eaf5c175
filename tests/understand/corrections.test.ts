import { describe, expect, test } from 'vitest';
import { outcome } from './conversation.ts';

/** Corrections inside a note: what is said last wins. Notes of our own. */
describe('what is said last wins', () => {
  test.each([
    ['row two no row three block four has a tear', ['condition: @3-4 tear']],
    ['3-2, no 3-3, has a hole', ['condition: @3-3 hole']],
    ['3-2 has a hole, no, 3-3', ['condition: @3-3 hole']],
    ['3-2 has a hole, no, 3-3 has a hole', ['condition: @3-3 hole']],
    ['3-2 stained. no, 3-3. and 3-4 torn', ['condition: @3-3 stain', 'condition: @3-4 tear']],
    ['patched 3-2, 3-3 and 3-4, sorry, not 3-3', ['treatment: @3-2,3-4 done patch']],
    ['patched 3-2 and 3-3, no, just 3-2', ['treatment: @3-2 done patch']],
    ['darned, no, patched 3-2', ['treatment: @3-2 done patch']],
    ["there's a hole, no, more of a tear in 3-2", ['condition: @3-2 tear']],
    ['left border no the right border is frayed', ['condition: @border-right fraying']],
    ['binding, I mean the backing, is mildewed', ['condition: @backing mildew']],
    ['stitched 3-2 by hand no by machine', ['treatment: @3-2 done machine resew']],
    // a count of rows, columns or blocks
    ['the first two no first three blocks in row four are torn', ['condition: @4-1,4-2,4-3 tear']],
    ['the last three, no four, blocks in row two are frayed', ['condition: @2-2,2-3,2-4,2-5 fraying']],
    ['frayed along the bottom two rows no only the bottom one', ['condition: @6-1,6-2,6-3,6-4,6-5 fraying']],
    [
      'resewed 3-2, running stitch, no, what am I saying, ladder stitch',
      ['treatment: @3-2 done ladder resew'],
    ],
    ['darned 2-2, twenty minutes. No, thirty.', ['treatment: 30 @2-2 darn done']],
    ['started at two no ten past two', ['work: 14:10 start']],
    // hours put right, said without "at"
    ['started the survey at one no one twenty', ['work: 13:20 start survey']],
    ['mended from two, no, from half past two, until three', ['work: 14:30 15:00 mending']],
    ['mended from one, or more exactly ten past one, until three', ['work: 13:10 15:00 mending']],
    // other blocks of the row just told
    [
      'pressed row one and row three blocks one to three no one to two',
      ['treatment: @1-1,1-2,1-3,1-4,1-5,3-1,3-2 done press'],
    ],
    ['stains in row three block two, no, four', ['condition: @3-4 stain']],
    [
      'took a label off the bottom right corner of the quilt no the bottom left',
      ['treatment: @corner-bottom-left done label remove'],
    ],
    ['from one to three, no, half past three on the mending', ['work: 13:00 15:30 mending']],
    ['darned 2-2 for ten minutes, no, fifteen', ['treatment: 15 @2-2 darn done']],
    [
      'sixty by seventy two inches, no, sixty two by seventy two, the whole quilt',
      ['measurement: 62 @quilt in width', 'measurement: 72 @quilt in length'],
    ],
    ['cleaned 3-2 with 5, no 10 ml of vinegar', ['material: 10 ml other used', 'treatment: @3-2 clean done']],
    // a second thought between what was wrong and what is right
    [
      'washed it with thirty ml of soap, no, let me be exact, forty-five',
      ['material: 45 detergent ml used', 'treatment: @quilt done wash'],
    ],
    [
      'measured it, 91 cm by 120, let me look again, 112',
      [
        'measurement: 112 @quilt cm length',
        'measurement: 91 @quilt cm width',
        'treatment: @quilt done measure',
      ],
    ],
    ['darned 2-2, twenty minutes. Twenty-five, to be honest.', ['treatment: 25 @2-2 darn done']],
    // the marker behind what is right, or 'not' behind it
    ['row 3 block 2 is torn, block 1, sorry', ['condition: @3-1 tear']],
    [
      'stain in 2-2, 2-3, I mean. And the backing is sound.',
      ['condition: @2-3 stain', 'condition: @backing sound'],
    ],
    ['patched 1-1, 20 minutes, 30 sorry', ['treatment: 30 @1-1 done patch']],
    [
      "it's frayed all down the right hand edge, no, left hand edge, sorry",
      ['condition: @edge-left fraying'],
    ],
    ['darned 2-2, running stitch, er no, I used backstitch', ['treatment: @2-2 backstitch darn done']],
    ['patched 3-1, 3-2 and 3-3, sorry about the noise', ['treatment: @3-1,3-2,3-3 done patch']],
    ["hole in 2-3, hang on, I'm upside down here, 2-5", ['condition: @2-5 hole']],
    ['began mending at twenty past one, or, going by the clock, half past', ['work: 13:30 mending start']],
    [
      'the label goes in the bottom right corner; no, the bottom left',
      ['treatment: @corner-bottom-left label planned'],
    ],
    [
      'resewed the seam between 2-1 and 2-2, no, wait a minute, between 2-2 and 2-3',
      ['treatment: @2-2,2-3 done resew'],
    ],
    // but a look at another block mends nothing
    ['3-2 has a hole, I checked it again, 3-3 is sound', ['condition: @3-2 hole', 'condition: @3-3 sound']],
    [
      '3-2 no wait 3-3 no 3-4 no 4-4 no 4-5 no 5-5 no 5-4 no 5-3 no 5-2 no wait 5-1 has a hole',
      ['condition: @5-1 hole'],
    ],
  ])('%s', (note, entries) => {
    expect(outcome([note]).entries).toEqual(entries);
  });

  test.each([
    ['the backing is sound, no holes', ['condition: @backing sound']],
    ['3-2 is torn, not stained', ['condition: @3-2 tear']],
    ['row 2 block 3 is torn, no 4 yet', ['condition: @2-3 tear']],
    ['started at two, no stains in 2-2', ['work: 14:00 start']],
    ['3-2 has no hole but 3-3 has a tear', ['condition: @3-3 tear']],
  ])('a plain "no" takes nothing back: %s', (note, entries) => {
    expect(outcome([note]).entries).toEqual(entries);
  });
});
