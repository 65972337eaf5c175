import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createAudioOutbox } from '../../client/audio/audio-outbox.ts';
import { createResampler } from '../../client/audio/resampler.ts';
import type { ClientMessage } from '../../shared/wire.ts';

const tone = (hz: number, rate: number, seconds: number): Float32Array =>
  Float32Array.from({ length: Math.round(rate * seconds) }, (_, i) =>
    Math.sin((2 * Math.PI * hz * i) / rate),
  );
const power = (samples: Float32Array): number => samples.reduce((sum, x) => sum + x * x, 0) / samples.length;
const decibels = (samples: Float32Array): number => 10 * Math.log10(power(samples) / 0.5);

describe('resampling in the worklet', () => {
  for (const rate of [44_100, 48_000, 96_000, 8_000]) {
    it(`keeps speech at ${rate} Hz level and at its pitch`, () => {
      const resampler = createResampler(rate, 16_000);
      const out = resampler.push(tone(1000, rate, 1));
      const middle = out.slice(2000, 14_000);
      expect(decibels(middle)).toBeCloseTo(0, 1);
      // The pitch, by the projection on a 1 kHz wave of any phase.
      let re = 0;
      let im = 0;
      middle.forEach((x, i) => {
        re += x * Math.cos((2 * Math.PI * 1000 * i) / 16_000);
        im += x * Math.sin((2 * Math.PI * 1000 * i) / 16_000);
      });
      expect((2 * Math.hypot(re, im)) / middle.length).toBeCloseTo(1, 1);
    });
  }

  // Nyquist 1928, Shannon 1949: what lies above half the new rate must not fold back into it.
  it.each([9_000, 10_000, 12_000, 15_000, 20_000])('lets nothing of %i Hz fold back', (hz) => {
    const out = createResampler(48_000, 16_000).push(tone(hz, 48_000, 1));
    expect(decibels(out.slice(2000, 14_000))).toBeLessThan(-60);
  });

  it('gives the same whatever the size of the pieces', () => {
    const whole = createResampler(44_100, 16_000).push(tone(440, 44_100, 0.5));
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 1, max: 700 }), { minLength: 1, maxLength: 200 }), (sizes) => {
        const input = tone(440, 44_100, 0.5);
        const resampler = createResampler(44_100, 16_000);
        const out: number[] = [];
        let at = 0;
        for (let i = 0; at < input.length; i++) {
          const size = sizes[i % sizes.length]!;
          out.push(...resampler.push(input.subarray(at, at + size)));
          at += size;
        }
        expect(out.length).toBe(whole.length);
        expect(Math.max(...out.map((x, i) => Math.abs(x - whole[i]!)))).toBeLessThan(1e-6);
      }),
      { seed: 3, numRuns: 25 },
    );
  });
});

/** A socket that hands over what it is given until it is cut, and loses what was on its way. */
function line() {
  const streams = new Map<string, { at: number; samples: number[]; over: boolean }>();
  let open = true;
  let current = '';
  const onTheWay: (() => void)[] = [];
  return {
    streams,
    wire: {
      say(message: ClientMessage): boolean {
        if (!open) return false;
        onTheWay.push(() => {
          if (message.type === 'microphone-on') {
            streams.set(message.streamId, { at: Date.parse(message.at), samples: [], over: false });
            current = message.streamId;
          }
          if (message.type === 'microphone-off') streams.get(message.streamId)!.over = true;
        });
        return true;
      },
      sendAudio(frame: Int16Array): boolean {
        if (!open) return false;
        onTheWay.push(() => streams.get(current)!.samples.push(...frame));
        return true;
      },
      bufferedBytes: () => 0,
    },
    deliver(count = onTheWay.length): void {
      for (const act of onTheWay.splice(0, count)) act();
    },
    cut(): void {
      open = false;
      onTheWay.length = 0;
    },
    mend(): void {
      open = true;
    },
  };
}

