import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { readdir, readFile, utimes, writeFile } from 'node:fs/promises';
import { hostname } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { FolderInUse, lockFolder } from '../../server/store/folder-lock.ts';
import { temporaryFolder } from './temporary-folder.ts';

test('a second taker is told who holds it; given free, it can be taken again', async () => {
  const folder = await temporaryFolder();
  const free = await lockFolder(folder);
  await expect(lockFolder(folder)).rejects.toThrow(FolderInUse);
  await expect(lockFolder(folder)).rejects.toThrow(new RegExp(`process ${process.pid}.*QUILTSIDE_DATA`));
  await free();
  expect(await readdir(folder)).toEqual([]);
  await (await lockFolder(folder))();
});

test('of many that start at once one gets it', async () => {
  const folder = await temporaryFolder();
  const tries = await Promise.allSettled(Array.from({ length: 20 }, () => lockFolder(folder)));
  const won = tries.filter((one) => one.status === 'fulfilled');
  expect(won).toHaveLength(1);
  expect((await readdir(folder)).filter((name) => name !== 'lock')).toEqual([]);
  await (won[0] as PromiseFulfilledResult<() => Promise<void>>).value();
});

test('a lock left by a process that is gone is taken over', async () => {
  const folder = await temporaryFolder();
  const child = spawn(process.execPath, ['-e', '']);
  await once(child, 'exit');
  await writeFile(
    join(folder, 'lock'),
    JSON.stringify({ pid: child.pid, startedAt: '', host: hostname(), birth: '', token: 'gone' }),
  );
  const free = await lockFolder(folder);
  expect(JSON.parse(await readFile(join(folder, 'lock'), 'utf8')).pid).toBe(process.pid);
  await free();
});

test.skipIf(process.platform !== 'linux')(
  'a number that now belongs to another process is no holder',
  async () => {
    const folder = await temporaryFolder();
    await writeFile(
      join(folder, 'lock'),
      JSON.stringify({
        pid: process.pid,
        startedAt: '',
        host: hostname(),
        birth: 'another boot:1',
        token: 'gone',
      }),
    );
    await (await lockFolder(folder))();
  },
);

test("another machine's lock holds while its heart beats", async () => {
  const folder = await temporaryFolder();
  const path = join(folder, 'lock');
  await writeFile(
    path,
    JSON.stringify({ pid: 1, startedAt: '', host: 'elsewhere', birth: '', token: 'far' }),
  );
  await expect(lockFolder(folder)).rejects.toThrow(/on elsewhere/);
  const long = new Date(Date.now() - 60_000);
  await utimes(path, long, long);
  await (await lockFolder(folder))();
});

test('a lock that is no lock is taken over', async () => {
  const folder = await temporaryFolder();
  await writeFile(join(folder, 'lock'), 'rubbish');
  await (await lockFolder(folder))();
});
