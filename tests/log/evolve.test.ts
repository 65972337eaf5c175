import { describe, expect, test } from 'vitest';
import { fold } from '../../core/log/evolve.ts';
import { Log } from '../../core/log/log.ts';
import type { Entry } from '../../shared/entry.ts';
import type { LogEvent } from '../../shared/event.ts';
import { LogBuilder } from './log-builder.ts';
import { picture } from './picture.ts';

const AT = (minute: number): string => `2026-03-14T10:${String(minute).padStart(2, '0')}:00Z`;
const torn = (place: string): Entry => ({ kind: 'condition', finding: 'tear', places: [place] });
const ids = (built: LogBuilder): string[] => built.log.entries.map((entry) => entry.id);

describe('what takes back what', () => {
  test('undo takes back the last note that logged something, past questions and talk aside', () => {
    const built = new LogBuilder()
      .note(AT(0), torn('1-1'))
      .note(AT(1), torn('1-2'))
      .say(AT(2), 'query')
      .say(AT(3), 'aside')
      .say(AT(4), 'undo');
    expect(ids(built)).toEqual(['n1.0']);
    expect(built.log.note('n2')).toMatchObject({ replacedBy: 'n5', entryIds: [] });
    built.say(AT(5), 'undo');
    expect(ids(built)).toEqual([]);
    built.say(AT(6), 'undo');
    expect(ids(built)).toEqual([]);
    expect(built.log.notes).toHaveLength(7);
  });

  test('amend replaces it; undoing the amendment brings it back; undoing again takes it back too', () => {
    const built = new LogBuilder().note(AT(0), torn('1-1')).say(AT(1), 'amend', [torn('6-2')]);
    expect(ids(built)).toEqual(['n2.0']);
    built.say(AT(2), 'undo');
    expect(ids(built)).toEqual(['n1.0']);
    built.say(AT(3), 'undo');
    expect(ids(built)).toEqual([]);
  });

  test('a recording has a talk of its own: an undo in it leaves what is said live alone', () => {
    const built = new LogBuilder()
      .say('2026-03-13T20:00:00Z', 'log', [torn('1-1')], 'rec')
      .note(AT(0), torn('2-2'))
      .say('2026-03-13T20:01:00Z', 'undo', [], 'rec');
    expect(ids(built)).toEqual(['n2.0']);
    expect(built.log.conversation).toEqual({ last: 'n2' });
    expect(built.log.conversationOf('rec')).toEqual({ last: 'n3' });
  });

  test('confirmed entries stay when their note is taken back', () => {
    const built = new LogBuilder()
      .note(AT(0), torn('1-1'), torn('1-2'))
      .happen({ type: 'entries-confirmed', entryIds: ['n1.1'] })
      .say(AT(1), 'undo');
    expect(ids(built)).toEqual(['n1.1']);
  });
});

test('a recording dropped in later takes its true place among the entries', () => {
  const built = new LogBuilder()
    .note(AT(0), torn('2-2'))
    .say('2026-03-13T20:00:00Z', 'log', [torn('1-1')], 'rec')
    .note(AT(1), torn('3-3'));
  expect(ids(built)).toEqual(['n2.0', 'n1.0', 'n3.0']);
  expect(built.log.notes.map((logged) => logged.note.id)).toEqual(['n2', 'n1', 'n3']);
});

