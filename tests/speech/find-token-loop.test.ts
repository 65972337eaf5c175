import fc from 'fast-check';
import { expect, it } from 'vitest';
import { findTokenLoop } from '../../server/speech/find-token-loop.ts';

it('sees nothing in plain text', () => {
  expect(findTokenLoop([])).toBeUndefined();
  expect(findTokenLoop([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13])).toBeUndefined();
});

it('leaves a word said three times alone: "very, very, very"', () => {
  expect(findTokenLoop([5, 9, 9, 9])).toBeUndefined();
});

it('sees a short loop of a period of 1 to 4 once it is 12 tokens long', () => {
  expect(findTokenLoop([3, ...Array(11).fill(8)])).toBeUndefined();
  expect(findTokenLoop([3, ...Array(12).fill(8)])).toEqual({ period: 1, keep: 2 });
  expect(findTokenLoop([3, 1, 2, 1, 2, 1, 2, 1, 2, 1, 2, 1, 2])).toEqual({ period: 2, keep: 3 });
});

it('sees a whole sentence said again, which the short detector misses', () => {
  const sentence = [11, 12, 13, 14, 15, 16, 17, 18];
  expect(findTokenLoop([1, ...sentence, ...sentence.slice(0, -1)])).toBeUndefined();
  expect(findTokenLoop([1, ...sentence, ...sentence])).toEqual({ period: 8, keep: 9 });
});

it('keeps exactly one copy, whatever the sentence', () => {
  fc.assert(
    fc.property(fc.uniqueArray(fc.integer(), { minLength: 7, maxLength: 80 }), (sentence) => {
      expect(findTokenLoop([...sentence, ...sentence])).toEqual({
        period: sentence.length,
        keep: sentence.length,
      });
    }),
  );
});
