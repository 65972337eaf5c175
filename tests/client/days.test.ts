import { describe, expect, it } from 'vitest';
import { datesOf, dayPage } from '../../client/features/days/state/day-page.ts';
import { openMatters } from '../../client/features/days/state/open-matters.ts';
import { type Findings, findSaid } from '../../client/features/find/state/find-said.ts';
import { placeStory } from '../../client/features/quilt/state/place-story.ts';
import { readRoute } from '../../client/features/shell/state/route.ts';
import { evolve, fold } from '../../core/log/evolve.ts';
import type { LogEvent } from '../../shared/event.ts';
import { scenarioEvents } from './scenario.ts';

const log = fold(scenarioEvents());
const logAfter = (...events: LogEvent[]) =>
  events.reduce(
    (state, event) => evolve(state, { seq: state.seq + 1, at: '2026-03-11T10:00:00Z', event }),
    log,
  );

describe('a day gone over', () => {
  it('puts what was said under its heading', () => {
    const page = dayPage(log, '2026-03-07');
    expect(page.lines.done.map(({ entry }) => entry.entry)).toHaveLength(5);
    expect(page.lines.found).toHaveLength(1);
    expect(page.unconfirmed).toHaveLength(page.entryCount);
  });
  it('puts what was heard faintly first', () => {
    expect(dayPage(log, '2026-03-02').lines.found[0]).toMatchObject({ unsure: true });
  });
  it('keeps talk beside the work, and gives the reason of what was left', () => {
    const page = dayPage(log, '2026-03-03');
    expect(page.asides.map(({ note }) => note.note.text)).toEqual(['that was the telephone']);
    expect(page.lines.decided.find(({ entry }) => entry.reason)?.entry.reason).toBe(
      'it is part of its story',
    );
  });
  it('asks again what was not answered, until it is put right', () => {
    expect(dayPage(log, '2026-03-10').asked.map(({ question }) => question)).toEqual([
      'Which block did you darn?',
    ]);
    const id = log.entries.at(-1)!.id;
    const mended = logAfter({
      type: 'entry-corrected',
      entryId: id,
      entry: { kind: 'treatment', action: 'darn', state: 'done', places: ['5-5'] },
    });
    expect(dayPage(mended, '2026-03-10').asked).toEqual([]);
  });
  it('knows the days', () => {
    expect(datesOf(log)).toEqual([
      '2026-03-02',
      '2026-03-03',
      '2026-03-05',
      '2026-03-07',
      '2026-03-09',
      '2026-03-10',
    ]);
  });
});

describe('open matters', () => {
  it('gathers ways in question by place, and open matters of the whole job', () => {
    const { undecided, decisions, toDo, toBuy } = openMatters(log);
    expect(undecided.map(({ places, ways }) => [places, ways.map(({ entry }) => entry.action)])).toEqual([
      [['2-4'], ['overlay', 'replace']],
    ]);
    expect(decisions.map(({ about }) => about)).toEqual(['batting']);
    expect(toDo.map(({ entry, places }) => [entry.action, places.length])).toEqual([['stabilize', 5]]);
    expect(toBuy.map(({ entry }) => entry.name)).toEqual(['wool wadding']);
  });
  it('lets go of both ways when one is chosen', () => {
    const chosen = logAfter({
      type: 'entry-added',
      entryId: 'e',
      entry: { kind: 'treatment', action: 'overlay', state: 'planned', places: ['2-4'] },
    });
    expect(openMatters(chosen).undecided).toEqual([]);
    expect(openMatters(chosen).toDo.map(({ entry }) => entry.action)).toContain('overlay');
  });
  it('keeps the other way open when one is dropped', () => {
    const dropped = logAfter({
      type: 'entry-added',
      entryId: 'e',
      entry: { kind: 'treatment', action: 'overlay', state: 'dropped', places: ['2-4'] },
    });
    expect(openMatters(dropped).undecided.map(({ ways }) => ways.map(({ entry }) => entry.action))).toEqual([
      ['replace'],
    ]);
  });
});

describe('finding what was said', () => {
  /** What was told, turn by turn. */
  const find = (state: typeof log, words: string): Promise<Findings[]> =>
    new Promise((done) => {
      const told: Findings[] = [];
      findSaid(state, words, (so) => {
        told.push(so);
        if (so.isAll) done(told);
      });
    });
  const totalOf = async (words: string): Promise<number> => (await find(log, words)).at(-1)!.total;

  it('finds words, places, days, without case or accents', async () => {
    expect(await totalOf('CALICO')).toBe(1);
    expect(await totalOf('2-4 silk')).toBe(1);
    expect(await totalOf('2026-03-05')).toBe(3);
    expect(await totalOf('unicorn')).toBe(0);
    expect(await find(log, ' ')).toEqual([{ found: [], total: 0, isAll: true }]);
  });
  it('answers at 20,000 notes: the newest at once, then further back, and no more when it is broken off', async () => {
    const events = scenarioEvents().slice(0, 1);
    for (let i = 0; i < 20_000; i++) {
      events.push({
        seq: i + 2,
        at: '2026-03-10T20:00:00.000Z',
        event: {
          type: 'note-taken',
          note: {
            id: `n${i}`,
            at: '2026-03-02T18:32:00+00:00',
            text: `note ${i} of the border`,
            source: 'typed',
          },
        },
      });
    }
    const long = fold(events);
    const told = await find(long, 'border 1999');
    // 1999, 11999, and 19990 to 19999
    expect(told.at(-1)).toMatchObject({ total: 12, isAll: true });
    expect(told.at(-1)!.found.map(({ note }) => note?.note.id)).toEqual([
      ...Array.from({ length: 10 }, (_, i) => `n${19_999 - i}`),
      'n11999',
      'n1999',
    ]);
    // Those of the last notes are in the first turn already.
    expect(told[0]!.found[0]?.note?.note.id).toBe('n19999');
    const other = fold(events);
    let turns = 0;
    const stop = findSaid(other, 'border', () => turns++);
    stop();
    await new Promise((done) => setTimeout(done, 50));
    expect(turns).toBe(1);
  });
});

describe('the story of a place', () => {
  it('is all that was said of it, with what holds for its whole border', () => {
    expect(placeStory(log, '5-1').map(({ entry }) => entry.entry.kind)).toEqual([
      'condition',
      'treatment',
      'condition',
    ]);
    expect(placeStory(log, 'edge-top')).toHaveLength(1);
    expect(placeStory(log, 'edge')).toHaveLength(1);
  });
});

describe('addresses', () => {
  it.each([
    ['', { at: 'quilts' }],
    ['#/new', { at: 'new' }],
    ['#/q/abc/days/2026-03-07', { at: 'quilt', quiltId: 'abc', page: 'days', rest: '2026-03-07' }],
    ['#/q/abc/nonsense', { at: 'quilt', quiltId: 'abc', page: 'frame', rest: '' }],
    ['#/q/%E0%A4%A', { at: 'quilt', quiltId: '%E0%A4%A', page: 'frame', rest: '' }],
  ])('%s', (address, route) => {
    expect(readRoute(address)).toEqual(route);
  });
});
