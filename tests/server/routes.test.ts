import { mkdir, readdir, readFile, rename, writeFile } from 'node:fs/promises';
import { request } from 'node:http';
import { join } from 'node:path';
import { crc32 } from 'node:zlib';
import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import { BackupRounds } from '../../server/store/backup-rounds.ts';
import type { Command } from '../../shared/wire.ts';
import { temporaryFolder } from '../store/temporary-folder.ts';
import { type Server, startServer } from './start-server.ts';

const note = (clientId: string, text: string): Command => ({ type: 'take-note', clientId, text });
const trouble = async (answer: Response) =>
  (await answer.json()) as { message: string; fields?: Record<string, string> };

test('a quilt is made, a note taken and answered, and both are in its events', async () => {
  const server = await startServer();
  const id = await server.makeQuilt({ zone: 'Europe/London' });
  const answer = await server.command(id, {
    ...note('n1', 'Row three, block two has a tear.'),
    at: '2026-07-01T09:00:00Z',
  } as Command);
  expect(answer.status).toBe(200);
  expect(await answer.json()).toMatchObject({ seq: 3, noteId: 'n1', reading: { act: 'log' } });
  const { seq, events } = (await (await server.get(`/api/quilts/${id}/events?since=1`)).json()) as {
    seq: number;
    events: { seq: number; event: { type: string; note?: { at: string } } }[];
  };
  expect(seq).toBe(3);
  expect(events.map(({ event }) => event.type)).toEqual(['note-taken', 'note-read']);
  // The wall clock of the quilt's own place.
  expect(events[0]?.event.note?.at).toBe('2026-07-01T10:00:00+01:00');
});

test('a quilt that is no plain grid keeps its shape and names over a restart, and notes are read by them', async () => {
  const server = await startServer();
  const id = await server.makeQuilt({
    rows: 3,
    blocks: 3,
    shape: { wide: { '1-1': { across: 2, down: 2 } } },
    placeNames: { 'star block': ['1-1'] },
  });
  await server.close();
  const again = await startServer({ dataFolder: server.dataFolder });
  const read = async (clientId: string, text: string) =>
    ((await (await again.command(id, note(clientId, text))).json()) as { reading: unknown }).reading;
  expect(await read('n1', 'The star block has a tear.')).toMatchObject({
    entries: [{ entry: { kind: 'condition', finding: 'tear', places: ['1-1'] } }],
  });
  expect(await read('n2', 'All of row two is faded.')).toMatchObject({
    entries: [{ entry: { places: ['1-1', '2-3'] } }],
  });
  const shrunk = await again.command(id, { type: 'change-quilt', changes: { rows: 1 } });
  expect(shrunk.status).toBe(422);
  expect((await trouble(shrunk)).message).toMatch(/larger than the quilt/);
  const plain = await again.command(id, { type: 'change-quilt', changes: { rows: 1, shape: {} } });
  expect(plain.status).toBe(200);
});

test('the same note sent twice, at once and after a restart, is taken once and answered alike', async () => {
  const server = await startServer();
  const id = await server.makeQuilt();
  const answers = await Promise.all(
    [1, 2, 3].map(async () => (await server.command(id, note('same', 'hello'))).json()),
  );
  await server.close();
  const again = await startServer({ dataFolder: server.dataFolder });
  answers.push(await (await again.command(id, note('same', 'hello'))).json());
  for (const answer of answers) expect(answer).toMatchObject({ seq: 3, noteId: 'same' });
  expect(
    new Set(answers.map((answer) => JSON.stringify((answer as { reading: unknown }).reading))).size,
  ).toBe(1);
});

