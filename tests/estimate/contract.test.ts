import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { estimate } from '../../core/estimate/estimate.ts';
import { readForeignSpec } from '../../core/estimate/read-foreign-spec.ts';
import { readSpec } from '../../core/estimate/read-spec.ts';
import { SpecError } from '../../core/estimate/spec-error.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const whole = {
  unit: 'in',
  quilt: { width: 60, length: 72 },
  sides: { top: 60, right: 72.5, bottom: 60.5, left: 72, diagonals: [93.5, 94.25] },
  backing: { usable: 40, overage: 4, seam: 0.5 },
  batting: { overage: 4, packages: [{ name: 'crib', width: 45, length: 60 }], maxSpacing: 4 },
  binding: { strip: 2.5, usable: 40, allowance: 10, join: 'diagonal', cut: 'straight', seam: 0.25 },
  border: { width: 4, corner: 'butted', usable: 40, seam: 0.25 },
  ties: { rows: 8, blocks: 6, every: 'block' },
  patches: {
    usable: 40,
    seam: 0.25,
    turn: true,
    pieces: [
      { width: 9, length: 9, count: 12 },
      { width: 4.5, length: 9, count: 5 },
    ],
  },
  interfacing: { usable: 20, pieces: [{ width: 9.5, length: 9.5, count: 12 }] },
  thread: {
    seams: [
      { stitch: 'lockstitch', length: 540 },
      { stitch: 'zigzag', length: 120 },
    ],
    waste: 0.15,
  },
  work: {
    planned: [
      { action: 'replace', count: 12 },
      { action: 'tie', count: 48 },
    ],
    log: [{ action: 'replace', minutes: 35, count: 1 }],
  },
  price: {
    currency: 'GBP',
    hourly: '24.00',
    materials: [{ name: 'calico', amount: '31.50' }],
    contingency: 0.1,
    tax: 0.2,
  },
};
const command = (input: string) =>
  spawnSync(process.execPath, ['--import', 'tsx', 'server/cli/estimate.ts'], {
    cwd: ROOT,
    input,
    encoding: 'utf8',
  });

describe('the whole spec', () => {
  const answer = estimate(readSpec(whole));

  test('every part is answered under its own name, with its working', () => {
    for (const part of Object.keys(whole).filter((key) => key !== 'unit' && key !== 'quilt')) {
      const { working } = answer[part as 'sides'] ?? { working: [] };
      expect(working.length, part).toBeGreaterThan(0);
      expect(JSON.stringify(answer[part as 'sides'])).not.toMatch(/NaN|Infinity|undefined/);
    }
    for (const part of ['backing', 'binding', 'border', 'patches', 'interfacing'] as const) {
      expect(answer[part]!.yards! * 8).toBe(Math.round(answer[part]!.yards! * 8));
      expect(answer[part]!.yards!).toBeGreaterThanOrEqual(answer[part]!.exact! - 0.0005);
    }
  });

  test('the true perimeter goes into the binding', () => {
    expect(answer.sides).toMatchObject({ perimeter: 265, skew: 0.75, oppositeDifference: 0.5 });
    expect(answer.binding).toMatchObject({
      needed: 275,
      strips: 8,
      joined: 302.5,
      folded: 1.25,
      front: 0.25,
      yards: 0.625,
    });
  });

  test('ties farther apart than the batting allows are warned of', () => {
    expect(answer.ties!.count).toBe(48);
    expect(answer.ties!.warnings).toHaveLength(1);
  });

  test('what is left is planned less done, and the total is narrower than the sum of the ranges', () => {
    const work = answer.work!;
    expect(work.actions.map(({ left }) => left)).toEqual([11, 48]);
    expect(work.total.high).toBeLessThan(work.actions.reduce((sum, { high }) => sum + high, 0));
    expect(work.total.low).toBeGreaterThan(work.actions.reduce((sum, { low }) => sum + low, 0));
  });

  test('the command answers the same', () => {
    const { status, stdout, stderr } = command(JSON.stringify(whole));
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
    expect(JSON.parse(stdout)).toEqual(JSON.parse(JSON.stringify(answer)));
  });
});

describe('sides', () => {
  const sides = (s: object) => estimate(readSpec({ unit: 'in', sides: s })).sides!;
  test('a rectangle is square, a leaning one is not', () => {
    // 3-4-5 triangle.
    expect(sides({ top: 30, right: 40, bottom: 30, left: 40, diagonals: [50, 50] })).toMatchObject({
      perimeter: 140,
      skew: 0,
      squareness: 0,
    });
    // A rhombus of side 50 with diagonals 60 and 80: its corners are 2 atan(3/4) = 73.74 and 106.26 degrees.
    expect(sides({ top: 50, right: 50, bottom: 50, left: 50, diagonals: [60, 80] })).toMatchObject({
      skew: 20,
      squareness: 16.26,
    });
  });
});

