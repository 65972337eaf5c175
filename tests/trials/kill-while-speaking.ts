import { once } from 'node:events';
import { mkdtemp, readdir, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { createAudioOutbox } from '../../client/audio/audio-outbox.ts';
import { decodeAudio } from '../../server/speech/decode-audio.ts';
import type { Unheard } from '../../server/store/unheard-sound.ts';
import type { NumberedEvent } from '../../shared/event.ts';
import type { Note } from '../../shared/note.ts';
import type { ClientMessage } from '../../shared/wire.ts';
import { type LiveClient, spawnServer } from '../server/start-server.ts';

export type SpokenKillReport = {
  rounds: number;
  /** Kills before the server had said that any sound of this start is safe; the rest came later. */
  early: number;
  utterances: number;
  /** Typed meanwhile, and acknowledged. */
  typed: number;
  /** Seconds of sound sent, and what of it a page had to send again. */
  soundS: number;
  againS: number;
  /** Utterances that only the marks on the disk knew of after a kill. */
  leftOver: number;
  /** Share of the words of each utterance that are in its notes, mean. */
  wordsKept: number;
  lost: string[];
  /** Heard as two notes that share half a second or more. */
  twice: string[];
};

const MODELS = fileURLToPath(new URL('../../models', import.meta.url));
const DEMO = fileURLToPath(new URL('../../server/demo', import.meta.url));
const RATE = 16_000;
const FRAME = 512;
/** She talks so much faster than life, so that a hundred rounds end; the page's clock is that of the sound. */
const SPEED = 5;
const TICK_MS = 20;
const MOST_HELD_S = 120;
/** What the detector may leave off either end of an utterance, s. */
const EDGE_S = 0.25;
/** An utterance of which fewer words are in the log is lost; a few are always misheard. */
const LEAST_WORDS = 0.5;

type Clip = { text: string; pcm: Int16Array };
/** An utterance as it was said: `from` and `to` are moments of the page's clock between which there is voice, ms. */
type Spoken = { text: string; stretch: number; from: number; to: number };
type Kept = { id: string; from: number; to: number; text?: string };

/**
 * Kills a real server with SIGKILL at random moments while somebody speaks: real frames over a real socket through the
 * page's own outbox, the real voice detector and recogniser, and typed notes beside it. After each kill every utterance
 * whose end the page had been told is safe has to be on the disk, as a note or as sound that is still to be heard; when all is over
 * each has to be in the log, in words, once.
 */
export async function killWhileSpeaking(
  rounds: number,
  say: (line: string) => void = () => undefined,
): Promise<SpokenKillReport> {
  const folder = await mkdtemp(join(tmpdir(), 'quiltside-speaking-'));
  const data = join(folder, 'data');
  const clips = await readClips();
  const lost: string[] = [];
  const spoken: Spoken[] = [];
  const typed = new Map<string, string>();
  let early = 0;
  let leftOver = 0;
  let sent = 0;

  // The page: its outbox, and what it was told is safe, by stretch of sound.
  let page: LiveClient | undefined;
  let clockMs = Date.parse('2026-03-14T18:00:00.000Z');
  const stretches: { from: number; safe: number }[] = [];
  const streams = new Map<string, { stretch: number; atMs: number }>();
  const isOpen = (): boolean => page?.socket.readyState === 1;
  const outbox = createAudioOutbox(
    {
      say(message: ClientMessage) {
        if (!isOpen()) return false;
        if (message.type === 'microphone-on') {
          const atMs = Date.parse(message.at);
          streams.set(message.streamId, {
            stretch: stretches.findLastIndex(({ from }) => from <= atMs + 1),
            atMs,
          });
        }
        page!.send(message);
        return true;
      },
      sendAudio(frame) {
        if (!isOpen()) return false;
        page!.socket.send(frame);
        sent += frame.length;
        return true;
      },
      bufferedBytes: () => page?.socket.bufferedAmount ?? 0,
    },
    () => crypto.randomUUID(),
  );
  const beginStretch = (): void => {
    clockMs += 1_000;
    stretches.push({ from: clockMs, safe: clockMs });
    outbox.begin('always', clockMs);
  };

  // Somebody talks, whether there is a server or not.
  let pushed = 0;
  let script = new Int16Array(0);
  let at = 0;
  let isTalking = true;
  const talk = (): void => {
    for (let n = Math.round((TICK_MS / 1000) * SPEED * (RATE / FRAME)); n > 0; n--) {
      if (at + FRAME > script.length) {
        // What a page holds is bounded; this one comes to know the server for seconds only.
        if (!isTalking || outbox.heldS() > MOST_HELD_S) return;
        if (spoken.length % 6 === 5) {
          outbox.end();
          beginStretch();
        }
        const clip = clips[Math.floor(Math.random() * clips.length)]!;
        const before = Math.round((0.2 + Math.random()) * RATE);
        const after = Math.round((1.5 + Math.random()) * RATE);
        // Less than a frame, and silence.
        const left = script.subarray(at);
        const from = clockMs + ((left.length + before) / RATE) * 1000;
        const to = from + (clip.pcm.length / RATE) * 1000;
        spoken.push({ text: clip.text, stretch: stretches.length - 1, from, to });
        script = Int16Array.from([...left, ...new Int16Array(before), ...clip.pcm, ...new Int16Array(after)]);
        at = 0;
      }
      outbox.push(script.slice(at, at + FRAME));
      at += FRAME;
      pushed += FRAME;
      clockMs += (FRAME / RATE) * 1000;
    }
  };
  const pump = setInterval(() => outbox.flush(), 50);
  beginStretch();
  const voice = setInterval(talk, TICK_MS);

  let quiltId: string | undefined;
  const onDisk = async (id: string): Promise<Kept[]> => {
    const place = join(data, 'quilts', id);
    const kept: Kept[] = [];
    for (const name of await readdir(join(place, 'unheard')).catch(() => [])) {
      if (!name.endsWith('.json')) continue;
      const sound = JSON.parse(await readFile(join(place, 'unheard', name), 'utf8')) as Unheard;
      const bytes = await readFile(join(place, 'audio', `${sound.id}.wav`)).catch(() => Buffer.alloc(0));
      const from = Date.parse(sound.at);
      // Header and 16-bit samples: all of it, or it does not count.
      if (bytes.length >= 44 + Math.floor(sound.seconds * RATE - 1) * 2)
        kept.push({ id: sound.id, from, to: from + sound.seconds * 1000 });
    }
    return kept;
  };
  const inLog = async (server: { get: (path: string) => Promise<Response> }, id: string) => {
    const { events } = (await (await server.get(`/api/quilts/${id}/events`)).json()) as {
      events: NumberedEvent[];
    };
    return events.flatMap(({ event }) => (event.type === 'note-taken' ? [event.note] : []));
  };
  const lookFor = (kept: readonly Kept[], when: string): void => {
    for (const [n, one] of spoken.entries()) {
      const safe = stretches[one.stretch]!.safe;
      const from = one.from + EDGE_S * 1000;
      const to = Math.min(one.to, safe) - EDGE_S * 1000;
      if (to > from && !covers(kept, from, to)) lost.push(`${when}: utterance ${n} “${one.text}”`);
    }
  };

  try {
    for (let round = 0; round <= rounds; round++) {
      const marks = quiltId === undefined ? [] : await onDisk(quiltId);
      const server = await spawnServer(data, { modelsDir: MODELS, sizes: SMALL });
      try {
        quiltId ??= await server.makeQuilt({ name: 'Lock cottage', rows: 7, blocks: 6 });
        const id = quiltId;
        const notes = await inLog(server, id);
        const known = new Set(notes.map((note) => note.id));
        leftOver += marks.filter((mark) => !known.has(mark.id)).length;
        lookFor([...marks, ...keptOf(notes)], `after kill ${round}`);
        for (const [note, text] of typed)
          if (notes.find((one) => one.id === note)?.text !== text) lost.push(`typed note ${note}`);

        let told = false;
        page = await server.live();
        page.socket.on('message', (bytes) => {
          const message = JSON.parse(String(bytes)) as { type: string; streamId: string; samples?: number };
          if (message.type !== 'level' || message.samples === undefined) return;
          const stream = streams.get(message.streamId)!;
          const stretch = stretches[stream.stretch]!;
          stretch.safe = Math.max(stretch.safe, stream.atMs + (message.samples / RATE) * 1000);
          told = true;
          outbox.acknowledge(message.streamId, message.samples);
        });
        page.send({ type: 'hello', quiltId: id, sinceSeq: 0 });
        await page.until('welcome');
        outbox.opened();
        if (round === rounds) {
          isTalking = false;
          while (at + FRAME <= script.length) await rest(TICK_MS);
          outbox.end();
          for (const end = Date.now() + 300_000; ; await rest(200)) {
            if (outbox.heldS() === 0 && (await onDisk(id)).length === 0) break;
            if (Date.now() > end) {
              lost.push(
                `${outbox.heldS()} s still held, ${(await onDisk(id)).length} unheard after five minutes`,
              );
              break;
            }
          }
          const all = await inLog(server, id);
          for (const stretch of stretches) stretch.safe = Number.POSITIVE_INFINITY;
          lookFor(keptOf(all), 'at the end');
          return {
            rounds,
            early,
            utterances: spoken.length,
            typed: typed.size,
            soundS: Math.round(pushed / RATE),
            againS: Math.round((sent - pushed) / RATE),
            leftOver,
            ...wordsOf(spoken, keptOf(all), lost),
            lost,
            twice: sharedBy(keptOf(all)),
          };
        }

        let isTyping = true;
        const typing = (async () => {
          for (let n = 0; isTyping; n++) {
            const ref = `typed-${round}-${n}`;
            const text = `Row ${(n % 7) + 1}, block ${(n % 5) + 1}: a tear.`;
            page!.send({ type: 'command', ref, command: { type: 'take-note', clientId: ref, text } });
            try {
              await page!.until('done', (message) => message.ref === ref, 60_000);
            } catch {
              return;
            }
            typed.set(ref, text);
            await rest(150);
          }
        })();
        // One in four while it gets ready, the rest in the midst of hearing.
        const isEarly = Math.random() < 0.25;
        const ready = Date.now() + 60_000;
        while (!isEarly && !told && Date.now() < ready) await rest(50);
        // Now and then long enough to catch up with all that is held.
        await rest(Math.random() * (Math.random() < 0.3 ? 12_000 : 3_000));
        if (!told) early++;
        server.child.kill('SIGKILL');
        isTyping = false;
        await once(server.child, 'exit');
        await page.untilClosed();
        outbox.closed();
        await typing;
        say(
          `round ${round + 1} of ${rounds}: ${spoken.length} utterances, ${Math.round(outbox.heldS())} s held, ${lost.length} lost`,
        );
      } finally {
        server.child.kill('SIGKILL');
      }
    }
    throw new Error('The last round returns.');
  } finally {
    clearInterval(pump);
    clearInterval(voice);
    await rm(folder, { recursive: true, force: true });
  }
}

/** So small that segments are closed and snapshots written in the midst of it. */
const SMALL = { segmentBytes: 30_000, snapshotEvery: 25 };
const rest = (ms: number): Promise<void> => new Promise((done) => setTimeout(done, ms));

const keptOf = (notes: readonly Note[]): Kept[] =>
  notes.flatMap(({ id, audio, text }) => {
    if (!audio?.stretch) return [];
    // The note's own moment is to the second.
    const to = Date.parse(audio.stretch.endAt);
    return [{ id, from: to - (audio.endS - audio.startS) * 1000, to, text }];
  });

/** Whether pieces, with gaps of at most the silence that parts two utterances, reach over a stretch of time. */
function covers(kept: readonly Kept[], from: number, to: number): boolean {
  let reached = from;
  for (const piece of [...kept].sort((a, b) => a.from - b.from)) {
    if (piece.to < reached) continue;
    if (piece.from > reached + MOST_GAP_MS) break;
    reached = Math.max(reached, piece.to);
  }
  return reached >= to;
}
/** A comma of the synthetic voices is up to 0.9 s long. */
const MOST_GAP_MS = 900;

const plain = (text: string): string[] => text.toLowerCase().match(/[a-z]+/g) ?? [];

/** The share of each utterance's words that its notes have; where it is small, the utterance was not heard whole. */
function wordsOf(spoken: readonly Spoken[], kept: readonly Kept[], lost: string[]): { wordsKept: number } {
  let sum = 0;
  for (const [n, one] of spoken.entries()) {
    const mine = kept.filter(({ from, to }) => Math.min(to, one.to) - Math.max(from, one.from) > 100);
    const heard = plain(mine.map(({ text }) => text).join(' '));
    const said = plain(one.text);
    const share = said.filter((word) => heard.includes(word)).length / said.length;
    sum += share;
    if (share < LEAST_WORDS)
      lost.push(`utterance ${n} “${one.text}” was heard as “${mine.map(({ text }) => text).join(' | ')}”`);
  }
  return { wordsKept: Math.round((sum / spoken.length) * 1000) / 1000 };
}

function sharedBy(kept: readonly Kept[]): string[] {
  const inOrder = [...kept].sort((a, b) => a.from - b.from);
  return inOrder.flatMap((one, i) => {
    const next = inOrder[i + 1];
    return next && one.to - next.from >= 500 ? [`“${one.text}” and “${next.text}”`] : [];
  });
}

/** The spoken notes of the demo, a synthetic voice, without the silence at their ends. */
async function readClips(): Promise<Clip[]> {
  const lines = (await readFile(join(DEMO, 'notes.jsonl'), 'utf8')).trim().split('\n');
  const notes = lines.map((line) => JSON.parse(line) as { text: string; audio?: string });
  return Promise.all(
    notes
      .filter((note) => note.audio !== undefined)
      .map(async ({ text, audio }) => {
        const pieces: number[] = [];
        for await (const { pcm } of decodeAudio(join(DEMO, audio!)))
          for (const sample of pcm) pieces.push(Math.round(sample * 32_767));
        const isLoud = (sample: number): boolean => Math.abs(sample) > 300;
        return {
          text,
          pcm: Int16Array.from(pieces.slice(pieces.findIndex(isLoud), pieces.findLastIndex(isLoud))),
        };
      }),
  );
}
