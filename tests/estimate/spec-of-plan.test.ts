import { describe, expect, test } from 'vitest';
import { estimate } from '../../core/estimate/estimate.ts';
import { readSpec } from '../../core/estimate/read-spec.ts';
import { specOfPlan } from '../../core/estimate/spec-of-plan.ts';

const spec = readSpec({
  unit: 'in',
  quilt: { width: 60, length: 72, rows: 8, blocks: 6 },
  backing: { fabricWidth: 44, selvedge: 1 },
  batting: { maxSpacing: 4 },
  ties: { every: 'block' },
  patches: { pieces: [{ width: 9, length: 9, count: 12 }] },
  work: {
    planned: [
      { action: 'replace', damage: 'tear', count: 8 },
      { action: 'replace', count: 4 },
      { action: 'tie', count: 48 },
    ],
    log: [
      { action: 'replace', damage: 'tear', count: 3, minutes: 100 },
      { minutes: 60, items: [{ action: 'tie', count: 18 }, { action: 'bind' }] },
    ],
  },
  price: { currency: 'GBP', hourly: '24.00' },
});

describe('a plan set beside others', () => {
  test('as it is', () => {
    expect(specOfPlan(spec, {}).work).toEqual(spec.work);
  });

  test('quilted and not tied: what is tied stays tied, the rest is quilted', () => {
    const quilted = specOfPlan(spec, { hold: 'quilt', lineSpacing: 3 });
    expect(quilted.work!.planned).toContainEqual({ action: 'tie', count: 18 });
    expect(quilted.work!.planned).toContainEqual({ action: 'quilt', count: 30 });
    const answer = estimate(quilted);
    expect(answer.ties).toBeUndefined();
    // 60 x 72 / 3, both ways.
    expect(answer.quilting!.runningLength).toBe(2880);
    expect(answer.work!.left.likely).toBeGreaterThan(estimate(specOfPlan(spec, {})).work!.left.likely);
  });

  test('patched or left and not replaced: only what is still to do', () => {
    const patched = specOfPlan(spec, { replace: 'patch' });
    expect(patched.work!.planned).toEqual([
      { action: 'replace', damage: 'tear', count: 3 },
      { action: 'tie', count: 48 },
      { action: 'patch', count: 9 },
    ]);
    const left = specOfPlan(spec, { replace: 'leave' });
    const price = (one: typeof spec): number => estimate(one).price!.total.minor;
    expect(price(left)).toBeLessThan(price(patched));
    expect(price(patched)).toBeLessThan(price(specOfPlan(spec, {})));
  });

  test('a wider backing has fewer joins', () => {
    const wide = estimate(specOfPlan(spec, { backingUsable: 106, battingRoll: 96, binding: 'bias' }));
    expect(wide.backing!.joins).toBe(0);
    expect(wide.batting!.roll).toBeDefined();
    expect(specOfPlan(spec, { binding: 'bias' }).binding).toEqual({ cut: 'bias' });
  });

  test('ties where neither was planned', () => {
    const bare = readSpec({ quilt: { width: 60, length: 72, rows: 8, blocks: 6 } });
    expect(specOfPlan(bare, { hold: 'tie' })).toMatchObject({
      ties: {},
      work: { planned: [{ action: 'tie', count: 48 }] },
    });
  });
});