const wrong: [string, object, RegExp][] = [
  ['negative', { quilt: { width: -60, length: 72 } }, /^quilt\.width: expected .*above 0, got -60$/],
  ['nothing', { quilt: { width: 0, length: 72 } }, /^quilt\.width/],
  ['absurd', { quilt: { width: 60_000, length: 72 } }, /^quilt\.width/],
  [
    'large beyond sense',
    { quilt: { width: 60, length: 2000 } },
    /^quilt\.length: expected a quilt no larger/,
  ],
  [
    'words for a number',
    { quilt: { width: 'sixty', length: 72 } },
    /^quilt\.width: expected a number, got "sixty"/,
  ],
  ['null', { quilt: { width: null, length: 72 } }, /^quilt\.width: expected a number, got null/],
  ['an unknown unit', { unit: 'furlong' }, /^unit: expected one of in, cm, got "furlong"/],
  ['an unknown field', { backing: { useable: 40 } }, /^backing\.useable: .*"useable"/],
  ['an unknown part', { bakcing: {} }, /^bakcing: /],
  [
    'ties at no spacing',
    { quilt: { width: 60, length: 72 }, ties: { every: 0 } },
    /^ties\.every: expected a number above 0, got 0$/,
  ],
  ['ties by a word', { ties: { every: 'often' } }, /^ties\.every/],
  ['half a block', { ties: { rows: 8.5, blocks: 6 } }, /^ties\.rows/],
  ['sides that do not close', { sides: { top: 10, right: 10, bottom: 100, left: 10 } }, /^sides: /],
  [
    'diagonals of no quadrilateral',
    { sides: { top: 60, right: 72, bottom: 60, left: 72, diagonals: [93.5, 120] } },
    /^sides\.diagonals: /,
  ],
  [
    'a diagonal too long for its triangle',
    { sides: { top: 60, right: 72, bottom: 60, left: 72, diagonals: [200, 93] } },
    /^sides\.diagonals: /,
  ],
  [
    'a seam wider than the cloth',
    { quilt: { width: 60, length: 72 }, backing: { usable: 40, seam: 25 } },
    /^backing\.seam: /,
  ],
  [
    'a strip wider than the cloth',
    { quilt: { width: 60, length: 72 }, binding: { usable: 40, strip: 41 } },
    /^binding\.strip: /,
  ],
  [
    'a binding seam wider than the strip',
    { quilt: { width: 60, length: 72 }, binding: { strip: 2, seam: 1 } },
    /^binding\.seam: /,
  ],
  [
    'a piece wider than the cloth, grain kept',
    { patches: { usable: 40, turn: false, pieces: [{ width: 45, length: 5, count: 1 }] } },
    /^patches\.pieces\[0\]\.width: expected no more than the usable width 40 with the grain kept/,
  ],
  [
    'a piece wider than the cloth either way',
    { interfacing: { usable: 20, pieces: [{ width: 21, length: 30 }] } },
    /^interfacing\.pieces\[0\]\.width/,
  ],
  ['no pieces', { patches: { pieces: [] } }, /^patches\.pieces: expected at least 1/],
  [
    'too many pieces',
    { patches: { pieces: [{ width: 1, length: 1, count: 9000 }] } },
    /^patches\.pieces: expected at most 5000/,
  ],
  [
    'a stitch without a ratio',
    { thread: { seams: [{ stitch: 'wobble', length: 10 }] } },
    /^thread\.seams\[0\]\.stitch/,
  ],
  ['a currency that is none', { price: { currency: 'ABC' } }, /^price\.currency/],
  ['less than no money', { price: { currency: 'GBP', hourly: '-3' } }, /^price\.hourly/],
  [
    'tax in per cent',
    { price: { currency: 'GBP', tax: 20 } },
    /^price\.tax: expected a number of at most 1, got 20/,
  ],
  [
    'negative minutes',
    { work: { planned: [{ action: 'replace', count: 1 }], log: [{ action: 'replace', minutes: -5 }] } },
    /^work\.log\[0\]\.minutes/,
  ],
  [
    'a quilt smaller than any',
    { quilt: { width: 0.01, length: 72 } },
    /^quilt\.width: expected a quilt of at least 1 in/,
  ],
  ['sides beyond sense', { sides: { top: 4000, right: 4000, bottom: 4000, left: 4000 } }, /^sides\.top/],
  [
    'an overage beyond sense',
    { quilt: { width: 60, length: 72 }, backing: { overage: 400 } },
    /^backing\.overage/,
  ],
  ['a cloth wider than any loom', { unit: 'cm', backing: { usable: 4000 } }, /^backing\.usable: .*609\.6 cm/],
  ['a list', [], /^the spec: expected a.*object/],
];

