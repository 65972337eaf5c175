import { describe, expect, it } from 'vitest';
import { wordMoments } from '../../client/features/entries/state/word-moments.ts';

const words = (text: string) => text.split(' ').map((word) => ({ text: word, confidence: 0.9 }));

describe('when the words of a note are said', () => {
  it('begins with its sound, goes forward, and ends within it', () => {
    const moments = wordMoments({
      file: 'a.wav',
      startS: 60,
      endS: 64,
      words: words('Row two, block one is stained.'),
    });
    expect(moments.map(({ text }) => text)).toEqual(['Row', 'two,', 'block', 'one', 'is', 'stained.']);
    expect(moments[0]!.atS).toBe(60);
    const times = moments.map(({ atS }) => atS);
    expect([...times].sort((a, b) => a - b)).toEqual(times);
    expect(times.at(-1)).toBeLessThan(64);
    // A long word takes longer than a short one.
    expect(times[3]! - times[2]!).toBeGreaterThan(times[5]! - times[4]!);
  });

  it('knows nothing where no words were kept', () => {
    expect(wordMoments({ file: 'a.wav', startS: 0, endS: 1 })).toEqual([]);
  });
});
