import { readFile, stat } from 'node:fs/promises';
import { request } from 'node:https';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { WebSocket } from 'ws';
import { lanAddresses } from '../../server/lan/lan-addresses.ts';
import { CODE_LASTS_MS, PairingCode } from '../../server/lan/pairing-code.ts';
import type { PairedDevice, Pairing } from '../../shared/settings.ts';
import { LiveClient, type Server, startServer } from './start-server.ts';

// Only 127.0.0.1 and ::1 are the machine itself; the rest of the loopback's network stands for another device here.
const PHONE = '127.0.0.2';

type Answer = { status: number; cookie: string | undefined; body: unknown };

async function startWithDoor(dataFolder?: string): Promise<{ server: Server; port: number; ca: string }> {
  const server = await startServer({ lan: [PHONE], ...(dataFolder ? { dataFolder } : {}) });
  const door = server.app.door!;
  await door.listen(0);
  return { server, port: door.port, ca: door.certificate.cert };
}

/** Asks over real TLS, from the phone's address unless told otherwise, trusting only the machine's own certificate. */
function ask(
  { port, ca }: { port: number; ca: string },
  method: string,
  path: string,
  options: { cookie?: string; json?: unknown; from?: string; headers?: Record<string, string> } = {},
): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const asked = request(
      {
        host: PHONE,
        port,
        method,
        path,
        ca,
        // Named in the certificate; else the name would be taken from a foreign Host.
        servername: 'localhost',
        localAddress: options.from ?? PHONE,
        agent: false,
        headers: {
          ...(options.cookie ? { cookie: options.cookie } : {}),
          ...(options.json === undefined ? {} : { 'content-type': 'application/json' }),
          ...options.headers,
        },
      },
      (answer) => {
        let text = '';
        answer.setEncoding('utf8');
        answer.on('data', (piece: string) => {
          text += piece;
        });
        answer.on('end', () =>
          resolve({
            status: answer.statusCode!,
            cookie: answer.headers['set-cookie']?.[0],
            body: answer.headers['content-type']?.includes('json') ? JSON.parse(text) : text,
          }),
        );
      },
    );
    asked.on('error', reject);
    asked.end(options.json === undefined ? undefined : JSON.stringify(options.json));
  });
}

const codeOf = async (server: Server): Promise<string> =>
  ((await (await server.get('/api/pairing')).json()) as Pairing).code!;

async function pair(way: {
  server: Server;
  port: number;
  ca: string;
}): Promise<{ cookie: string; device: PairedDevice }> {
  const json = { code: await codeOf(way.server), name: 'Tablet at the frame' };
  const { status, cookie, body } = await ask(way, 'POST', '/api/pairing', { json });
  expect(status).toBe(201);
  // RFC 6265bis: HttpOnly keeps it from scripts, Strict from other sites, __Host- from other hosts.
  expect(cookie).toMatch(
    /^__Host-quiltside-device=[\w-]{43}; Path=\/; Max-Age=\d+; HttpOnly; Secure; SameSite=Strict$/,
  );
  return { cookie: cookie!.split(';')[0]!, device: body as PairedDevice };
}

async function upgradeStatus(way: { port: number; ca: string }, cookie?: string): Promise<number> {
  const socket = new WebSocket(`wss://${PHONE}:${way.port}/live`, {
    ca: way.ca,
    localAddress: PHONE,
    ...(cookie ? { headers: { cookie } } : {}),
  });
  return new Promise((resolve) => {
    socket.on('unexpected-response', (_, answer) => resolve(answer.statusCode!));
    socket.on('open', () => {
      socket.close();
      resolve(101);
    });
    socket.on('error', () => undefined);
  });
}

test('a device that was not let in gets the page and nothing else, with clear words', async () => {
  const way = await startWithDoor();
  const id = await way.server.makeQuilt();
  for (const path of [
    '/api/quilts',
    `/api/quilts/${id}/events`,
    '/api/settings',
    '/api/devices',
    '/api/pairing',
    '/api/health',
    `/%61pi/quilts/${id}`,
  ]) {
    const { status, body } = await ask(way, 'GET', path);
    expect([401, 404], path).toContain(status);
    expect((body as { message: string }).message, path).toMatch(/not let in yet|There is nothing at/);
  }
  // The static side refuses this spelling before anything looks for a quilt.
  expect((await ask(way, 'GET', `//api/quilts/${id}`)).status).toBe(403);
  expect((await ask(way, 'GET', '/api/quilts')).status).toBe(401);
  expect((await ask(way, 'PUT', '/api/settings', { json: { idleMin: 10 } })).status).toBe(401);
  expect((await ask(way, 'DELETE', `/api/quilts/${id}`)).status).toBe(401);
  expect((await ask(way, 'POST', '/api/pairing/renew', { json: {} })).status).toBe(401);
  expect(await upgradeStatus(way)).toBe(401);
  expect(await upgradeStatus(way, `__Host-quiltside-device=${'A'.repeat(43)}`)).toBe(401);
  // The machine itself, over its loopback, is at home.
  expect((await way.server.get('/api/quilts')).status).toBe(200);
});

