import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import type { Decision } from '../../core/log/decide.ts';
import { DiskTrouble } from '../../server/store/disk-trouble.ts';
import { nodeFileSystem } from '../../server/store/file-system.ts';
import { QuiltStore } from '../../server/store/quilt-store.ts';
import { LogBuilder } from '../log/log-builder.ts';
import { picture } from '../log/picture.ts';
import { FailingFileSystem, type Fault } from './failing-file-system.ts';
import { temporaryFolder } from './temporary-folder.ts';

const quilt = new LogBuilder().log.quilt;
const made = (): Decision => ({ events: [{ type: 'quilt-made', quilt }] });
const set = (path: string, value: number) => (): Decision => ({
  events: [{ type: 'estimate-set', path, value }],
});

async function openStore(): Promise<{ store: QuiltStore; fs: FailingFileSystem; folder: string }> {
  const folder = await temporaryFolder();
  const fs = new FailingFileSystem(nodeFileSystem);
  const store = await QuiltStore.open(fs, 'quilt', folder);
  await store.commit(made);
  return { store, fs, folder };
}

async function reopened(folder: string): Promise<QuiltStore> {
  return QuiltStore.open(nodeFileSystem, 'quilt', folder);
}

test('the log served is the log folded again from the disk', async () => {
  const { store, folder } = await openStore();
  await Promise.all(Array.from({ length: 200 }, (_, i) => store.commit(set(`p${i % 7}`, i))));
  const again = await reopened(folder);
  expect(picture(again.log)).toEqual(picture(store.log));
  await again.close();
  await store.close();
});

test('listeners get events in order, once each, and only after they are on the disk', async () => {
  const { store, folder } = await openStore();
  const seen: number[] = [];
  store.subscribe((events) => seen.push(...events.map(({ seq }) => seq)));
  await Promise.all(Array.from({ length: 50 }, (_, i) => store.commit(set('p', i))));
  expect(seen).toEqual(Array.from({ length: 50 }, (_, i) => i + 2));
  expect((await readFile(join(folder, 'journal.jsonl'), 'utf8')).trim().split('\n')).toHaveLength(51);
  await store.close();
});

describe.each<[string, Fault, RegExp]>([
  ['a full disk that takes half a line', { code: 'ENOSPC', at: 'write', partial: true }, /The disk is full/],
  ['a full disk', { code: 'ENOSPC', at: 'write' }, /Make room/],
  ['an error of the disk', { code: 'EIO', at: 'write', partial: true }, /answered with an error \(EIO\)/],
  ['an fsync that fails', { code: 'EIO', at: 'sync' }, /answered with an error \(EIO\)/],
  ['a folder gone read-only', { code: 'EROFS', at: 'write' }, /may not be written to/],
])('%s', (_, fault, words) => {
  test('one clear message; nothing acknowledged is lost; it goes on when there is room', async () => {
    const { store, fs, folder } = await openStore();
    await store.commit(set('kept', 1));
    fs.fault = fault;
    const refused = await Promise.allSettled([store.commit(set('lost', 1)), store.commit(set('lost', 2))]);
    for (const one of refused) {
      expect(one.status).toBe('rejected');
      const { reason } = one as PromiseRejectedResult;
      expect(reason).toBeInstanceOf(DiskTrouble);
      expect(reason.message).toMatch(words);
      expect(reason.message).toMatch(/everything acknowledged before is safe/);
    }
    expect(store.log.estimateSettings).toEqual({ kept: 1 });
    fs.fault = undefined;
    await store.commit(set('after', 1));
    expect(store.log.estimateSettings).toEqual({ kept: 1, after: 1 });
    await store.close();
    const again = await reopened(folder);
    expect(again.log.estimateSettings).toEqual({ kept: 1, after: 1 });
    expect(again.damage).toEqual([]);
    await again.close();
  });
});

test('what waited behind a failed write is refused too: it was decided on top of it', async () => {
  const { store, fs } = await openStore();
  fs.fault = { code: 'ENOSPC', at: 'write' };
  const first = store.commit(set('a', 1)).catch(() => 'refused');
  await Promise.resolve();
  await Promise.resolve();
  const second = store.commit(set('b', 1)).catch(() => 'refused');
  expect(await Promise.all([first, second])).toEqual(['refused', 'refused']);
  expect(store.log.seq).toBe(1);
  fs.fault = undefined;
  await store.commit(set('c', 1));
  expect(store.log.seq).toBe(2);
  await store.close();
});

test('a damaged line in the middle: the numbers stay unbroken for the page, and what was lost is named', async () => {
  const { store, folder } = await openStore();
  for (let i = 0; i < 5; i++) await store.commit(set(`p${i}`, i));
  await store.close();
  const path = join(folder, 'journal.jsonl');
  await writeFile(path, (await readFile(path, 'utf8')).replace('"p2"', '"p9"'));
  const again = await reopened(folder);
  expect(again.log.estimateSettings).toEqual({ p0: 0, p1: 1, p3: 3, p4: 4 });
  expect(again.log.eventsSince(0).map(({ seq }) => seq)).toEqual([1, 2, 3, 4, 5, 6]);
  expect(again.damage).toMatchObject([{ kind: 'line', held: expect.stringContaining('p9') }]);
  await again.close();
});

test("a newer version's folder is refused and not touched", async () => {
  const folder = await temporaryFolder();
  await mkdir(folder, { recursive: true });
  await writeFile(join(folder, 'format.json'), '{"quiltside":99}');
  await writeFile(join(folder, 'journal.jsonl'), 'from the future');
  await expect(reopened(folder)).rejects.toThrow(/newer Quiltside \(version 99/);
  expect(await readFile(join(folder, 'journal.jsonl'), 'utf8')).toBe('from the future');
});