describe('a spec that makes no sense', () => {
  test.each(wrong)('%s', (_, spec, message) => {
    const attempt = () => estimate(readSpec(spec));
    expect(attempt).toThrow(SpecError);
    expect(attempt).toThrow(message);
  });

  test('exits 2 with one clear line', () => {
    for (const input of [
      '',
      'not json',
      '[1]',
      '{"unit":"furlong"}',
      '{"quilt":{"width":1e999,"length":3}}',
    ]) {
      const { status, stdout, stderr } = command(input);
      expect({ status, stdout }, input).toEqual({ status: 2, stdout: '' });
      expect(stderr.trimEnd().split('\n'), input).toHaveLength(1);
      expect(stderr, input).toMatch(/: expected .*got /);
    }
  });

  test('what is half known is answered as far as it goes, and the rest asked', () => {
    const answer = estimate(
      readSpec({ backing: {}, ties: {}, border: { width: 3 }, price: { currency: 'EUR', hourly: '20' } }),
    );
    expect(answer.backing!.question).toContain('How wide');
    expect(answer.ties!.question).toContain('rows');
    expect(answer.border).toMatchObject({ strip: 3.5, question: expect.stringContaining('How wide') });
    expect(answer.price!.question).toContain('hours');
  });

  const q = { width: 60, length: 72 };
  const planned = { planned: [{ action: 'replace', count: 12 }] };
  test.each<[string, object, RegExp]>([
    ['a width without a length', { quilt: { width: 60 }, backing: {} }, /How long is the quilt\?/],
    ['three sides of four', { sides: { top: 60, right: 72, left: 72 } }, /What does the bottom side measure/],
    ['a border of no width', { quilt: q, border: {} }, /How wide is the border/],
    ['patches without pieces', { patches: {} }, /Which pieces/],
    [
      'a piece without a length',
      { patches: { pieces: [{ width: 4, length: 4 }, { width: 9 }] } },
      /long is piece 2/,
    ],
    ['interfacing without pieces', { interfacing: { usable: 20 } }, /Which pieces/],
    [
      'sashing without a grid',
      { sashing: { width: 2 } },
      /How many rows.*How wide and how long is one block/,
    ],
    ['quilting of no spacing', { quilt: q, quilting: {} }, /How far apart/],
    ['thread without seams', { thread: {} }, /Which seams/],
    ['a seam without a length', { thread: { seams: [{ stitch: 'zigzag' }] } }, /How long is seam 1/],
    ['work without a plan', { work: { log: [{ action: 'replace', minutes: 30 }] } }, /What is planned/],
    ['a price without a currency', { price: { hourly: '20', hours: 2 } }, /In which currency/],
    ['hours without a rate', { work: planned, price: { currency: 'GBP' } }, /What is an hour/],
    [
      'a material without a cost',
      { price: { currency: 'GBP', materials: [{ name: 'calico' }] } },
      /What does calico cost/,
    ],
  ])('%s is asked for', (_, spec, question) => {
    const answer = estimate(readSpec(spec));
    const asked = Object.values(answer).flatMap((part) => (part as { question?: string }).question ?? []);
    expect(asked.join(' ')).toMatch(question);
    expect(JSON.stringify(answer)).not.toMatch(/NaN|Infinity/);
  });

  test('a size taken from the sides where it is not named', () => {
    const answer = estimate(
      readSpec({ quilt: { width: 60 }, sides: { left: 71.5, right: 72 }, backing: {} }),
    );
    expect(answer.backing).toMatchObject({ width: 68, length: 80 });
  });

  test('diagonals in either order', () => {
    // A right trapezium, top 30, left 40, bottom 60: right is 50; from the top left 72.11, from the top right 50.
    const sides = { top: 30, right: 50, bottom: 60, left: 40 };
    for (const diagonals of [
      [72.11, 50],
      [50, 72.11],
    ]) {
      // Its sharpest corner is atan(40/30) = 53.13 degrees.
      expect(estimate(readSpec({ sides: { ...sides, diagonals } })).sides!.squareness).toBeCloseTo(36.87, 1);
    }
  });

  test('sides that tell of another quilt are warned of', () => {
    const sides = { top: 90, right: 72, bottom: 90, left: 72 };
    expect(estimate(readSpec({ quilt: q, sides })).sides!.warnings).toHaveLength(2);
  });

  test('stitches by the names that people write', () => {
    for (const [written, ratio] of [
      ['zig-zag', 5.5],
      ['Lockstitch', 2.5],
      ['lock stitch', 2.5],
      ['ISO 4915 304', 5.5],
      ['running stitch', 1.3],
      [301, 2.5],
    ] as const) {
      const seams = [{ stitch: written, length: 36 }];
      expect(estimate(readSpec({ thread: { seams, waste: 0 } })).thread!.exact).toBe(ratio);
    }
  });

  test('the command passes over what it does not know and says so, but not a slip for what it knows', () => {
    const spec = {
      id: 'case 3',
      quilt: q,
      backing: { colour: 'red' },
      patches: { pieces: [{ width: 4, length: 4, note: 'x' }] },
    };
    const { passedOver, spec: read } = readForeignSpec(spec);
    expect([...passedOver].sort()).toEqual(['backing.colour', 'id', 'patches.pieces[0].note']);
    expect(read).toEqual({ quilt: q, backing: {}, patches: { pieces: [{ width: 4, length: 4 }] } });
    for (const slip of [{ bakcing: {} }, { backing: { useable: 40 } }, { batting: { max_spacing: 4 } }])
      expect(() => readForeignSpec(slip)).toThrow(SpecError);
  });
});
