import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { FastifyInstance } from 'fastify';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { estimate } from '../../core/estimate/estimate.ts';
import { specFromLog } from '../../core/estimate/spec-from-log.ts';
import { buildApp } from '../../server/app.ts';

let first: FastifyInstance;
let second: FastifyInstance;
const folders = [0, 1].map(() => mkdtempSync(join(tmpdir(), 'quiltside-routes-')));
const HEADERS = { host: '127.0.0.1', origin: 'http://127.0.0.1' };

beforeAll(async () => {
  first = await buildApp({ dataFolder: folders[0]!, logging: false });
  second = await buildApp({ dataFolder: folders[1]!, logging: false });
});
afterAll(async () => {
  await first.close();
  await second.close();
  for (const folder of folders) rmSync(folder, { recursive: true, force: true });
});

function form(bytes: Buffer): { headers: Record<string, string>; payload: Buffer } {
  const edge = 'edgeofform';
  const head = `--${edge}\r\ncontent-disposition: form-data; name="file"; filename="quilt.zip"\r\ncontent-type: application/zip\r\n\r\n`;
  return {
    headers: { ...HEADERS, 'content-type': `multipart/form-data; boundary=${edge}` },
    payload: Buffer.concat([Buffer.from(head), bytes, Buffer.from(`\r\n--${edge}--\r\n`)]),
  };
}

test('a quilt goes out of one machine and into another, and every event is equal', async () => {
  const made = await first.inject({
    method: 'POST',
    url: '/api/quilts',
    headers: HEADERS,
    payload: { name: 'The ferry quilt', rows: 4, blocks: 3 },
  });
  const { id } = made.json();
  for (const text of ['row two block one has a hole', 'patched it, 20 minutes']) {
    const taken = await first.inject({
      method: 'POST',
      url: `/api/quilts/${id}/commands`,
      headers: HEADERS,
      payload: { type: 'take-note', clientId: text.slice(0, 5), text },
    });
    expect(taken.statusCode).toBeLessThan(300);
  }
  const pdf = await first.inject({ url: `/api/quilts/${id}/export/pdf?document=letter`, headers: HEADERS });
  expect([pdf.statusCode, pdf.headers['content-type'], pdf.rawPayload.subarray(0, 5).toString()]).toEqual([
    200,
    'application/pdf',
    '%PDF-',
  ]);
  const unknown = await first.inject({ url: `/api/quilts/${id}/export/docx`, headers: HEADERS });
  expect(unknown.statusCode).toBe(404);
  expect(unknown.json().message).toMatch(/no format .* Expected one of pdf/);

  const zip = await first.inject({ url: `/api/quilts/${id}/export/zip`, headers: HEADERS });
  expect(zip.statusCode).toBe(200);
  const taken = await second.inject({ method: 'POST', url: '/api/quilts/import', ...form(zip.rawPayload) });
  expect(taken.statusCode, taken.body).toBe(201);
  const events = async (app: FastifyInstance): Promise<unknown> =>
    (await app.inject({ url: `/api/quilts/${id}/events`, headers: HEADERS })).json();
  expect(await events(second)).toEqual(await events(first));

  const again = await second.inject({ method: 'POST', url: '/api/quilts/import', ...form(zip.rawPayload) });
  expect([again.statusCode, again.json().message]).toEqual([409, expect.stringContaining('here already')]);
  const cut = await second.inject({
    method: 'POST',
    url: '/api/quilts/import',
    ...form(zip.rawPayload.subarray(0, 5000)),
  });
  expect([cut.statusCode, cut.json().message]).toEqual([422, expect.stringContaining('Nothing was taken')]);
  expect((await second.inject({ url: '/api/quilts', headers: HEADERS })).json()).toHaveLength(1);
}, 180_000);

test('the papers carry the price that the estimate comes to, and none while no rate is set', async () => {
  const post = (url: string, payload: object) =>
    first.inject({ method: 'POST', url, headers: HEADERS, payload });
  const { id } = (
    await post('/api/quilts', { name: 'The tollhouse quilt', rows: 4, blocks: 3, currency: 'GBP' })
  ).json();
  const command = async (payload: object) =>
    expect((await post(`/api/quilts/${id}/commands`, payload)).statusCode).toBe(200);
  const paper = async (kind: string) =>
    (await first.inject({ url: `/api/quilts/${id}/export/txt?document=${kind}`, headers: HEADERS })).body;
  for (const [clientId, text] of [
    ['a', 'row two block one has a hole, I will patch it'],
    ['b', 'bought two yards of calico for eight pounds'],
  ])
    await command({ type: 'take-note', clientId, text });
  // The hours are known and no rate: the calico alone is no price.
  expect(await paper('proposal')).not.toMatch(/The price is/);
  expect(await paper('bill')).toMatch(/No price has been worked out yet/);
  await command({ type: 'set-estimate', path: 'price.hourly', value: '24.00' });
  // What the estimate's page shows.
  const { price } = estimate(specFromLog((await first.library.quilt(id)).log).spec);
  expect(price!.lines.map(({ kind }) => kind)).toContain('labour');
  for (const kind of ['proposal', 'bill']) expect(await paper(kind)).toContain(price!.total.amount);
  // Once there are hours, the bill is by them, what was foreseen beside it, and what is not charged for named.
  await command({
    type: 'take-note',
    clientId: 'c',
    at: '2026-05-01T20:00:00Z',
    text: 'patched row two block one, from nine to ten thirty this morning',
  });
  await command({
    type: 'take-note',
    clientId: 'd',
    at: '2026-05-01T20:01:00Z',
    text: 'shopping from eleven to twelve this morning',
  });
  await command({ type: 'change-quilt', changes: { notBilled: ['shopping'] } });
  const bill = await paper('bill');
  expect(bill).toMatch(/Labour\s+£36\.00/);
  expect(bill).toMatch(/Came out/);
  expect(bill).toMatch(/Buying materials \(not charged\)\s+1 h 00/);
  expect(bill).toMatch(/Due:? +£44\.00/);
  await command({ type: 'set-estimate', path: 'price.agreed', value: '60.00' });
  expect(await paper('bill')).toMatch(/The work as agreed\s+£60\.00/);
});
