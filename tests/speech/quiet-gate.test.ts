import { join } from 'node:path';
import fc from 'fast-check';
import { beforeAll, describe, expect, test, vi } from 'vitest';
import { Endpointer } from '../../server/speech/endpointer.ts';
import { QuietGate } from '../../server/speech/quiet-gate.ts';
import { loadSileroVad, type SileroVad, VAD_FRAME } from '../../server/speech/silero-vad.ts';
import { makeHum, makeNoise, makePinkNoise, makeThumps } from './support/make-sound.ts';
import { CLIPS, MODELS } from './support/places.ts';
import { readWav } from './support/read-wav.ts';

// A loaded machine is slow, not wrong: speed is measured in the bench.
vi.setConfig({ testTimeout: 180_000, hookTimeout: 60_000 });

const RATE = 16_000;
const powerDb = (sound: Float32Array): number =>
  10 * Math.log10(sound.reduce((sum, x) => sum + x * x, 0) / sound.length);
/** The sound at so many dB below full scale, by its power. */
const at = (db: number, sound: Float32Array): Float32Array => {
  const gain = 10 ** ((db - powerDb(sound)) / 20);
  return sound.map((x) => x * gain);
};
const framesOf = (sound: Float32Array): Float32Array[] =>
  Array.from({ length: Math.floor(sound.length / VAD_FRAME) }, (_, i) =>
    sound.slice(i * VAD_FRAME, (i + 1) * VAD_FRAME),
  );

describe('what is passed over', () => {
  /** Share of the frames after the first six seconds that the network has to look at, where it finds no speech in any. */
  const lookedAt = (sound: Float32Array): number => {
    const gate = new QuietGate();
    let looked = 0;
    const frames = framesOf(sound);
    const from = Math.round((6 * RATE) / VAD_FRAME);
    for (const [i, frame] of frames.entries()) {
      const look = gate.open(frame);
      if (!look) continue;
      if (i >= from) looked += look.frames.length;
      gate.heard(look, 0.02);
    }
    return looked / (frames.length - from);
  };

  test.each([
    ['digital silence', new Float32Array(60 * RATE)],
    ['a quiet room', at(-62, makeNoise(60, 1, 5))],
    ['a room', at(-45, makeNoise(60, 1, 5))],
    ['a fan', at(-35, makePinkNoise(60 * RATE, 1, 3))],
    ['mains hum', at(-35, makeHum(60, 1))],
  ])('%s: nearly all of it', (_, sound) => {
    expect(lookedAt(sound)).toBeLessThan(0.05);
  });

  test('the sewing machine is uneven, and all of it is looked at', () => {
    expect(lookedAt(at(-35, makeThumps(30, 1, 5)))).toBe(1);
  });

  test('a fan that is switched on is looked at, found to be none of speech, and passed over too', () => {
    const gate = new QuietGate();
    const sound = Float32Array.from([
      ...at(-50, makeNoise(15, 1, 5)),
      ...at(-30, makePinkNoise(30 * RATE, 1, 3)),
    ]);
    const looked = framesOf(sound).map((frame) => {
      const look = gate.open(frame);
      if (look) gate.heard(look, 0.02);
      return look !== undefined;
    });
    const second = (s: number): number => Math.round((s * RATE) / VAD_FRAME);
    expect(looked.slice(second(10), second(14)).filter(Boolean)).toEqual([]);
    // Two loud frames in a row open it.
    expect(looked.slice(second(15) + 1, second(16)).every(Boolean)).toBe(true);
    expect(looked.slice(second(25)).filter(Boolean).length).toBeLessThan(second(20) * 0.1);
  });

  test('the network gets frames in their order, each at most once, and no hole before one that opens the gate', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.record({
            db: fc.constantFrom(-80, -62, -50, -45, -20),
            frames: fc.nat(120),
            p: fc.constantFrom(0, 0.05, 0.6),
          }),
          {
            minLength: 1,
            maxLength: 12,
          },
        ),
        (stretches) => {
          const gate = new QuietGate();
          const noise = framesOf(at(0, makeNoise(4, 1, 9)));
          let n = 0;
          let last = -1;
          for (const { db, frames, p } of stretches)
            for (let i = 0; i < frames; i++, n++) {
              const frame = noise[n % noise.length]!.map((x) => x * 10 ** (db / 20));
              // Small enough to change no loudness.
              frame[0] = n / 1e6;
              const look = gate.open(frame);
              if (!look) continue;
              const numbers = look.frames.map((one) => Math.round(one[0]! * 1e6));
              expect(numbers.at(-1)).toBe(n);
              expect(numbers).toEqual(Array.from(numbers, (_, k) => n - numbers.length + 1 + k));
              expect(numbers[0]).toBeGreaterThan(last);
              last = n;
              gate.heard(look, p);
            }
        },
      ),
      { numRuns: 60 },
    );
  });
});

