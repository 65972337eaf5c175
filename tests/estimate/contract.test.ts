import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { estimate } from '../../core/estimate/estimate.ts';
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
});
