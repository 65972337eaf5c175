import { expect, it } from 'vitest';
import { buildPrompt } from '../../server/speech/build-prompt.ts';

it('is one natural sentence with this quilt’s fabrics and one place', () => {
  const { sentence } = buildPrompt({
    rows: 7,
    blocks: 5,
    fabrics: { 'brown gingham': ['1-2'], indigo: [], 'rose lawn': [] },
  });
  expect(sentence).toBe(
    'Notes on mending a quilt of brown gingham, indigo and rose lawn. Row three, block two has a split seam.',
  );
});

it('names a place inside a small grid, and no fabric where none is known', () => {
  expect(buildPrompt({ rows: 1, blocks: 1, fabrics: [] }).sentence).toBe(
    'Notes on mending a quilt. Row one, block one has a split seam.',
  );
  expect(buildPrompt(undefined).sentence).toBe(
    'Notes on mending a quilt. Row three, block two has a split seam.',
  );
});

it('keeps at most the last 60 words of the note before', () => {
  const words = Array.from({ length: 200 }, (_, i) => `w${i}`);
  expect(buildPrompt(undefined, words.join(' ')).lastNote).toBe(words.slice(-60).join(' '));
  expect(buildPrompt(undefined, '  ').lastNote).toBeUndefined();
});

it('lists the fabrics among the terms that are lightly favoured', () => {
  expect(buildPrompt({ fabrics: ['turkey red'] }).boostTerms).toContain('turkey red');
});
