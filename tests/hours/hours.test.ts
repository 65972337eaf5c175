import { describe, expect, test } from 'vitest';
import { hoursFromLog } from '../../core/hours/hours.ts';
import type { Entry } from '../../shared/entry.ts';
import { LogBuilder } from '../log/log-builder.ts';

const work = (slots: Omit<Extract<Entry, { kind: 'work' }>, 'kind'>): Entry => ({ kind: 'work', ...slots });
const resew = (place: string, minutes?: number): Entry => ({
  kind: 'treatment',
  action: 'resew',
  state: 'done',
  places: [place],
  ...(minutes === undefined ? {} : { minutes }),
});
const torn = (place: string): Entry => ({ kind: 'condition', finding: 'tear', places: [place] });
const hours = (built: LogBuilder, now?: string) =>
  hoursFromLog(built.log, { idleMin: 30, ...(now === undefined ? {} : { now }) });

describe('what is said', () => {
  test('a start and a stop make a stretch, and the notes within stand behind it', () => {
    const built = new LogBuilder()
      .note('2026-03-14T09:00:00Z', work({ task: 'binding', mark: 'start' }))
      .note('2026-03-14T09:40:00Z', { kind: 'remark' })
      .note('2026-03-14T10:10:00Z', work({ mark: 'stop' }));
    const { spans, totalMin, problems } = hours(built);
    expect(spans).toMatchObject([
      { task: 'binding', how: 'said', start: '2026-03-14T09:00', end: '2026-03-14T10:10', minutes: 70 },
    ]);
    expect(new Set(spans[0]?.noteIds)).toEqual(new Set(['n1', 'n2', 'n3']));
    expect(totalMin).toBe(70);
    expect(problems).toEqual([]);
  });

  test('from nine to quarter to one with half an hour off', () => {
    const built = new LogBuilder().note(
      '2026-03-14T12:50:00Z',
      work({ task: 'piecing', start: '2026-03-14T09:00', end: '2026-03-14T12:45', minutes: 195 }),
    );
    expect(hours(built).spans).toMatchObject([{ minutes: 195, breakMin: 30 }]);
  });

  test('an hour and a quarter without a clock time ends when it is told', () => {
    const built = new LogBuilder().note('2026-03-14T12:00:00Z', work({ task: 'mending', minutes: 75 }));
    expect(hours(built).spans).toMatchObject([
      { how: 'length', start: '2026-03-14T10:45', end: '2026-03-14T12:00', minutes: 75 },
    ]);
  });

  test('lengths told one after the other at the end of an evening are all counted', () => {
    const built = new LogBuilder()
      .note('2026-03-14T21:00:00Z', resew('3-2', 35))
      .note('2026-03-14T21:02:00Z', resew('3-3', 20));
    const { totalMin, byPlace } = hours(built);
    expect(totalMin).toBe(55);
    expect(byPlace).toMatchObject([
      { place: '3-2', minutes: 35 },
      { place: '3-3', minutes: 20 },
    ]);
  });

  test("a treatment's own minutes inside a running task are not counted twice", () => {
    const built = new LogBuilder()
      .note('2026-03-14T09:00:00Z', work({ task: 'mending', mark: 'start' }))
      .note('2026-03-14T10:00:00Z', resew('3-2', 35))
      .note('2026-03-14T11:00:00Z', work({ mark: 'stop' }));
    const { totalMin, byPlace } = hours(built);
    expect(totalMin).toBe(120);
    expect(byPlace.find((tally) => tally.place === '3-2')?.minutes).toBe(35);
  });

  test('two stretches that overlap: the one that starts later has the time, and it is shown', () => {
    const built = new LogBuilder()
      .note(
        '2026-03-14T12:00:00Z',
        work({ task: 'cutting', start: '2026-03-14T09:00', end: '2026-03-14T11:00' }),
      )
      .note(
        '2026-03-14T12:01:00Z',
        work({ task: 'piecing', start: '2026-03-14T10:00', end: '2026-03-14T12:00' }),
      )
      .note(
        '2026-03-14T12:02:00Z',
        work({ task: 'shopping', start: '2026-03-14T10:30', end: '2026-03-14T10:40' }),
      );
    const { byTask, totalMin, overlaps } = hours(built);
    expect(totalMin).toBe(180);
    expect(Object.fromEntries(byTask.map((tally) => [tally.task, tally.minutes]))).toEqual({
      cutting: 60,
      piecing: 110,
      shopping: 10,
    });
    expect(overlaps.length).toBeGreaterThan(0);
  });

  test('a start while something runs goes over to it', () => {
    const built = new LogBuilder()
      .note('2026-03-14T09:00:00Z', work({ task: 'tying', mark: 'start' }))
      .note('2026-03-14T10:00:00Z', work({ task: 'binding', mark: 'start' }))
      .note('2026-03-14T10:30:00Z', work({ mark: 'stop' }));
    expect(hours(built).byTask).toMatchObject([
      { task: 'tying', minutes: 60 },
      { task: 'binding', minutes: 30 },
    ]);
  });

  test('a stretch that ends before it starts is reported and not counted', () => {
    const built = new LogBuilder().note(
      '2026-03-14T12:00:00Z',
      work({ start: '2026-03-14T11:00', end: '2026-03-14T10:00' }),
    );
    const { totalMin, problems } = hours(built);
    expect(totalMin).toBe(0);
    expect(problems).toMatchObject([{ kind: 'ends-before-start', noteIds: ['n1'] }]);
  });
});

