import { existsSync } from 'node:fs';
import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { decodeAudio } from '../../server/speech/decode-audio.ts';
import { encodeWav } from '../../server/store/encode-wav.ts';
import { nodeFileSystem } from '../../server/store/file-system.ts';
import { RECOGNISER_MODEL } from '../../shared/recogniser-model.ts';
import type { Job } from '../../shared/wire.ts';
import { FailingFileSystem } from '../store/failing-file-system.ts';
import { startServer } from './start-server.ts';

const modelsDir = fileURLToPath(new URL('../../models', import.meta.url));
/** "Row three, block two has a hole in it, and the block to the right of that is thin.", in a synthetic voice. */
const spoken = fileURLToPath(new URL('../../server/demo/audio/note-04.flac', import.meta.url));
const ready = existsSync(join(modelsDir, RECOGNISER_MODEL)) && existsSync(spoken);

async function samples(): Promise<Int16Array> {
  const pieces: Float32Array[] = [new Float32Array(8_000)];
  for await (const { pcm } of decodeAudio(spoken)) pieces.push(pcm);
  pieces.push(new Float32Array(40_000));
  return Int16Array.from(pieces.flatMap((piece) => [...piece]).map((sample) => Math.round(sample * 32_767)));
}

test.skipIf(!ready)(
  'what is said into a microphone is on the disk, a note, and playable; after a drop it is heard whole',
  async () => {
    const server = await startServer({ modelsDir });
    const id = await server.makeQuilt();
    const sound = await samples();
    const at = '2026-03-14T10:00:00.000Z';
    const first = await server.live();
    first.send({ type: 'hello', quiltId: id, sinceSeq: 0 });
    await first.until('welcome');
    first.send({
      type: 'microphone-on',
      streamId: 's1',
      stretchId: 's1',
      at,
      way: 'always',
      sampleRate: 16_000,
    });
    // In the middle of the sentence the socket drops.
    for (let i = 0; i < 40_000; i += 512) first.socket.send(sound.slice(i, i + 512));
    await first.until('level', ({ speech }) => speech, 60_000);
    const safe = Math.max(...first.messages.flatMap((m) => (m.type === 'level' ? [m.samples ?? 0] : [])));
    expect(safe).toBeLessThan(16_000);
    first.socket.terminate();
    await first.untilClosed();

    const second = await server.live();
    second.send({ type: 'hello', quiltId: id, sinceSeq: 0 });
    await second.until('welcome');
    const again = new Date(Date.parse(at) + (safe / 16_000) * 1000).toISOString();
    second.send({
      type: 'microphone-on',
      streamId: 's2',
      stretchId: 's1',
      at: again,
      way: 'always',
      sampleRate: 16_000,
    });
    for (let i = safe; i < sound.length; i += 4_096) second.socket.send(sound.slice(i, i + 4_096));
    second.send({ type: 'microphone-off', streamId: 's2' });
    const heard = await second.until('heard', ({ text }) => text !== '', 90_000);
    expect(heard.text.toLowerCase()).toMatch(/row three,? block two has a hole/);
    expect(heard.reading?.entries.length).toBeGreaterThan(0);
    await second.until('level', ({ samples: taken }) => taken === sound.length - safe, 30_000);

    const { log, folder } = await server.app.library.quilt(id);
    expect(log.notes).toHaveLength(1);
    const { note } = log.notes[0]!;
    expect(Math.abs(Date.parse(note.at) - Date.parse(at))).toBeLessThan(2_000);
    const played = await server.get(`/api/quilts/${id}/audio/${note.audio?.file}`, {
      headers: { range: 'bytes=0-3' },
    });
    expect([played.status, await played.text()]).toEqual([206, 'RIFF']);
    expect(await readdir(join(folder, 'unheard'))).toEqual([]);
  },
  180_000,
);

