import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { estimate } from '../../core/estimate/estimate.ts';
import { exact } from '../../core/estimate/exact.ts';
import { normalBelow } from '../../core/estimate/pace-model.ts';
import { stripsForLengths } from '../../core/estimate/strips-for-lengths.ts';
import { shortestByTrial } from './shortest-by-trial.ts';

/**
 * Outside checks by libraries of other hands: HiGHS (a mixed-integer solver of the University of Edinburgh, MIT)
 * and jStat (statistics, MIT). They are development dependencies; where they are not installed yet, these tests are
 * left out with one line.
 */
interface Solved {
  Status: string;
  ObjectiveValue: number;
}
interface Statistics {
  normal: { cdf(x: number, mean: number, deviation: number): number };
  binomial: { cdf(k: number, n: number, p: number): number };
}
const installed = async (name: string): Promise<unknown> => {
  try {
    return ((await import(name)) as { default: unknown }).default;
  } catch {
    console.log(`skipped: ${name} is not installed (npm ci)`);
    return undefined;
  }
};
const loadHighs = (await installed('highs')) as (() => Promise<{ solve(model: string): Solved }>) | undefined;
const highs = await loadHighs?.();
const statistics = (await installed('jstat')) as Statistics | undefined;

/** The least of a model in CPLEX LP form. */
const least = (model: string): number => {
  const { Status, ObjectiveValue } = highs!.solve(model);
  expect(Status).toBe('Optimal');
  return ObjectiveValue;
};

interface Piece {
  width: number;
  length: number;
}

/**
 * Length of the shortest layout of all, cuttable edge to edge or not: of each two pieces one lies left of the other or
 * behind it (the usual disjunctive model).
 */
const shortestOfAll = (pieces: readonly Piece[], cloth: number, turn: boolean): number => {
  const rows: string[] = [];
  const binaries: string[] = [];
  const far = pieces.reduce((sum, { width, length }) => sum + Math.max(width, length), cloth);
  /** "x + its measure" with the quarter turn as a variable; the constant goes to the right side. */
  const turned = (i: number, from: number, to: number): string =>
    turn && from !== to ? ` ${to - from < 0 ? '-' : '+'} ${Math.abs(to - from)} r${i}` : '';
  pieces.forEach(({ width, length }, i) => {
    if (turn && width !== length) binaries.push(`r${i}`);
    rows.push(`x${i}${turned(i, width, length)} <= ${cloth - width}`);
    rows.push(`y${i}${turned(i, length, width)} - h <= ${-length}`);
  });
  for (let i = 0; i < pieces.length; i++) {
    for (let j = i + 1; j < pieces.length; j++) {
      const ways: string[] = [];
      for (const [a, b] of [
        [i, j],
        [j, i],
      ] as const) {
        const { width, length } = pieces[a]!;
        for (const [axis, from, to] of [
          ['x', width, length],
          ['y', length, width],
        ] as const) {
          const way = `${axis}${a}b${b}`;
          ways.push(way);
          rows.push(`${axis}${a}${turned(a, from, to)} - ${axis}${b} + ${far} ${way} <= ${far - from}`);
        }
      }
      binaries.push(...ways);
      rows.push(`${ways.join(' + ')} >= 1`);
    }
  }
  const constraints = rows.map((row, i) => ` c${i}: ${row}`).join('\n');
  return least(`Minimize\n obj: h\nSubject To\n${constraints}\nBinary\n ${binaries.join(' ')}\nEnd\n`);
};

/** The fewest strips of `usable` that hold all lengths (bin packing). */
const fewestStrips = (lengths: readonly number[], usable: number): number => {
  const strips = lengths.map((_, k) => k);
  const rows = [
    ...lengths.map((_, i) => `${strips.map((k) => `a${i}s${k}`).join(' + ')} = 1`),
    ...strips.map(
      (k) => `${lengths.map((length, i) => `${length} a${i}s${k}`).join(' + ')} - ${usable} s${k} <= 0`,
    ),
  ];
  const binaries = [
    ...strips.map((k) => `s${k}`),
    ...strips.flatMap((k) => lengths.map((_, i) => `a${i}s${k}`)),
  ];
  return least(
    `Minimize\n obj: ${strips.map((k) => `s${k}`).join(' + ')}\nSubject To\n${rows.map((row, i) => ` c${i}: ${row}`).join('\n')}\nBinary\n ${binaries.join(' ')}\nEnd\n`,
  );
};

describe.skipIf(!highs)('beside a mixed-integer solver', { timeout: 120_000 }, () => {
  const side = fc.integer({ min: 1, max: 10 });
  const pieces = (most: number) =>
    fc.array(fc.record({ width: side, length: side }), { minLength: 2, maxLength: most });
  const cut = (some: readonly Piece[], turn: boolean): number =>
    estimate({ unit: 'in', interfacing: { usable: 12, turn, pieces: [...some] } }).interfacing!.length;

  test('the layout of two or three pieces, which can always be cut edge to edge, is the shortest there is', () => {
    fc.assert(
      fc.property(pieces(3), fc.boolean(), (some, turn) => {
        expect(cut(some, turn)).toBeCloseTo(shortestOfAll(some, 12, turn), 6);
      }),
      { numRuns: 25, seed: 11 },
    );
  });

  test('the layout of up to five pieces is never shorter than can be, and longer only where that is not cuttable', () => {
    fc.assert(
      fc.property(pieces(5), fc.boolean(), (some, turn) => {
        const ours = cut(some, turn);
        const bound = shortestOfAll(some, 12, turn);
        expect(ours).toBeGreaterThanOrEqual(bound - 1e-6);
        // Four strips round a hole can't be parted by cuts from edge to edge: there every such layout is tried.
        if (ours > bound + 1e-6) expect(ours).toBe(shortestByTrial(some, 12, turn));
      }),
      { numRuns: 25, seed: 12 },
    );
  });

  test('borders take no more strips than the fewest there can be', () => {
    const lengths = fc.array(fc.integer({ min: 1, max: 40 }), { minLength: 2, maxLength: 8 });
    fc.assert(
      fc.property(lengths, (some) => {
        const strips = stripsForLengths(some.map(exact), exact(40), exact('1/2'), { seam: '', usable: '' });
        expect(strips).toBe(Math.round(fewestStrips(some, 40)));
      }),
      { numRuns: 60, seed: 13 },
    );
  });
});

describe.skipIf(!statistics)('beside a statistics library', () => {
  test('the normal distribution', () => {
    for (let z = -6; z <= 6; z += 0.01)
      expect(Math.abs(normalBelow(z) - statistics!.normal.cdf(z, 0, 1))).toBeLessThan(1e-7);
  });
  test('of nine days an 80 % range holds fewer than five one time in fifty', () => {
    expect(statistics!.binomial.cdf(4, 9, 0.8)).toBeCloseTo(0.0196, 4);
  });
});