describe('what can not be', () => {
  test('a day that the calendar has not got is not counted, and said; the rest is', () => {
    const built = new LogBuilder()
      .note(
        '2026-03-14T09:00:00Z',
        work({ task: 'tying', start: '2026-02-30T09:00', end: '2026-02-30T10:00' }),
      )
      .note(
        '2026-03-14T12:00:00Z',
        work({ task: 'tying', start: '2026-03-14T10:00', end: '2026-03-14T11:00' }),
      )
      .happen({ type: 'span-set', spanId: 's1', start: '2026-06-31T09:00', end: '2026-06-31T10:00' });
    const { totalMin, problems } = hours(built);
    expect(totalMin).toBe(60);
    expect(problems.map(({ kind, message }) => [kind, /2026-\d\d-\d\d/.exec(message)?.[0]])).toEqual([
      ['no-such-day', '2026-06-31'],
      ['no-such-day', '2026-02-30'],
    ]);
  });

  test('three tasks told for the same hours: each minute counts once, and what gave way is told with its task', () => {
    const built = new LogBuilder().note(
      '2026-03-14T12:30:00Z',
      work({ task: 'mending', start: '2026-03-14T09:00', end: '2026-03-14T11:00' }),
      work({ task: 'tying', start: '2026-03-14T10:00', end: '2026-03-14T12:00' }),
      work({ task: 'binding', start: '2026-03-14T10:30', end: '2026-03-14T11:30' }),
    );
    const { totalMin, byTask, overlaps } = hours(built);
    expect(totalMin).toBe(180);
    expect(Object.fromEntries(byTask.map((one) => [one.task, one.minutes]))).toEqual({
      mending: 60,
      tying: 60,
      binding: 60,
    });
    expect(
      overlaps
        .map(({ task, byTask: by, start, end }) => `${task} ${by} ${start.slice(11)} ${end.slice(11)}`)
        .sort(),
    ).toEqual(['mending binding 10:30 11:00', 'mending tying 10:00 11:00', 'tying binding 10:30 11:30']);
  });
});

