import { readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { Low } from 'lowdb';
import { describe, expect, test } from 'vitest';
import { nodeFileSystem } from '../../server/store/file-system.ts';
import { Library } from '../../server/store/library.ts';
import { SafeJsonFile } from '../../server/store/safe-json-file.ts';
import { QuiltDetails } from '../../shared/quilt.ts';
import { FailingFileSystem } from './failing-file-system.ts';
import { temporaryFolder } from './temporary-folder.ts';

const details = (name: string): QuiltDetails => QuiltDetails.parse({ name, rows: 3, blocks: 4 });

describe('the adapter under lowdb', () => {
  test('keeps what was written, with the last good copy beside it, under NODE_ENV=test as well', async () => {
    expect(process.env.NODE_ENV).toBe('test');
    const path = join(await temporaryFolder(), 'settings.json');
    const db = new Low(new SafeJsonFile<{ n: number }>(nodeFileSystem, path), { n: 0 });
    await Promise.all(
      [1, 2, 3].map((n) => {
        db.data = { n };
        return db.write();
      }),
    );
    expect(JSON.parse(await readFile(path, 'utf8'))).toEqual({ n: 3 });
    expect(JSON.parse(await readFile(`${path}.previous`, 'utf8'))).toEqual({ n: 2 });
  });

  test('a damaged file gives the last good copy, and is kept', async () => {
    const path = join(await temporaryFolder(), 'settings.json');
    const file = new SafeJsonFile<{ n: number }>(nodeFileSystem, path);
    await file.write({ n: 1 });
    await file.write({ n: 2 });
    await writeFile(path, '{"n": 3');
    expect(await file.read()).toEqual({ n: 1 });
    expect(await readFile(`${path}.damaged`, 'utf8')).toBe('{"n": 3');
  });

  test('a write that fails leaves the old content whole', async () => {
    const path = join(await temporaryFolder(), 'settings.json');
    const fs = new FailingFileSystem(nodeFileSystem);
    const file = new SafeJsonFile<{ n: number }>(fs, path);
    await file.write({ n: 1 });
    for (const at of ['open', 'write', 'sync', 'rename'] as const) {
      fs.fault = { code: 'ENOSPC', at, partial: true };
      await expect(file.write({ n: 2 })).rejects.toThrow(/The disk is full/);
    }
    fs.fault = undefined;
    expect(await file.read()).toEqual({ n: 1 });
    await file.write({ n: 3 });
    expect(await file.read()).toEqual({ n: 3 });
  });
});

test('quilts are listed again after a restart, the one worked on last first', async () => {
  const folder = await temporaryFolder();
  const library = await Library.open(folder, nodeFileSystem);
  const first = await library.makeQuilt(details('first'));
  await new Promise((done) => setTimeout(done, 5));
  await library.makeQuilt(details('second'));
  await new Promise((done) => setTimeout(done, 5));
  await first.commit(() => ({ events: [{ type: 'estimate-set', path: 'p', value: 1 }] }));
  await library.close();
  const again = await Library.open(folder, nodeFileSystem);
  expect(again.list().map((card) => card.name)).toEqual(['first', 'second']);
  await again.close();
});

test('the index is made again from the folders where it is gone or damaged', async () => {
  const folder = await temporaryFolder();
  const library = await Library.open(folder, nodeFileSystem);
  const { id } = await library.makeQuilt(details('kept'));
  await library.close();
  for (const name of ['quilts.json', 'quilts.json.previous']) await rm(join(folder, name), { force: true });
  await writeFile(join(folder, 'quilts.json'), 'rubbish');
  const again = await Library.open(folder, nodeFileSystem);
  // One that is asked for by name waits for the index by itself.
  expect((await again.quilt(id)).log.quilt.name).toBe('kept');
  expect(again.list()).toMatchObject([{ id, name: 'kept', rows: 3, blocks: 4 }]);
  await again.close();
});

test('settings that make no sense are said, and the usual ones are in use', async () => {
  const folder = await temporaryFolder();
  await writeFile(join(folder, 'settings.json'), '{"endPauseMs":"long"}');
  const library = await Library.open(folder, nodeFileSystem);
  expect(library.settings.data.endPauseMs).toBe(600);
  expect(library.troubles[0]).toMatch(/settings could not be read/);
  await library.close();
});

test('a quilt put away lies in the trash with all it had, and is not listed', async () => {
  const folder = await temporaryFolder();
  const library = await Library.open(folder, nodeFileSystem);
  const store = await library.makeQuilt(details('away'));
  await library.discardQuilt(store.id);
  expect(library.list()).toEqual([]);
  await expect(library.quilt(store.id)).rejects.toThrow(/no quilt/);
  const [name] = await readdir(join(folder, 'trash'));
  expect(await readdir(join(folder, 'trash', name!))).toContain('journal.jsonl');
  await library.close();
});

test.each(['../../etc', '', 'a/b', '__proto__', 'x'.repeat(500)])('there is no quilt %j', async (id) => {
  const library = await Library.open(await temporaryFolder(), nodeFileSystem);
  await expect(library.quilt(id)).rejects.toThrow(/no quilt/);
  await library.close();
});
