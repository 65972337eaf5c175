import { describe, expect, it } from 'vitest';
import { findImpossibleDay } from '../../core/rules/times/find-impossible-day.ts';
import { readLast } from './bench-quilt.ts';

const LOCAL = '2026-03-14T18:30';

describe('days that the calendar has not got', () => {
  it.each([
    ['on the thirtieth of February', '30 February'],
    ['31 June', '31 June'],
    ['the 31st of Nov', '31 November'],
    ['February 29th', '29 February 2026'],
    ['September the thirty-first', '31 September'],
    ['2026-02-30', '2026-02-30'],
    ['2025-13-01', '2025-13-01'],
  ])('%s', (words, said) => {
    expect(findImpossibleDay(`mending from nine to ten, ${words}`, LOCAL)).toBe(said);
  });

  it.each([
    '28 February',
    'the thirty-first of March',
    '2024-02-29',
    '29 February 2024',
    'February the twenty-ninth, 2024',
    'block 31 may need a patch',
    'rows 30 and 31',
  ])('%s is none', (words) => {
    expect(findImpossibleDay(words, LOCAL)).toBeUndefined();
  });

  it('a leap day is one in the year that is meant', () => {
    expect(findImpossibleDay('on the 29th of February', '2028-03-02T10:00')).toBeUndefined();
    expect(findImpossibleDay('on the 29th of February', '2029-01-02T10:00')).toBeUndefined();
    expect(findImpossibleDay('on the 29th of February', '2029-03-02T10:00')).toBe('29 February 2029');
  });

  it('are asked about, and the day answered is the day of the work', () => {
    const wrong = 'On the thirtieth of February I mended from nine to ten.';
    expect(readLast(wrong).ask).toEqual({
      slot: 'time',
      question: 'There is no 30 February. Which day do you mean?',
    });
    expect(readLast([wrong, 'The second of March.']).entries.map(({ entry }) => entry)).toEqual([
      { kind: 'work', task: 'mending', start: '2026-03-02T09:00', end: '2026-03-02T10:00' },
    ]);
    expect(readLast('How many hours on the thirtieth of February?')).toMatchObject({
      act: 'query',
      ask: { slot: 'time' },
    });
  });

  it('a day written in figures is no stretch of time', () => {
    expect(readLast('on 2026-03-02 from nine to ten mending').entries.map(({ entry }) => entry)).toEqual([
      { kind: 'work', task: 'mending', start: '2026-03-02T09:00', end: '2026-03-02T10:00' },
    ]);
  });
});

describe('a stretch that ends before it starts', () => {
  it('is asked about, and the times answered take its place', () => {
    const wrong = 'tying from 14:00 to 13:00';
    expect(readLast(wrong).ask).toMatchObject({
      slot: 'time',
      question: expect.stringContaining('ends before it starts'),
    });
    expect(readLast([wrong, 'from 12:00 to 13:00']).entries.map(({ entry }) => entry)).toEqual([
      { kind: 'work', task: 'tying', start: '2026-03-10T12:00', end: '2026-03-10T13:00' },
    ]);
  });
  it('over midnight is one like any other', () => {
    expect(readLast('tying from eleven at night to one in the morning').ask).toBeNull();
  });
});