describe('what is inferred', () => {
  test('a run of notes, closed by a pause; who tells of it has just done it', () => {
    const built = new LogBuilder()
      .note('2026-03-14T09:00:00Z', torn('1-1'))
      .note('2026-03-14T09:20:00Z', torn('1-2'))
      .note('2026-03-14T09:45:00Z', resew('1-2'))
      .note('2026-03-14T12:00:00Z', torn('2-1'));
    const { spans, totalMin, inferredMin } = hours(built);
    expect(spans).toMatchObject([
      { task: 'survey', how: 'inferred', start: '2026-03-14T09:00', end: '2026-03-14T09:20' },
      { task: 'mending', how: 'inferred', start: '2026-03-14T09:20', end: '2026-03-14T09:45' },
    ]);
    expect([totalMin, inferredMin]).toEqual([45, 45]);
  });

  test('said beats inferred: only what is outside is inferred', () => {
    const built = new LogBuilder()
      .note('2026-03-14T09:00:00Z', torn('1-1'))
      .note('2026-03-14T09:25:00Z', torn('1-2'))
      .note('2026-03-14T09:50:00Z', torn('1-3'))
      .note(
        '2026-03-14T12:00:00Z',
        work({ task: 'mending', start: '2026-03-14T09:10', end: '2026-03-14T09:30' }),
      );
    const { totalMin, inferredMin } = hours(built);
    expect([totalMin, inferredMin]).toEqual([50, 30]);
  });

  test('after a stop nothing is inferred, and before a start nothing is', () => {
    const built = new LogBuilder()
      .note('2026-03-14T09:00:00Z', work({ task: 'tying', mark: 'start' }))
      .note('2026-03-14T10:00:00Z', work({ mark: 'stop', time: '2026-03-14T09:50' }))
      .note('2026-03-14T10:10:00Z', { kind: 'decision', about: 'batting', status: 'open' })
      .note('2026-03-14T10:20:00Z', work({ task: 'binding', mark: 'start' }))
      .note('2026-03-14T10:30:00Z', work({ mark: 'stop' }));
    expect(hours(built)).toMatchObject({ totalMin: 60, inferredMin: 0 });
  });
});

describe('left running', () => {
  test('overnight: closed at the last sign of work and asked about', () => {
    const built = new LogBuilder()
      .note('2026-03-14T20:00:00Z', work({ task: 'quilting', mark: 'start' }))
      .note('2026-03-14T21:10:00Z', { kind: 'remark' })
      .note('2026-03-15T09:00:00Z', torn('1-1'))
      .note('2026-03-15T09:10:00Z', torn('1-2'));
    const { spans, problems, running } = hours(built);
    expect(spans[0]).toMatchObject({ task: 'quilting', end: '2026-03-14T21:10', minutes: 70 });
    expect(spans[0]?.running).toBeUndefined();
    expect(problems).toMatchObject([{ kind: 'left-running', date: '2026-03-14', spanId: 'work-n1.0' }]);
    expect(running).toBeUndefined();
  });

  test('"I stopped at eleven last night", said next morning, is a stop at eleven', () => {
    const built = new LogBuilder()
      .note('2026-03-14T20:00:00Z', work({ task: 'quilting', mark: 'start' }))
      .note('2026-03-15T09:00:00Z', work({ mark: 'stop', time: '2026-03-14T23:00' }));
    expect(hours(built)).toMatchObject({ totalMin: 180, problems: [] });
  });

  test('past midnight is one evening, and its minutes fall on both dates', () => {
    const built = new LogBuilder()
      .note('2026-03-14T22:30:00Z', work({ task: 'binding', mark: 'start' }))
      .note('2026-03-15T00:45:00Z', work({ mark: 'stop' }));
    const { byDay, byWeek, problems } = hours(built);
    expect(byDay).toMatchObject([
      { date: '2026-03-14', minutes: 90 },
      { date: '2026-03-15', minutes: 45 },
    ]);
    // 2026-03-14 is a Saturday and 2026-03-15 a Sunday of the same ISO 8601 week.
    expect(byWeek).toMatchObject([{ monday: '2026-03-09', minutes: 135 }]);
    expect(problems).toEqual([]);
  });

  test('running at the end of the log counts up to now', () => {
    const built = new LogBuilder().note('2026-03-14T20:00:00Z', work({ task: 'tying', mark: 'start' }));
    expect(hours(built, '2026-03-14T20:40:00Z')).toMatchObject({
      totalMin: 40,
      running: { task: 'tying', start: '2026-03-14T20:00' },
    });
    expect(hours(built, '2026-03-16T20:40:00Z')).toMatchObject({
      totalMin: 0,
      problems: [{ kind: 'left-running' }],
    });
  });
});

