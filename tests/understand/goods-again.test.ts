import { describe, expect, it } from 'vitest';
import { entriesOf, say } from './say.ts';

const BOUGHT = 'bought 1½ m calico @ 6.40, 3 reels white cotton 5.85 the lot, chalk 90p';

describe('several of the goods just told, each put right', () => {
  it('by price and amount', () => {
    expect(entriesOf('material', [BOUGHT, 'chalk was 1.90, calico 1¼ m'])).toEqual([
      { material: 'fabric', use: 'bought', quantity: 1.25, unit: 'm', cost: { amount: 6.4, each: true } },
      { material: 'thread', use: 'bought', quantity: 3, unit: 'spool', cost: { amount: 5.85 } },
      { material: 'other', use: 'bought', cost: { amount: 1.9 } },
    ]);
  });
  it('or struck out', () => {
    expect(
      entriesOf('material', [
        'need a spool of thread and 3 packs of pins',
        "don't need the thread, and pins only 2 packs",
      ]),
    ).toEqual([{ material: 'pins', use: 'needed', quantity: 2, unit: 'pack' }]);
  });
  it('but new goods of the same kind are a note of their own', () => {
    expect(say([BOUGHT, 'need more calico, 2 m, and chalk, 3 packs']).act).toBe('log');
  });
});
