import { once } from 'node:events';
import { describe, expect, test } from 'vitest';
import WebSocket from 'ws';
import { LiveClient, startServer } from './start-server.ts';

describe('the stream of events', () => {
  test('a page gets all from the beginning, then each as it happens; a second page gets the same', async () => {
    const server = await startServer();
    const id = await server.makeQuilt();
    await server.command(id, { type: 'take-note', clientId: 'a', text: 'one' });
    const first = await server.live();
    first.send({ type: 'hello', quiltId: id, sinceSeq: 0 });
    await first.until('events', ({ events }) => events.at(-1)?.seq === 3);
    const second = await server.live();
    second.send({ type: 'hello', quiltId: id, sinceSeq: 0 });
    await second.until('welcome', ({ seq }) => seq === 3);
    first.send({
      type: 'command',
      ref: 'r1',
      command: { type: 'take-note', clientId: 'b', text: 'Row two, block two has a tear.' },
    });
    expect(await first.until('done')).toMatchObject({
      ref: 'r1',
      seq: 5,
      noteId: 'b',
      reading: { act: 'log' },
    });
    for (const page of [first, second]) {
      await page.until('events', ({ events }) => events.at(-1)?.seq === 5);
      expect(page.seqs).toEqual([1, 2, 3, 4, 5]);
    }
  });

  test('resumes by number: no event twice, none left out, while notes pour in', async () => {
    const server = await startServer();
    const id = await server.makeQuilt();
    const pour = Promise.all(
      Array.from({ length: 120 }, (_, i) =>
        server.command(id, { type: 'take-note', clientId: `n${i}`, text: `note ${i}` }),
      ),
    );
    const seen: number[] = [];
    for (let round = 0; round < 6; round++) {
      const page = await server.live();
      page.send({ type: 'hello', quiltId: id, sinceSeq: seen.at(-1) ?? 0 });
      await page.until('welcome');
      await new Promise((done) => setTimeout(done, 30));
      page.socket.terminate();
      await page.untilClosed();
      seen.push(...page.seqs);
    }
    await pour;
    const last = await server.live();
    last.send({ type: 'hello', quiltId: id, sinceSeq: seen.at(-1) ?? 0 });
    const { seq } = await last.until('welcome');
    if ((seen.at(-1) ?? 0) < seq) await last.until('events', ({ events }) => events.at(-1)?.seq === seq);
    seen.push(...last.seqs);
    expect(seen).toEqual(Array.from({ length: 241 }, (_, i) => i + 1));
  });

  test('notes sent without waiting are taken in their order', async () => {
    const server = await startServer();
    const id = await server.makeQuilt();
    const page = await server.live();
    page.send({ type: 'hello', quiltId: id, sinceSeq: 0 });
    for (let i = 0; i < 50; i++) {
      page.send({
        type: 'command',
        ref: `r${i}`,
        command: { type: 'take-note', clientId: `n${i}`, text: `note ${i}` },
      });
    }
    await page.until('done', ({ ref }) => ref === 'r49');
    const { log } = await server.app.library.quilt(id);
    expect(
      log.eventsSince(0).flatMap(({ event }) => (event.type === 'note-taken' ? [event.note.id] : [])),
    ).toEqual(Array.from({ length: 50 }, (_, i) => `n${i}`));
  });
});

describe('what is not understood or not allowed', () => {
  test.each([
    ['no JSON', 'hello', /has to be JSON/],
    ['no message', '{"type":"dance"}', /type/],
    [
      'a command before hello',
      JSON.stringify({ type: 'command', ref: 'r', command: { type: 'take-note', clientId: 'c', text: 'x' } }),
      /hello/,
    ],
    [
      'a quilt that is not there',
      JSON.stringify({ type: 'hello', quiltId: 'nowhere', sinceSeq: 0 }),
      /no quilt/,
    ],
  ])('%s is refused in words, and the socket stays', async (_, text, words) => {
    const server = await startServer();
    const page = await server.live();
    page.socket.send(text);
    expect((await page.until('refused')).message).toMatch(words);
    page.send({ type: 'ping' });
    await page.until('pong');
  });

  test('a refused command is answered under its own reference', async () => {
    const server = await startServer();
    const id = await server.makeQuilt();
    const page = await server.live();
    page.send({ type: 'hello', quiltId: id, sinceSeq: 0 });
    page.send({ type: 'command', ref: 'r7', command: { type: 'remove-span', spanId: 'none' } });
    page.send({ type: 'command', ref: 'r8', command: { type: 'remove-entry', entryId: 'none' } });
    expect(await page.until('refused')).toMatchObject({ ref: 'r8' });
  });

  test('where one part of a command cannot be taken, the refusal names it', async () => {
    const server = await startServer();
    const id = await server.makeQuilt();
    const page = await server.live();
    page.send({ type: 'hello', quiltId: id, sinceSeq: 0 });
    page.send({
      type: 'command',
      ref: 'r9',
      command: { type: 'set-estimate', path: 'backing.seam', value: -1 },
    });
    expect(await page.until('refused')).toMatchObject({ ref: 'r9', field: 'backing.seam' });
  });

  test('a message over the limit ends the socket', async () => {
    const server = await startServer();
    const page = await server.live();
    page.socket.send('x'.repeat(3_000_000));
    expect((await page.untilClosed()).code).toBe(1009);
  });

  test('a page that sends without end is let go', async () => {
    const server = await startServer();
    const page = await server.live();
    for (let i = 0; i < 1000; i++) page.send({ type: 'ping' });
    expect((await page.untilClosed()).code).toBe(1008);
  });

  test.each([
    ['another page', { origin: 'http://elsewhere.example' }],
    ['another name', { headers: { host: 'elsewhere.example' } }],
  ])('%s gets no socket', async (_, options) => {
    const server = await startServer();
    const socket = new WebSocket(`${server.address.replace('http', 'ws')}/live`, options);
    const [, answer] = (await once(socket, 'unexpected-response')) as [unknown, { statusCode: number }];
    expect(answer.statusCode).toBe(403);
  });

  test('there is no socket at another address', async () => {
    const server = await startServer();
    const socket = new WebSocket(`${server.address.replace('http', 'ws')}/elsewhere`);
    const [, answer] = (await once(socket, 'unexpected-response')) as [unknown, { statusCode: number }];
    expect(answer.statusCode).toBe(404);
  });
});

test('the server stops though pages are open, and tells them so', async () => {
  const server = await startServer();
  const id = await server.makeQuilt();
  const page = await LiveClient.open(server.address.replace('http', 'ws'));
  page.send({ type: 'hello', quiltId: id, sinceSeq: 0 });
  await page.until('welcome');
  await server.close();
  expect((await page.untilClosed()).code).toBe(1001);
});

test('without a recogniser a microphone is refused in words', async () => {
  const server = await startServer();
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
  expect((await page.until('refused')).message).toMatch(/typed notes are taken/);
});