describe('what is not', () => {
  let vad: SileroVad;
  beforeAll(async () => {
    vad = await loadSileroVad(MODELS);
  });

  /** The utterances in a sound, s, by the real network, with and without the gate before it. */
  async function utterances(sound: Float32Array, isGated: boolean): Promise<[from: number, to: number][]> {
    const stream = vad.open();
    const gate = new QuietGate();
    const endpointer = new Endpointer();
    const found: [number, number][] = [];
    const note = (events: ReturnType<Endpointer['push']>): void => {
      for (const event of events)
        if (event.type === 'utterance-ended')
          found.push([event.utterance.startSample / RATE, event.utterance.endSample / RATE]);
    };
    for (const frame of framesOf(sound)) {
      const look = isGated ? gate.open(frame) : { frames: [frame], levels: new Float64Array(4) };
      let probability = 0;
      for (const one of look?.frames ?? []) probability = await stream.probability(one);
      if (isGated && look) gate.heard(look, probability);
      note(endpointer.push(frame, probability));
    }
    note(endpointer.flush());
    return found;
  }

  const said = (name: string): Float32Array => readWav(join(CLIPS, name)).slice(0, 8 * RATE);
  const mixed = (speech: Float32Array, noise: Float32Array): Float32Array => {
    const sound = noise.slice();
    for (const [i, x] of speech.entries()) sound[8 * RATE + i]! += x;
    return sound;
  };
  const SECONDS = 20;
  const ROOM = makeNoise(SECONDS, 1, 5);
  const FAN = makePinkNoise(SECONDS * RATE, 1, 3);

  test.each([
    ['quiet, in a quiet room', -50, -64, ROOM],
    ['quiet, in a room', -45, -55, ROOM],
    ['little louder than the fan beside it', -35, -38, FAN],
    ['as loud as the fan beside it', -32, -32, FAN],
    ['little louder than a noise of all pitches', -35, -38, ROOM],
  ] as const)(
    'speech %s: the same utterances as without the gate, from the same word on',
    async (_, speechDb, noiseDb, noise) => {
      for (const name of ['ljspeech-LJ002-0020.wav', 'librispeech-1272-141231-0002.wav']) {
        const sound = mixed(at(speechDb, said(name)), at(noiseDb, noise));
        const without = await utterances(sound, false);
        const gated = await utterances(sound, true);
        expect(without.length).toBeGreaterThan(0);
        expect(gated).toHaveLength(without.length);
        for (const [i, [from, to]] of without.entries()) {
          // The run-up of 0.4 s that is kept before an utterance holds what a soft beginning is late by.
          expect(Math.abs(gated[i]![0] - from)).toBeLessThan(0.3);
          expect(Math.abs(gated[i]![1] - to)).toBeLessThan(0.3);
        }
      }
    },
  );

  test('a voice that rises from nothing over two seconds', async () => {
    const speech = at(-40, said('ljspeech-LJ002-0020.wav'));
    const rising = speech.map((x, i) => x * Math.min(1, i / (2 * RATE)));
    const sound = mixed(rising, at(-60, ROOM));
    const [without] = await utterances(sound, false);
    const [gated] = await utterances(sound, true);
    expect(gated![0] - without![0]).toBeLessThan(0.3);
  });
});
