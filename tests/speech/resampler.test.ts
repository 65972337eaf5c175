import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Resampler } from '../../server/speech/resampler.ts';

const sine = (rate: number, hertz: number, seconds: number, level = 0.5) =>
  Float32Array.from(
    { length: Math.round(rate * seconds) },
    (_, i) => level * Math.sin((2 * Math.PI * hertz * i) / rate),
  );
const rms = (samples: Float32Array) =>
  Math.sqrt(samples.reduce((sum, value) => sum + value * value, 0) / samples.length);
function convert(input: Float32Array, rate: number, piece = input.length): Float32Array {
  const resampler = new Resampler(rate);
  const parts: Float32Array[] = [];
  for (let at = 0; at < input.length; at += piece) parts.push(resampler.push(input.slice(at, at + piece)));
  parts.push(resampler.flush());
  return Float32Array.from(parts.flatMap((part) => [...part]));
}

describe.each([8000, 11_025, 22_050, 44_100, 48_000, 96_000])('from %i Hz', (rate) => {
  it('keeps the length and the tones of speech', () => {
    const output = convert(sine(rate, 1000, 1), rate);
    expect(Math.abs(output.length - 16_000)).toBeLessThanOrEqual(1);
    const wanted = sine(16_000, 1000, 1);
    let worst = 0;
    for (let i = 800; i < 15_000; i++) worst = Math.max(worst, Math.abs(output[i]! - wanted[i]!));
    expect(worst).toBeLessThan(0.005);
  });
});

it('lets nothing above 8 kHz fold back: 60 dB down at least', () => {
  for (const hertz of [8500, 10_000, 15_000, 20_000]) {
    expect(rms(convert(sine(48_000, hertz, 1), 48_000).slice(400, -400))).toBeLessThan(0.35 / 1000);
  }
});

it('gives the same whatever the pieces', () => {
  const input = sine(44_100, 700, 0.2);
  const whole = convert(input, 44_100);
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 5000 }), (piece) => {
      const parts = convert(input, 44_100, piece);
      expect(parts.length).toBe(whole.length);
      for (let i = 0; i < whole.length; i += 37) expect(parts[i]).toBeCloseTo(whole[i]!, 6);
    }),
    { numRuns: 15 },
  );
});

// Outside check: SoX's rate effect, where Debian's sox is installed.
it.skipIf(!existsSync('/usr/bin/sox'))('agrees with SoX to 50 dB on a sweep (needs sox)', () => {
  const sweep = execFileSync(
    'sox',
    ['-n', '-r', '44100', '-c', '1', '-t', 'f32', '-', 'synth', '1', 'sine', '100-6000', 'vol', '0.5'],
    { maxBuffer: 1e8 },
  );
  const input = new Float32Array(sweep.buffer.slice(sweep.byteOffset, sweep.byteOffset + sweep.length));
  const raw = execFileSync(
    'sox',
    ['-t', 'f32', '-r', '44100', '-c', '1', '-', '-t', 'f32', '-', 'rate', '-v', '16000'],
    {
      input: sweep,
      maxBuffer: 1e8,
    },
  );
  const theirs = new Float32Array(raw.buffer.slice(raw.byteOffset, raw.byteOffset + raw.length));
  const ours = convert(input, 44_100);
  const difference = ours.slice(800, 15_000).map((value, i) => value - theirs[i + 800]!);
  expect(20 * Math.log10(rms(difference) / rms(theirs))).toBeLessThan(-50);
});
