import fc from 'fast-check';
import { expect, test } from 'vitest';
import { estimate } from '../../core/estimate/estimate.ts';
import type { EstimateSpec } from '../../shared/estimate-spec.ts';

const eighths = (min: number, max: number) => fc.integer({ min: min * 8, max: max * 8 }).map((n) => n / 8);
const size = eighths(10, 130);
const cloth = (width: number, length: number, more: Partial<EstimateSpec> = {}): EstimateSpec => ({
  unit: 'in',
  quilt: { width, length },
  backing: { usable: 42, overage: 4, seam: 0.5 },
  binding: { usable: 42, strip: 2.5, allowance: 12, seam: 0.25 },
  border: { usable: 42, width: 4, seam: 0.25 },
  ties: { every: 4, tail: 3 },
  ...more,
});

test('more quilt never needs less', () => {
  fc.assert(
    fc.property(size, size, eighths(0, 20), eighths(0, 20), (width, length, wider, longer) => {
      const small = estimate(cloth(width, length));
      const large = estimate(cloth(width + wider, length + longer));
      for (const part of ['backing', 'binding', 'border'] as const) {
        expect(large[part]!.exact!, part).toBeGreaterThanOrEqual(small[part]!.exact!);
        expect(large[part]!.yards!, part).toBeGreaterThanOrEqual(small[part]!.yards!);
      }
      expect(large.ties!.count!).toBeGreaterThanOrEqual(small.ties!.count!);
    }),
  );
});

test('a larger overage or allowance never buys less', () => {
  fc.assert(
    fc.property(size, size, eighths(0, 8), eighths(0, 8), (width, length, overage, more) => {
      const buy = (extra: number) => {
        const answer = estimate(
          cloth(width, length, {
            backing: { usable: 42, overage: extra, seam: 0.5 },
            binding: { usable: 42, strip: 2.5, allowance: extra, seam: 0.25 },
          }),
        );
        return [answer.backing!.yards!, answer.binding!.yards!] as const;
      };
      const [backing, binding] = buy(overage);
      const [backingMore, bindingMore] = buy(overage + more);
      expect(backingMore).toBeGreaterThanOrEqual(backing);
      expect(bindingMore).toBeGreaterThanOrEqual(binding);
    }),
  );
});

test('what is bought suffices: the strips joined reach, the panels cover', () => {
  fc.assert(
    fc.property(
      size,
      size,
      fc.constantFrom('diagonal' as const, 'straight' as const),
      (width, length, join) => {
        const answer = estimate(
          cloth(width, length, { binding: { usable: 42, strip: 2.5, allowance: 10, seam: 0.25, join } }),
        );
        const { joined, needed, strips } = answer.binding!;
        expect(joined!).toBeGreaterThanOrEqual(needed!);
        const perJoin = join === 'diagonal' ? 2.5 : 0.5;
        if (strips! > 1) expect((strips! - 1) * 42 - (strips! - 2) * perJoin).toBeLessThan(needed!);
        for (const { seams, panels, panelWidths } of answer.backing!.options!) {
          const across = panelWidths.reduce((sum, panel) => sum + panel, 0) - (panels - 1);
          expect(across).toBeCloseTo((seams === 'vertical' ? width : length) + 8, 6);
          expect(Math.max(...panelWidths)).toBeLessThanOrEqual(42 + 1e-9);
        }
      },
    ),
  );
});

test('inches and the same in centimetres give the same', () => {
  // 1 in = 2.54 cm exactly (international inch, 1959).
  const cm = (inches: number) => Math.round(inches * 254_000) / 100_000;
  fc.assert(
    fc.property(size, size, eighths(30, 60), eighths(1, 6), (width, length, usable, overage) => {
      const inInches = estimate({
        unit: 'in',
        quilt: { width, length },
        backing: { usable, overage },
        batting: { overage },
        binding: { usable },
        ties: { every: overage },
      });
      const inCm = estimate({
        unit: 'cm',
        quilt: { width: cm(width), length: cm(length) },
        backing: { usable: cm(usable), overage: cm(overage) },
        batting: { overage: cm(overage) },
        binding: { usable: cm(usable) },
        ties: { every: cm(overage) },
      });
      expect(inCm.backing!.panels).toBe(inInches.backing!.panels);
      expect(inCm.backing!.exact! / 0.9144).toBeCloseTo(inInches.backing!.exact!, 2);
      expect(inCm.binding!.strips).toBe(inInches.binding!.strips);
      expect(inCm.ties!.count).toBe(inInches.ties!.count);
      expect(inCm.batting!.package?.name).toBe(inInches.batting!.package?.name);
    }),
  );
});

test('shrinkage, squaring the end and a repeat only add', () => {
  const buy = (more: object) =>
    estimate(cloth(60, 72, { backing: { usable: 42, overage: 4, seam: 0.5, ...more } })).backing!;
  const plain = buy({});
  expect(buy({ shrinkage: { length: 0.03 } }).exact!).toBeCloseTo(plain.exact! / 0.97, 2);
  expect(buy({ straighten: 2 }).exact!).toBeCloseTo(plain.exact! + 2 / 36, 2);
  expect(buy({ repeat: 24 }).panelLength! % 24).toBe(0);
  expect(buy({ oneWay: true }).seams).toBe('vertical');
  const offCentre = buy({ offCentre: true });
  expect(
    offCentre.joinsAt!.every((at) => Math.abs(at - (offCentre.seams === 'vertical' ? 34 : 40)) >= 4),
  ).toBe(true);
});

test('the shopping list joins parts of one cloth, less what is on hand', () => {
  const answer = estimate({
    ...cloth(60, 72),
    binding: { usable: 42, strip: 2.5, allowance: 12, seam: 0.25, fabric: 'blue' },
    border: { usable: 42, width: 4, seam: 0.25, fabric: 'blue' },
    shopping: {
      onHand: [
        { name: 'blue', amount: 0.5 },
        { name: 'backing', amount: 9 },
      ],
    },
  });
  const blue = answer.shopping!.lines.find(({ name }) => name === 'blue')!;
  expect(blue.for).toEqual(['binding', 'border']);
  expect(blue.needed).toBeCloseTo(answer.binding!.exact! + answer.border!.exact!, 2);
  expect(blue.buy).toBeGreaterThanOrEqual(blue.needed - 0.5 - 0.001);
  expect(answer.shopping!.lines.find(({ name }) => name === 'backing')!.buy).toBe(0);
});

test('sashing counts its strips and stones', () => {
  // 8 rows of 6 blocks: 5 x 8 upright, 7 x 6 level, 5 x 7 stones between the blocks.
  const answer = estimate({
    unit: 'in',
    sashing: { rows: 8, blocks: 6, block: { width: 9, length: 9 }, width: 2, usable: 42 },
  }).sashing!;
  const counts = [0, 1, 2].map((piece) => answer.layout.filter((spot) => spot.piece === piece).length);
  expect(counts).toEqual([40, 42, 35]);
});