describe('what can not be done is said, with a proper status and the name of the field', () => {
  test.each([
    ['no rows', { name: 'x', rows: 0, blocks: 5 }, 'rows'],
    ['ten thousand rows', { name: 'x', rows: 10_000, blocks: 5 }, 'rows'],
    ['no name', { name: '  ', rows: 2, blocks: 2 }, 'name'],
    ['a zone that is none', { name: 'x', rows: 2, blocks: 2, zone: 'Moon/Base' }, 'zone'],
    [
      'three lengths for two rows',
      { name: 'x', rows: 2, blocks: 2, shape: { rowLengths: [2, 1, 2] } },
      'shape',
    ],
    ['a name for no block', { name: 'x', rows: 2, blocks: 2, placeNames: { star: ['3-1'] } }, 'placeNames'],
  ])('a quilt of %s', async (_, details, field) => {
    const server = await startServer();
    const answer = await server.post('/api/quilts', details);
    expect(answer.status).toBe(422);
    expect(Object.keys((await trouble(answer)).fields ?? {})).toEqual([field]);
  });

  test('JSON that is none, no JSON at all, and a quilt that is not there', async () => {
    const server = await startServer();
    const raw = (body: string, type: string) =>
      server.get('/api/quilts', { method: 'POST', body, headers: { 'content-type': type } });
    expect((await raw('{"name"', 'application/json')).status).toBe(400);
    expect((await raw('name=x', 'text/plain')).status).toBe(415);
    const missing = await server.command('nowhere', note('n', 'x'));
    expect([missing.status, (await trouble(missing)).message]).toEqual([
      404,
      expect.stringContaining('no quilt nowhere'),
    ]);
    expect((await server.get('/api/nothing')).status).toBe(404);
  });

  test('plans set side by side are kept with the quilt, and more than four are refused', async () => {
    const server = await startServer();
    const id = await server.makeQuilt();
    const plan = { name: 'Quilted', hold: 'quilt' as const, clothPrice: 12.5 };
    await server.command(id, { type: 'set-plans', plans: [plan] });
    expect((await server.app.library.quilt(id)).log.plans).toEqual([plan]);
    const refused = await server.command(id, { type: 'set-plans', plans: Array(5).fill(plan) });
    expect(refused.status).toBe(422);
  });

  test('a command that is refused, and one of an unknown kind', async () => {
    const server = await startServer();
    const id = await server.makeQuilt();
    const refused = await server.command(id, { type: 'remove-entry', entryId: 'x' });
    expect([refused.status, (await trouble(refused)).message]).toEqual([
      409,
      expect.stringContaining('no entry x'),
    ]);
    expect((await server.post(`/api/quilts/${id}/commands`, { type: 'burn-it' })).status).toBe(422);
  });

  test.each<[string, string, unknown, string]>([
    ['less than nothing', 'backing.overage', -3, 'backing.overage'],
    ['words for a length', 'binding.strip', 'wide', 'binding.strip'],
    ['a seam wider than the cloth', 'backing.seam', 25, 'backing.seam'],
    ['a spacing of nothing', 'ties.every', 0, 'ties.every'],
    ['a rate that is no money', 'price.hourly', 'plenty', 'price.hourly'],
    ['a size beyond sense', 'quilt', { width: 9000, length: 60 }, 'quilt.width'],
    ['a part that is none', 'bakcing', {}, 'bakcing'],
    ['a field that is none', 'backing.colour', 'red', 'backing.colour'],
  ])('a figure of the estimate, %s', async (_, path, value, field) => {
    const server = await startServer();
    const id = await server.makeQuilt();
    await server.command(id, { type: 'set-estimate', path: 'quilt', value: { width: 60, length: 72 } });
    const answer = await server.command(id, { type: 'set-estimate', path, value });
    expect(answer.status).toBe(422);
    const { fields, message } = await trouble(answer);
    expect(Object.keys(fields ?? {})).toEqual([field]);
    expect(message).toMatch(/expected .*got .*stays as it was/);
    const { seq } = (await (await server.get(`/api/quilts/${id}/events`)).json()) as { seq: number };
    expect(seq).toBe(2);
  });

  test('a figure of the estimate that makes sense is kept, and one set wrongly before can be taken back', async () => {
    const server = await startServer();
    const id = await server.makeQuilt();
    for (const [path, value] of [
      ['quilt.width', 60],
      ['quilt.length', 72],
      ['price.hourly', '24.00'],
      ['ties', { every: 4 }],
      ['ties.every', 'block'],
      ['backing', {}],
      ['backing.usable', 42],
      ['backing.usable', null],
      ['patches.pieces', [{ width: 9, length: 9, count: 12 }]],
    ] as const) {
      const answer = await server.command(id, { type: 'set-estimate', path, value });
      expect(answer.status, `${path} ${value}`).toBe(200);
    }
  });

  test('settings out of bounds change nothing', async () => {
    const server = await startServer();
    const put = (body: unknown) =>
      server.get('/api/settings', {
        method: 'PUT',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify(body),
      });
    const answer = await put({ endPauseMs: 5 });
    expect([answer.status, Object.keys((await trouble(answer)).fields ?? {})]).toEqual([422, ['endPauseMs']]);
    expect((await put({ colour: 'red' })).status).toBe(422);
    expect((await put({ backupFolder: 'here' })).status).toBe(422);
    expect((await put({ backupFolder: join(server.dataFolder, 'inside') })).status).toBe(422);
    expect((await put({ idleMin: 45 })).status).toBe(200);
    expect(await (await server.get('/api/settings')).json()).toMatchObject({ idleMin: 45, endPauseMs: 600 });
  });
});

