import { describe, expect, test } from 'vitest';
import { estimate } from '../../core/estimate/estimate.ts';
import { readSpec } from '../../core/estimate/read-spec.ts';
import { specFromLog } from '../../core/estimate/spec-from-log.ts';
import { unitsOfWork } from '../../core/estimate/units-of-work.ts';
import { LogBuilder } from '../log/log-builder.ts';

const at = (day: number): string => `2026-05-${String(day).padStart(2, '0')}T10:00:00Z`;
const logged = (): LogBuilder =>
  new LogBuilder()
    .note(
      at(1),
      { kind: 'measurement', of: 'width', value: 5, unit: 'ft' },
      { kind: 'measurement', of: 'length', value: 72, unit: 'in' },
      { kind: 'measurement', of: 'block', value: 9, unit: 'in' },
      { kind: 'measurement', of: 'width', value: 3, unit: 'in', places: ['3-2'] },
    )
    .note(at(2), { kind: 'condition', finding: 'tear', places: ['1-1', '1-2', '1-3'] })
    .note(at(3), { kind: 'treatment', action: 'replace', state: 'planned', places: ['1-1', '1-2', '1-3'] })
    .note(at(4), { kind: 'treatment', action: 'replace', state: 'done', places: ['1-1'], minutes: 35 })
    .note(
      at(5),
      { kind: 'treatment', action: 'patch', state: 'done', places: ['4-1'] },
      { kind: 'treatment', action: 'resew', state: 'done', places: ['4-1', '4-2'] },
      { kind: 'work', start: '2026-05-05T09:00', end: '2026-05-05T10:00', task: 'mending' },
    )
    .note(
      at(6),
      {
        kind: 'material',
        material: 'backing',
        use: 'bought',
        quantity: 2,
        unit: 'yd',
        cost: { amount: 8.5, each: true },
        name: 'calico',
      },
      { kind: 'treatment', action: 'tie', state: 'planned', places: ['quilt'] },
    );

test.each<[string, string[], number]>([
  ['tie', ['quilt'], 35],
  ['tie', [], 35],
  ['tie', ['1-1', '1-2'], 2],
  ['quilt', ['top'], 35],
  ['bind', ['quilt'], 1],
  ['bind', ['edge-top', 'edge-left'], 0.5],
  ['wash', ['1-1', '1-2', '1-3', '1-4', '1-5', '2-1', '2-2'], 0.2],
  ['wash', ['quilt', '1-1'], 1],
  ['add-border', ['border'], 4],
  ['add-border', ['border-top'], 1],
  ['replace', ['1-1', '1-2', '1-3'], 3],
])('%s of %j is %d of its unit on a quilt of 7 by 5', (action, places, units) => {
  expect(unitsOfWork(action, places, { rows: 7, blocks: 5 })).toBeCloseTo(units, 9);
});

test('the whole of a top with a large centre is as many blocks as it has', () => {
  const grid = { rows: 5, blocks: 5, shape: { wide: { '2-2': { across: 3, down: 3 } } } };
  expect(unitsOfWork('tie', ['quilt'], grid)).toBe(17);
  expect(unitsOfWork('wash', ['2-2'], grid)).toBeCloseTo(1 / 17, 9);
});

describe('the spec that the log gives', () => {
  const { spec, sources } = specFromLog(logged().log, { weeklyHours: [4, 5], today: '2026-05-07' });
  const source = (path: string) => sources.find((one) => one.path === path);

  test('sizes of the whole quilt, not of one block, in its unit', () => {
    expect(spec.quilt).toEqual({ width: 60, length: 72, rows: 7, blocks: 5 });
    expect(source('quilt.width')).toMatchObject({ from: 'log', noteIds: ['n1'] });
  });

  test('cuttings from what is planned, marked as assumed', () => {
    expect(spec.patches).toEqual({ pieces: [{ width: 9, length: 9, count: 2 }] });
    expect(source('patches.pieces')).toMatchObject({ from: 'assumed', noteIds: ['n3', 'n1'] });
  });

  test('planned is done and still to do; times said for several are shared', () => {
    expect(spec.work!.planned).toContainEqual({ action: 'replace', damage: 'tear', count: 3 });
    expect(spec.work!.log).toEqual([
      { action: 'replace', damage: 'tear', count: 1, minutes: 35 },
      {
        minutes: 60,
        items: [
          { action: 'patch', count: 1 },
          { action: 'resew', count: 2 },
        ],
      },
    ]);
    const { work } = estimate(readSpec(spec));
    expect(work!.actions.find(({ action }) => action === 'replace')).toMatchObject({
      planned: 3,
      done: 1,
      left: 2,
    });
    expect(work!.finish).toBeDefined();
  });

  test('what was bought has its price and comes off the shopping list', () => {
    const bought = [{ name: 'calico', amount: '17' }];
    expect(spec.price).toEqual({ currency: 'GBP', materials: bought, actual: { materials: bought } });
    expect(spec.shopping).toEqual({ onHand: [{ name: 'backing', amount: 2 }] });
    expect(estimate(readSpec(spec)).shopping!.lines.find(({ name }) => name === 'backing')!.onHand).toBe(2);
  });

  test('her own figures stand above the log', () => {
    const own = logged()
      .happen({ type: 'estimate-set', path: 'backing.overage', value: 3 })
      .happen({ type: 'estimate-set', path: 'quilt.width', value: 61 });
    const mine = specFromLog(own.log);
    expect(mine.spec.backing).toEqual({ overage: 3 });
    expect(mine.spec.quilt!.width).toBe(61);
    expect(mine.sources.find(({ path }) => path === 'quilt.width')).toMatchObject({ from: 'user' });
  });

  test('an empty log asks instead of guessing', () => {
    const empty = specFromLog(new LogBuilder().log).spec;
    expect(empty.quilt).toBeUndefined();
    expect(() => estimate(readSpec(empty))).not.toThrow();
  });

  test('a path into the language itself is refused', () => {
    const sly = logged().happen({ type: 'estimate-set', path: '__proto__.polluted', value: 1 });
    specFromLog(sly.log);
    expect(({} as { polluted?: number }).polluted).toBeUndefined();
  });
});
