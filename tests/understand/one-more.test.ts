import { describe, expect, test } from 'vitest';
import { outcome } from './conversation.ts';

/** Notes of our own; what they mean follows from the conventions of the log, no outside source. */
const DARNED = 'darned 4-4, running stitch, grey thread, 25 min';

describe('one more done the same way', () => {
  test.each([
    ['then I did one more with the same stitch and the same thread and that took 15 minutes'],
    ['a second darn followed, in the same stitch and thread, 15 min'],
    ['another darn, stitch and thread as before, 15 min'],
  ])('%s', (note) => {
    const { entries, ask } = outcome([DARNED, note]);
    expect(ask).toBe('place');
    expect(entries).toEqual(['material: thread used', 'treatment: 15 @ darn done running']);
  });

  test.each([['darned another one at 3-3, same stitch'], ['another stain in 3-3']])(
    'with a place of its own: %s',
    (note) => {
      expect(outcome([DARNED, note]).ask ?? null).toBeNull();
    },
  );
});

describe('a line told block by block', () => {
  test.each([
    ['row 2 left to right: sound, stain, sound, hole, thin'],
    ['row 2, from the right: thin, hole, sound, stain, sound'],
  ])('%s', (note) => {
    const { entries } = outcome([note]);
    expect(entries.some((e) => /stain/.test(e) && / ?@2-2(?: |$)/.test(e.replace('@ ', '@')))).toBe(true);
    expect(entries).toHaveLength(4);
  });

  test('fewer findings than blocks are of the whole row', () => {
    const { entries } = outcome(['row 2: stained, torn']);
    expect(entries).toHaveLength(2);
    for (const e of entries) expect(e).toContain('2-5');
  });
});