test.skipIf(!ready)(
  'said while the recogniser is still getting ready, by a page that then falls away for good: heard all the same',
  async () => {
    const server = await startServer({ modelsDir });
    const id = await server.makeQuilt();
    const page = await server.live();
    page.send({ type: 'hello', quiltId: id, sinceSeq: 0 });
    page.send({
      type: 'microphone-on',
      streamId: 's',
      at: '2026-03-14T10:00:00Z',
      way: 'always',
      sampleRate: 16_000,
    });
    const sound = await samples();
    // Without the silence at its end, so that only the fall ends it.
    for (let i = 0; i < sound.length - 40_000; i += 4_096)
      page.socket.send(sound.slice(i, Math.min(i + 4_096, sound.length - 40_000)));
    page.socket.close();
    const other = await server.live();
    other.send({ type: 'hello', quiltId: id, sinceSeq: 0 });
    const { events } = await other.until(
      'events',
      (message) => message.events.some(({ event }) => event.type === 'note-taken'),
      100_000,
    );
    const texts = events.flatMap(({ event }) => (event.type === 'note-taken' ? [event.note.text] : []));
    expect(texts.join(' ').toLowerCase()).toMatch(/row three,? block two has a hole/);
  },
  150_000,
);

test.skipIf(!ready)(
  'a recording becomes notes at their true times, once; speech left over by a crash is heard at the next start',
  async () => {
    const server = await startServer({ modelsDir });
    const id = await server.makeQuilt();
    const send = async (fields: Record<string, string>, bytes: Uint8Array): Promise<Response> => {
      const form = new FormData();
      for (const [key, value] of Object.entries(fields)) form.append(key, value);
      form.append('file', new Blob([new Uint8Array(bytes)]), 'evening.flac');
      return server.get(`/api/quilts/${id}/recordings`, { method: 'POST', body: form });
    };
    const bytes = await readFile(spoken);
    const unsaid = await send({}, bytes);
    expect([unsaid.status, Object.keys(((await unsaid.json()) as { fields: object }).fields)]).toEqual([
      422,
      ['startAt'],
    ]);
    expect((await send({ startAt: '2026-03-14T20:00:00Z' }, Buffer.from('no sound at all'))).status).toBe(
      415,
    );
    expect((await send({ startAt: '2026-03-14T20:00:00Z' }, Buffer.alloc(0))).status).toBe(422);
    expect((await send({ startAt: '2026-03-14T20:00:00Z' }, bytes)).status).toBe(202);
    const twin = await send({ startAt: '2026-03-14T20:00:00Z' }, bytes);
    expect([twin.status, ((await twin.json()) as { message: string }).message]).toEqual([
      409,
      expect.stringContaining('not taken twice'),
    ]);

    let job: Job | undefined;
    for (const end = Date.now() + 120_000; job?.state !== 'done' && Date.now() < end; ) {
      await new Promise((done) => setTimeout(done, 250));
      [job] = (await (await server.get(`/api/quilts/${id}/jobs`)).json()) as Job[];
    }
    expect(job).toMatchObject({ state: 'done', notes: 1 });
    const { log, folder } = await server.app.library.quilt(id);
    expect(log.recordings).toMatchObject([{ name: 'evening.flac' }]);
    expect(log.notes[0]?.note).toMatchObject({ source: 'recording', audio: { recordingId: job?.id } });
    expect(log.notes[0]?.note.at).toMatch(/^2026-03-14T20:00:0/);
    expect(await readdir(join(folder, 'incoming'))).toEqual([]);
  },
  240_000,
);

test.skipIf(!ready)(
  'where no sound is to be kept it goes once its words are in the log; a recording without a word stays',
  async () => {
    const server = await startServer({ modelsDir });
    const id = await server.makeQuilt();
    await server.app.library.saveSettings({ keepAudio: 'none' });
    const send = async (name: string, bytes: Uint8Array): Promise<void> => {
      const form = new FormData();
      form.append('startAt', '2026-03-14T20:00:00Z');
      form.append('file', new Blob([new Uint8Array(bytes)]), name);
      const sent = await server.get(`/api/quilts/${id}/recordings`, { method: 'POST', body: form });
      expect(sent.status).toBe(202);
    };
    await send('evening.flac', await readFile(spoken));
    await send('quiet.wav', encodeWav(new Float32Array(32_000)));
    let jobs: Job[] = [];
    for (const end = Date.now() + 120_000; !jobs.every(isOver) || jobs.length < 2; ) {
      if (Date.now() > end) throw new Error(`not done: ${JSON.stringify(jobs)}`);
      await new Promise((done) => setTimeout(done, 250));
      jobs = (await (await server.get(`/api/quilts/${id}/jobs`)).json()) as Job[];
    }
    const { log, folder } = await server.app.library.quilt(id);
    const [evening, quiet] = ['evening.flac', 'quiet.wav'].map(
      (name) => log.recordings.find((recording) => recording.name === name)!,
    );
    await expect.poll(() => readdir(join(folder, 'audio'))).toEqual([quiet!.file]);
    expect((await server.app.library.quilt(id)).log.removedAudio).toEqual([evening!.file]);
    expect(log.notes).toHaveLength(1);
  },
  240_000,
);

