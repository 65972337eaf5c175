import * as chrono from 'chrono-node';
import { describe, expect, it } from 'vitest';
import { findClock } from '../../core/rules/times/find-clock.ts';
import { findDay, findDays } from '../../core/rules/times/find-day.ts';
import { findDuration } from '../../core/rules/times/find-duration.ts';
import { findSpan } from '../../core/rules/times/find-span.ts';
import { latestClock, wallMinutes, wallOf, wallTime } from '../../core/rules/times/local-time.ts';
import { tokenise } from '../../core/text/tokenise.ts';

const clock = (text: string, expected = true) => findClock(tokenise(text), 0, expected)?.minute;
const hm = (h: number, m = 0) => h * 60 + m;
const day = (text: string, local = '2026-02-18T10:00') => {
  const found = findDay(text, local);
  return found && [wallTime(found.start).slice(0, 10), found.part];
};

describe('clock times', () => {
  it.each([
    ['10:45', hm(10, 45)],
    ['10.45', hm(10, 45)],
    ['1045', hm(10, 45)],
    ['ten forty five', hm(10, 45)],
    ['eighteen fifteen I started', hm(18, 15)],
    ['eighteen fifteen is on the label', undefined],
    ['nine-fifteen', hm(9, 15)],
    ['eleven-oh-five', hm(11, 5)],
    ['six oh five', hm(6, 5)],
    ['half six', hm(6, 30)],
    ['half past two', hm(2, 30)],
    // before it is known whether it is noon or midnight
    ['a quarter to one', hm(0, 45)],
    ['quarter after five', hm(5, 15)],
    ['twenty five past nine', hm(9, 25)],
    ['20 to 9', hm(8, 40)],
    ['ten of nine', hm(8, 50)],
    ['five and twenty past three', hm(3, 25)],
    ['noon', hm(12)],
    ["seven o'clock", hm(7)],
    ['4:15p', hm(16, 15)],
    ['6.20 pm', hm(18, 20)],
    ['1930', hm(19, 30)],
    ['12:10 am', hm(0, 10)],
  ])('%s', (said, minute) => expect(clock(said)).toBe(minute));
  // Outside check: chrono-node's own reading of the same words on the same day.
  it.each(['10:45', '6:20 pm', '19:30', '12:10 am', '12:30 pm', 'noon', '7 pm', '9:05 am'])(
    '%s as chrono-node reads it',
    (said) => {
      const [result] = chrono.parse(`at ${said}`, new Date(2026, 2, 14, 23, 0));
      expect(clock(said)).toBe(result!.start.get('hour')! * 60 + result!.start.get('minute')!);
    },
  );
  it('invents no time', () => {
    expect(clock('25:70')).toBeUndefined();
    expect(clock('2575')).toBeUndefined();
    expect(clock('10:61')).toBeUndefined();
    expect(clock('nine inches')).toBeUndefined();
    expect(clock('two long')).toBeUndefined();
    expect(clock('four blocks')).toBeUndefined();
    expect(clock('nine', false)).toBeUndefined();
    expect(clock('ten of nine blocks')).toBeUndefined();
    expect(clock('ten to')).toBe(50);
  });
});

describe('lengths and stretches of time', () => {
  it.each([
    ['forty minutes', 40],
    ['an hour and a quarter', 75],
    ['1 hr 20', 80],
    ['1h50', 110],
    ['three quarters of an hour', 45],
    ['two and a half hours', 150],
    ['3½ hrs', 210],
    ['hour and a half', 90],
    ['an hour ten', 70],
    ['a half hour', 30],
    ['a good half hour', 30],
    ['2 hours and 15 minutes', 135],
  ])('%s is %d minutes', (said, minutes) => expect(findDuration(tokenise(said), 0)?.minutes).toBe(minutes));
  it('leaves what is no length of time', () => {
    expect(findDuration(tokenise('an hour 3 skeins'), 0)?.minutes).toBe(60);
    expect(findDuration(tokenise('20 m of net'), 0)).toBeUndefined();
    expect(findDuration(tokenise('half a yard'), 0)).toBeUndefined();
  });
  it('reads a stretch only where the words leave no doubt', () => {
    expect(findSpan(tokenise('10.15–12.10 mending'), 0, 'none')).toMatchObject({
      start: { minute: 615 },
      end: { minute: 730 },
    });
    expect(findSpan(tokenise('7-7:50p'), 0, 'none')).toMatchObject({
      start: { minute: hm(19) },
      end: { minute: hm(19, 50) },
    });
    expect(findSpan(tokenise('seven to quarter to five'), 0, 'none')).toMatchObject({
      end: { minute: hm(4, 45) },
    });
    expect(findSpan(tokenise('8 to 9 tonight'), 0, 'none')).toBeDefined();
    expect(findSpan(tokenise('2-3 torn'), 0, 'none')).toBeUndefined();
    expect(findSpan(tokenise('three to four'), 0, 'none')).toBeUndefined();
  });
});

describe('the moment that a clock reading means', () => {
  // ISO 8601: local time of day as written, the offset apart from it.
  it('takes the wall time out of an ISO 8601 moment', () => {
    expect(wallOf('2026-03-14T10:30:00-05:00')).toBe('2026-03-14T10:30');
    expect(wallTime(wallMinutes('2024-02-29T23:59'))).toBe('2024-02-29T23:59');
    expect(wallTime(wallMinutes('2026-12-31T23:59') + 1)).toBe('2027-01-01T00:00');
  });
  it('is of this hour or the last where the hour is not said', () => {
    const now = wallMinutes('2026-03-14T16:05');
    const twentyPast = findClock(tokenise('twenty past'), 0, true)!;
    const quarterTo = findClock(tokenise('quarter to'), 0, true)!;
    expect(wallTime(latestClock(twentyPast, now))).toBe('2026-03-14T15:20');
    expect(wallTime(latestClock(quarterTo, now))).toBe('2026-03-14T15:45');
  });
  it('is never after the note', () => {
    for (const now of ['2026-03-14T00:05', '2026-03-14T09:00', '2026-03-14T21:30'].map(wallMinutes))
      for (let minute = 0; minute < 1440; minute += 7)
        for (const fixed of [true, false])
          expect(latestClock({ minute, fixed }, now)).toBeLessThanOrEqual(now);
  });
});

describe('days', () => {
  it.each([
    ['last night', ['2026-02-17', 'night']],
    ['yesterday evening', ['2026-02-17', 'evening']],
    ['last evening', ['2026-02-17', 'evening']],
    ['the day before yesterday', ['2026-02-16', undefined]],
    ['two days ago', ['2026-02-16', undefined]],
    ['on friday', ['2026-02-13', undefined]],
    ['Sun 2.15–4.30 pm mending', ['2026-02-15', undefined]],
    ['this arvo', ['2026-02-18', 'afternoon']],
    ['on the 14th', ['2026-02-14', undefined]],
  ])('%s', (said, expected) => expect(day(said)).toEqual(expected));
  it('finds no day in words that only look like one', () => {
    for (const said of [
      'bleached by the sun',
      'sat down to it',
      'may have a hole',
      'the 3rd row',
      'marked it',
      'decided on wool',
      'we were wed',
    ])
      expect(day(said), said).toBeUndefined();
  });
  it('keeps each day in its place and says which are vague', () => {
    expect(
      findDays('yesterday I tied, last week I cut', '2026-02-18T10:00').map((d) => [
        d.words,
        d.vague ?? false,
      ]),
    ).toEqual([
      ['yesterday', false],
      ['last week', true],
    ]);
  });
});