describe('any words are a note', () => {
  test.each([
    ['a hundred thousand characters', 'seam '.repeat(20_000)],
    ['emoji', '🧵🪡 split seam 👩‍🔧'],
    ['control characters', 'row\u0000 three\u0007 block\u001b[31m two\u202e'],
    ['markup', '<script>alert(1)</script>"\'&=cmd|'],
    ['half a surrogate', 'row \ud83e three'],
  ])('%s', async (_, text) => {
    const server = await startServer();
    const id = await server.makeQuilt();
    expect((await server.command(id, note('n', text))).status).toBe(200);
    const { events } = (await (await server.get(`/api/quilts/${id}/events`)).json()) as {
      events: { event: { note?: { text: string } } }[];
    };
    expect(events[1]?.event.note?.text).toBe(text);
  });

  test('but not none, nor a million', async () => {
    const server = await startServer();
    const id = await server.makeQuilt();
    expect((await server.command(id, note('n', ''))).status).toBe(422);
    expect((await server.command(id, note('n', 'x'.repeat(100_001)))).status).toBe(422);
    expect((await server.command(id, note('n', 'x'.repeat(3_000_000)))).status).toBe(413);
  });
});

describe('who is let in', () => {
  const ask = (address: string, headers: Record<string, string>, method = 'GET'): Promise<number> =>
    new Promise((done, failed) => {
      const { port } = new URL(address);
      const sent = request({ host: '127.0.0.1', port, path: '/api/quilts', method, headers }, (answer) => {
        answer.resume();
        done(answer.statusCode ?? 0);
      });
      sent.on('error', failed);
      sent.end();
    });

  test('another name in Host, another page in Origin, a cross-site change', async () => {
    const { address } = await startServer();
    const host = new URL(address).host;
    expect(await ask(address, { host })).toBe(200);
    expect(await ask(address, { host: host.replace('127.0.0.1', 'localhost') })).toBe(200);
    expect(await ask(address, { host: 'quilts.example' })).toBe(403);
    expect(await ask(address, { host: `127.0.0.1.example:80` })).toBe(403);
    expect(await ask(address, { host, origin: 'http://elsewhere.example' })).toBe(403);
    expect(await ask(address, { host, origin: 'null' })).toBe(403);
    expect(await ask(address, { host, origin: `http://${host}` })).toBe(200);
    expect(await ask(address, { host, 'sec-fetch-site': 'cross-site' }, 'POST')).toBe(403);
  });

  test('a strict policy, and no type is guessed', async () => {
    const server = await startServer();
    const { headers } = await server.get('/api/health');
    expect(headers.get('content-security-policy')).toContain("default-src 'none'");
    expect(headers.get('content-security-policy')).not.toMatch(/unsafe/);
    expect(headers.get('x-content-type-options')).toBe('nosniff');
    expect(headers.get('referrer-policy')).toBe('no-referrer');
  });

  test('nothing changes by GET', async () => {
    const server = await startServer();
    const id = await server.makeQuilt();
    for (const path of [
      '/api/quilts',
      `/api/quilts/${id}`,
      `/api/quilts/${id}/events`,
      `/api/quilts/${id}/jobs`,
      '/api/settings',
      '/api/health',
      '/api/openapi.json',
    ]) {
      expect((await server.get(path)).status).toBe(200);
    }
    expect((await server.get(`/api/quilts/${id}/commands`)).status).toBe(404);
    expect(await (await server.get(`/api/quilts/${id}`)).json()).toMatchObject({ seq: 1 });
  });
});

