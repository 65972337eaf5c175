import { describe, expect, test } from 'vitest';
import { answerQuery } from '../../core/log/answer-query.ts';
import { neededMaterials, openMatters, plannedWork } from '../../core/log/open-matters.ts';
import type { Entry } from '../../shared/entry.ts';
import type { Reading } from '../../shared/note.ts';
import { QUERIES } from '../../shared/vocabulary.ts';
import { LogBuilder } from './log-builder.ts';

const AT = '2026-03-14T18:00:00Z';
const ask = (built: LogBuilder, query: Reading['query'], slots: Reading['arguments'] = {}) =>
  answerQuery(built.log, { act: 'query', entries: [], ask: null, reply: '', query, arguments: slots }, AT, {
    idleMin: 30,
  });
const treat = (
  action: 'replace' | 'overlay' | 'resew' | 'leave' | 'patch',
  state: 'done' | 'planned' | 'considering' | 'dropped',
  ...places: string[]
): Entry => ({ kind: 'treatment', action, state, places });

const evening = (): LogBuilder =>
  new LogBuilder()
    .note('2026-03-13T19:00:00Z', {
      kind: 'work',
      task: 'binding',
      start: '2026-03-13T19:00',
      end: '2026-03-13T20:30',
    })
    .note('2026-03-14T09:00:00Z', { kind: 'work', task: 'mending', mark: 'start' })
    .note(
      '2026-03-14T09:20:00Z',
      { kind: 'condition', finding: 'tear', places: ['3-2'] },
      treat('resew', 'done', '3-2'),
    )
    .note(
      '2026-03-14T09:40:00Z',
      treat('replace', 'considering', '4-1'),
      treat('overlay', 'considering', '4-1'),
    )
    .note('2026-03-14T10:00:00Z', { kind: 'work', mark: 'stop' })
    .note('2026-03-14T10:05:00Z', treat('patch', 'planned', '5-1', '5-2'))
    .note('2026-03-14T10:06:00Z', { kind: 'decision', about: 'batting', status: 'open' })
    .note(
      '2026-03-14T11:00:00Z',
      {
        kind: 'material',
        material: 'backing',
        use: 'bought',
        quantity: 2.5,
        unit: 'yd',
        cost: { amount: 7.1, each: true },
      },
      { kind: 'material', material: 'tie-thread', use: 'needed', quantity: 2, unit: 'ball' },
    );

describe('answers, each with the figure and the notes behind it', () => {
  test.each([
    ['hours-total', {}, '2 hours 30 minutes so far over 2 days. Most of it was binding, 1 hour 30 minutes.'],
    ['hours-task', { task: 'mending' }, '1 hour on mending so far.'],
    ['hours-day', {}, '1 hour mending today.'],
    ['hours-day', { date: '2026-03-13' }, '1 hour 30 minutes binding yesterday.'],
    ['hours-day', { date: '2026-03-01' }, 'No time is logged on Sunday, 1 March 2026.'],
    ['to-do', {}, '1 thing to do: patching over the damage in the first and second blocks of row 5.'],
    ['materials-needed', {}, 'To buy: 2 balls of thread for ties.'],
    ['cost', {}, '£17.75 for materials so far, in 1 purchase.'],
    ['last-entry', {}, 'At 11:00: 2.5 yards of backing cloth bought. 2 balls of thread for ties to buy.'],
  ] as const)('%s %j', (query, slots, text) => {
    const answer = ask(evening(), query, slots);
    expect(answer.text).toBe(text);
  });

  test('open matters name the ways and the place, and the matter of the whole quilt', () => {
    const { text, working } = ask(evening(), 'open-matters');
    expect(text).toBe(
      '2 matters still open: replacing with new cloth or overlaying with net in the first block of row 4; which wadding.',
    );
    expect(working).toEqual(['2026-03-14 09:40 “log n4”', '2026-03-14 10:06 “log n7”']);
  });

  test('the history of a place', () => {
    expect(ask(evening(), 'place-history', { places: ['3-2'] }).text).toContain('Re-sewn.');
    expect(ask(evening(), 'place-history', { places: ['7-5'] }).text).toMatch(/^Nothing is logged of /);
  });

  test('the review of a day has its time, what was found, done, planned, left open and bought', () => {
    const { text } = ask(evening(), 'day-review');
    for (const part of ['1 hour today.', 'Found: ', 'Done: ', 'Planned: ', 'Left open: ', 'Bought: ']) {
      expect(text).toContain(part);
    }
  });

  test.each(QUERIES)('%s of an empty log says that there is nothing', (query) => {
    const { text, working } = ask(new LogBuilder(), query);
    expect(text).toMatch(/^(No|Nothing) .*\.$/);
    expect(working).toEqual([]);
  });
});

describe('what is open', () => {
  const open = (built: LogBuilder) =>
    openMatters(built.log).choices.map(({ places, ways }) => ({ places, ways }));
  const weighed = (): LogBuilder =>
    new LogBuilder().note(
      AT,
      treat('replace', 'considering', '3-2', '3-3'),
      treat('overlay', 'considering', '3-2', '3-3'),
    );

  test('one way chosen settles those weighed with it, at the places it was chosen for', () => {
    const built = weighed().note(AT, treat('overlay', 'planned', '3-2'));
    expect(open(built)).toEqual([{ places: ['3-3'], ways: ['replace', 'overlay'] }]);
  });
  test('one way dropped leaves the other', () => {
    expect(open(weighed().note(AT, treat('overlay', 'dropped', '3-2', '3-3')))).toEqual([
      { places: ['3-2', '3-3'], ways: ['replace'] },
    ]);
  });
  test('leaving the place as it is settles it; another treatment of it does not', () => {
    expect(open(weighed().note(AT, treat('leave', 'done', '3-2', '3-3')))).toEqual([]);
    expect(open(weighed().note(AT, treat('resew', 'done', '3-2', '3-3')))).toHaveLength(1);
  });
  test('planned work goes place by place as it is done', () => {
    const built = new LogBuilder()
      .note(AT, treat('patch', 'planned', '1-1', '1-2', '1-3'))
      .note(AT, treat('patch', 'done', '1-2'));
    expect(plannedWork(built.log)).toMatchObject([{ action: 'patch', places: ['1-1', '1-3'] }]);
  });
  test('what was bought is needed no longer', () => {
    const need: Entry = { kind: 'material', material: 'thread', use: 'needed', name: 'cream thread' };
    const built = new LogBuilder().note(AT, need).note(AT, { ...need, use: 'bought', name: 'thread' });
    expect(neededMaterials(built.log)).toEqual([]);
  });
});
