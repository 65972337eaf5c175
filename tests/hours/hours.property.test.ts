import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Hours, hoursFromLog } from '../../core/hours/hours.ts';
import type { Entry } from '../../shared/entry.ts';
import { TASKS } from '../../shared/vocabulary.ts';
import { LogBuilder } from '../log/log-builder.ts';

const ZONES = ['UTC', 'America/New_York', 'Europe/London', 'Australia/Lord_Howe', 'Pacific/Chatham'];
/** A week around the change of the clocks in Europe, in minutes. */
const WEEK_FROM = Date.parse('2026-03-26T00:00:00Z') / 60_000;
const minute = fc.integer({ min: 0, max: 7 * 24 * 60 });
const local = minute.map((at) => new Date((WEEK_FROM + at) * 60_000).toISOString().slice(0, 16));
const task = fc.option(fc.constantFrom(...TASKS), { nil: undefined });
const minutes = fc.option(fc.integer({ min: 1, max: 400 }), { nil: undefined });
const place = fc.array(fc.constantFrom('1-1', '2-3', 'backing'), { maxLength: 3 });

const entry: fc.Arbitrary<Entry> = fc.oneof(
  fc
    .record({ task, mark: fc.constantFrom('start' as const, 'stop' as const) })
    .map((w) => ({ kind: 'work' as const, ...w })),
  fc
    .record({ task, mark: fc.constantFrom('start' as const, 'stop' as const), time: local })
    .map((w) => ({ kind: 'work' as const, ...w })),
  fc.record({ task, start: local, end: local, minutes }).map((w) => ({ kind: 'work' as const, ...w })),
  fc
    .record({ task, minutes: fc.integer({ min: 1, max: 400 }) })
    .map((w) => ({ kind: 'work' as const, ...w })),
  fc
    .record({ places: place, minutes })
    .map((t) => ({ kind: 'treatment' as const, action: 'resew' as const, state: 'done' as const, ...t })),
  fc.record({ places: place }).map((c) => ({ kind: 'condition' as const, finding: 'tear' as const, ...c })),
  fc.constant({ kind: 'remark' as const }),
);
const notes = fc.array(fc.tuple(minute, fc.array(entry, { minLength: 1, maxLength: 3 })), { maxLength: 40 });

function build(zone: string, said: [number, Entry[]][]): LogBuilder {
  const built = new LogBuilder(zone);
  for (const [at, entries] of said) {
    built.note(new Date((WEEK_FROM + at) * 60_000).toISOString(), ...entries);
  }
  return built;
}

const sum = (tallies: readonly { minutes: number }[]): number =>
  tallies.reduce((total, tally) => total + tally.minutes, 0);

/** Length of the union, computed anew and in another way: minute by minute. */
function unionMin({ spans }: Hours): number {
  const covered = new Set<number>();
  for (const { parts } of spans) {
    for (const [from, to] of parts) for (let at = from; at < to; at++) covered.add(at);
  }
  return covered.size;
}

test('the parts of every sum add up to the length of the union', () => {
  fc.assert(
    fc.property(fc.constantFrom(...ZONES), notes, fc.integer({ min: 5, max: 120 }), (zone, said, idleMin) => {
      const hours = hoursFromLog(build(zone, said).log, { idleMin });
      expect(unionMin(hours)).toBe(hours.totalMin);
      expect(sum(hours.spans)).toBe(hours.totalMin);
      expect(sum(hours.byTask)).toBe(hours.totalMin);
      expect(sum(hours.byDay)).toBe(hours.totalMin);
      expect(sum(hours.byDay.flatMap((day) => day.byTask))).toBe(hours.totalMin);
      expect(sum(hours.byWeek)).toBe(hours.totalMin);
      expect(sum(hours.byPlace)).toBeCloseTo(hours.totalMin, 6);
    }),
    { numRuns: 300 },
  );
});

test('every stretch points to a note, and lies within its own ends', () => {
  fc.assert(
    fc.property(fc.constantFrom(...ZONES), notes, (zone, said) => {
      for (const span of hoursFromLog(build(zone, said).log, { idleMin: 30 }).spans) {
        expect(span.noteIds.length).toBeGreaterThan(0);
        for (const [from, to] of span.parts) {
          expect(from).toBeLessThan(to);
          expect(from).toBeGreaterThanOrEqual(span.startMin);
          expect(to).toBeLessThanOrEqual(span.endMin);
        }
      }
    }),
    { numRuns: 200 },
  );
});