const isOver = ({ state }: Job): boolean => state === 'done' || state === 'failed';

test.skipIf(!ready)(
  'one microphone falls away in mid-sentence while another begins: neither takes the other’s sound for its own',
  async () => {
    const server = await startServer({ modelsDir });
    const id = await server.makeQuilt();
    const sound = await samples();
    const speak = async (streamId: string, at: string, until: number) => {
      const page = await server.live();
      page.send({ type: 'hello', quiltId: id, sinceSeq: 0 });
      await page.until('welcome');
      page.send({
        type: 'microphone-on',
        streamId,
        stretchId: streamId,
        at,
        way: 'always',
        sampleRate: 16_000,
      });
      for (let i = 0; i < until; i += 4_096) page.socket.send(sound.slice(i, Math.min(until, i + 4_096)));
      return page;
    };
    const first = await speak('s1', '2026-03-14T10:00:00.000Z', sound.length - 40_000);
    await first.until('level', ({ speech }) => speech, 60_000);
    first.socket.terminate();
    await first.untilClosed();
    const second = await speak('s2', '2026-03-14T10:00:01.000Z', sound.length);
    await second.until('heard', ({ text }) => /block two has a hole/.test(text), 60_000);
    // Nobody comes back for the first, so it is heard when that is plain.
    await expect
      .poll(async () => (await server.app.library.quilt(id)).log.notes.map(({ note }) => note.text), {
        timeout: 60_000,
      })
      .toEqual([
        expect.stringMatching(/block two has a hole.*right of that/),
        expect.stringMatching(/block two has a hole.*right of that/),
      ]);
  },
  200_000,
);

test.skipIf(!ready)(
  'a disk that takes no sound: said so, nothing of it acknowledged, and heard once when there is room',
  async () => {
    const disk = new FailingFileSystem(nodeFileSystem);
    const server = await startServer({ modelsDir, fs: disk });
    const id = await server.makeQuilt();
    const sound = await samples();
    const at = '2026-03-14T10:00:00.000Z';
    const speak = async (streamId: string) => {
      const page = await server.live();
      page.send({ type: 'hello', quiltId: id, sinceSeq: 0 });
      await page.until('welcome');
      page.send({ type: 'microphone-on', streamId, stretchId: 's1', at, way: 'always', sampleRate: 16_000 });
      for (let i = 0; i < sound.length; i += 4_096) page.socket.send(sound.slice(i, i + 4_096));
      return page;
    };
    disk.fault = { code: 'ENOSPC', at: 'write', partial: true };
    const first = await speak('s1');
    expect((await first.until('refused', () => true, 60_000)).message).toMatch(/disk is full/);
    expect((await first.untilClosed()).code).toBe(1013);
    // The sentence begins at 0.5 s.
    for (const message of first.messages)
      if (message.type === 'level') expect(message.samples).toBeLessThan(12_000);

    disk.fault = undefined;
    const second = await speak('s2');
    expect((await second.until('heard', () => true, 60_000)).text).toMatch(
      /block two has a hole.*right of that/,
    );
    const { log, folder } = await server.app.library.quilt(id);
    expect(log.notes).toHaveLength(1);
    expect(await readdir(join(folder, 'unheard'))).toEqual([]);
    // All of it is known to be there, so that a page which sends it once more is not taken at its word.
    second.socket.terminate();
    await second.untilClosed();
    const third = await speak('s3');
    third.send({ type: 'microphone-off', streamId: 's3' });
    await third.until('level', ({ samples: taken }) => taken === sound.length, 60_000);
    expect((await server.app.library.quilt(id)).log.notes).toHaveLength(1);
  },
  200_000,
);