describe('sound held while the socket is away', () => {
  it('goes up in order, once, whatever is cut and when', () => {
    const step = fc.constantFrom(
      'frame',
      'frame',
      'frame',
      'deliver',
      'half',
      'tell',
      'cut',
      'mend',
      'end-begin',
    );
    fc.assert(
      fc.property(fc.array(step, { minLength: 1, maxLength: 120 }), (steps) => {
        const socket = line();
        let n = 0;
        let id = 0;
        const outbox = createAudioOutbox(socket.wire, () => `s${++id}`);
        outbox.opened();
        /** Place on the time line (16 samples a millisecond) -> sample. */
        const pushed = new Map<number, number>();
        let start = 0;
        let length = 0;
        const begin = () => {
          start += 3_600_000;
          length = 0;
          outbox.begin('always', start);
        };
        const tell = () => {
          for (const [stream, { samples }] of socket.streams) outbox.acknowledge(stream, samples.length);
        };
        begin();
        let isOpen = true;
        for (const act of steps) {
          if (act === 'frame') {
            const frame = Int16Array.from({ length: 16 }, () => n++ % 30_000);
            for (const sample of frame) pushed.set(start * 16 + length++, sample);
            outbox.push(frame);
          }
          if (act === 'deliver') socket.deliver();
          if (act === 'half') socket.deliver(1);
          if (act === 'tell' && isOpen) tell();
          if (act === 'cut' && isOpen) {
            socket.cut();
            outbox.closed();
            isOpen = false;
          }
          if (act === 'mend' && !isOpen) {
            socket.mend();
            isOpen = true;
            outbox.opened();
          }
          if (act === 'end-begin') {
            outbox.end();
            begin();
          }
        }
        if (!isOpen) {
          socket.mend();
          outbox.opened();
        }
        outbox.end();
        socket.deliver();
        tell();
        expect(outbox.heldS()).toBe(0);
        // What the server had but could not say before a cut comes again with the same time stamps,
        // by which it leaves it out; nothing is missing and nothing is elsewhere.
        const heard = new Map<number, number>();
        let last = -1;
        for (const { at, samples } of socket.streams.values()) {
          samples.forEach((sample, i) => {
            const place = at * 16 + i;
            expect(heard.get(place) ?? sample).toBe(sample);
            if (!heard.has(place)) expect(place).toBeGreaterThan(last);
            last = Math.max(last, place);
            heard.set(place, sample);
          });
        }
        expect(heard).toEqual(pushed);
      }),
      { seed: 11, numRuns: 300 },
    );
  });

  it('sends again exactly what the server did not have, from its true moment', () => {
    const socket = line();
    let id = 0;
    const outbox = createAudioOutbox(socket.wire, () => `s${++id}`);
    outbox.opened();
    outbox.begin('always', 1_000_000);
    const frame = (from: number) => Int16Array.from({ length: 16 }, (_, i) => from + i);
    outbox.push(frame(0));
    outbox.push(frame(16));
    socket.deliver();
    outbox.acknowledge('s1', 32);
    outbox.push(frame(32));
    socket.cut();
    outbox.closed();
    outbox.push(frame(48));
    socket.mend();
    outbox.opened();
    outbox.end();
    socket.deliver();
    expect(socket.streams.get('s1')?.samples).toHaveLength(32);
    expect(socket.streams.get('s2')).toMatchObject({ at: 1_000_002, over: true });
    expect(socket.streams.get('s2')?.samples).toEqual([...frame(32), ...frame(48)]);
  });

  it('says when ten minutes are full, and keeps them', () => {
    const socket = line();
    const outbox = createAudioOutbox(socket.wire, () => 's', { limitS: 600 });
    outbox.begin('always', 0);
    const minute = new Int16Array(16_000 * 60);
    for (let i = 0; i < 10; i++) expect(outbox.push(minute)).toBe(true);
    expect(outbox.push(new Int16Array(512))).toBe(false);
    expect(outbox.heldS()).toBe(600);
  });

  it('carries held sound in few messages', () => {
    const socket = line();
    const sizes: number[] = [];
    const outbox = createAudioOutbox(
      { ...socket.wire, sendAudio: (f) => sizes.push(f.length) > 0 && socket.wire.sendAudio(f) },
      () => 's',
    );
    outbox.begin('always', 0);
    for (let i = 0; i < 1000; i++) outbox.push(new Int16Array(512));
    outbox.opened();
    expect(sizes.length).toBeLessThanOrEqual(10);
    expect(sizes.reduce((a, b) => a + b)).toBe(512_000);
  });
});
