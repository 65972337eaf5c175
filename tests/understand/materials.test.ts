import { describe, expect, it } from 'vitest';
import { entriesOf, say } from './say.ts';

const stuff = (notes: string | string[]) => entriesOf('material', notes);

describe('a number put right', () => {
  it('is the one that was told, not the one that was asked for', () => {
    expect(stuff(['bought batting, 18 dollars', 'no, 16'])).toEqual([
      { material: 'batting', use: 'bought', cost: { amount: 16 } },
    ]);
  });
});

describe('numbers in a bill', () => {
  it.each([
    [
      'muslin 2 yd 9.98, thread 2.50',
      [
        { material: 'fabric', use: 'bought', quantity: 2, unit: 'yd', cost: { amount: 9.98 } },
        { material: 'thread', use: 'bought', cost: { amount: 2.5 } },
      ],
    ],
    // counts, for they do not make up what was spent
    [
      'bought pins 250, needles 12, thread for £4',
      [
        { material: 'pins', use: 'bought', quantity: 250 },
        { material: 'needle', use: 'bought', quantity: 12 },
        { material: 'thread', use: 'bought', cost: { amount: 4 } },
      ],
    ],
  ])('%s', (note, goods) => {
    expect(stuff(note)).toEqual(goods);
  });
});

describe('lists of goods', () => {
  it.each([
    [
      'got two metres ten of ecru calico for the lining at six pound fifty a metre, a pack of sharps one ninety nine, and four reels of linen thread for nine pounds the lot',
      [
        { material: 'backing', use: 'bought', quantity: 2.1, unit: 'm', cost: { amount: 6.5, each: true } },
        { material: 'needle', use: 'bought', quantity: 1, unit: 'pack', cost: { amount: 1.99 } },
        { material: 'thread', use: 'bought', quantity: 4, unit: 'spool', cost: { amount: 9 } },
      ],
    ],
    [
      'to purchase: 1) 3 m mull for backing 2) four skeins red floss for the ties',
      [
        { material: 'backing', use: 'needed', quantity: 3, unit: 'm' },
        { material: 'tie-thread', use: 'needed', quantity: 4, unit: 'skein' },
      ],
    ],
    [
      'bought 2 m calico Rs. 90/m and a reel of thread for thirty five rand',
      [
        { material: 'fabric', use: 'bought', quantity: 2, unit: 'm', cost: { amount: 90, each: true } },
        { material: 'thread', use: 'bought', quantity: 1, unit: 'spool', cost: { amount: 35 } },
      ],
    ],
    [
      "red wool for the ties. i've one ball of it in the drawer i need to buy three more",
      [
        { material: 'tie-thread', use: 'on-hand', quantity: 1, unit: 'ball' },
        { material: 'tie-thread', use: 'needed', quantity: 3, unit: 'ball' },
      ],
    ],
    ['1 roll wadding in cupboard', [{ material: 'batting', use: 'on-hand', quantity: 1, unit: 'roll' }]],
    [
      "going with tulle over 1-1, I'll need half a metre",
      [{ material: 'net', use: 'needed', quantity: 0.5, unit: 'm' }],
    ],
    [
      'took the old backing off, need 3 m of flannel for a new one',
      [{ material: 'backing', use: 'needed', quantity: 3, unit: 'm' }],
    ],
    [
      'used all four yards of the twill tape',
      [{ material: 'binding', use: 'used', quantity: 4, unit: 'yd' }],
    ],
    ['I took out the last of the pins', []],
    ['someone had left pins in the top border', []],
    ['left three inches of backing all round', []],
    [
      'Couple of reels of red thread I bought, half a yard of red flannel for eight pound fifty, and a packet of needles.',
      [
        { material: 'thread', use: 'bought', quantity: 2, unit: 'spool' },
        { material: 'fabric', use: 'bought', quantity: 0.5, unit: 'yd', cost: { amount: 8.5 } },
        { material: 'needle', use: 'bought', quantity: 1, unit: 'pack' },
      ],
    ],
    [
      "i need two yards of wool batting and a couple packs of safety pins i've got already",
      [
        { material: 'batting', use: 'needed', quantity: 2, unit: 'yd' },
        { material: 'pins', use: 'on-hand', quantity: 2, unit: 'pack' },
      ],
    ],
    [
      'Bought: 2 fat quarters plaid ($3.75 ea), 1 spool grey thread ($4)',
      [
        {
          material: 'fabric',
          use: 'bought',
          quantity: 2,
          unit: 'fat-quarter',
          cost: { amount: 3.75, each: true },
        },
        { material: 'thread', use: 'bought', quantity: 1, unit: 'spool', cost: { amount: 4 } },
      ],
    ],
    ['bought 6 at the fair, 50p each', [{ use: 'bought', quantity: 6, cost: { amount: 0.5, each: true } }]],
    [
      'still to get: wool batting, 2 yards; binding, 7 yards',
      [
        { material: 'batting', use: 'needed', quantity: 2, unit: 'yd' },
        { material: 'binding', use: 'needed', quantity: 7, unit: 'yd' },
      ],
    ],
    [
      'in the cupboard i found a packet of pins and half a reel of grey',
      [
        { material: 'pins', use: 'on-hand', quantity: 1, unit: 'pack' },
        { material: 'thread', use: 'on-hand', quantity: 0.5, unit: 'spool' },
      ],
    ],
    ['layered it w/ the flannelette', [{ material: 'backing', use: 'used' }]],
    ['bound. 5 m used', [{ material: 'binding', use: 'used', quantity: 5, unit: 'm' }]],
    ['there was a scrap of newspaper in there', []],
    ['the wadding that was in it was seven pound of old wool', []],
    // a gap left for the number
    [
      'called in for ?? cm of nylon net on the way home, bought it anyway, £4.20',
      [{ material: 'net', use: 'bought', unit: 'cm', cost: { amount: 4.2 } }],
    ],
    [
      'in the closet: 3 yd muslin for the back, 1 pkg betweens. still gotta buy 9 yd binding',
      [
        { material: 'backing', use: 'on-hand', quantity: 3, unit: 'yd' },
        { material: 'needle', use: 'on-hand', quantity: 1, unit: 'pack' },
        { material: 'binding', use: 'needed', quantity: 9, unit: 'yd' },
      ],
    ],
    ['is that right? yards of it on the floor', []],
    [
      'bought at the market: 2 m calico, 3 spools of thread',
      [
        { material: 'fabric', use: 'bought', quantity: 2, unit: 'm' },
        { material: 'thread', use: 'bought', quantity: 3, unit: 'spool' },
      ],
    ],
    // the price behind the buying
    [
      'they only had six skeins of red tying wool so i took those three dollars each',
      [
        {
          material: 'tie-thread',
          use: 'bought',
          quantity: 6,
          unit: 'skein',
          cost: { amount: 3, each: true },
        },
      ],
    ],
    // among prices a bare number is one
    [
      '4 yd olive flannel for the back 11.50/yd, roll of batting 38',
      [
        { material: 'backing', use: 'bought', quantity: 4, unit: 'yd', cost: { amount: 11.5, each: true } },
        { material: 'batting', use: 'bought', quantity: 1, unit: 'roll', cost: { amount: 38 } },
      ],
    ],
    // what was just decided on
    [
      "the lining's to be unbleached linen. must buy 5.25 m of that",
      [{ material: 'backing', use: 'needed', quantity: 5.25, unit: 'm' }],
    ],
    [
      'One spool of hair silk must be bought.',
      [{ material: 'thread', use: 'needed', quantity: 1, unit: 'spool' }],
    ],
    ['a yard of net will have to be got', [{ material: 'net', use: 'needed', quantity: 1, unit: 'yd' }]],
    [
      'low on thread, need 3 spools of navy',
      [{ material: 'thread', use: 'needed', quantity: 3, unit: 'spool' }],
    ],
    [
      'i need what is it eight skeins of wool and for the backing call it five yards of flannel',
      [
        { material: 'tie-thread', use: 'needed', quantity: 8, unit: 'skein' },
        { material: 'backing', use: 'needed', quantity: 5, unit: 'yd' },
      ],
    ],
    [
      'muslin, two spools of thread and pins came to 31.40',
      [
        { material: 'fabric', use: 'bought' },
        { material: 'thread', use: 'bought', quantity: 2, unit: 'spool' },
        { material: 'pins', use: 'bought', cost: { amount: 31.4 } },
      ],
    ],
    [
      'get thread, pins and three metres of calico',
      [
        { material: 'thread', use: 'needed' },
        { material: 'pins', use: 'needed' },
        { material: 'fabric', use: 'needed', quantity: 3, unit: 'm' },
      ],
    ],
    [
      'On hand for the crib quilt: 2 fat quarters pink feed sack, 1 spool white thread',
      [
        { material: 'fabric', use: 'on-hand', quantity: 2, unit: 'fat-quarter' },
        { material: 'thread', use: 'on-hand', quantity: 1, unit: 'spool' },
      ],
    ],
    [
      'flannel 1 3/4 yd @ $8.49, batting $14.99, half a dozen skeins of white floss for tying at 79 cents each',
      [
        { material: 'fabric', use: 'bought', quantity: 1.75, unit: 'yd', cost: { amount: 8.49, each: true } },
        { material: 'batting', use: 'bought', cost: { amount: 14.99 } },
        {
          material: 'tie-thread',
          use: 'bought',
          quantity: 6,
          unit: 'skein',
          cost: { amount: 0.79, each: true },
        },
      ],
    ],
    // one thing told twice is one entry
    ['2-2 net on, couched. Tulle, 20 cm.', [{ material: 'net', use: 'used', quantity: 20, unit: 'cm' }]],
    ['I have taken the little cotton patch off three-one', []],
    ["now four four's gonna need fusible behind it", []],
    ["don't forget needles", [{ material: 'needle', use: 'needed' }]],
    ["don't forget the pins in the border", []],
    // a price at the end of goods needs no sign of money
    [
      'and a spool of cream thread 3.20',
      [{ material: 'thread', use: 'bought', quantity: 1, unit: 'spool', cost: { amount: 3.2 } }],
    ],
    ['used up the thread by 4.15', []],
    // what they are for stands before a colon
    [
      'batting: bought a crib size cotton one, 18 dollars',
      [{ material: 'batting', use: 'bought', cost: { amount: 18 } }],
    ],
    [
      'backing: 3 yards of muslin bought, 21 dollars',
      [{ material: 'backing', use: 'bought', quantity: 3, unit: 'yd', cost: { amount: 21 } }],
    ],
    [
      'bought batting, the wool one, 40 dollars',
      [{ material: 'batting', use: 'bought', cost: { amount: 40 } }],
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
      'I brought home five fat quarters, 12 dollars for all five, two ounces of glue, three feet of tulle for hanging it and a packet of pins',
      [
        { material: 'fabric', use: 'bought', quantity: 5, unit: 'fat-quarter', cost: { amount: 12 } },
        { material: 'adhesive', use: 'bought', quantity: 2, unit: 'oz' },
        { material: 'net', use: 'bought', quantity: 3, unit: 'ft' },
        { material: 'pins', use: 'bought', quantity: 1, unit: 'pack' },
      ],
    ],
    [
      'that net I ordered was six pounds a metre and I took two metres',
      [{ material: 'net', use: 'bought', quantity: 2, unit: 'm', cost: { amount: 6, each: true } }],
    ],
    [
      'bought 400 g of wool batting, for it I paid 12 euro, n a reel of thread that I got for three fifty',
      [
        { material: 'batting', use: 'bought', quantity: 400, unit: 'g', cost: { amount: 12 } },
        { material: 'thread', use: 'bought', quantity: 1, unit: 'spool', cost: { amount: 3.5 } },
      ],
    ],
    [
      'I was out shopping, never noticed how long, and came home with two packs of pins',
      [{ material: 'pins', use: 'bought', quantity: 2, unit: 'pack' }],
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

describe('amounts and prices in more words', () => {
  it.each([
    ['that took a yard and a quarter of net', [{ material: 'net', use: 'used', quantity: 1.25, unit: 'yd' }]],
    [
      'bought a queen size pack of wadding for thirty two ninety nine',
      [{ material: 'batting', use: 'bought', quantity: 1, unit: 'pack', cost: { amount: 32.99 } }],
    ],
    [
      'a queen size pack of batting thirty two ninety nine',
      [{ material: 'batting', use: 'bought', quantity: 1, unit: 'pack', cost: { amount: 32.99 } }],
    ],
    ['got 3 yds, 27.00 tot', [{ use: 'bought', quantity: 3, unit: 'yd', cost: { amount: 27 } }]],
    [
      'eleven pounds forty I paid for three metres of linen for the back, and there were two reels of thread at one ninety nine each',
      [
        { material: 'backing', use: 'bought', quantity: 3, unit: 'm', cost: { amount: 11.4 } },
        { material: 'thread', use: 'bought', quantity: 2, unit: 'spool', cost: { amount: 1.99, each: true } },
      ],
    ],
    [
      'ordered a hank of yarn from the mill, 14.50',
      [{ material: 'tie-thread', use: 'bought', quantity: 1, unit: 'skein', cost: { amount: 14.5 } }],
    ],
    [
      'the net cost 12 pounds for two metres',
      [{ material: 'net', use: 'bought', quantity: 2, unit: 'm', cost: { amount: 12 } }],
    ],
    [
      "I'll need three metres for the backing and six for the binding",
      [
        { material: 'backing', use: 'needed', quantity: 3, unit: 'm' },
        { material: 'binding', use: 'needed', quantity: 6, unit: 'm' },
      ],
    ],
    ['the backing takes 4.8 metres', [{ material: 'backing', use: 'needed', quantity: 4.8, unit: 'm' }]],
    [
      "we're short of batting by about a metre",
      [{ material: 'batting', use: 'needed', quantity: 1, unit: 'm' }],
    ],
    ["the thread's running low", [{ material: 'thread', use: 'needed' }]],
    ['no pins left', [{ material: 'pins', use: 'needed' }]],
    ['pins I already have', [{ material: 'pins', use: 'on-hand' }]],
  ])('%s', (said, expected) => expect(stuff(said).map(({ name: _name, ...rest }) => rest)).toEqual(expected));

  it.each([
    ['patched 3-2 with the linen, used a quarter yard', { material: 'fabric', quantity: 0.25, unit: 'yd' }],
    [
      'tied row one with red pearl cotton, two skeins gone',
      { material: 'tie-thread', quantity: 2, unit: 'skein' },
    ],
    [
      'net over 4-4, couched down, went through nine inches of it',
      { material: 'net', quantity: 9, unit: 'in' },
    ],
  ])('an amount of no named thing is of what the work was done with: %s', (said, expected) => {
    expect(stuff(said)).toMatchObject([{ use: 'used', ...expected }]);
  });

  it('what is left of it is another matter', () => {
    expect(stuff('tulle over the sashing, three quarters of a yard of it left')).toMatchObject([
      { material: 'net', use: 'on-hand', quantity: 0.75 },
      { material: 'net', use: 'used' },
    ]);
    expect(stuff(['tied row one in pearl cotton', "that's two skeins used and one left"])).toMatchObject([
      { material: 'tie-thread', use: 'used', quantity: 2 },
      { material: 'tie-thread', use: 'on-hand', quantity: 1 },
    ]);
  });

  it.each(['spent twenty minutes on 3-2', 'it takes a while to dry', 'the seam needs 2 inches resewn'])(
    'no goods: %s',
    (said) => expect(stuff(said)).toEqual([]),
  );
});

describe('what a treatment was done with', () => {
  it.each([
    ['darned 3-2 in drab wool', 'thread'],
    ['whipped shut 5-3, poly thread, 12 min', 'thread'],
    ['3-2 patched, blue check, whipstitch', 'fabric'],
    ["there's a patch of khaki serge on 3-2 now", 'fabric'],
    ['sewed a piece of blue lawn on 3-2', 'fabric'],
    ['set a fresh piece of butterscotch print into 3-2 with a running stitch', 'fabric'],
    ['replaced 3-2 in the new sage linen, by hand', 'fabric'],
    ['patched the rip in 3-2 with a piece of the denim zigzagged around it', 'fabric'],
    ['pinned it with the rust proof pins', 'pins'],
    ['layered it with the silk batting', 'batting'],
    ['tied row four, waxed thread, every 8 cm', 'tie-thread'],
    ['tied r1 & r2 in wool, 6 in apart', 'tie-thread'],
    ['cut squares for row six out of the black fleece', 'fabric'],
    ['got 3-2 backed with the fusible, took me twenty two minutes', 'interfacing'],
  ])('%s -> %s', (said, material) => expect(stuff(said)).toMatchObject([{ material, use: 'used' }]));

  it.each([
    'patched the worn calico in 3-2',
    'resewed the split seam in the blue lawn at 3-2',
    'darned the wool in 3-2',
    'took a piece of old muslin out from behind 3-2',
    'the linen in 3-2 is torn, patched it',
    'patched 2-2 from the scrap bag',
    'cleaned the velvet with a soft brush',
  ])('no material: %s', (said) => expect(stuff(said)).toEqual([]));
});
