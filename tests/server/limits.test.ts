import { once } from 'node:events';
import { readdir } from 'node:fs/promises';
import { connect, type Socket } from 'node:net';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import WebSocket from 'ws';
import { startServer } from './start-server.ts';

const SOON = { headMs: 300, requestMs: 1_200, checkMs: 100 };

/** A raw connection, for what no proper client would send. */
async function wire(address: string): Promise<Socket & { told: string }> {
  const socket = Object.assign(connect({ host: '127.0.0.1', port: Number(new URL(address).port) }), {
    told: '',
  });
  socket.on('data', (data) => {
    socket.told += String(data);
  });
  socket.on('error', () => undefined);
  await once(socket, 'connect');
  return socket;
}

/** Sends a byte every so often till the server has had enough. */
async function trickle(socket: Socket, byte: string): Promise<void> {
  const timer = setInterval(() => socket.write(byte), 50);
  await once(socket, 'close');
  clearInterval(timer);
}

describe('a request that never ends is ended, and others are answered meanwhile', () => {
  test('its head trickles in', async () => {
    const server = await startServer({ limits: SOON });
    const socket = await wire(server.address);
    socket.write(`GET /api/health HTTP/1.1\r\nHost: ${new URL(server.address).host}\r\nX-Slow: `);
    const ended = trickle(socket, 'a');
    expect((await server.get('/api/health')).status).toBe(200);
    await ended;
    expect(socket.told).toMatch(/^HTTP\/1\.1 408/);
  });

  test('its body trickles in', async () => {
    const server = await startServer({ limits: SOON });
    const socket = await wire(server.address);
    socket.write(
      `POST /api/quilts HTTP/1.1\r\nHost: ${new URL(server.address).host}\r\nContent-Type: application/json\r\nContent-Length: 100000\r\n\r\n{`,
    );
    await trickle(socket, ' ');
    expect(await (await server.get('/api/quilts')).json()).toEqual([]);
  });

  test('an upload trickles in, or stops in the middle: nothing of it is left', async () => {
    const server = await startServer({ limits: SOON });
    const id = await server.makeQuilt();
    const head = `POST /api/quilts/${id}/photos HTTP/1.1\r\nHost: ${new URL(server.address).host}\r\nContent-Type: multipart/form-data; boundary=b\r\nContent-Length: 20000000\r\n\r\n--b\r\nContent-Disposition: form-data; name="file"; filename="a.png"\r\nContent-Type: image/png\r\n\r\n\x89PNG`;
    const slow = await wire(server.address);
    slow.write(head, 'latin1');
    const still = await wire(server.address);
    still.write(head, 'latin1');
    await Promise.all([trickle(slow, 'a'), once(still, 'close')]);
    const incoming = join(server.dataFolder, 'quilts', id, 'incoming');
    while ((await readdir(incoming)).length > 0) await new Promise((done) => setTimeout(done, 20));
    expect(await (await server.get(`/api/quilts/${id}`)).json()).toMatchObject({ photos: 0 });
  });
});

test('one that asks without end is told to wait (429), and only then', async () => {
  const server = await startServer({ limits: { requestsAMinute: 20 } });
  const statuses: number[] = [];
  for (let i = 0; i < 25; i++) statuses.push((await server.get('/api/health')).status);
  expect(statuses.filter((status) => status === 200)).toHaveLength(20);
  expect(statuses.slice(20)).toEqual([429, 429, 429, 429, 429]);
  const refused = await server.post('/api/quilts', { name: 'x', rows: 1, blocks: 1 });
  expect(refused.status).toBe(429);
});

describe('the live socket', () => {
  test('a page that answers no beat is let go; one that does stays', async () => {
    const server = await startServer({ limits: { heartbeatMs: 100 } });
    const address = `${server.address.replace('http', 'ws')}/live`;
    const dead = new WebSocket(address, { autoPong: false });
    const alive = await server.live();
    const [code] = (await once(dead, 'close')) as [number];
    expect(code).toBe(1006);
    // Through more beats than the other was given.
    await new Promise((done) => setTimeout(done, 350));
    alive.send({ type: 'ping' });
    await alive.until('pong');
  });

  test('a long log waits for a page that does not take it; the server holds a piece, not all', async () => {
    const server = await startServer();
    const id = await server.makeQuilt();
    const { library } = server.app;
    const store = await library.quilt(id);
    // 20 MB in 10,000 events.
    for (let i = 0; i < 10; i++)
      await store.commit(() => ({
        events: Array.from({ length: 1_000 }, (_, k) => ({
          type: 'note-taken' as const,
          note: {
            id: `n${i}.${k}`,
            at: '2026-03-14T10:00:00Z',
            text: 'x'.repeat(2_000),
            source: 'typed' as const,
          },
        })),
      }));
    const sockets: Socket[] = [];
    server.app.server.on('connection', (socket) => sockets.push(socket));
    const page = await server.live();
    const raw = (page.socket as unknown as { _socket: Socket })._socket;
    page.send({ type: 'hello', quiltId: id, sinceSeq: 0 });
    raw.pause();
    await new Promise((done) => setTimeout(done, 1_000));
    // Others are served, and what happens meanwhile comes in its place.
    await server.command(id, {
      type: 'take-note',
      clientId: 'meanwhile',
      text: 'Row two, block two has a tear.',
    });
    const unsent = Math.max(...sockets.map((socket) => socket.writableLength));
    expect(unsent).toBeGreaterThan(0);
    expect(unsent).toBeLessThan(10 * 1024 * 1024);
    raw.resume();
    await page.until('events', ({ events }) => events.at(-1)?.seq === 10_003);
    expect(page.seqs).toEqual(Array.from({ length: 10_003 }, (_, i) => i + 1));
  });
});