const pixelsOf = async (picture: Buffer): Promise<Buffer> => sharp(picture).ensureAlpha().raw().toBuffer();

describe('photographs', () => {
  /** The smallest PNG: one pixel (from the PNG specification's own minimal parts). */
  const PNG = Buffer.from(
    'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==',
    'base64',
  );
  const form = (parts: Record<string, string | Buffer>, name = 'quilt.png'): FormData => {
    const made = new FormData();
    for (const [key, value] of Object.entries(parts)) {
      if (typeof value === 'string') made.append(key, value);
      else made.append(key, new Blob([new Uint8Array(value)]), name);
    }
    return made;
  };

  test('kept under a name of our own, served by ranges, attached to its places', async () => {
    const server = await startServer();
    const id = await server.makeQuilt();
    const sent = await server.get(`/api/quilts/${id}/photos`, {
      method: 'POST',
      body: form({ stage: 'before', places: '["3-2"]', file: PNG }, '../../evil.html'),
    });
    expect(sent.status).toBe(201);
    const photo = (await sent.json()) as { file: string };
    expect(photo).toMatchObject({
      stage: 'before',
      places: ['3-2'],
      file: expect.stringMatching(/^[\w-]+\.png$/),
    });
    const shown = await server.get(`/api/quilts/${id}/photos/${photo.file}`);
    expect([shown.status, shown.headers.get('content-type')]).toEqual([200, 'image/png']);
    expect(await pixelsOf(Buffer.from(await shown.arrayBuffer()))).toEqual(await pixelsOf(PNG));
    const part = await server.get(`/api/quilts/${id}/photos/${photo.file}`, {
      headers: { range: 'bytes=1-3' },
    });
    expect([part.status, await part.text()]).toEqual([206, 'PNG']);
    expect(await readdir(join(server.dataFolder, 'quilts', id, 'incoming'))).toEqual([]);
  });

  const send = (server: Server, id: string, body: FormData): Promise<Response> =>
    server.get(`/api/quilts/${id}/photos`, { method: 'POST', body });

  test.each(['jpeg', 'png', 'webp'] as const)(
    'a %s is written anew: what can be seen stays, upright; where and with what it was taken goes',
    async (format) => {
      // A stripe on the left, told by its camera to lie on its side (6: turn it a quarter to the right).
      const stripe = await sharp({ create: { width: 8, height: 32, channels: 3, background: '#c02020' } })
        .png()
        .toBuffer();
      const taken = await sharp({ create: { width: 64, height: 32, channels: 3, background: '#2040c0' } })
        .composite([{ input: stripe, left: 0, top: 0 }])
        .withExif({
          IFD0: { Make: 'MARKER-MAKE', Model: 'MARKER-MODEL' },
          IFD3: {
            GPSLatitudeRef: 'N',
            GPSLatitude: '51/1 30/1 0/1',
            GPSLongitudeRef: 'W',
            GPSLongitude: '0/1 7/1 0/1',
          },
        })
        .withMetadata({ orientation: 6 })
        .toFormat(format)
        .toBuffer();
      expect((await sharp(taken).metadata()).exif).toBeDefined();
      const server = await startServer();
      const id = await server.makeQuilt();
      const sent = await send(server, id, form({ file: taken, thumbnail: taken }));
      expect(sent.status).toBe(201);
      const photo = (await sent.json()) as { file: string; thumbnail: string };
      for (const name of [photo.file, photo.thumbnail]) {
        const kept = await readFile(join(server.dataFolder, 'quilts', id, 'photos', name));
        const { width, height, exif, xmp, iptc, icc, orientation } = await sharp(kept).metadata();
        expect({ width, height, exif, xmp, iptc, icc }).toEqual({ width: 32, height: 64 });
        expect(orientation ?? 1).toBe(1);
        expect(kept.includes('MARKER')).toBe(false);
        const { data } = await sharp(kept).removeAlpha().raw().toBuffer({ resolveWithObject: true });
        // The stripe is on top now.
        expect(data[0]! > data[2]!).toBe(true);
        expect(data.at(-3)! < data.at(-1)!).toBe(true);
      }
    },
    30_000,
  );

  test('a picture that is none behind its head, one cut short, and one of a thousand million pixels', async () => {
    const server = await startServer();
    const id = await server.makeQuilt();
    const noise = Buffer.from(Array.from({ length: 60 * 60 * 3 }, (_, i) => (i * 7919) % 251));
    const whole = await sharp(noise, { raw: { width: 60, height: 60, channels: 3 } })
      .png()
      .toBuffer();
    // The width and height of its head (ISO/IEC 15948, 11.2.2), with the sum of the chunk set right.
    const huge = Buffer.from(whole);
    huge.writeUInt32BE(40_000, 16);
    huge.writeUInt32BE(30_000, 20);
    huge.writeUInt32BE(crc32(huge.subarray(12, 29)), 29);
    for (const bytes of [
      Buffer.concat([whole.subarray(0, 8), Buffer.alloc(3_000, 1)]),
      whole.subarray(0, Math.floor(whole.length * 0.6)),
      huge,
    ]) {
      const answer = await send(server, id, form({ file: bytes }));
      expect([answer.status, (await trouble(answer)).message]).toEqual([
        422,
        expect.stringMatching(/quilt\.png could not be read as a picture \(.+\)\. Export it anew/),
      ]);
    }
    expect(await readdir(join(server.dataFolder, 'quilts', id, 'incoming'))).toEqual([]);
    expect(await (await server.get(`/api/quilts/${id}`)).json()).toMatchObject({ seq: 1, photos: 0 });
  }, 30_000);

  test('text called .png, no file, places that are none: refused, nothing left behind', async () => {
    const server = await startServer();
    const id = await server.makeQuilt();
    expect((await send(server, id, form({ file: Buffer.from('not a picture') }))).status).toBe(415);
    const heic = Buffer.from('\u0000\u0000\u0000\u0018ftypheic\u0000\u0000\u0000\u0000', 'latin1');
    const refused = await send(server, id, form({ file: heic }, 'a.jpg'));
    expect([refused.status, (await trouble(refused)).message]).toEqual([
      415,
      expect.stringContaining('HEIC'),
    ]);
    expect((await send(server, id, form({ stage: 'before' }))).status).toBe(422);
    expect((await send(server, id, form({ places: 'three', file: PNG }))).status).toBe(422);
    expect((await send(server, id, form({ file: Buffer.alloc(31_000_000) }))).status).toBe(413);
    expect((await server.post(`/api/quilts/${id}/photos`, {})).status).toBe(415);
    expect(await readdir(join(server.dataFolder, 'quilts', id, 'incoming'))).toEqual([]);
    expect(await (await server.get(`/api/quilts/${id}`)).json()).toMatchObject({ seq: 1 });
  });

  test.each([
    '..%2fjournal.jsonl',
    '%2e%2e/journal.jsonl',
    'journal.jsonl',
    '.png',
    'a.png%00',
    `${'a'.repeat(200)}.png`,
  ])('no file is reached by the name %s', async (name) => {
    const server = await startServer();
    const id = await server.makeQuilt();
    const answer = await server.get(`/api/quilts/${id}/photos/${name}`);
    expect(answer.status).toBeGreaterThanOrEqual(400);
    expect(await answer.text()).not.toContain('quilt-made');
  });
});

