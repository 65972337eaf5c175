import { readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import type { Decision } from '../../core/log/decide.ts';
import { nodeFileSystem } from '../../server/store/file-system.ts';
import { readLine, writeLine } from '../../server/store/journal-line.ts';
import { hashOf, listSegments, readSegments, readWholeJournal } from '../../server/store/journal-segments.ts';
import { QuiltStore, type StoreOptions } from '../../server/store/quilt-store.ts';
import { LogBuilder } from '../log/log-builder.ts';
import { picture } from '../log/picture.ts';
import { FailingFileSystem, type Fault } from './failing-file-system.ts';
import { temporaryFolder } from './temporary-folder.ts';

const quilt = new LogBuilder().log.quilt;
const set = (path: string, value: number) => (): Decision => ({
  events: [{ type: 'estimate-set', path, value }],
});
const SMALL: StoreOptions = { segmentBytes: 500, snapshotEvery: 10 };
const NO_SNAPSHOT: StoreOptions = { segmentBytes: 500, snapshotEvery: Number.POSITIVE_INFINITY };

const open = (folder: string, sizes = SMALL): Promise<QuiltStore> =>
  QuiltStore.open(nodeFileSystem, 'quilt', folder, sizes);

/** A folder with `count` figures set, one event each after the first, in several segments; closed again. */
async function made(count: number, sizes = SMALL): Promise<string> {
  const folder = await temporaryFolder();
  const store = await open(folder, sizes);
  await store.commit(() => ({ events: [{ type: 'quilt-made', quilt }] }));
  for (let i = 0; i < count; i++) await store.commit(set(`p${i}`, i));
  await store.close();
  return folder;
}

const figures = (count: number, but: readonly number[] = []): Record<string, number> =>
  Object.fromEntries(
    Array.from({ length: count }, (_, i) => [`p${i}`, i] as const).filter(([, i]) => !but.includes(i)),
  );

describe('segments', () => {
  test('a full one is closed with its hash, is never touched again, and all are read as one', async () => {
    const folder = await made(30);
    const names = await listSegments(nodeFileSystem, folder);
    expect(names.length).toBeGreaterThan(4);
    const segments = await readSegments(nodeFileSystem, folder);
    for (const [i, { from, bytes, file, head }] of segments.entries()) {
      const first = Buffer.from(bytes).toString('utf8').split('\n')[head ? 1 : 0]!;
      expect(readLine(first)?.seq).toBe(from);
      if (i > 0)
        expect(head?.closes).toEqual({
          file: names[i - 1],
          bytes: segments[i - 1]!.bytes.length,
          sha256: hashOf(segments[i - 1]!.bytes),
        });
      expect(file).toBe(names[i]);
    }
    const store = await open(folder);
    for (let i = 30; i < 40; i++) await store.commit(set(`p${i}`, i));
    await store.close();
    for (const { file, bytes } of segments.slice(0, -1))
      expect(Buffer.from(bytes).equals(await readFile(join(folder, file)))).toBe(true);
    const again = await open(folder, NO_SNAPSHOT);
    expect(again.log.estimateSettings).toEqual(figures(40));
    expect(again.damage).toEqual([]);
    expect(again.log.eventsSince(0).map(({ seq }) => seq)).toEqual(
      Array.from({ length: 41 }, (_, i) => i + 1),
    );
    await again.close();
  });

  test('the whole journal in one file, as a backup has it, opens as the same log', async () => {
    const folder = await made(30);
    const whole = await readWholeJournal(nodeFileSystem, folder);
    const other = await temporaryFolder();
    await writeFile(join(other, 'journal.jsonl'), whole);
    const [one, two] = [await open(folder), await open(other)];
    expect(picture(two.log)).toEqual(picture(one.log));
    await Promise.all([one.close(), two.close()]);
  });

  test('a damaged line of a closed one is reported by its file and left where it is; the rest is served', async () => {
    const folder = await made(30);
    const [, second] = await listSegments(nodeFileSystem, folder);
    const path = join(folder, second!);
    await writeFile(path, (await readFile(path, 'utf8')).replace('"p5"', '"p9"'));
    const damaged = await readFile(path);
    const store = await open(folder);
    expect(store.log.estimateSettings).toEqual(figures(30, [5]));
    expect(store.damage).toMatchObject([{ kind: 'line', held: expect.stringContaining('p9') }]);
    expect(store.damage[0]?.message).toContain(second);
    await store.commit(set('p30', 30));
    await store.close();
    expect((await readFile(path)).equals(damaged)).toBe(true);
  });

  test('the end of a closed one that is gone is no cut tail: what is missing is named, and what follows is served', async () => {
    const folder = await made(30);
    const [, second] = await listSegments(nodeFileSystem, folder);
    const path = join(folder, second!);
    const lines = (await readFile(path, 'utf8')).trimEnd().split('\n');
    const lost = readLine(lines.at(-1)!)!;
    await writeFile(path, `${lines.slice(0, -1).join('\n')}\n`);
    const store = await open(folder);
    expect(store.damage).toMatchObject([
      { kind: 'gap', message: expect.stringContaining(`Events ${lost.seq} to ${lost.seq}`) },
    ]);
    expect(store.log.estimateSettings).toEqual(figures(30, [lost.seq - 2]));
    await store.close();
  });

  test('a line put in place of another, with a sum of its own that is right, is told by the hash', async () => {
    const folder = await made(30);
    const [first] = await listSegments(nodeFileSystem, folder);
    const path = join(folder, first!);
    const lines = (await readFile(path, 'utf8')).split('\n');
    const old = readLine(lines[1]!)!;
    lines[1] = writeLine({ ...old, event: { type: 'estimate-set', path: 'p0', value: 7777 } }).trimEnd();
    await writeFile(path, lines.join('\n'));
    const store = await open(folder);
    expect(store.damage).toMatchObject([
      { message: expect.stringContaining('not what it was when it was closed') },
    ]);
    await store.close();
  });

  test('a file that is gone leaves a gap that is named', async () => {
    const folder = await made(30);
    const [, second, third] = await readSegments(nodeFileSystem, folder);
    await rm(join(folder, second!.file));
    const store = await open(folder);
    expect(store.damage).toMatchObject([
      { kind: 'gap', message: expect.stringContaining(`Events ${second!.from} to ${third!.from - 1}`) },
    ]);
    expect(store.log.seq).toBe(31);
    await store.close();
  });

  test('a damaged head is said and loses no event, in the middle and at the end', async () => {
    for (const which of [1, -1]) {
      const folder = await made(30);
      const path = join(folder, (await listSegments(nodeFileSystem, folder)).at(which)!);
      await writeFile(path, (await readFile(path, 'utf8')).replace('"sha256":"', '"sha255":"'));
      const store = await open(folder);
      expect(store.log.estimateSettings).toEqual(figures(30));
      expect(store.damage.map(({ message }) => message).join()).toMatch(
        /The head of journal-\d+\.jsonl is damaged/,
      );
      await store.commit(set('after', 1));
      await store.close();
      const again = await open(folder);
      expect(again.log.estimateSettings).toEqual({ ...figures(30), after: 1 });
      await again.close();
    }
  });
});

describe.each<[string, Fault]>([
  ['no room for the new file', { code: 'ENOSPC', at: 'write', partial: true }],
  ['no name for it', { code: 'ENOSPC', at: 'open' }],
  ['its fsync fails', { code: 'EIO', at: 'sync' }],
  ['it can not be renamed', { code: 'EIO', at: 'rename' }],
])('when a segment is full and %s', (_, fault) => {
  test('it is said, nothing acknowledged is lost, and it goes on, also after a restart', async () => {
    const fs = new FailingFileSystem(nodeFileSystem);
    const folder = await temporaryFolder();
    const store = await QuiltStore.open(fs, 'quilt', folder, NO_SNAPSHOT);
    let kept = 0;
    for (let i = 0; i < 40; i++) {
      fs.fault = fault;
      const refused = await store.commit(set(`lost${i}`, i)).then(
        () => 'kept',
        (error: Error) => error.message,
      );
      // An open segment takes it where only a new file would not be given.
      if (refused === 'kept') kept++;
      else expect(refused).toMatch(/could not be written to the journal.*acknowledged before is safe/);
      fs.fault = undefined;
      await store.commit(set(`p${i}`, i));
      if (i % 10 !== 9) continue;
      const again = await open(folder, NO_SNAPSHOT);
      expect(again.damage).toEqual([]);
      expect(again.log.seq).toBe(i + 1 + kept);
      await again.close();
    }
    await store.close();
    expect((await listSegments(nodeFileSystem, folder)).length).toBeGreaterThan(4);
  });
});

describe('the snapshot', () => {
  const SNAPSHOT = 'snapshot.jsonl';
  const isUsed = (store: QuiltStore): boolean => store.log.parts.events.older !== undefined;

  test('a log opened from it is the log folded from nothing, and goes on as that would', async () => {
    const folder = await made(47);
    const store = await open(folder);
    expect(isUsed(store)).toBe(true);
    const plain = await made(47, NO_SNAPSHOT);
    const other = await open(plain, NO_SNAPSHOT);
    expect(isUsed(other)).toBe(false);
    for (const one of [store, other]) {
      await one.commit(set('p3', 300));
      // Taken back: one change from before the snapshot, and one from after it.
      await one.commit(() => ({ events: [{ type: 'change-undone', seq: 10 }] }));
      await one.commit(() => ({ events: [{ type: 'change-undone', seq: one.log.seq - 1 }] }));
    }
    const now = (log: typeof store.log) => ({
      ...picture(log),
      events: log.eventsSince(0).map(({ event }) => event),
    });
    expect(now(store.log)).toEqual(now(other.log));
    expect(store.log.eventAt(5)?.event).toEqual(other.log.eventAt(5)?.event);
    expect(store.log.eventsSince(3, 4).map(({ seq }) => seq)).toEqual([4, 5, 6, 7]);
    await Promise.all([store.close(), other.close()]);
    const again = await open(folder);
    expect(now(again.log)).toEqual(now(other.log));
    await again.close();
  });

  const spoil: [string, (folder: string) => Promise<void>][] = [
    ['deleted', (folder) => rm(join(folder, SNAPSHOT))],
    ['empty', (folder) => writeFile(join(folder, SNAPSHOT), '')],
    [
      'cut short',
      async (folder) => {
        const bytes = await readFile(join(folder, SNAPSHOT));
        await writeFile(join(folder, SNAPSHOT), bytes.subarray(0, bytes.length - 100));
      },
    ],
    [
      'of another log',
      async (folder) => writeFile(join(folder, SNAPSHOT), await readFile(join(await made(60), SNAPSHOT))),
    ],
    [
      'made by other code',
      async (folder) => {
        const lines = (await readFile(join(folder, SNAPSHOT), 'utf8')).split('\n');
        lines[0] = lines[0]!.replace(/"fold":"\w{4}/, '"fold":"0000');
        const body = `${lines.slice(0, -1).join('\n')}\n`;
        await writeFile(
          join(folder, SNAPSHOT),
          `${body}${JSON.stringify({ sha256: hashOf(Buffer.from(body)) })}`,
        );
      },
    ],
    [
      'right, but the journal before it is damaged',
      async (folder) => {
        const path = join(folder, 'journal.jsonl');
        const text = await readFile(path, 'utf8');
        await writeFile(path, text.replace('"p1"', '"p8"'));
      },
    ],
  ];
  test.each(spoil)('%s: it is thrown away, and the log is the same', async (why, change) => {
    const folder = await made(47);
    await change(folder);
    const store = await open(folder);
    expect(isUsed(store)).toBe(false);
    expect(store.log.estimateSettings).toEqual(figures(47, why.includes('damaged') ? [1] : []));
    expect(store.damage.length).toBe(why.includes('damaged') ? 1 : 0);
    await store.close();
  });

  test('any byte of it changed: never a wrong log', async () => {
    const folder = await made(47);
    const whole = await readFile(join(folder, SNAPSHOT));
    const right = await open(folder);
    await right.close();
    for (let at = 0; at < whole.length; at += Math.ceil(whole.length / 150)) {
      const damaged = Buffer.from(whole);
      damaged[at]! ^= 1 << (at % 8);
      await writeFile(join(folder, SNAPSHOT), damaged);
      const store = await open(folder, NO_SNAPSHOT);
      expect(picture(store.log), `byte ${at}`).toEqual(picture(right.log));
      await store.close();
    }
  });

  test('a full disk loses it and nothing else', async () => {
    const fs = new FailingFileSystem(nodeFileSystem);
    const folder = await temporaryFolder();
    const store = await QuiltStore.open(fs, 'quilt', folder, { snapshotEvery: 3 });
    fs.fault = { code: 'ENOSPC', at: 'open' };
    for (let i = 0; i < 20; i++) await store.commit(set(`p${i}`, i));
    await store.close();
    expect(await readdir(folder)).toEqual(['format.json', 'journal.jsonl']);
    const again = await open(folder);
    expect(again.log.estimateSettings).toEqual(figures(20));
    await again.close();
  });
});
