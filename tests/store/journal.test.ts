import { mkdir, readdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { nodeFileSystem } from '../../server/store/file-system.ts';
import { Journal, readJournal } from '../../server/store/journal.ts';
import { readLine, writeLine } from '../../server/store/journal-line.ts';
import type { NumberedEvent } from '../../shared/event.ts';
import { temporaryFolder } from './temporary-folder.ts';

const event = (seq: number, text = `note ${seq}`): NumberedEvent => ({
  seq,
  at: '2026-03-14T10:00:00.000Z',
  event: { type: 'note-taken', note: { id: `n${seq}`, at: '2026-03-14T10:00:00Z', text, source: 'typed' } },
});
const bytesOf = (count: number): Buffer =>
  Buffer.from(Array.from({ length: count }, (_, i) => writeLine(event(i + 1))).join(''));
const seqs = (events: readonly NumberedEvent[]): number[] => events.map(({ seq }) => seq);

test('the sum of a line is CRC-32 as in ISO 3309: its published check value', () => {
  // "123456789" gives CBF43926 (Koopman and others; the check value of CRC-32/ISO-HDLC).
  const body = '123456789';
  expect(readLine(`${body},"sum":"cbf43926"}`)).toBeUndefined();
  expect(writeLine(event(1))).toMatch(/,"sum":"[0-9a-f]{8}"\}\n$/);
});

test('a line says what was written, whatever was said in it', () => {
  for (const text of ['', '"}', ',"sum":"00000000"}', '\u2028 \u0000 \ud83e\uddf5', 'x'.repeat(100_000)]) {
    const line = writeLine(event(1, text));
    expect(line.indexOf('\n')).toBe(line.length - 1);
    expect(readLine(line.slice(0, -1))).toEqual(event(1, text));
  }
});

test('what was appended is read again', async () => {
  const folder = await temporaryFolder();
  const first = await Journal.open(nodeFileSystem, folder);
  await Promise.all([1, 2, 3, 4, 5].map((seq) => first.journal.append([event(seq)])));
  await first.journal.close();
  const { events, damage, journal } = await Journal.open(nodeFileSystem, folder);
  expect(seqs(events)).toEqual([1, 2, 3, 4, 5]);
  expect(damage).toEqual([]);
  await journal.close();
});

describe('damage', () => {
  test('cut off at every length: opens, keeps the cut line, and goes on where it was', async () => {
    const whole = bytesOf(3);
    const ends = [0, 1, 2, 3].map((lines) => bytesOf(lines).length);
    for (let length = 0; length <= whole.length; length++) {
      const { events, damage, cutOff, end } = readJournal(whole.subarray(0, length));
      // A line that is whole but for its line feed counts.
      const expected = ends.filter((at) => at > 0 && at - 1 <= length).length;
      expect(events, `at ${length}`).toEqual([1, 2, 3].slice(0, expected).map((seq) => event(seq)));
      expect(cutOff.length + end).toBe(length);
      expect(damage.length).toBe(cutOff.length > 0 ? 1 : 0);
    }
  });

  test('a cut tail is set aside in a file, reported, and written over', async () => {
    const folder = await temporaryFolder();
    const whole = bytesOf(3);
    await writeFile(join(folder, 'journal.jsonl'), whole.subarray(0, whole.length - 20));
    const { journal, events, damage } = await Journal.open(nodeFileSystem, folder);
    expect(seqs(events)).toEqual([1, 2]);
    expect(damage).toMatchObject([{ kind: 'tail', keptIn: 'tail-1.txt' }]);
    expect(damage[0]?.held).toContain('note 3');
    expect((await readFile(join(folder, 'damaged', 'tail-1.txt'), 'utf8')).includes('note 3')).toBe(true);
    await journal.append([event(3, 'said again')]);
    await journal.close();
    const again = await Journal.open(nodeFileSystem, folder);
    expect(again.events[2]).toEqual(event(3, 'said again'));
    expect(again.damage).toEqual([]);
    await again.journal.close();
  });

  test('every single bit of a line turned over is found, and the other lines are served', () => {
    const lines = bytesOf(3);
    const from = bytesOf(1).length;
    const to = bytesOf(2).length;
    for (let at = from; at < to; at++) {
      for (let bit = 0; bit < 8; bit++) {
        const damaged = Buffer.from(lines);
        damaged[at]! ^= 1 << bit;
        const { events, damage } = readJournal(damaged);
        for (const read of events) expect(read).toEqual(event(read.seq));
        expect(seqs(events)).toContain(1);
        expect(damage.length, `byte ${at} bit ${bit}`).toBeGreaterThan(0);
      }
    }
  });

  test('damage in the middle is reported with what it held, and numbers that are missing too', () => {
    const lines = [1, 2, 3, 6].map((seq) => writeLine(event(seq)));
    lines[1] = lines[1]!.replace('note 2', 'note 7');
    const { events, damage, cutOff } = readJournal(Buffer.from(lines.join('')));
    expect(seqs(events)).toEqual([1, 3, 6]);
    expect(cutOff.length).toBe(0);
    expect(damage).toMatchObject([
      {
        kind: 'line',
        message: expect.stringContaining('events 2 to 2'),
        held: expect.stringContaining('note 7'),
      },
      { kind: 'gap', message: expect.stringContaining('Events 4 to 5') },
    ]);
  });

  test('a line that stands twice counts once', () => {
    const { events, damage } = readJournal(
      Buffer.concat([bytesOf(2), Buffer.from(writeLine(event(2))), Buffer.from(writeLine(event(3)))]),
    );
    expect(seqs(events)).toEqual([1, 2, 3]);
    expect(damage).toMatchObject([{ kind: 'line' }]);
  });

  test('a file of something else altogether opens as an empty journal and is kept', async () => {
    const folder = await temporaryFolder();
    await mkdir(folder, { recursive: true });
    await writeFile(join(folder, 'journal.jsonl'), Buffer.from('not a journal\n\x00\xff\nat all'));
    const { events, damage, journal } = await Journal.open(nodeFileSystem, folder);
    expect(events).toEqual([]);
    expect(damage.length).toBe(3);
    expect(await readdir(join(folder, 'damaged'))).toEqual(['tail-1.txt']);
    await journal.close();
  });
});
