import { describe, expect, it } from 'vitest';
import { say } from './say.ts';

describe('taking back the last note', () => {
  it.each([
    'undo that please',
    'no, hold on, take that back again, i was looking at the wrong blanket',
    "please forget the whole of what i just told you, my sister's shaking her head at me",
    "ughh delete that, i'm mixing it up with my tote bag",
    'ignore what i just said, wipe it',
    "forget i said that, it was my sister's quilt i was piecing on",
    'no, that was the tea cosy i was thinking of. take it back, every word.',
    'no, strike that',
    "wipe that i'm holding it upside down",
    "hang on, that's not this quilt",
    'strike that last one that was for a different quilt',
    'del that, wrong blanket',
    "no, take that back, it's only soot from the stove",
    'delete the last entry',
    'can you take that back',
    'oh scratch that, i was looking at the wrong quilt',
    'wipe the last note, it was the other job',
    'forget i said that',
    'ignore that last bit',
    'disregard my last message',
    'take that out of the log',
    "scrap that last note, i'd miscounted the rows",
    'no undo, i counted the block twice',
    "Ah no, rub that out, the lamp was behind me and I'm seeing things.",
    'cancel the 14:10 entry, wrong piece',
    // that it should not have been said at all
    "whoops didn't mean to log that",
    "that wasn't meant to go in",
    "I shouldn't have logged that",
    "let's not log that",
    "that one's a duplicate, remove it",
    "that's in there twice, take one out",
    'that last entry needs to go',
    'disregard',
    // a command of its own beside the reason
    "no that's wrong, scrap it",
    'let me start again, scrap that',
    'i spoke too soon, take that off',
    'take that out the cutting was for the cushions',
    'no no, ignore all of that, the receipt belongs to another job',
    "no I didn't, that was the tablecloth. take it off please",
    "that wasn't this quilt, take it out",
  ])('%s', (note) => {
    const reading = say(['patched 3-2', note]);
    expect([reading.act, reading.entries]).toEqual(['undo', []]);
  });

  it.each([
    // what it should be is said: a mend
    'scratch that, it was row four',
    'strike that, make it forty minutes',
    // verbs of the bench with things of the bench
    'took that patch back off 3-2',
    'take the binding back off',
    'undo the seam between 2-1 and 2-2',
    'scrub the stain on 3-1',
    'remove the patch on 2-2',
    'forget the crepeline',
    'cancel the wash',
    'the last skein is gone',
    'leave that one alone on 3-3',
    'take that off tomorrow',
    'forget the bit about the muslin, it was lawn',
    "no I didn't, that was the one below",
    // said to the house
    "never mind that, it's only the phone",
  ])('%s takes nothing back', (note) => {
    const reading = say(['patched 3-2', note]);
    expect(reading.act).not.toBe('undo');
  });
});