test('the code lets one device in, which works like the machine, and is forgotten when it is sent away', async () => {
  const way = await startWithDoor();
  const id = await way.server.makeQuilt();
  const code = await codeOf(way.server);
  const { cookie, device } = await pair(way);
  expect(device).toMatchObject({ name: 'Tablet at the frame' });

  expect((await ask(way, 'GET', '/api/quilts', { cookie })).body).toMatchObject([{ id }]);
  const live = await LiveClient.open(`wss://${PHONE}:${way.port}`, {
    ca: way.ca,
    localAddress: PHONE,
    headers: { cookie },
  });
  live.send({ type: 'hello', quiltId: id, sinceSeq: 0 });
  live.send({
    type: 'command',
    ref: 'a',
    command: { type: 'take-note', clientId: 'n', text: 'Row one is sound.' },
  });
  expect(await live.until('done')).toMatchObject({ noteId: 'n' });

  // Once only; and the code is the machine's own to see.
  const again = await ask(way, 'POST', '/api/pairing', { json: { code, name: 'Another' } });
  expect(again).toMatchObject({ status: 403, cookie: undefined });
  expect((again.body as { message: string }).message).toMatch(/works once only/);
  expect((await ask(way, 'GET', '/api/pairing', { cookie })).status).toBe(403);

  // A path on the machine's disk is not for a phone to choose; the rest of the settings is.
  const folder = { backupFolder: '/tmp/chosen-by-a-phone' };
  expect((await ask(way, 'PUT', '/api/settings', { cookie, json: folder })).status).toBe(403);
  expect((await ask(way, 'PUT', '/api/settings', { cookie, json: { theme: 'dark' } })).status).toBe(200);

  // The token is on the disk as its hash only, in a file of its own.
  const kept = await readFile(join(way.server.dataFolder, 'devices.json'), 'utf8');
  expect(kept).not.toContain(cookie.split('=')[1]);
  expect(kept).toMatch(/"tokenSha256": "[0-9a-f]{64}"/);
  expect((await ask(way, 'GET', '/api/devices', { cookie })).body).toEqual([device]);

  const away = await fetch(`${way.server.address}/api/devices/${device.id}`, { method: 'DELETE' });
  expect(await away.json()).toEqual([]);
  expect(await live.untilClosed()).toMatchObject({ code: 4401 });
  expect((await ask(way, 'GET', '/api/quilts', { cookie })).status).toBe(401);
  expect(await upgradeStatus(way, cookie)).toBe(401);
});

test('a device stays let in over a restart, and the certificate stays the same', async () => {
  const way = await startWithDoor();
  const { cookie } = await pair(way);
  await way.server.close();
  const again = await startWithDoor(way.server.dataFolder);
  expect(again.ca).toBe(way.ca);
  expect((await ask(again, 'GET', '/api/devices', { cookie })).status).toBe(200);
  for (const name of ['key.pem', 'certificate.pem']) {
    expect((await stat(join(way.server.dataFolder, 'lan', name))).mode & 0o777).toBe(0o600);
  }
});

test('five wrong codes lock it, the right one too, until the machine asks for another', async () => {
  const way = await startWithDoor();
  const code = await codeOf(way.server);
  const wrong = code === '000000' ? '000001' : '000000';
  const words: string[] = [];
  for (let i = 0; i < 5; i++) {
    const { status, body } = await ask(way, 'POST', '/api/pairing', { json: { code: wrong, name: 'x' } });
    expect(status).toBe(403);
    words.push((body as { message: string }).message);
  }
  expect(words[0]).toMatch(/not the code\. 4 tries are left/);
  expect(words[4]).toMatch(/locked/);
  expect((await ask(way, 'POST', '/api/pairing', { json: { code, name: 'x' } })).status).toBe(403);
  expect(await (await way.server.get('/api/pairing')).json()).toMatchObject({ on: true, state: 'locked' });
  await way.server.post('/api/pairing/renew', {});
  await pair(way);
});

test('a code runs out after ten minutes', () => {
  let now = 0;
  const code = new PairingCode(() => now);
  const { code: digits } = code.shown!;
  now = CODE_LASTS_MS;
  expect(code.shown).toBeUndefined();
  expect(code.whyNot(digits)).toMatch(/has run out/);
});

test('names and origins that are not this machine’s are refused on the network side as well', async () => {
  const way = await startWithDoor();
  const { cookie } = await pair(way);
  const foreign = await ask(way, 'GET', '/api/quilts', {
    cookie,
    headers: { host: `quilts.example:${way.port}` },
  });
  expect(foreign.status).toBe(403);
  const origin = await ask(way, 'GET', '/api/quilts', {
    cookie,
    headers: { origin: 'https://other.example' },
  });
  expect(origin.status).toBe(403);
});

test('without --lan there is no way in and no code', async () => {
  const server = await startServer();
  expect(server.app.door).toBeUndefined();
  expect(await (await server.get('/api/pairing')).json()).toEqual({ on: false });
  const answer = await server.post('/api/pairing', { code: '123456', name: 'x' });
  expect(answer.status).toBe(409);
});

test('addresses of the network: not the loopback’s, not those of one link', () => {
  const at = (address: string, family: 'IPv4' | 'IPv6', internal = false) =>
    ({ address, family, internal, netmask: '', mac: '', cidr: null, scopeid: 0 }) as never;
  expect(
    lanAddresses({
      lo: [at('127.0.0.1', 'IPv4', true)],
      wlan: [at('fe80::1', 'IPv6'), at('2001:db8::7', 'IPv6'), at('192.0.2.7', 'IPv4')],
    }),
  ).toEqual(['192.0.2.7', '2001:db8::7']);
});