test('a quilt put away is gone from the list and lies in the trash', async () => {
  const server = await startServer();
  const id = await server.makeQuilt();
  expect((await server.get(`/api/quilts/${id}`, { method: 'DELETE' })).status).toBe(200);
  expect(await (await server.get('/api/quilts')).json()).toEqual([]);
  expect(await readdir(join(server.dataFolder, 'trash'))).toHaveLength(1);
});

test('one action removes a client: no word or name of theirs is left, and it is said what stays in backups until when', async () => {
  const backups = join(await temporaryFolder(), 'backups');
  const server = await startServer();
  await server.app.library.saveSettings({ backupFolder: backups });
  const theirs = [
    await server.makeQuilt({ name: 'MARKER one', owner: 'MARKER Sample' }),
    await server.makeQuilt({ name: 'MARKER two', owner: ' marker sample' }),
    await server.makeQuilt({ name: 'MARKER three', owner: 'MARKER Sample' }),
  ];
  const other = await server.makeQuilt({ name: 'Not theirs', owner: 'Somebody else' });
  for (const id of theirs) await server.command(id, note('n', 'MARKER was said'));
  await server.app.close();
  const again = await startServer({ dataFolder: server.dataFolder });
  expect((await again.get(`/api/quilts/${theirs[2]}`, { method: 'DELETE' })).status).toBe(200);

  const gone = await again.get(`/api/quilts/${theirs[0]}?for=owner`, { method: 'DELETE' });
  const { removed, message } = (await gone.json()) as { removed: number; message: string };
  expect(removed).toBe(3);
  const until = new Date(Date.now() + 30 * 86_400_000).toISOString().slice(0, 10);
  expect(message).toContain(`Backups stay until ${until} in ${join(backups, theirs[0]!)}`);
  expect(((await (await again.get('/api/quilts')).json()) as { id: string }[]).map(({ id }) => id)).toEqual([
    other,
  ]);
  const left = async (folder: string): Promise<string[]> => {
    const found: string[] = [];
    for (const one of await readdir(folder, { recursive: true, withFileTypes: true })) {
      const path = join(one.parentPath, one.name);
      if (one.isFile() && (/marker/i.test(one.name) || /marker/i.test(await readFile(path, 'utf8'))))
        found.push(path);
    }
    return found;
  };
  expect(await left(server.dataFolder)).toEqual([]);
  expect((await left(backups)).length).toBeGreaterThan(0);

  // A month later they go from the backups, and nobody else's do.
  const rounds = new BackupRounds(again.app.library);
  await rounds.round(new Date(Date.now() + 29 * 86_400_000));
  expect((await left(backups)).length).toBeGreaterThan(0);
  await rounds.round(new Date(Date.now() + 31 * 86_400_000));
  expect(await left(backups)).toEqual([]);
  expect(await readdir(backups)).toContain(other);
});

