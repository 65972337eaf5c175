import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { hoursFromLog } from '../../core/hours/hours.ts';
import { ZoneClock } from '../../core/hours/zone-clock.ts';
import { LogBuilder } from '../log/log-builder.ts';

/**
 * Clock changes of 2026 as the IANA time zone database (tzdb) gives them. The instants follow from
 * rules in its files: `northamerica` (Rule US: second Sunday of March, first of November, 2:00 local),
 * `europe` (Rule EU: last Sundays of March and October, 01:00 UTC), `australasia` (Rule AN and, for
 * Lord Howe, half an hour; Rule Chatham at 2:45s). Checked against the machine's own copy below.
 */
const CHANGES: { zone: string; at: string; offsets: [string, string]; dayHours: number; date: string }[] = [
  {
    zone: 'America/New_York',
    at: '2026-03-08T07:00:00Z',
    offsets: ['-05:00', '-04:00'],
    dayHours: 23,
    date: '2026-03-08',
  },
  {
    zone: 'America/New_York',
    at: '2026-11-01T06:00:00Z',
    offsets: ['-04:00', '-05:00'],
    dayHours: 25,
    date: '2026-11-01',
  },
  {
    zone: 'Europe/London',
    at: '2026-03-29T01:00:00Z',
    offsets: ['+00:00', '+01:00'],
    dayHours: 23,
    date: '2026-03-29',
  },
  {
    zone: 'Europe/London',
    at: '2026-10-25T01:00:00Z',
    offsets: ['+01:00', '+00:00'],
    dayHours: 25,
    date: '2026-10-25',
  },
  {
    zone: 'Europe/Berlin',
    at: '2026-03-29T01:00:00Z',
    offsets: ['+01:00', '+02:00'],
    dayHours: 23,
    date: '2026-03-29',
  },
  {
    zone: 'Australia/Sydney',
    at: '2026-04-04T16:00:00Z',
    offsets: ['+11:00', '+10:00'],
    dayHours: 25,
    date: '2026-04-05',
  },
  {
    zone: 'Australia/Lord_Howe',
    at: '2026-10-03T15:30:00Z',
    offsets: ['+10:30', '+11:00'],
    dayHours: 23.5,
    date: '2026-10-04',
  },
  {
    zone: 'Pacific/Chatham',
    at: '2026-04-04T14:00:00Z',
    offsets: ['+13:45', '+12:45'],
    dayHours: 25,
    date: '2026-04-05',
  },
  {
    zone: 'Asia/Kathmandu',
    at: '2026-06-01T00:00:00Z',
    offsets: ['+05:45', '+05:45'],
    dayHours: 24,
    date: '2026-06-01',
  },
];

const minuteOf = (instant: string): number => Date.parse(instant) / 60_000;
const offsetMin = (offset: string): number =>
  (offset.startsWith('-') ? -1 : 1) * (Number(offset.slice(1, 3)) * 60 + Number(offset.slice(4)));
const localAt = (minute: number, offset: string): string =>
  new Date((minute + offsetMin(offset)) * 60_000).toISOString().slice(0, 16);

describe.each(CHANGES)('$zone at $at', ({ zone, at, offsets, dayHours, date }) => {
  const clock = new ZoneClock(zone);
  const change = minuteOf(at);

  test('the wall clock before and after', () => {
    expect(clock.localOf(change - 1)).toBe(localAt(change - 1, offsets[0]));
    expect(clock.localOf(change)).toBe(localAt(change, offsets[1]));
  });

  test('the length of the day', () => {
    const length = clock.dayStart(clock.nextDate(date)) - clock.dayStart(date);
    expect(length / 60).toBe(dayHours);
  });

  test('work across the change counts the minutes that passed', () => {
    const from = change - 90;
    const to = change + 90;
    const built = new LogBuilder(zone)
      .note(instant(from, offsets[0]), { kind: 'work', task: 'tying', mark: 'start' })
      .note(instant(to, offsets[1]), { kind: 'work', mark: 'stop' });
    const { totalMin, byDay } = hoursFromLog(built.log, { idleMin: 30 });
    expect(totalMin).toBe(180);
    expect(byDay.reduce((sum, day) => sum + day.minutes, 0)).toBe(180);
  });
});

const instant = (minute: number, offset: string): string => `${localAt(minute, offset)}:00${offset}`;

test('an hour said on the clock that comes twice: from half past one to half past one is an hour', () => {
  const built = new LogBuilder('Europe/London').note('2026-10-25T02:00:00+00:00', {
    kind: 'work',
    task: 'quilting',
    start: '2026-10-25T01:30',
    end: '2026-10-25T01:30',
  });
  expect(hoursFromLog(built.log, { idleMin: 30 }).totalMin).toBe(60);
});

const zdump = ['/usr/bin/zdump', '/usr/sbin/zdump'].find(existsSync);
test.skipIf(!zdump)("the machine's own copy of tzdb gives the same changes (zdump)", () => {
  for (const { zone, at, offsets } of CHANGES) {
    if (offsets[0] === offsets[1]) continue;
    const lines = execFileSync(zdump!, ['-v', '-c', '2026,2027', zone], { encoding: 'utf8' });
    const wanted = new Date(at).toUTCString().slice(5, 25);
    const [day, month, year, time] = wanted.split(' ');
    expect(lines, `${zone} ${at}`).toMatch(new RegExp(`${month}\\s+${Number(day)} ${time} ${year} UT`));
  }
});
