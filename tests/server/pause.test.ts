import { existsSync } from 'node:fs';
import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { decodeAudio } from '../../server/speech/decode-audio.ts';
import { RECOGNISER_MODEL } from '../../shared/recogniser-model.ts';
import type { LISTENING_WAYS, ListeningPause } from '../../shared/wire.ts';
import { type LiveClient, type Server, startServer } from './start-server.ts';

const modelsDir = fileURLToPath(new URL('../../models', import.meta.url));
/** Sentences in a synthetic voice (flite slt). */
const spoken = fileURLToPath(new URL('../fixtures/spoken', import.meta.url));
const ready = existsSync(join(modelsDir, RECOGNISER_MODEL));
const BEGAN = '2026-03-14T10:00:00.000Z';

/** One microphone that is spoken into; time is that of its sound, however fast it is sent. */
class Speaker {
  sent = 0;
  /** Messages before this one were looked at. */
  #seen = 0;

  constructor(
    readonly page: LiveClient,
    readonly way: (typeof LISTENING_WAYS)[number],
    readonly at = BEGAN,
  ) {}

  static async open(
    server: Server,
    quiltId: string,
    way: Speaker['way'],
    pause?: ListeningPause,
    at = BEGAN,
  ) {
    const page = await server.live();
    page.send({ type: 'hello', quiltId, sinceSeq: 0 });
    await page.until('welcome');
    const on = { type: 'microphone-on', streamId: 's', at, way, sampleRate: 16_000 } as const;
    page.send(pause ? { ...on, pause } : on);
    return new Speaker(page, way, at);
  }

  async quiet(seconds: number): Promise<void> {
    for (let left = seconds * 16_000; left > 0; left -= 8_000) {
      this.page.socket.send(new Int16Array(Math.min(8_000, left)));
      this.sent += Math.min(8_000, left);
      // As a page does that sends on what it held: under the limit of messages in a second.
      await new Promise((done) => setTimeout(done, 5));
    }
  }

  async speak(name: string): Promise<void> {
    for await (const { pcm } of decodeAudio(join(spoken, `${name}.flac`))) {
      this.page.socket.send(Int16Array.from(pcm, (sample) => Math.round(sample * 32_767)));
      this.sent += pcm.length;
    }
  }

  /** Says one sentence and waits until it has been heard; the words, or '' where they were left out. */
  async say(name: string, silenceS = 2) {
    await this.speak(name);
    await this.quiet(silenceS);
    const from = this.#seen;
    const heard = await this.page.until(
      'heard',
      (message) => this.page.messages.indexOf(message) >= from,
      60_000,
    );
    this.#seen = this.page.messages.indexOf(heard) + 1;
    return heard;
  }

  pauses = () => this.page.messages.flatMap((m) => (m.type === 'pause' ? [m.pause] : []));
}

const secondsAfter = (moment: string): number => (Date.parse(moment) - Date.parse(BEGAN)) / 1000;

test.skipIf(!ready)(
  'not listening for a minute: what is said meanwhile is nowhere, and after it notes are taken again',
  async () => {
    const server = await startServer({ modelsDir });
    const id = await server.makeQuilt();
    const { log: _, folder } = await server.app.library.quilt(id);
    const her = await Speaker.open(server, id, 'always');
    await her.quiet(0.5);
    // The order itself is kept beside the work, as all that is said.
    expect(await her.say('pause-one-minute')).toMatchObject({ reading: { act: 'aside', entries: [] } });
    const pause = her.pauses()[0]!;
    expect(secondsAfter(pause.until!) - secondsAfter(pause.from)).toBe(60);
    expect(secondsAfter(pause.from)).toBeLessThan(4);
    const partials = () => her.page.messages.filter(({ type }) => type === 'partial').length;
    const before = partials();
    expect((await her.say('talk')).text).toBe('');
    expect(partials()).toBe(before);
    expect(await readdir(join(folder, 'audio'))).toHaveLength(1);
    expect(await readdir(join(folder, 'unheard'))).toEqual([]);

    await her.quiet(60);
    await her.page.until('pause', (message) => message.pause === null, 60_000);
    expect(await her.say('note')).toMatchObject({
      reading: { act: 'log', entries: [{ entry: { kind: 'condition', finding: 'stain', places: ['4-1'] } }] },
    });
    const { log } = await server.app.library.quilt(id);
    expect(log.notes).toHaveLength(2);
  },
  240_000,
);

