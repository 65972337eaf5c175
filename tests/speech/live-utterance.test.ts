import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';

import { buildPrompt } from '../../server/speech/build-prompt.ts';
import { createLiveListener, type LiveEvent } from '../../server/speech/live-utterance.ts';
import { createRecogniser, type Recogniser } from '../../server/speech/recogniser.ts';
import { createVoiceActivity, type VoiceActivity } from '../../server/speech/voice-activity.ts';
import { makeHiss, makeHum, makeNoise, makePinkNoise, makeThumps, makeTones } from './support/make-sound.ts';
import { CLIPS, MODELS } from './support/places.ts';
import { readWav } from './support/read-wav.ts';
import { countWordErrors } from './support/word-error.ts';

// A loaded machine is slow, not wrong: speed is measured in the bench.
vi.setConfig({ testTimeout: 180_000, hookTimeout: 120_000 });

let recogniser: Recogniser;
let voiceActivity: VoiceActivity;
beforeAll(async () => {
  recogniser = createRecogniser({ modelsDir: MODELS });
  voiceActivity = createVoiceActivity({ modelsDir: MODELS });
  await Promise.all([recogniser.ready(), voiceActivity.ready()]);
});
afterAll(() => Promise.all([recogniser.close(), voiceActivity.close()]));

const silence = (seconds: number) => new Float32Array(seconds * 16_000);
const clip = (name: string) => readWav(join(CLIPS, name));
type Of<T extends LiveEvent['type']> = Extract<LiveEvent, { type: T }>;
const only = <T extends LiveEvent['type']>(events: LiveEvent[], type: T) =>
  events.filter((event): event is Of<T> => event.type === type);

function listen(options: { context?: () => ReturnType<typeof buildPrompt>; showWords?: boolean } = {}) {
  const events: LiveEvent[] = [];
  const listener = createLiveListener({
    recogniser,
    voiceActivity,
    context: options.context ?? (() => ({})),
    showWords: options.showWords ?? false,
    onEvent: (event) => events.push(event),
  });
  return { events, listener };
}

/** Sends sound at the pace of a microphone, in the 128-sample blocks of an AudioWorklet gathered to 40 ms. */
async function speak(listener: { push(pcm: Float32Array): void }, pcm: Float32Array): Promise<void> {
  const began = performance.now();
  for (let at = 0; at < pcm.length; at += 640) {
    listener.push(pcm.subarray(at, at + 640));
    const due = began + ((at + 640) / 16_000) * 1000;
    const wait = due - performance.now();
    if (wait > 0) await new Promise((resolve) => setTimeout(resolve, wait));
  }
}

it('follows a microphone: speech, words while she speaks, the note when she stops', async () => {
  const { events, listener } = listen({ showWords: true });
  await speak(listener, silence(0.5));
  await speak(listener, clip('jfk.wav').slice(16_000 * 5, 16_000 * 10.8));
  await speak(listener, silence(1.2));
  await listener.flush();
  listener.close();

  expect(only(events, 'speech-started')).toHaveLength(1);
  const [ended] = only(events, 'utterance-ended');
  expect(ended!.startS).toBeGreaterThan(0.1);
  expect(ended!.utterance.endedBy).toBe('pause');
  const [recognised] = only(events, 'utterance-recognised');
  expect(recognised!.utterance).toBe(ended!.utterance);
  const said = 'what your country can do for you ask what you can do for your country';
  expect(countWordErrors(said, recognised!.recognition.text).errors).toBeLessThanOrEqual(2);
  console.info(`from the end of the pause to the words: ${recognised!.waitedMs.toFixed(0)} ms`);

  const words = only(events, 'words-heard');
  expect(words.length).toBeGreaterThan(0);
  for (const { settled, text } of words) expect(text.startsWith(settled)).toBe(true);
  const levels = only(events, 'level-measured');
  expect(levels.length).toBeGreaterThan(60);
  expect(levels.some((level) => level.speaking && level.db > -40)).toBe(true);
  expect(levels[0]).toMatchObject({ speaking: false, clipped: 0 });
});

