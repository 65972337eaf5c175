import { expect, it } from 'vitest';
import { repeatsItself } from '../../server/speech/repeats-itself.ts';

it.each([
  [
    "I stabilised the tear with fusible and machine's exact over it. I stabilised the tear with fusible and machines exact over it.",
    true,
  ],
  ['row three block two is torn and row three block four is torn', false],
  ['patched three two, patched three three, patched three four', false],
  ['I closed the seam by hand.', false],
  ['', false],
])('%s: said again, nearly word for word: %s', (text, again) => {
  expect(repeatsItself(text)).toBe(again);
});