test('a removal reaches the folders for backups chosen earlier, and names one whose disk is not here', async () => {
  const root = await temporaryFolder();
  const [first, second, disk] = ['first', 'second', 'disk'].map((name) => join(root, name)) as [
    string,
    string,
    string,
  ];
  const server = await startServer();
  const id = await server.makeQuilt();
  const rounds = new BackupRounds(server.app.library);
  for (const backupFolder of [disk, first, second]) {
    await server.app.library.saveSettings({ backupFolder });
    await server.command(id, note(backupFolder, 'one more'));
    await rounds.round();
  }
  await rename(disk, `${disk}-away`);
  const gone = await server.get(`/api/quilts/${id}?for=good`, { method: 'DELETE' });
  const { message } = (await gone.json()) as { message: string };
  expect(message).toContain(`in ${join(second, id)} and ${join(first, id)} and are then deleted`);
  expect(message).toContain(`Backups may also be in ${disk}, which is not here now`);
  const later = (days: number): Promise<void> => rounds.round(new Date(Date.now() + days * 86_400_000));
  await later(31);
  expect([await readdir(first), await readdir(second)]).toEqual([[], []]);
  expect(await readdir(`${disk}-away`)).toEqual([id]);
  await rename(`${disk}-away`, disk);
  await later(40);
  expect(await readdir(disk)).toEqual([]);
});

test('a quilt removed for good is gone, with others of its owner left; what a crash left of a removal goes at the next start', async () => {
  const server = await startServer();
  const id = await server.makeQuilt({ owner: 'Sample' });
  const kept = await server.makeQuilt({ owner: 'Sample' });
  const gone = await server.get(`/api/quilts/${id}?for=good`, { method: 'DELETE' });
  expect(await gone.json()).toMatchObject({
    removed: 1,
    message: expect.stringContaining('No folder for backups is set'),
  });
  expect((await server.get(`/api/quilts/${id}`)).status).toBe(404);
  expect((await server.get(`/api/quilts/${kept}`)).status).toBe(200);
  expect((await server.get(`/api/quilts/${kept}?for=fun`, { method: 'DELETE' })).status).toBe(422);
  await server.close();
  await mkdir(join(server.dataFolder, 'trash', 'leaving-x'), { recursive: true });
  await startServer({ dataFolder: server.dataFolder });
  expect(await readdir(join(server.dataFolder, 'trash'))).toEqual([]);
});

