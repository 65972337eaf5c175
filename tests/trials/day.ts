import type { ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { mkdtemp, readdir, readFile, readlink, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { decodeAudio } from '../../server/speech/decode-audio.ts';
import { encodeWav } from '../../server/store/encode-wav.ts';
import type { NumberedEvent } from '../../shared/event.ts';
import { type LiveClient, spawnServer } from '../server/start-server.ts';
import type { Held } from './watched-server.ts';

export type Day = { notes: number; utterances: number; uploads: number };
export type DayReport = Day & {
  seconds: number;
  joins: number;
  heardWithWords: number;
  /** Heap after collection when the day is over, and of a server freshly started on the same folder, bytes. */
  heapAfter: number;
  heapFresh: number;
  /** Resident memory of the server and of all its processes after warming up, at each quarter, and at rest, MB. */
  residentMb: number[];
  listeningMb: number[];
  descriptors: [before: number, after: number];
  timers: [before: number, after: number];
  wrong: string[];
};

type Child = Awaited<ReturnType<typeof spawnServer>>;

const MODELS = fileURLToPath(new URL('../../models', import.meta.url));
const SPOKEN = fileURLToPath(new URL('../fixtures/spoken', import.meta.url));
const WATCHED = fileURLToPath(new URL('./watched-server.ts', import.meta.url));
const RATE = 16_000;
/** A page that drops away is waited for 20 s, a kept connection for 10 s; then all of it has to be gone. */
const QUIET_MS = 25_000;
/** What a server may hold more than a fresh one after such a day: compiled code, warm caches. */
const MORE_HEAP_BYTES = 16 * 1024 * 1024;
const CLIENTS = 3;
/** Without snapshots, so that the fresh server, too, holds all events: what is compared is then the same. */
const ALL_IN_MEMORY = { snapshotEvery: 1_000_000 };

/**
 * A working day in minutes: typed notes, utterances through the microphone's socket, uploads, and three clients that join
 * and leave, every other time by falling away in mid-sentence. Then it is quiet, and what the server still holds is looked at:
 * each thing acknowledged is in the log, no descriptor, timer or process is left, and its heap is that of a server freshly
 * started on the same log.
 */
export async function compressedDay(
  day: Day,
  say: (line: string) => void = () => undefined,
): Promise<DayReport> {
  const folder = await mkdtemp(join(tmpdir(), 'quiltside-day-'));
  const wrong: string[] = [];
  const run = ['--expose-gc', '--import', 'tsx', WATCHED];
  const start = (): Promise<Child> => spawnServer(folder, { run, modelsDir: MODELS, sizes: ALL_IN_MEMORY });
  const began = performance.now();
  let server = await start();
  try {
    const id = await server.makeQuilt();
    const said = await utterances();
    const typed = new Map<string, string>();
    const heard = new Set<string>();
    let joins = 0;
    let spoken = 0;
    let uploaded = 0;
    const jobs: string[] = [];

    const join_ = async (): Promise<LiveClient> => {
      const client = await server.live();
      client.send({ type: 'hello', quiltId: id, sinceSeq: 0 });
      await client.until('welcome');
      joins++;
      return client;
    };
    const type = async (client: LiveClient, count: number): Promise<void> => {
      for (let i = 0; i < count; i++) {
        const ref = `typed-${typed.size}-${joins}`;
        const text = `Row ${(typed.size % 7) + 1}, block ${(typed.size % 5) + 1}: ${WORK[typed.size % WORK.length]}.`;
        typed.set(ref, text);
        client.send({ type: 'command', ref, command: { type: 'take-note', clientId: ref, text } });
        await client.until('done', (message) => message.ref === ref, 60_000);
        client.messages.length = 0;
      }
    };
    const speak = async (client: LiveClient, count: number): Promise<void> => {
      const streamId = `stream-${spoken}-${joins}`;
      client.send({
        type: 'microphone-on',
        streamId,
        at: new Date().toISOString(),
        way: 'always',
        sampleRate: RATE,
      });
      for (let i = 0; i < count; i++) {
        const sound = said[spoken++ % said.length]!;
        for (let at = 0; at < sound.length; at += 4_096) client.socket.send(sound.slice(at, at + 4_096));
        const { noteId } = await client.until('heard', () => true, 180_000);
        if (noteId !== undefined) heard.add(noteId);
        client.messages.length = 0;
      }
      client.send({ type: 'microphone-off', streamId });
    };
    /** Half a sentence, and the socket is gone. */
    const fallAway = async (client: LiveClient): Promise<void> => {
      client.send({
        type: 'microphone-on',
        streamId: `half-${joins}`,
        at: new Date().toISOString(),
        way: 'always',
        sampleRate: RATE,
      });
      client.socket.send(said[0]!.slice(0, 12_000));
      client.socket.terminate();
      await client.untilClosed();
    };
    const leave = async (client: LiveClient): Promise<void> => {
      client.socket.close();
      await client.untilClosed();
    };
    const upload = async (): Promise<void> => {
      const n = uploaded++;
      const sound = Float32Array.from(said[n % said.length]!, (sample) => sample / 32_768);
      // No two recordings alike: the same one twice is refused.
      const pcm = new Float32Array(sound.length + n + 1);
      pcm.set(sound, n + 1);
      const form = new FormData();
      form.append('startAt', new Date(Date.UTC(2026, 2, 14, 10, n)).toISOString());
      form.append('file', new Blob([new Uint8Array(encodeWav(pcm))]), `evening ${n}.wav`);
      const sent = await server.get(`/api/quilts/${id}/recordings`, { method: 'POST', body: form });
      if (sent.status !== 202) wrong.push(`upload ${n}: ${sent.status} ${await sent.text()}`);
      else jobs.push(((await sent.json()) as { id: string }).id);
    };
    const untilQueueIsEmpty = async (): Promise<void> => {
      for (;;) {
        const list = (await (await server.get(`/api/quilts/${id}/jobs`)).json()) as {
          id: string;
          state: string;
          message: string;
        }[];
        if (!list.some(({ state }) => state === 'waiting' || state === 'working')) {
          for (const job of jobs)
            if (list.find((one) => one.id === job)?.state !== 'done') wrong.push(`recording ${job} not done`);
          return;
        }
        await new Promise((done) => setTimeout(done, 500));
      }
    };

    // One of each first: what is loaded once is no leak.
    const first = await join_();
    await type(first, 5);
    await speak(first, 1);
    await upload();
    await untilQueueIsEmpty();
    await fallAway(await join_());
    await leave(first);
    await new Promise((done) => setTimeout(done, QUIET_MS));
    const before = await look(server.child);
    const residentMb = [before.residentMb];
    const listeningMb = [before.listeningMb];
    say(
      `warm: ${before.residentMb} MB, ${before.descriptors.length} descriptors, ${total(before.timers)} timers`,
    );

    for (let quarter = 1; quarter <= 4; quarter++) {
      const upTo = (whole: number): number => Math.round((whole * quarter) / 4);
      const notes = upTo(day.notes) - typed.size;
      const words = upTo(day.utterances) - spoken;
      const shares = (whole: number, i: number): number =>
        Math.floor((whole * (i + 1)) / CLIENTS) - Math.floor((whole * i) / CLIENTS);
      await Promise.all([
        ...Array.from({ length: CLIENTS }, async (_, i) => {
          for (let visit = 0; visit < 2; visit++) {
            const client = await join_();
            const part = (whole: number): number =>
              visit === 0 ? Math.floor(shares(whole, i) / 2) : Math.ceil(shares(whole, i) / 2);
            await type(client, part(notes));
            if (part(words) > 0) await speak(client, part(words));
            await ((visit + i) % 2 === 0 ? leave(client) : fallAway(client));
          }
        }),
        (async () => {
          while (uploaded < upTo(day.uploads)) await upload();
        })(),
      ]);
      const { residentMb: now, listeningMb: ears } = await look(server.child);
      residentMb.push(now);
      listeningMb.push(ears);
      say(
        `quarter ${quarter}: ${typed.size} notes, ${spoken} utterances, ${uploaded} uploads, ${joins} joins, ${now} MB, with its processes ${ears} MB, ${Math.round((performance.now() - began) / 1000)} s`,
      );
    }
    await untilQueueIsEmpty();
    await new Promise((done) => setTimeout(done, QUIET_MS));
    const after = await look(server.child);
    residentMb.push(after.residentMb);
    listeningMb.push(after.listeningMb);

    for (const one of surplus(before.descriptors, after.descriptors)) wrong.push(`descriptor left: ${one}`);
    for (const [where, count] of Object.entries(after.timers)) {
      const was = before.timers[where] ?? 0;
      if (count > was) wrong.push(`timer left: ${count - was} set in ${where}`);
    }
    if (after.processes.length > before.processes.length)
      wrong.push(`processes left: ${before.processes.length} before, ${after.processes.length} after`);
    for (const name of ['unheard', 'incoming'])
      for (const file of await readdir(join(folder, 'quilts', id, name)).catch(() => []))
        wrong.push(`file left: ${name}/${file}`);

    const { events } = (await (await server.get(`/api/quilts/${id}/events`)).json()) as {
      events: NumberedEvent[];
    };
    const kept = new Map(
      events.flatMap(({ event }) => (event.type === 'note-taken' ? [[event.note.id, event.note]] : [])),
    );
    for (const [note, text] of typed) if (kept.get(note)?.text !== text) wrong.push(`note ${note} lost`);
    const sounds = new Set(await readdir(join(folder, 'quilts', id, 'audio')));
    for (const note of heard) {
      const file = kept.get(note)?.audio?.file;
      if (file === undefined || !sounds.has(file)) wrong.push(`utterance ${note} lost`);
    }
    for (const job of jobs)
      if (!events.some(({ event }) => event.type === 'recording-added' && event.recording.id === job))
        wrong.push(`recording ${job} lost`);

    server.child.kill('SIGTERM');
    await once(server.child, 'exit');
    server = await start();
    const client = await join_();
    await type(client, 5);
    await speak(client, 1);
    await leave(client);
    await new Promise((done) => setTimeout(done, 1_000));
    const fresh = await look(server.child);
    if (after.heapBytes > fresh.heapBytes + MORE_HEAP_BYTES)
      wrong.push(`heap: ${after.heapBytes} bytes after the day, ${fresh.heapBytes} on a fresh start`);
    return {
      ...day,
      seconds: Math.round((performance.now() - began) / 1000),
      joins,
      heardWithWords: heard.size,
      heapAfter: after.heapBytes,
      heapFresh: fresh.heapBytes,
      residentMb,
      listeningMb,
      descriptors: [before.descriptors.length, after.descriptors.length],
      timers: [total(before.timers), total(after.timers)],
      wrong,
    };
  } finally {
    server.child.kill('SIGKILL');
    await rm(folder, { recursive: true, force: true });
  }
}

const WORK = [
  're-sewed the split seam by hand, twenty minutes',
  'a tear two inches long',
  'patched with the brown stripe',
  'stained, leave it',
  'netted over the worn place',
];

/** A note, twice, and a call of two words that is none, in a synthetic voice, each with the silence that ends it. */
async function utterances(): Promise<Int16Array[]> {
  return Promise.all(
    ['note.flac', 'note.flac', 'dismiss.flac'].map(async (name) => {
      const pieces: Float32Array[] = [new Float32Array(4_000)];
      for await (const { pcm } of decodeAudio(join(SPOKEN, name))) pieces.push(pcm.slice());
      pieces.push(new Float32Array(1.8 * RATE));
      return Int16Array.from(
        pieces.flatMap((piece) => [...piece]).map((sample) => Math.round(sample * 32_767)),
      );
    }),
  );
}

const total = (timers: Held['timers']): number => Object.values(timers).reduce((sum, n) => sum + n, 0);

/** What there is more of after than before. */
function surplus(before: readonly string[], after: readonly string[]): string[] {
  const rest = [...before];
  return after.filter((one) => {
    const at = rest.indexOf(one);
    if (at !== -1) rest.splice(at, 1);
    return at === -1;
  });
}

type Look = Held & {
  descriptors: string[];
  processes: number[];
  residentMb: number;
  listeningMb: number;
};

async function look(child: ChildProcess): Promise<Look> {
  const answer = once(child, 'message');
  child.send('look');
  const [held] = (await answer) as [Held];
  const pid = child.pid!;
  const processes = await descendants(pid);
  const mb = await Promise.all([pid, ...processes].map(residentMbOf));
  return {
    ...held,
    processes,
    descriptors: await descriptorsOf(pid),
    residentMb: mb[0]!,
    listeningMb: mb.reduce((sum, one) => sum + one, 0),
  };
}

/** What each open descriptor is: a path, or its kind. Linux only, by /proc (proc(5)). */
async function descriptorsOf(pid: number): Promise<string[]> {
  const links = await Promise.all(
    (await readdir(`/proc/${pid}/fd`)).map((fd) => readlink(`/proc/${pid}/fd/${fd}`).catch(() => '')),
  );
  return (
    links
      .filter((link) => link !== '')
      .map((link) => link.replace(/^(socket|pipe):.*/, '$1'))
      // The journal's open file has another name after a day of closed ones.
      .map((link) => link.replace(/journal(-\d+)?\.jsonl$/, 'journal'))
  );
}

async function descendants(pid: number): Promise<number[]> {
  const children = (await readFile(`/proc/${pid}/task/${pid}/children`, 'utf8').catch(() => ''))
    .split(' ')
    .filter((one) => one !== '')
    .map(Number);
  return [...children, ...(await Promise.all(children.map(descendants))).flat()];
}

async function residentMbOf(pid: number): Promise<number> {
  const status = await readFile(`/proc/${pid}/status`, 'utf8').catch(() => '');
  return Math.round(Number(/VmRSS:\s+(\d+)/.exec(status)?.[1] ?? 0) / 1024);
}