describe('reading anew', () => {
  const reread = (built: LogBuilder, noteId: string, entries: Entry[]): LogBuilder =>
    built.happen({
      type: 'notes-reread',
      readings: [
        {
          noteId,
          reading: {
            act: 'log',
            entries: entries.map((entry) => ({ entry, origins: {} })),
            ask: null,
            reply: '',
            entryIds: entries.map((_, i) => `${noteId}.again${i}`),
            rules: '2',
            conversation: {},
          },
        },
      ],
    });

  test('replaces what was not touched', () => {
    const built = new LogBuilder().note(AT(0), torn('1-1')).note(AT(1), torn('1-2'));
    expect(ids(reread(built, 'n1', [torn('5-5'), torn('4-4')]))).toEqual(['n1.again0', 'n1.again1', 'n2.0']);
  });

  test.each<[string, LogEvent]>([
    ['confirmed', { type: 'entries-confirmed', entryIds: ['n1.0'] }],
    ['corrected', { type: 'entry-corrected', entryId: 'n1.0', entry: torn('7-1') }],
    ['removed', { type: 'entry-removed', entryId: 'n1.1' }],
    ['refiled', { type: 'note-refiled', noteId: 'n1', as: 'aside' }],
  ])('leaves a note alone of which something was %s by hand', (_, event) => {
    const built = new LogBuilder().note(AT(0), torn('1-1'), torn('1-2')).happen(event);
    const before = built.log.entries;
    expect(reread(built, 'n1', [torn('5-5')]).log.entries).toEqual(before);
  });

  test('a note that was taken back stays taken back', () => {
    const built = new LogBuilder().note(AT(0), torn('1-1')).say(AT(1), 'undo');
    expect(ids(reread(built, 'n1', [torn('5-5')]))).toEqual([]);
  });

  test('an undo that proves to be a note lets go of what it had taken back', () => {
    const built = new LogBuilder().note(AT(0), torn('1-1')).say(AT(1), 'undo');
    expect(ids(reread(built, 'n2', [torn('2-2')]))).toEqual(['n1.0', 'n2.again0']);
  });
});

describe('changes undone', () => {
  test('as if it had not been, and back again when the undoing is undone', () => {
    const built = new LogBuilder()
      .note(AT(0), torn('1-1'))
      .happen({ type: 'entry-corrected', entryId: 'n1.0', entry: torn('7-1') })
      .happen({ type: 'entry-removed', entryId: 'n1.0' });
    const removal = built.log.seq;
    built.happen({ type: 'change-undone', seq: removal });
    expect(built.log.entries[0]?.entry).toEqual(torn('7-1'));
    built.happen({ type: 'change-undone', seq: removal - 1 });
    expect(built.log.entries[0]).toMatchObject({ entry: torn('1-1'), byHand: false });
    built.happen({ type: 'change-undone', seq: built.log.seq });
    expect(built.log.entries[0]?.entry).toEqual(torn('7-1'));
  });

  test('across many checkpoints the incremental log is the one folded from nothing', () => {
    const built = new LogBuilder();
    for (let i = 0; i < 700; i++) built.happen({ type: 'estimate-set', path: `p${i % 50}`, value: i });
    for (const seq of [3, 256, 257, 700]) {
      built.happen({ type: 'change-undone', seq });
      expect(picture(built.log)).toEqual(picture(fold(built.events)));
    }
    built.happen({ type: 'change-undone', seq: 702 });
    expect(picture(built.log)).toEqual(picture(fold(built.events)));
  });
});

test('a log once given is never changed by what follows', () => {
  const built = new LogBuilder().note(AT(0), torn('1-1'));
  const early = built.log;
  const before = structuredClone(picture(early));
  built.note(AT(1), torn('1-2')).say(AT(2), 'undo').happen({ type: 'entry-removed', entryId: 'n1.0' });
  expect(picture(early)).toEqual(before);
  expect(picture(Log.EMPTY).notes).toEqual([]);
});

test('numbers that a damaged journal lost leave no gap in what is asked for', () => {
  const { events } = new LogBuilder().note(AT(0), torn('1-1')).note(AT(1), torn('1-2'));
  const log = fold(events.filter(({ seq }) => seq !== 3));
  expect(log.eventsSince(2).map(({ seq }) => seq)).toEqual([4, 5]);
  expect(log.eventAt(3)).toBeUndefined();
  expect(log.eventAt(4)?.seq).toBe(4);
});