test('backups are written to the folder set, read again, and whole', async () => {
  const server = await startServer();
  const other = await startServer();
  const id = await server.makeQuilt();
  await server.command(id, note('n1', 'kept twice'));
  const folder = join(other.dataFolder, 'backups');
  await server.app.library.saveSettings({ backupFolder: folder });
  await server.close();
  const names = await readdir(join(folder, id));
  const snapshot = names.find((name) => name.startsWith('journal-'))!;
  expect(await readFile(join(folder, id, snapshot), 'utf8')).toBe(
    await readFile(join(server.dataFolder, 'quilts', id, 'journal.jsonl'), 'utf8'),
  );
});

test('a backup is made when its folder is chosen, its age is known after a restart, and what it lacks comes again', async () => {
  const server = await startServer();
  const folder = join((await startServer()).dataFolder, 'backups');
  const id = await server.makeQuilt();
  await server.command(id, note('n1', 'kept twice'));
  await mkdir(join(server.dataFolder, 'quilts', id, 'audio'), { recursive: true });
  await writeFile(join(server.dataFolder, 'quilts', id, 'audio', 'a.wav'), Buffer.alloc(1000, 7));
  type State = { backups: { last: Record<string, { at: string }>; trouble?: string } };
  const state = async (one: Server): Promise<State['backups']> =>
    ((await (await one.get('/api/health')).json()) as State).backups;
  const known = async (one: Server): Promise<string> => {
    for (;;) {
      const at = (await state(one)).last[id]?.at;
      if (at) return at;
      await new Promise((done) => setTimeout(done, 20));
    }
  };
  const chosen = await server.get('/api/settings', {
    method: 'PUT',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ backupFolder: folder }),
  });
  expect(chosen.status).toBe(200);
  const at = await known(server);
  await server.close();
  // A copy cut short by a disk that filled up.
  await writeFile(join(folder, id, 'audio', 'a.wav'), Buffer.alloc(10));

  const again = await startServer({ dataFolder: server.dataFolder });
  expect(await known(again)).toBe(at);
  await again.close();
  expect((await readdir(join(folder, id))).filter((name) => name.startsWith('journal-'))).toHaveLength(1);
  expect(await readFile(join(folder, id, 'audio', 'a.wav'))).toEqual(Buffer.alloc(1000, 7));

  // The snapshot itself goes bad: it is set right by a new one, never passed over.
  const [snapshot] = (await readdir(join(folder, id))).filter((name) => name.startsWith('journal-'));
  await writeFile(join(folder, id, snapshot!), 'spoilt');
  const third = await startServer({ dataFolder: server.dataFolder });
  await third.close();
  const [newest] = (await readdir(join(folder, id))).filter((name) => name.startsWith('journal-')).reverse();
  expect(newest).not.toBe(snapshot);
  expect(await readFile(join(folder, id, newest!), 'utf8')).toBe(
    await readFile(join(server.dataFolder, 'quilts', id, 'journal.jsonl'), 'utf8'),
  );
});

test('the OpenAPI page describes every address there is', async () => {
  const server = await startServer();
  const page = (await (await server.get('/api/openapi.json')).json()) as {
    openapi: string;
    paths: Record<string, object>;
  };
  expect(page.openapi).toBe('3.1.0');
  const told = Object.entries(page.paths).flatMap(([path, methods]) =>
    Object.keys(methods)
      .filter((key) => key !== 'parameters')
      .map((method) => `${method.toUpperCase()} ${path.replaceAll(/\{(\w+)\}/g, ':$1')}`),
  );
  for (const route of told) {
    const [method, url] = route.split(' ') as ['GET' | 'POST' | 'PUT' | 'DELETE', string];
    expect(server.app.hasRoute({ method, url }), route).toBe(true);
  }
});
