import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { expect, onTestFinished, test, vi } from 'vitest';
import { encodeWav } from '../../server/store/encode-wav.ts';
import type { Job } from '../../shared/wire.ts';
import { temporaryFolder } from '../store/temporary-folder.ts';
import { spawnServer } from './start-server.ts';

/** One behind the other, so that one is given up while the next is still being written down. */
const MANY = 120;

test('recordings that come in one behind the other are each kept whole, and each is worked on', async () => {
  const data = await temporaryFolder();
  // without a model each is given up as soon as it is begun: what is tried is the queue
  const server = await spawnServer(data, { modelsDir: join(data, 'no-models') });
  onTestFinished(() => {
    server.child.kill();
  });
  const id = await server.makeQuilt();
  const sent: string[] = [];
  for (let n = 0; n < MANY; n++) {
    const form = new FormData();
    form.append('startAt', '2026-03-14T10:00:00Z');
    const sound = encodeWav(Float32Array.from({ length: 2_000 }, (_x, k) => Math.sin(k * (n + 1)) / 2));
    form.append('file', new Blob([new Uint8Array(sound)]), `${n}.wav`);
    const answer = await server.get(`/api/quilts/${id}/recordings`, { method: 'POST', body: form });
    sent.push(((await answer.json()) as Job).id);
  }
  await vi.waitFor(
    async () => {
      const jobs = (await (await server.get(`/api/quilts/${id}/jobs`)).json()) as Job[];
      expect(jobs.map((job) => job.state)).toEqual(sent.map(() => 'failed'));
    },
    { timeout: 20_000, interval: 200 },
  );
  const folder = join(data, 'quilts', id!, 'jobs');
  const files = await readdir(folder);
  expect(files.toSorted()).toEqual(sent.map((job) => `${job}.json`).toSorted());
  for (const file of files)
    expect(JSON.parse(await readFile(join(folder, file), 'utf8'))).toMatchObject({
      job: { state: 'failed' },
    });
}, 40_000);
