import { cp, readdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { MIGRATIONS, type Migration } from '../../core/log/migrations.ts';
import { NewerFormat } from '../../server/store/check-format.ts';
import { nodeFileSystem } from '../../server/store/file-system.ts';
import { listSegments } from '../../server/store/journal-segments.ts';
import { QuiltStore } from '../../server/store/quilt-store.ts';
import { temporaryFolder } from './temporary-folder.ts';

// Written once at version 1 and never again: it stands for the folders that are out there.
const VERSION_1 = fileURLToPath(new URL('../fixtures/version-1', import.meta.url));

async function folderOfVersion1(): Promise<string> {
  const folder = await temporaryFolder();
  await cp(VERSION_1, folder, { recursive: true });
  return folder;
}

/** A change as a later version might bring: what was "Blue star" is called otherwise. Twice over it would show. */
const rename: Migration = {
  from: 2,
  why: 'a trial of this test',
  change: (numbered) =>
    numbered.event.type === 'quilt-made'
      ? {
          ...numbered,
          event: {
            ...numbered.event,
            quilt: { ...numbered.event.quilt, name: `${numbered.event.quilt.name}, again` },
          },
        }
      : numbered,
};
const LATER = { versions: { migrations: [...MIGRATIONS, rename], version: 3 } };
const bytesOf = async (folder: string): Promise<Record<string, string>> =>
  Object.fromEntries(
    await Promise.all(
      (await readdir(folder)).map(
        async (name) => [name, await readFile(join(folder, name), 'utf8')] as const,
      ),
    ),
  );

test('a folder of version 1 opens, with all that is in it', async () => {
  const store = await QuiltStore.open(nodeFileSystem, 'quilt', await folderOfVersion1());
  expect(store.damage).toEqual([]);
  expect(store.log.quilt.name).toBe('Blue star');
  expect(store.log.notes).toHaveLength(3);
  expect(store.log.entries.map(({ entry }) => entry.kind)).toEqual(['condition', 'work']);
  await store.close();
});

test('its one-file journal is kept beside as it was, and goes on in further files', async () => {
  const folder = await folderOfVersion1();
  const before = await bytesOf(folder);
  const sizes = { segmentBytes: 1_000 };
  const store = await QuiltStore.open(nodeFileSystem, 'quilt', folder, sizes);
  expect(await readFile(join(folder, 'journal.jsonl'), 'utf8')).toBe(before['journal.jsonl']);
  expect(await bytesOf(join(folder, 'before-version-2'))).toEqual(before);
  for (let value = 0; value < 12; value++)
    await store.commit(() => ({ events: [{ type: 'estimate-set', path: 'p', value }] }));
  await store.close();
  expect((await listSegments(nodeFileSystem, folder)).length).toBeGreaterThan(1);
  const again = await QuiltStore.open(nodeFileSystem, 'quilt', folder, sizes);
  expect(again.log.notes).toHaveLength(3);
  expect(again.log.estimateSettings).toEqual({ p: 11 });
  expect(again.damage).toEqual([]);
  await again.close();
});

test('a later version brings it up to date once and keeps the folder as it was beside', async () => {
  const folder = await folderOfVersion1();
  const before = await bytesOf(folder);
  for (let opening = 0; opening < 2; opening++) {
    const store = await QuiltStore.open(nodeFileSystem, 'quilt', folder, LATER);
    expect(store.log.quilt.name).toBe('Blue star, again');
    expect(store.log.notes).toHaveLength(3);
    await store.close();
  }
  expect(await bytesOf(join(folder, 'before-version-3'))).toEqual(before);
  expect(await readFile(join(folder, 'format.json'), 'utf8')).toMatch(/^\{"quiltside":3,"sum":"\w{8}"\}\n$/);
});

test('broken off between the journal and its mark, it is done again from the copy and not twice over', async () => {
  const folder = await folderOfVersion1();
  await (await QuiltStore.open(nodeFileSystem, 'quilt', folder, LATER)).close();
  await writeFile(join(folder, 'format.json'), '{"quiltside":1}\n');
  const store = await QuiltStore.open(nodeFileSystem, 'quilt', folder, LATER);
  expect(store.log.quilt.name).toBe('Blue star, again');
  await store.close();
});

test('a newer version’s folder is refused and not touched', async () => {
  const folder = await folderOfVersion1();
  await writeFile(join(folder, 'format.json'), '{"quiltside":7}\n');
  const before = await bytesOf(folder);
  await expect(QuiltStore.open(nodeFileSystem, 'quilt', folder)).rejects.toThrow(NewerFormat);
  expect(await bytesOf(folder)).toEqual(before);
});
