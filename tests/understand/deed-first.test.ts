import { describe, expect, it } from 'vitest';
import { readNote, SILENCE } from '../../core/conversation/read-note.ts';
import { AFTERNOON, QUILT } from './two-cloths.ts';

const read = (text: string): string[] =>
  readNote(text, { at: AFTERNOON, quilt: QUILT, conversation: SILENCE }).reading.entries.map(
    ({ entry: e }) =>
      e.kind === 'treatment'
        ? `${e.action} ${e.state} ${e.places?.join()}`
        : e.kind === 'material'
          ? `${e.material} ${e.use} ${e.quantity ?? ''}`.trim()
          : e.kind === 'condition'
            ? `${e.finding} ${e.places?.join()}`
            : e.kind,
  );

describe('what was used, told before the deed that it served', () => {
  it('is put behind the deed', () => {
    expect(read('used pinstripe + fusible web to patch a hole in 1-3').sort()).toEqual([
      'adhesive used',
      'fabric used',
      'hole 1-3',
      'patch done 1-3',
    ]);
    expect(read('I used grey thread to darn 2-3')).toEqual(['darn done 2-3', 'thread used']);
    expect(read('used vinegar to get the stain out of 2-3')).toEqual(['clean done 2-3', 'other used']);
  });

  it('stays where a quantity was told, or where nothing was done to a place', () => {
    expect(read('used two yards of muslin to back it')).toEqual(['backing used 2']);
    expect(read('used 3 skeins to tie row 2').at(-1)).toContain('tie-thread used 3');
  });
});
