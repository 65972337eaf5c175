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

describe('short forms of hurried thumbs', () => {
  it.each<[notes: string | string[], said: string[]]>([
    [['patched 3-1, 40 min', 'r3 b2 ditto, 25m'], ['patch done 25min 3-2']],
    ["r2 b2 repl'd w/ brown stripe, hand st", ['replace done hand 2-2']],
    ['tmrw: press r1 b3, re-photo r2 b4', ['press planned 1-3', 'photograph planned 2-4']],
    [
      ['r2 b2: net over or cut out & repl? tbd', 'same ? for r3 b1'],
      ['overlay considering 3-1', 'replace considering 3-1'],
    ],
    [
      ['r2 b2: net over or cut out & repl? tbd', 'same for r3 b1?', 'will net both, forget repl'],
      ['overlay planned 2-2 3-1', 'replace dropped 2-2 3-1'],
    ],
    ['might patch or darn 2-2', ['patch considering 2-2', 'darn considering 2-2']],
  ])('%j', (notes, said) => {
    expect(treatmentsSaid(notes)).toEqual(said);
  });

  it('metres of cloth stay metres', () => {
    expect(readLast('bought calico, 25m').entries.map((e) => e.entry)).toEqual([
      { kind: 'material', material: 'fabric', use: 'bought', quantity: 25, unit: 'm', name: 'calico' },
    ]);
  });
});

describe('work told as the name of what went on', () => {
  it.each<[note: string, said: string[]]>([
    ['Pressing of row 3 was completed at 11:20.', ['press done 3-1 3-2 3-3 3-4 3-5 3-6']],
    ['The tying of row 2 was completed yesterday.', ['tie done 2-1 2-2 2-3 2-4 2-5 2-6']],
    ['the tying of row 2 is half done', ['tie doing 2-1 2-2 2-3 2-4 2-5 2-6']],
    ['Since 13:00 the front has been in course of vacuuming.', ['clean doing top']],
    ['Removal of the old patch at 3-2 is complete.', ['remove done old-patch 3-2']],
    ['4-4 lies under 40 cm of dyed crepeline', ['overlay done 4-4']],
  ])('%s', (note, said) => {
    expect(treatmentsSaid(note)).toEqual(said);
  });

  it.each<[note: string, said: string[]]>([
    [
      "An earlier restorer's cotton patch was found at 6-4. It has since been lifted off.",
      ['old-repair 6-4'],
    ],
    ["A previous owner's darn in 3-3.", ['old-repair 3-3']],
    ['Migration of dye was noted in 3-2.', ['dye-bleed 3-2']],
  ])('%s', (note, said) => {
    expect(conditionsSaid(note)).toEqual(said);
  });

  it('where the hole is, points at it', () => {
    expect(conditionsSaid(['3-2 has a hole', 'Where the hole is I might darn it or leave it.'])).toEqual([]);
  });
});

describe('being of two minds, and lists of ways', () => {
  it.each<[notes: string | string[], said: string[]]>([
    [
      'Half of me would cut 3-3 out and set in a fresh piece, the other half says leave it alone.',
      ['replace considering 3-3', 'leave considering 3-3'],
    ],
    [
      'might patch, darn or replace 2-3',
      ['patch considering 2-3', 'darn considering 2-3', 'replace considering 2-3'],
    ],
    [
      '2-3 could be patched, darned or netted',
      ['patch considering 2-3', 'darn considering 2-3', 'overlay considering 2-3'],
    ],
    ["maybe I'll net 2-4, darned 3-1 already", ['overlay considering 2-4', 'darn done 3-1']],
  ])('%j', (notes, said) => {
    expect(treatmentsSaid(notes)).toEqual(said);
  });

  it('every last block is of the rows named', () => {
    expect(conditionsSaid('the top row, it is in good shape, every last block')).toEqual([
      'sound 1-1 1-2 1-3 1-4 1-5 1-6',
    ]);
  });

  it('the other blocks of a cloth are those not yet told of', () => {
    expect(
      conditionsSaid('1-1 is torn, blue gingham. The other two blocks of blue gingham are sound'),
    ).toEqual(['tear 1-1', 'sound 2-4 5-6']);
  });

  it('a price in words behind its cloth is no hour', () => {
    const read = readLast(['bought 2 yards of calico at three pounds a yard', 'the calico was three fifty']);
    expect(read.act).toBe('amend');
    expect(read.entries.map((e) => (e.entry.kind === 'material' ? e.entry.cost : undefined))).toEqual([
      { amount: 3.5, each: true },
    ]);
  });

  it('what cloth will do for stops no work', () => {
    expect(readLast("bought two metres of net, that'll do for all four blocks").entries).toHaveLength(1);
  });
});

it('goods told with the market where they were bought are no story of the quilt, and start no work', () => {
  const kinds = readLast(
    'Picked up at the market: a metre of calico at £11 a metre, and half a metre of net.',
  ).entries;
  expect(kinds.map((e) => e.entry.kind)).toEqual(['material', 'material']);
});

it("that's all wrong, strike the whole of it", () => {
  expect(readLast(['patched 2-2', "No, that's all wrong, strike the whole of it."]).act).toBe('undo');
});
