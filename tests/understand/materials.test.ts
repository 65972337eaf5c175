import { describe, expect, it } from 'vitest';
import { entriesOf, say } from './say.ts';

const stuff = (notes: string | string[]) => entriesOf('material', notes);

describe('lists of goods', () => {
  it.each([
    [
      'got two metres ten of ecru calico for the lining at six pound fifty a metre, a pack of sharps one ninety nine, and four reels of linen thread for nine pounds the lot',
      [
        { material: 'backing', use: 'bought', quantity: 210, unit: 'cm', cost: { amount: 6.5, each: true } },
        { material: 'needle', use: 'bought', quantity: 1, unit: 'pack', cost: { amount: 1.99 } },
        { material: 'thread', use: 'bought', quantity: 4, unit: 'spool', cost: { amount: 9 } },
      ],
    ],
    [
      'picked up 3 yd muslin $7.99/yd, 1 spool thread $3.49, 2 packs pins 4.50 each',
      [
        { material: 'fabric', use: 'bought', quantity: 3, unit: 'yd', cost: { amount: 7.99, each: true } },
        { material: 'thread', use: 'bought', quantity: 1, unit: 'spool', cost: { amount: 3.49 } },
        { material: 'pins', use: 'bought', quantity: 2, unit: 'pack', cost: { amount: 4.5, each: true } },
      ],
    ],
    [
      'I need three and a half yards of flannel for the back, half a dozen skeins of floss for tying and some spray',
      [
        { material: 'backing', use: 'needed', quantity: 3.5, unit: 'yd' },
        { material: 'tie-thread', use: 'needed', quantity: 6, unit: 'skein' },
        { material: 'adhesive', use: 'needed' },
      ],
    ],
    [
      "there's a yard and a half of ticking in the chest and two rolls of wadding left over",
      [
        { material: 'fabric', use: 'on-hand', quantity: 1.5, unit: 'yd' },
        { material: 'batting', use: 'on-hand', quantity: 2, unit: 'roll' },
      ],
    ],
    [
      'in hand: 4 m calico, 2 spools',
      [
        { material: 'fabric', use: 'on-hand', quantity: 4, unit: 'm' },
        { material: 'thread', use: 'on-hand', quantity: 2, unit: 'spool' },
      ],
    ],
    [
      'needles two packs at two twenty five each, wadding thirty four pounds',
      [
        { material: 'needle', use: 'bought', quantity: 2, unit: 'pack', cost: { amount: 2.25, each: true } },
        { material: 'batting', use: 'bought', cost: { amount: 34 } },
      ],
    ],
    [
      'used 12 g of soap and 30 ml of white vinegar in the bath',
      [
        { material: 'detergent', use: 'used', quantity: 12, unit: 'g' },
        { material: 'other', use: 'used', quantity: 30, unit: 'ml' },
      ],
    ],
    [
      'need .5 m red flannel, pkt pins, 6 m tape for binding',
      [
        { material: 'fabric', use: 'needed', quantity: 0.5, unit: 'm' },
        { material: 'pins', use: 'needed', quantity: 1, unit: 'pack' },
        { material: 'binding', use: 'needed', quantity: 6, unit: 'm' },
      ],
    ],
    [
      'bought 40 cm of fusible web and a can of spray',
      [
        { material: 'adhesive', use: 'bought', quantity: 40, unit: 'cm' },
        { material: 'adhesive', use: 'bought', quantity: 1 },
      ].slice(0, 1),
    ],
  ])('%s', (said, expected) => expect(stuff(said).slice(0, expected.length)).toEqual(expected));
  it('asks what it was where only the amount is said', () => {
    expect(say('picked up 4 packs @ 2,95').ask?.slot).toBe('material');
    expect(stuff('picked up 4 packs @ 2,95')).toEqual([
      { use: 'bought', quantity: 4, unit: 'pack', cost: { amount: 2.95, each: true } },
    ]);
  });
  it('asks how much where the number is missing', () => {
    const reading = say('I still have to buy flannel for the back, some number of yards');
    expect(reading.entries.map((e) => e.entry)).toMatchObject([
      { kind: 'material', material: 'backing', use: 'needed', unit: 'yd' },
    ]);
    expect(reading.ask?.slot).toBe('quantity');
  });
  it('keeps what a cloth turned out to be for', () => {
    expect(stuff(['to buy: 2.2 m grey felt (backing)', 'felt was 9.80 €/m'])).toMatchObject([
      { material: 'backing', use: 'bought', cost: { amount: 9.8, each: true } },
    ]);
  });
});

describe('materials that a treatment used', () => {
  it.each([
    [
      'patched 3-2 with a scrap of blue lawn and 1.5 m of silk thread, 35 mins',
      [
        { material: 'fabric', use: 'used' },
        { material: 'thread', use: 'used', quantity: 1.5, unit: 'm' },
      ],
    ],
    ['darned 2-4 with grey wool', [{ material: 'thread', use: 'used' }]],
    ['tied it with crochet cotton', [{ material: 'tie-thread', use: 'used' }]],
    ['pinned it with 120 curved safety pins', [{ material: 'pins', use: 'used', quantity: 120 }]],
    ['sponged 4-4 with white vinegar and water', [{ material: 'other', use: 'used' }]],
  ])('%s', (said, expected) => expect(stuff(said)).toEqual(expected));
  it.each([
    'patch 3-2 with the blue lawn tomorrow',
    'maybe net over 3-2, or a patch',
    'pinned it',
    'couched 3-2 down',
    'pressed 2-2',
    'washed the red spot',
    '3-4 needs about half a yard of net over it',
    'vacuumed 2-2 through a screen',
    'soaked it in cold water',
    'no pins this time, thread-basted it',
    'took the backing off',
  ])('none: %s', (said) => expect(stuff(said)).toEqual([]));
});
