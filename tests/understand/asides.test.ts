import { describe, expect, it } from 'vitest';
import { say } from './say.ts';

describe('talk aside', () => {
  it.each([
    "They're on the windowsill, love, where you left them.",
    'get out of my thread basket you rotten cat',
    'come here Biscuit, leave that alone',
    "there's the postie",
    "the kettle's boiling, two seconds",
    "somebody's hammering on the door",
    "it's tipping it down outside",
    "no you can't have a biscuit before tea",
    "my neck's killing me",
    "that's the school bus",
    'get off that quilt, you',
    'get down, you silly animal',
    "my cousin's leaning on the ironing board again, sorry, madam, off you go",
    'a courier wanting a signature for the flat upstairs',
    "there goes next door's piano again",
    "who's that at the back door hang about",
    'A fire drill is being announced over the loudspeaker.',
    'That bird has been going since six this morning.',
    "the lodger's burning toast again",
    'my jumper wants darning',
    "there's a stain on my good blouse",
    'get off the batting you wretched animal',
    "where's my thimble got to",
    'what a day',
  ])('%s', (note) => {
    const reading = say(note);
    expect([reading.act, reading.entries]).toEqual(['aside', []]);
  });

  it.each([
    'hang on the phone. right, patched 3-2 with brown gingham',
    "the dog's torn the corner of 4-1",
    "the cat's been sick on 2-2 there's a stain",
    'while the kettle boiled i darned 1-3',
    'tea stain on 2-4',
    "there's a coffee stain somewhere in this one",
    'cut out the bad ones in 3-4 and set in turkey red',
    'the moths have been at 3-3',
    'patched 3-3 with a bit of my old curtains',
    'the back has a tear by the fence pattern in 4-1',
  ])('%s is of the work', (note) => {
    const reading = say(note);
    expect(reading.act).toBe('log');
    expect(reading.entries.length).toBeGreaterThan(0);
  });
});