test.skipIf(!ready)(
  'not listening till she calls: her phrase ends it, in the same breath as a note; a dropped socket does not',
  async () => {
    const server = await startServer({ modelsDir });
    const id = await server.makeQuilt();
    const first = await Speaker.open(server, id, 'always');
    await first.quiet(0.5);
    await first.say('pause-till-called');
    const pause = first.pauses()[0]!;
    expect(pause.until).toBeNull();
    first.page.socket.terminate();
    await first.page.untilClosed();

    const at = new Date(Date.parse(BEGAN) + 3_600_000).toISOString();
    const her = await Speaker.open(server, id, 'always', pause, at);
    await her.quiet(0.5);
    expect((await her.say('talk')).text).toBe('');
    const heard = await her.say('call');
    expect(heard.text).not.toMatch(/thimble/i);
    expect(heard).toMatchObject({
      reading: {
        act: 'log',
        entries: [{ entry: { kind: 'condition', finding: 'split-seam', places: ['3-2'] } }],
      },
    });
    expect(her.pauses()).toEqual([null]);
    const { log } = await server.app.library.quilt(id);
    expect(log.notes).toHaveLength(2);
  },
  240_000,
);

test.skipIf(!ready)(
  'held to talk: the order holds there too, while the microphone is kept open and when it is told of after it was let go',
  async () => {
    const server = await startServer({ modelsDir });
    const id = await server.makeQuilt();
    // Kept open by a short touch: in this way three seconds of silence end what is said.
    const her = await Speaker.open(server, id, 'held');
    await her.quiet(0.5);
    expect(await her.say('pause-one-minute', 4)).toMatchObject({ reading: { act: 'aside', entries: [] } });
    const pause = her.pauses()[0]!;
    expect(secondsAfter(pause.until!) - secondsAfter(pause.from)).toBe(60);
    expect((await her.say('talk', 4)).text).toBe('');
    expect((await her.say('call', 4)).reading?.entries).toMatchObject([
      { entry: { finding: 'split-seam', places: ['3-2'] } },
    ]);
    expect(her.pauses()).toEqual([pause, null]);

    const at = new Date(Date.parse(BEGAN) + 120_000).toISOString();
    const again = await Speaker.open(server, id, 'held', undefined, at);
    await again.quiet(0.5);
    await again.speak('pause-till-called');
    again.page.send({ type: 'utterance-end', streamId: 's' });
    await again.page.until('pause', (message) => message.pause?.until === null, 60_000);
    // Told at once; the order's own words are written down after that.
    await again.page.until('heard');
    expect((await server.app.library.quilt(id)).log.notes).toHaveLength(3);
  },
  240_000,
);

test.skipIf(!ready)(
  'another way of listening by word; on call nothing is written before the call',
  async () => {
    const server = await startServer({ modelsDir });
    const id = await server.makeQuilt();
    const { folder } = await server.app.library.quilt(id);
    const first = await Speaker.open(server, id, 'always');
    await first.quiet(0.5);
    await first.say('by-call');
    expect(await first.page.until('way')).toMatchObject({ way: 'on-call' });
    expect(server.app.library.settings.data.listening).toBe('on-call');

    const at = new Date(Date.parse(BEGAN) + 60_000).toISOString();
    const her = await Speaker.open(server, id, 'on-call', undefined, at);
    await her.quiet(0.5);
    expect((await her.say('talk')).text).toBe('');
    expect(await readdir(join(folder, 'audio'))).toHaveLength(1);
    expect((await her.say('call')).reading?.entries).toMatchObject([
      { entry: { finding: 'split-seam', places: ['3-2'] } },
    ]);
    expect((await her.say('dismiss')).text).toBe('');
    expect((await her.say('talk')).text).toBe('');
    const { log } = await server.app.library.quilt(id);
    expect(log.notes).toHaveLength(2);
  },
  240_000,
);
