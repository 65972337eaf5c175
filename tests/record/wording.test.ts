import { describe, expect, test } from 'vitest';
import { cleanText } from '../../core/record/wording/clean-text.ts';
import {
  datePhrase,
  dateRangePhrase,
  durationFigure,
  durationPhrase,
  eighths,
  lengthPhrase,
  moneyPhrase,
} from '../../core/record/wording/figure-phrases.ts';
import { listPhrase } from '../../core/record/wording/list-phrase.ts';
import { localClock } from '../../core/record/wording/local-clock.ts';
import { sentence } from '../../core/record/wording/sentence.ts';
import { becausePhrase } from '../../core/record/wording/treatment-phrase.ts';

describe('lists', () => {
  test('British without, American with the last comma', () => {
    expect(listPhrase(['a', 'b', 'c'], 'british')).toBe('a, b and c');
    expect(listPhrase(['a', 'b', 'c'], 'american')).toBe('a, b, and c');
    expect(listPhrase(['a', 'b'], 'american')).toBe('a and b');
    expect(listPhrase(['a'], 'british')).toBe('a');
    expect(listPhrase([], 'british')).toBe('');
  });
  test('an item with an "and" of its own is set apart', () => {
    expect(listPhrase(['a and b', 'c'], 'british')).toBe('a and b, and c');
  });
});

describe('figures', () => {
  // The international yard is 0.9144 m exactly (agreement of 1959): an inch is 2.54 cm.
  test('lengths in the quilt’s unit', () => {
    expect(lengthPhrase(1, 'yd', 'cm')).toBe('91.4 cm');
    expect(lengthPhrase(100, 'cm', 'cm')).toBe('100 cm');
    expect(lengthPhrase(1, 'yd', 'in')).toBe('36 in');
    expect(lengthPhrase(2.54, 'cm', 'in')).toBe('1 in');
    expect(lengthPhrase(65.75, 'in', 'in')).toBe('65¾ in');
    expect(lengthPhrase(5.5, 'ft', 'in')).toBe('66 in');
    expect(eighths(0.125)).toBe('⅛');
    expect(eighths(0)).toBe('0');
    expect(eighths(3.3)).toBe('3.3');
  });
  test('spans of time', () => {
    expect(durationPhrase(61)).toBe('1 hour 1 minute');
    expect(durationPhrase(120)).toBe('2 hours');
    expect(durationPhrase(0)).toBe('no time');
    expect(durationFigure(125)).toBe('2 h 05');
  });
  // Forms of money and dates: Unicode CLDR by way of Intl.
  test('money and dates by Intl', () => {
    expect(moneyPhrase(123456, 2, 'GBP', 'british')).toBe('£1,234.56');
    expect(moneyPhrase(123456, 2, 'USD', 'american')).toBe('$1,234.56');
    expect(moneyPhrase(1500, 0, 'JPY', 'american')).toBe('¥1,500');
    expect(datePhrase('2026-03-14', 'british')).toBe('14 March 2026');
    expect(datePhrase('2026-03-14', 'american', true)).toBe('Saturday, March 14, 2026');
    expect(datePhrase('no date', 'british')).toBe('no date');
    expect(dateRangePhrase('2026-03-02', '2026-03-14', 'british')).toBe('2 to 14 March 2026');
    expect(dateRangePhrase('2026-03-02', '2026-03-02', 'american')).toBe('March 2, 2026');
  });
  // Clock changes of the IANA database: London to BST on 29 March 2026 at 01:00 UTC; New York on 8 March at 07:00 UTC.
  test('the clock on the wall', () => {
    expect(localClock('2026-03-29T00:59:00Z', 'Europe/London')).toEqual({
      date: '2026-03-29',
      time: '00:59',
    });
    expect(localClock('2026-03-29T01:00:00Z', 'Europe/London')).toEqual({
      date: '2026-03-29',
      time: '02:00',
    });
    expect(localClock('2026-03-08T06:59:00Z', 'America/New_York').time).toBe('01:59');
    expect(localClock('2026-03-08T07:00:00Z', 'America/New_York').time).toBe('03:00');
    expect(localClock('2026-03-14T23:30:00-05:00', 'Asia/Kathmandu')).toEqual({
      date: '2026-03-15',
      time: '10:15',
    });
  });
});

describe('sentences', () => {
  test('begin large and end once', () => {
    expect(sentence('a tear')).toBe('A tear.');
    expect(sentence('is it?')).toBe('Is it?');
    expect(sentence('she said “yes.”')).toBe('She said “yes.”');
    expect(sentence('  ')).toBe('');
  });
  test('reasons follow', () => {
    expect(becausePhrase('because the silk is splitting.')).toBe('because the silk is splitting');
    expect(becausePhrase('The silk is splitting')).toBe('because the silk is splitting');
    expect(becausePhrase("I'm short of cloth")).toBe("because I'm short of cloth");
    expect(becausePhrase('to keep her stitches')).toBe('to keep her stitches');
  });
  test('marks that turn the direction of letters are taken out; letters of every script stay', () => {
    expect(cleanText('a\u202egpj.exe\u2028b\u0007')).toBe('agpj.exe b');
    expect(cleanText('Ξένη Ольга שרה 北')).toBe('Ξένη Ольга שרה 北');
  });
});