test('work left running is asked about until its times are set by hand', () => {
  const built = new LogBuilder()
    .note('2026-03-10T19:00:00Z', work({ task: 'binding', mark: 'start' }))
    .note('2026-03-10T20:30:00Z', torn('1-2'))
    .note('2026-03-11T09:00:00Z', torn('2-2'));
  const { problems, spans } = hours(built);
  expect(problems).toMatchObject([{ kind: 'left-running', spanId: spans[0]!.id }]);
  const { id, start, end, entryIds } = spans[0]!;
  built.happen({ type: 'span-set', spanId: id, start, end, task: 'binding', entryIds });
  expect(hours(built)).toMatchObject({ problems: [], totalMin: 90 });
});

describe('by hand', () => {
  test('a stretch set in place of a said one replaces it; one taken out is gone; undone, it is back', () => {
    const built = new LogBuilder().note(
      '2026-03-14T12:00:00Z',
      work({ task: 'cutting', start: '2026-03-14T09:00', end: '2026-03-14T11:00' }),
    );
    const said = hours(built).spans[0]!;
    built.happen({
      type: 'span-set',
      spanId: said.id,
      task: 'piecing',
      start: '2026-03-14T09:00',
      end: '2026-03-14T10:00',
      entryIds: said.entryIds,
    });
    expect(hours(built).byTask).toMatchObject([{ task: 'piecing', minutes: 60 }]);
    built.happen({ type: 'span-removed', spanId: said.id });
    expect(hours(built).totalMin).toBe(0);
    built.happen({ type: 'change-undone', seq: built.log.seq });
    built.happen({ type: 'change-undone', seq: built.log.seq - 2 });
    expect(hours(built).byTask).toMatchObject([{ task: 'cutting', minutes: 120 }]);
  });

  test('moved by hand, a stretch is counted where it lies now and its notes infer none where it was', () => {
    const built = new LogBuilder()
      .note('2026-03-14T09:00:00Z', work({ task: 'mending', mark: 'start' }))
      .note('2026-03-14T09:20:00Z', resew('1-1'))
      .note('2026-03-14T09:40:00Z', resew('1-2'))
      .note('2026-03-14T10:00:00Z', work({ task: 'mending', mark: 'stop' }));
    const said = hours(built).spans[0]!;
    built.happen({
      type: 'span-set',
      spanId: said.id,
      task: 'mending',
      start: '2026-03-14T09:50',
      end: '2026-03-14T10:50',
      entryIds: said.entryIds,
    });
    expect(hours(built).spans).toMatchObject([{ how: 'hand', start: '2026-03-14T09:50', minutes: 60 }]);
    expect(hours(built).totalMin).toBe(60);
  });

  test('an inferred stretch set by hand is not inferred again beside it', () => {
    const built = new LogBuilder()
      .note('2026-03-14T09:00:00Z', resew('1-1'))
      .note('2026-03-14T09:20:00Z', resew('1-2'));
    const inferred = hours(built).spans[0]!;
    expect(inferred.how).toBe('inferred');
    built.happen({
      type: 'span-set',
      spanId: inferred.id,
      task: 'mending',
      start: '2026-03-14T09:10',
      end: '2026-03-14T09:20',
    });
    expect(hours(built).totalMin).toBe(10);
  });

  test('a note that comes in late for a closed day is said so', () => {
    const built = new LogBuilder()
      .note(
        '2026-03-14T12:00:00Z',
        work({ task: 'cutting', start: '2026-03-14T09:00', end: '2026-03-14T11:00' }),
      )
      .happen({ type: 'day-confirmed', date: '2026-03-14' })
      .note('2026-03-14T13:00:00Z', work({ task: 'cutting', minutes: 20 }));
    expect(hours(built).problems).toMatchObject([
      { kind: 'late-on-confirmed-day', date: '2026-03-14', noteIds: ['n2'] },
    ]);
  });
});
