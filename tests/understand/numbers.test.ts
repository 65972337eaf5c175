import { ToWords } from 'to-words';
import { describe, expect, it } from 'vitest';
import { findCost, findQuantity } from '../../core/rules/amounts/find-amount.ts';
import { readNumber } from '../../core/text/read-number.ts';
import { tokenise } from '../../core/text/tokenise.ts';

const number = (text: string) => {
  const read = readNumber(tokenise(text), 0);
  return read && { value: read.value, all: read.next === tokenise(text).length };
};
const quantity = (text: string) => {
  const read = findQuantity(tokenise(text), 0);
  return read && [read.value, read.unit];
};
const cost = (text: string, commerce = true) => {
  const read = findCost(tokenise(text), 0, commerce);
  return read && [read.amount, read.each];
};

describe('number words', () => {
  // Outside check: the npm package to-words (MIT) writes each number out, American and with the British "and".
  it('reads every whole number below a thousand as to-words writes it', () => {
    const words = new ToWords({ localeCode: 'en-US' });
    for (let n = 1; n < 1000; n++) {
      const plain = words.convert(n).toLowerCase();
      const british = plain.replace(/hundred (?=\w)/, 'hundred and ');
      for (const said of [plain, british, plain.replace(/(ty) (?=\w)/, '$1-')])
        expect(number(said), said).toEqual({ value: n, all: true });
    }
  });
  it('reads a number said with a point as to-words writes it', () => {
    const words = new ToWords({ localeCode: 'en-US' });
    for (const n of [2.5, 1.25, 0.75, 12.5, 60.5, 3.99])
      expect(number(words.convert(n).toLowerCase()), String(n)).toEqual({ value: n, all: true });
  });
  it.each([
    ['two and a half', 2.5],
    ['62 1/2', 62.5],
    ['2½', 2.5],
    ['three quarters', 0.75],
    ['three-eighths', 0.375],
    ['eighty eight and three quarters', 88.75],
    ['a hundred and ten', 110],
    ['half a dozen', 6],
    ['two dozen', 24],
    ['a couple of', 2],
    ['.45', 0.45],
    ['1.375', 1.375],
  ])('%s is %d', (said, value) => expect(number(said)?.value).toBeCloseTo(value, 6));
  it('does not join two counts that stand side by side, nor take a share of a clock', () => {
    expect(readNumber(tokenise('three one'), 0)).toMatchObject({ value: 3, next: 1 });
    expect(readNumber(tokenise('two and quarter to five'), 0)).toMatchObject({ value: 2, next: 1 });
    expect(readNumber(tokenise('10:45'), 0)).toBeUndefined();
    expect(readNumber(tokenise('1-2/1-3'), 0)).toMatchObject({ value: 1, next: 1 });
  });
});

describe('quantities', () => {
  it.each([
    ['a yard and three eighths', [1.375, 'yd']],
    ['two and three quarter yards', [2.75, 'yd']],
    ['three-eighths of a yard', [0.375, 'yd']],
    ['inch and a half', [1.5, 'in']],
    ['quarter-inch', [0.25, 'in']],
    ['half a metre', [0.5, 'm']],
    ['.5 m', [0.5, 'm']],
    ['8 mm', [8, 'mm']],
    ['a couple of packs', [2, 'pack']],
    ['2 pkts', [2, 'pack']],
    ['half a dozen fat quarters', [6, 'fat-quarter']],
    ['two hanks', [2, 'skein']],
    ['three reels', [3, 'spool']],
    ['80 grams', [80, 'g']],
  ])('%s', (said, expected) => expect(quantity(said)).toEqual(expected));
  // NIST Special Publication 811 (2008), appendix B.8, from memory: 1 ft = 12 in = 0.3048 m exactly, 1 m = 100 cm.
  it.each([
    ['5 ft 2', [62, 'in']],
    ['five foot two', [62, 'in']],
    ['6 ft 10 1/2', [82.5, 'in']],
    ['5 feet and 2 inches', [62, 'in']],
    ['1 m 75', [175, 'cm']],
    ['two metres ten', [210, 'cm']],
  ])('the smaller unit wins in %s', (said, expected) => expect(quantity(said)).toEqual(expected));
  it('takes no unit where the words say a place or something else', () => {
    expect(quantity('3 in the top row')).toEqual([3, undefined]);
    expect(quantity('two in row four')).toEqual([2, undefined]);
    expect(quantity('2 m pins')).toEqual([2, 'm']);
    expect(quantity('one metre fifty pins')).toEqual([1, 'm']);
  });
});

describe('prices', () => {
  it.each([
    ['£3.50', [3.5, false]],
    ['€14.20/m', [14.2, true]],
    ['19.80 €/m', [19.8, true]],
    ['$9.20 a yard', [9.2, true]],
    ['8,75', [8.75, false]],
    ['@ .45', [0.45, false]],
    ['@ 7.99/yd', [7.99, true]],
    ['a dollar ten each', [1.1, true]],
    ['three pound fifty the lot', [3.5, false]],
    ['forty pence', [0.4, false]],
    ['two twenty five each', [2.25, true]],
    ['twenty two fifty', [22.5, false]],
    ['seven euro fifty the metre', [7.5, true]],
    ['4.50 for the pair', [4.5, false]],
    ['five ninety nine a yard', [5.99, true]],
    ['six oh five apiece', [6.05, true]],
  ])('%s', (said, expected) => expect(cost(said)).toEqual(expected));
  it('reads no price where nothing is bought, nor in a block, a clock or a length', () => {
    expect(cost('twenty two fifty', false)).toBeUndefined();
    expect(cost('three two is torn')).toBeUndefined();
    expect(cost('10:45')).toBeUndefined();
    expect(cost('two fifteen minutes')).toBeUndefined();
  });
});
