import { expect, test } from 'vitest';
import { decide } from '../../core/log/decide.ts';
import { localInstant } from '../../core/log/local-instant.ts';
import { checkMigrations, LOG_VERSION, MIGRATIONS, migrate } from '../../core/log/migrations.ts';
import type { Command } from '../../shared/wire.ts';
import { LogBuilder } from './log-builder.ts';

const given = { at: '2026-03-14T10:00:00Z', id: () => 'new' };
const built = new LogBuilder().note('2026-03-14T09:00:00Z', { kind: 'remark' });

test.each<[Command, RegExp]>([
  [{ type: 'correct-entry', entryId: 'x', entry: { kind: 'remark' } }, /no entry x in the log now/],
  [{ type: 'remove-entry', entryId: 'x' }, /no entry x/],
  [{ type: 'confirm-entries', entryIds: ['n1.0', 'x'] }, /no entry x/],
  [{ type: 'add-entry', noteId: 'x', entry: { kind: 'remark' } }, /no note x/],
  [{ type: 'refile-note', noteId: 'x', as: 'work' }, /no note x/],
  [{ type: 'remove-photo', photoId: 'x' }, /no photograph x/],
  [{ type: 'change-photo', photoId: 'x' }, /no photograph x/],
  [{ type: 'set-span', start: '2026-03-14T10:00', end: '2026-03-14T09:00' }, /has to end after it starts/],
  [{ type: 'set-span', start: '2026-02-30T09:00', end: '2026-02-30T10:00' }, /no 2026-02-30 in the calendar/],
  [
    { type: 'add-entry', entry: { kind: 'work', start: '2026-06-31T09:00', minutes: 60 } },
    /no 2026-06-31 in the calendar/,
  ],
  [
    {
      type: 'correct-entry',
      entryId: 'n1.0',
      entry: { kind: 'work', mark: 'start', time: '2025-02-29T09:00' },
    },
    /no 2025-02-29 in the calendar/,
  ],
  [{ type: 'undo-change', seq: 99 }, /no change number 99; the log runs from 1 to 3/],
  [{ type: 'undo-change', seq: 1 }, /the making of the quilt/],
  [{ type: 'undo-change', seq: 2 }, /what was said stays in the log/],
  [{ type: 'teach-word', heard: 'wadding', means: 'Wadding' }, /something other than itself/],
])('refuses %j', (command, why) => {
  const decision = decide(built.log, command, given);
  expect('refused' in decision && decision.refused).toMatch(why);
});

test('a note sent twice is taken once', () => {
  const command: Command = { type: 'take-note', clientId: 'n1', text: 'again' };
  expect(decide(built.log, command, given)).toEqual({ events: [] });
});

test('what is confirmed already, or is as it was, makes no event', () => {
  const confirmed = new LogBuilder()
    .note('2026-03-14T09:00:00Z', { kind: 'remark' })
    .happen({ type: 'entries-confirmed', entryIds: ['n1.0'] });
  expect(decide(confirmed.log, { type: 'confirm-entries', entryIds: ['n1.0'] }, given)).toEqual({
    events: [],
  });
  expect(decide(confirmed.log, { type: 'change-quilt', changes: { rows: 7 } }, given)).toEqual({
    events: [],
  });
});

test('talk that was work after all keeps its words as a remark', () => {
  const aside = new LogBuilder().say('2026-03-14T09:00:00Z', 'aside');
  expect(decide(aside.log, { type: 'refile-note', noteId: 'n1', as: 'work' }, given)).toEqual({
    events: [
      { type: 'note-refiled', noteId: 'n1', as: 'work' },
      { type: 'entry-added', entryId: 'new', noteId: 'n1', entry: { kind: 'remark' } },
    ],
  });
});

test('moments are written by the clock of the quilt, across both changes of it', () => {
  expect(localInstant('2026-03-14T10:30:00Z', 'America/New_York')).toBe('2026-03-14T06:30:00-04:00');
  expect(localInstant('2026-03-07T10:30:00.123Z', 'America/New_York')).toBe('2026-03-07T05:30:00-05:00');
  expect(localInstant('2026-01-01T00:00:00+05:45', 'UTC')).toBe('2025-12-31T18:15:00+00:00');
});

test('the migrations of this version lead from 1 to it without a gap', () => {
  expect(() => checkMigrations(MIGRATIONS, LOG_VERSION)).not.toThrow();
});

test('migrations run one by one, and gaps and newer versions are refused', () => {
  const events = built.events;
  const mark = (from: number) => ({
    from,
    why: 'for this test',
    change: (event: (typeof events)[number]) => ({ ...event, at: `${event.at}+${from}` }),
  });
  expect(migrate(events, 1, [mark(1), mark(2)], 3)[0]?.at).toBe(`${events[0]?.at}+1+2`);
  expect(migrate(events, 2, [mark(1), mark(2)], 3)[0]?.at).toBe(`${events[0]?.at}+2`);
  expect(() => migrate(events, 1, [mark(1), mark(3)], 3)).toThrow(/Migration 2 should be from version 2/);
  expect(() => migrate(events, 1, [mark(1)], 3)).toThrow(/lead to version 2, not 3/);
  expect(() => migrate(events, 4, [mark(1), mark(2)], 3)).toThrow(
    /version 4; this program reads versions 1 to 3/,
  );
});

test('an entry that another window has changed meanwhile is not written over unseen', () => {
  const tear = { kind: 'condition', finding: 'tear', places: ['3-2'] } as const;
  const { log } = new LogBuilder().note('2026-03-14T09:00:00Z', { ...tear, places: ['3-2'] });
  const correct = (was?: object) =>
    decide(
      log,
      {
        type: 'correct-entry',
        entryId: 'n1.0',
        entry: { kind: 'condition', finding: 'hole', places: ['3-2'] },
        ...(was ? { was } : {}),
      } as Command,
      given,
    );
  expect(correct()).toHaveProperty('events');
  // The order in which the slots are written says nothing.
  expect(correct({ places: ['3-2'], finding: 'tear', kind: 'condition' })).toHaveProperty('events');
  expect(correct({ kind: 'condition', finding: 'tear', places: ['3-3'] })).toMatchObject({
    field: 'was',
    refused: expect.stringContaining('another window'),
  });
});