it('serves two microphones at once, and neither loses sound', async () => {
  const one = listen();
  const two = listen();
  await Promise.all([
    speak(one.listener, clip('voices-sp0307-sg0042.wav')).then(() => speak(one.listener, silence(1))),
    speak(two.listener, clip('ljspeech-LJ002-0020.wav')).then(() => speak(two.listener, silence(1))),
  ]);
  await Promise.all([one.listener.flush(), two.listener.flush()]);
  expect(
    only(one.events, 'utterance-recognised')
      .map((event) => event.recognition.text)
      .join(' '),
  ).toContain('curiosity');
  expect(
    only(two.events, 'utterance-recognised')
      .map((event) => event.recognition.text)
      .join(' '),
  ).toContain('1813');
});

it('takes a burst after a lost connection, in pieces of any size, and gives the same utterances', async () => {
  const sound = Float32Array.from([...clip('two-cities.wav'), ...silence(1)]);
  const spans: string[][] = [];
  for (const piece of [sound.length, 1000, 512]) {
    const { events, listener } = listen();
    for (let at = 0; at < sound.length; at += piece) listener.push(sound.subarray(at, at + piece));
    expect(listener.behindS()).toBeGreaterThan(30);
    await listener.flush();
    expect(listener.behindS()).toBe(0);
    spans.push(only(events, 'utterance-ended').map((event) => `${event.startS}-${event.endS}`));
    listener.close();
  }
  expect(spans[0]!.length).toBeGreaterThanOrEqual(3);
  expect(spans[1]).toEqual(spans[0]);
  expect(spans[2]).toEqual(spans[0]);
});

it('a held key let go ends the note at once', async () => {
  const { events, listener } = listen();
  listener.push(clip('ljspeech-LJ002-0020.wav'));
  await listener.flush();
  const [recognised] = only(events, 'utterance-recognised');
  expect(recognised!.recognition.text).toContain('1813');
  // And the listener goes on with the next press.
  listener.push(clip('ljspeech-LJ002-0035.wav'));
  await listener.flush();
  expect(only(events, 'utterance-recognised')).toHaveLength(2);
});

describe('what is no speech gives no words:', () => {
  it.each([
    ['a quiet room', makeNoise(20, 0.003)],
    ['hiss', makeNoise(20, 0.05)],
    ['loud hiss', makeNoise(20, 0.3)],
    ['hum', makeHum(20, 0.1)],
    ['a machine', makeThumps(20, 0.3)],
    ['a fast machine', makeThumps(20, 0.5, 14)],
    ['steam', makeHiss(20, 0.4)],
    ['a fan', makePinkNoise(320_000, 0.3)],
    ['tones', makeTones(20, 0.2)],
  ])('%s', async (_, pcm) => {
    const { events, listener } = listen({
      context: () => buildPrompt({ fabrics: ['indigo'] }, 'Row two, patched.'),
    });
    listener.push(pcm);
    await listener.flush();
    expect(
      only(events, 'utterance-recognised')
        .map((event) => event.recognition.text)
        .filter(Boolean),
    ).toEqual([]);
  });
});

it('says when a microphone clips', async () => {
  const { events, listener } = listen();
  listener.push(
    clip('jfk.wav')
      .slice(0, 32_000)
      .map((value) => Math.max(-1, Math.min(1, value * 30))),
  );
  await listener.flush();
  expect(only(events, 'level-measured').some((level) => level.clipped > 0.01)).toBe(true);
});

it('loses nothing when voice activity is killed in mid-sentence', async () => {
  const { events, listener } = listen();
  const sound = clip('jfk.wav').slice(16_000 * 5);
  listener.push(sound.slice(0, 40_000));
  process.kill(voiceActivity.processId()!, 'SIGKILL');
  listener.push(sound.slice(40_000));
  listener.push(silence(1));
  await listener.flush();
  const text = only(events, 'utterance-recognised')
    .map((event) => event.recognition.text)
    .join(' ');
  expect(
    countWordErrors('what your country can do for you ask what you can do for your country', text).errors,
  ).toBeLessThanOrEqual(2);
});

it('hands the sound back where it cannot be recognised', async () => {
  const gone = createRecogniser({ modelsDir: '/nonexistent' });
  const events: LiveEvent[] = [];
  const listener = createLiveListener({
    recogniser: gone,
    voiceActivity,
    context: () => ({}),
    onEvent: (event) => events.push(event),
  });
  listener.push(clip('ljspeech-LJ002-0020.wav'));
  await listener.flush();
  const [failed] = only(events, 'utterance-failed');
  expect(failed!.error.message).toMatch(/list of model files is missing/);
  expect(failed!.utterance.pcm.length).toBeGreaterThan(16_000);
  await gone.close();
});
