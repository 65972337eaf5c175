import { spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import sharp from 'sharp';
import { afterEach, expect, test } from 'vitest';
import { DOCUMENT_KINDS } from '../../core/record/document-model.ts';
import { EXPORT_FORMATS } from '../../server/export/export-quilt.ts';
import type { Job } from '../../shared/wire.ts';
import { AUDIO, MODELS } from '../speech/support/places.ts';
import { temporaryFolder } from '../store/temporary-folder.ts';
import { clientOf } from './start-server.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const DENY = pathToFileURL(join(ROOT, 'tests/server/deny-network.mjs')).href;
/** A word that is said, written, and nowhere else. */
const SAID = 'zanzibarred';

let stop: () => Promise<void> = async () => undefined;
afterEach(() => stop());

/** `npm start`, in a process whose every way out throws and is written down, as are those of all that it starts. */
async function start(folder: string, attempts: string) {
  await writeFile(attempts, '');
  const child = spawn(process.execPath, ['--import', 'tsx', 'server/start.ts'], {
    cwd: ROOT,
    env: {
      ...process.env,
      QUILTSIDE_DATA: folder,
      PORT: '0',
      HOST: '127.0.0.1',
      NETWORK_ATTEMPTS: attempts,
      NODE_OPTIONS: `--import ${DENY}`,
    },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let output = '';
  for (const stream of [child.stdout, child.stderr])
    stream.on('data', (data) => {
      output += String(data);
    });
  const ended = new Promise<void>((done) => child.once('exit', () => done()));
  stop = async () => {
    child.kill('SIGTERM');
    await ended;
  };
  let address: string | undefined;
  while (!address) {
    if (child.exitCode !== null) throw new Error(`The server ended: ${output}`);
    await new Promise((done) => setTimeout(done, 50));
    address = /ready at (\S+)/.exec(output)?.[1];
  }
  return { ...clientOf(address), output: () => output };
}

const made = (
  field: string,
  bytes: Uint8Array,
  name: string,
  more: Record<string, string> = {},
): FormData => {
  const form = new FormData();
  for (const [key, value] of Object.entries(more)) form.append(key, value);
  form.append(field, new Blob([new Uint8Array(bytes)]), name);
  return form;
};

test('with every way out denied all of it works, none is tried, and no word that was said is in its output', async () => {
  const folder = await temporaryFolder();
  const backups = await temporaryFolder();
  const attempts = join(await temporaryFolder(), 'attempts.txt');
  const server = await start(folder, attempts);
  const put = (body: unknown): Promise<Response> =>
    server.get('/api/settings', {
      method: 'PUT',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(body),
    });
  expect((await put({ backupFolder: backups })).status).toBe(200);
  const id = await server.makeQuilt({ owner: SAID });
  for (const text of [
    `Row three, block two has a ${SAID} tear.`,
    `${SAID} 30 minutes of quilting`,
    'scratch that',
  ])
    expect((await server.command(id, { type: 'take-note', clientId: text.slice(0, 20), text })).status).toBe(
      200,
    );

  const page = await server.live();
  page.send({ type: 'hello', quiltId: id, sinceSeq: 0 });
  await page.until('events');
  page.socket.send(`{"type":"${SAID}"`);
  await page.until('refused');
  page.socket.terminate();

  const png = await sharp({ create: { width: 9, height: 9, channels: 3, background: '#c02020' } })
    .png()
    .toBuffer();
  const photo = await server.get(`/api/quilts/${id}/photos`, {
    method: 'POST',
    body: made('file', png, `${SAID}.png`),
  });
  expect(photo.status).toBe(201);
  if (existsSync(MODELS)) {
    const flac = await readFile(join(AUDIO, 'short.flac'));
    const sent = await server.get(`/api/quilts/${id}/recordings`, {
      method: 'POST',
      body: made('file', flac, `${SAID}.flac`, { startAt: '2026-03-14T10:00:00Z' }),
    });
    expect(sent.status).toBe(202);
    const { id: job } = (await sent.json()) as Job;
    for (let state = ''; state !== 'done'; await new Promise((done) => setTimeout(done, 200))) {
      const jobs = (await (await server.get(`/api/quilts/${id}/jobs`)).json()) as Job[];
      state = jobs.find((one) => one.id === job)!.state;
      expect(state).not.toBe('failed');
    }
  }
  for (const format of EXPORT_FORMATS) {
    const recordings = (await (await server.get(`/api/quilts/${id}/jobs`)).json()) as Job[];
    if (format === 'vtt' && recordings.length === 0) continue;
    const asked = new URLSearchParams({
      ...(format === 'vtt' ? { recording: recordings[0]!.id } : {}),
      ...(format === 'pdf' ? { document: DOCUMENT_KINDS[0] } : {}),
    });
    const answer = await server.get(`/api/quilts/${id}/export/${format}?${asked}`);
    await answer.arrayBuffer();
    expect([format, answer.status]).toEqual([format, 200]);
  }
  for (const path of ['/', '/api/health', '/api/openapi.json', '/api/quilts'])
    expect((await server.get(path)).status).toBe(200);

  // What goes wrong is told to who asked, and to nobody else.
  const raw = (body: string): Promise<Response> =>
    server.get(`/api/quilts/${id}/commands`, {
      method: 'POST',
      body,
      headers: { 'content-type': 'application/json' },
    });
  expect((await raw(`{"type":"take-note","${SAID}`)).status).toBe(400);
  expect((await raw(JSON.stringify({ type: SAID }))).status).toBe(422);
  expect((await server.get(`/api/${SAID}`)).status).toBe(404);
  const broken = await server.get(`/api/quilts/${id}/photos`, {
    method: 'POST',
    body: made('file', Buffer.concat([png.subarray(0, 40), Buffer.from(SAID)]), `${SAID}.png`),
  });
  expect(broken.status).toBe(422);
  expect(
    (
      await server.get('/api/quilts/import', {
        method: 'POST',
        body: made('file', Buffer.from(SAID), 'a.zip'),
      })
    ).status,
  ).toBe(422);
  // The disk refuses: a folder where the journal's next file should be made is what makes a 500 or 507.
  await mkdir(join(folder, 'quilts.json.part'), { recursive: true });
  expect((await server.post('/api/quilts', { name: SAID, rows: 2, blocks: 2 })).status).toBe(507);

  await stop();
  const told = (await readFile(attempts, 'utf8')).trim().split('\n');
  expect(told.filter((line) => !line.startsWith('ready '))).toEqual([]);
  // The denial was in the server and in those it started.
  expect(told.some((line) => line.endsWith('start.ts'))).toBe(true);
  expect(told.some((line) => line.endsWith('photo-process.ts'))).toBe(true);
  expect(server.output()).not.toContain(SAID);
}, 120_000);

test('the denial denies: a process under it reaches nothing but this machine', async () => {
  const attempts = join(await temporaryFolder(), 'attempts.txt');
  await writeFile(attempts, '');
  const code = `
    import net from 'node:net'; import dns from 'node:dns'; import dgram from 'node:dgram'; import http from 'node:http';
    const tries = [
      () => net.connect(9, '192.0.2.1'),
      () => new Promise((done, failed) => http.get('http://192.0.2.1/', done).on('error', failed)),
      () => fetch('http://192.0.2.1/'),
      () => dns.promises.lookup('elsewhere.example'),
      () => dgram.createSocket('udp4').send('x', 9, '192.0.2.1'),
    ];
    for (const one of tries) { try { await one(); console.log('got out'); } catch {} }
    const server = net.createServer().listen(0, '127.0.0.1', () => net.connect(server.address().port, '127.0.0.1', () => process.exit(0)));
  `;
  const child = spawn(process.execPath, ['--import', DENY, '--input-type=module', '-e', code], {
    env: { ...process.env, NETWORK_ATTEMPTS: attempts },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  let output = '';
  for await (const chunk of child.stdout!) output += String(chunk);
  expect(output).toBe('');
  const told = (await readFile(attempts, 'utf8')).trim().split('\n');
  expect(told.filter((line) => !line.startsWith('ready '))).toEqual([
    'connect 192.0.2.1:9',
    'connect 192.0.2.1:80',
    'connect 192.0.2.1:80',
    'lookup elsewhere.example',
    'datagram send x 9 192.0.2.1',
  ]);
}, 30_000);
