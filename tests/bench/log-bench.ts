import { mkdtemp, open, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { hoursFromLog } from '../../core/hours/hours.ts';
import { evolve, fold } from '../../core/log/evolve.ts';
import { Log } from '../../core/log/log.ts';
import { runCommand } from '../../server/run-command.ts';
import { nodeFileSystem } from '../../server/store/file-system.ts';
import { Library } from '../../server/store/library.ts';
import type { LogEvent } from '../../shared/event.ts';
import { QuiltDetails } from '../../shared/quilt.ts';

export type Measured = { name: string; value: string; target: string };

/** The log (processor time) and the notes on the disk (time on the clock): cost of an event by the length of the log, of a note on the disk, of the start and of the hours. */
export async function benchLog(): Promise<Measured[]> {
  const perEvent = new Map<number, number>();
  for (const entries of [1_000, 10_000, 100_000]) {
    const log = logOf(entries);
    perEvent.set(entries, timeEvents(log, 2_000));
  }
  const us = (ms: number): string => `${(ms * 1000).toFixed(1)} µs`;
  const measured: Measured[] = [...perEvent].map(([entries, ms]) => ({
    name: `an event into a log of ${entries.toLocaleString('en')} entries`,
    value: us(ms),
    target: 'does not grow',
  }));
  measured.push({
    name: 'the same, 100 k beside 1 k',
    value: `${(perEvent.get(100_000)! / perEvent.get(1_000)!).toFixed(2)} ×`,
    target: '≤ 2 ×',
  });
  const log = logOf(20_000);
  const events = log.eventsSince(0);
  measured.push(
    {
      name: 'folding a log of 20,000 entries',
      value: `${timed(() => fold(events)).toFixed(0)} ms`,
      target: '≤ 2 s (start)',
    },
    {
      name: 'its list of entries',
      value: `${timed(() => fold(events.slice(0, 0)) && evolve(log, events[1]!).entries.length).toFixed(0)} ms`,
      target: '',
    },
    {
      name: 'its hours',
      value: `${timed(() => hoursFromLog(log, { idleMin: 30 })).toFixed(0)} ms`,
      target: '',
    },
  );
  for (const entries of [1_000, 10_000, 100_000]) measured.push(...(await benchNotes(entries)));
  return measured;
}

/** A note from the command to the disk, with the fsync of this machine beside it. */
async function benchNotes(entries: number): Promise<Measured[]> {
  const folder = await mkdtemp(join(tmpdir(), 'quiltside-bench-'));
  try {
    const library = await Library.open(folder, nodeFileSystem);
    const store = await library.makeQuilt(QuiltDetails.parse({ name: 'Bench', rows: 7, blocks: 5 }));
    const events = logOf(entries)
      .eventsSince(1)
      .map(({ event }) => event);
    for (let i = 0; i < events.length; i += 5_000)
      await store.commit(() => ({ events: events.slice(i, i + 5_000) }));
    const times: number[] = [];
    const before = process.cpuUsage();
    for (let i = 0; i < 150; i++) {
      const began = performance.now();
      const text = `Row ${(i % 7) + 1}, block ${(i % 5) + 1} has a tear.`;
      await runCommand(
        store,
        { type: 'take-note', clientId: `bench${i}`, text },
        { now: '2026-06-01T10:00:00Z', idleMin: 30 },
      );
      times.push(performance.now() - began);
    }
    const { user, system } = process.cpuUsage(before);
    await library.close();
    const syncs = await timeSyncs(join(folder, 'probe'), 150);
    const name = `a note on the disk at ${entries.toLocaleString('en')} entries`;
    return [
      { name: `${name}, p95`, value: `${at(times, 0.95).toFixed(1)} ms`, target: '≤ 20 ms' },
      {
        name: `${name}, p50 (fsync alone ${at(syncs, 0.5).toFixed(1)} ms, p95 ${at(syncs, 0.95).toFixed(1)})`,
        value: `${at(times, 0.5).toFixed(1)} ms`,
        target: '',
      },
      {
        name: `${name}, processor time`,
        value: `${((user + system) / 1000 / times.length).toFixed(2)} ms`,
        target: 'does not grow',
      },
    ];
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

async function timeSyncs(path: string, count: number): Promise<number[]> {
  const file = await open(path, 'w');
  const times: number[] = [];
  for (let i = 0; i < count; i++) {
    const began = performance.now();
    await file.write(Buffer.alloc(600, 120), 0, 600, i * 600);
    await file.datasync();
    times.push(performance.now() - began);
  }
  await file.close();
  return times;
}

const at = (times: readonly number[], share: number): number =>
  [...times].sort((a, b) => a - b)[Math.min(times.length - 1, Math.floor(times.length * share))]!;

/** Processor time of this process, ms: what other programs do at the same time does not count. */
function processorMs(work: () => unknown): number {
  const before = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
}

const timed = (work: () => unknown): number =>
  at(
    [0, 1, 2].map(() => processorMs(work)),
    0.5,
  );

function timeEvents(log: Log, count: number): number {
  let grown = log;
  const run = (from: number): number =>
    processorMs(() => {
      for (let i = 0; i < count / 2; i++)
        for (const event of noteEvents(from + i, log.seq + i)) grown = next(grown, event);
    }) / count;
  run(1_000_000);
  return at([run(2_000_000), run(3_000_000), run(4_000_000)], 0.5);
}

const next = (log: Log, event: LogEvent): Log =>
  evolve(log, { seq: log.seq + 1, at: '2026-03-14T10:00:00Z', event });

/** Each note gives two entries, a minute after the one before. */
function logOf(entries: number): Log {
  const quilt = { ...Log.EMPTY.quilt, id: 'bench', name: 'Bench', rows: 7, blocks: 5 };
  let log = next(Log.EMPTY, { type: 'quilt-made', quilt });
  for (let i = 0; i < entries / 2; i++) for (const event of noteEvents(i, i)) log = next(log, event);
  return log;
}

function noteEvents(n: number, minute: number): LogEvent[] {
  const at = new Date(Date.parse('2026-01-05T09:00:00Z') + minute * 60_000).toISOString();
  const place = `${(n % 7) + 1}-${(n % 5) + 1}`;
  const id = `bench-note-${n}`;
  return [
    { type: 'note-taken', note: { id, at, text: `${place} has a tear, re-sewed it`, source: 'typed' } },
    {
      type: 'note-read',
      noteId: id,
      reading: {
        act: 'log',
        entries: [
          { entry: { kind: 'condition', finding: 'tear', places: [place] }, origins: {} },
          { entry: { kind: 'treatment', action: 'resew', state: 'done', places: [place] }, origins: {} },
        ],
        ask: null,
        reply: 'Noted.',
        entryIds: [`${id}.0`, `${id}.1`],
        rules: '1',
        conversation: {},
      },
    },
  ];
}
