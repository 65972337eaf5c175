import { describe, expect, it } from 'vitest';
import { conditionsSaid, readLast, treatmentsSaid } from './bench-quilt.ts';

describe('notes kept as headings with a colon and slashes', () => {
  it.each<[note: string, said: string[]]>([
    ['Edges: top worn / right: sound', ['fraying edge-top', 'sound edge-right']],
    [
      'Ties: half of them gone / rows 1 + 2',
      ['broken-stitching 1-1 1-2 1-3 1-4 1-5 1-6 2-1 2-2 2-3 2-4 2-5 2-6'],
    ],
    ['stain: 2-1 / 2-2 / 3-3', ['stain 2-1 2-2 3-3']],
    ['Top: fine / bottom edge: frayed', ['sound top', 'fraying edge-bottom']],
  ])('%s', (note, said) => {
    expect(conditionsSaid(note)).toEqual(said);
  });

  it.each<[note: string, said: string[]]>([
    ['To do: ties out / whole quilt', ['remove planned ties quilt']],
    ['Next: wash / press', ['wash planned quilt', 'press planned quilt']],
    ['Photos taken: front / back', ['photograph done top backing']],
    ['3-1: hole / patched / brown stripe / whipstitch / 30 min', ['patch done whipstitch 30min 3-1']],
    ['3-4: patch: yes, tomorrow / replace: dropped', ['patch planned 3-4', 'replace dropped 3-4']],
    [
      'Ties out: row 1: done / row 2: in hand / row 3: to go',
      [
        'remove done ties 1-1 1-2 1-3 1-4 1-5 1-6',
        'remove doing ties 2-1 2-2 2-3 2-4 2-5 2-6',
        'remove planned ties 3-1 3-2 3-3 3-4 3-5 3-6',
      ],
    ],
    [
      'row 2 tied, row 3 half done',
      ['tie done 2-1 2-2 2-3 2-4 2-5 2-6', 'tie doing 3-1 3-2 3-3 3-4 3-5 3-6'],
    ],
    ['Washed: yes', ['wash done quilt']],
    ['net 3-1 tomorrow', ['overlay planned 3-1']],
  ])('%s', (note, said) => {
    expect(treatmentsSaid(note)).toEqual(said);
  });

  it('the same fix at the place named before the colon', () => {
    expect(
      treatmentsSaid(['patched 3-1, whipstitch, 30 min', 'Block to the R of it: same fix / 20 min']),
    ).toEqual(['patch done whipstitch 20min 3-2']);
  });

  it('a slash between two lengths is no comma', () => {
    const values = readLast('corner to corner 106 / 107 1/4').entries.map(({ entry: e }) =>
      e.kind === 'measurement' ? e.value : undefined,
    );
    expect(values).toEqual([106, 107.25]);
  });

  it('history under its heading is a remark', () => {
    expect(
      readLast('History: made from army surplus for a scout hut, 1958').entries.map((e) => e.entry),
    ).toEqual([{ kind: 'remark' }]);
  });

  it('another deed that leaves a cloth out mends nothing', () => {
    const { act } = readLast([
      'patched 3-3 with the brown stripe',
      'the gingham ones get pressed tomorrow, not the brown stripe',
    ]);
    expect(act).toBe('log');
  });
});
