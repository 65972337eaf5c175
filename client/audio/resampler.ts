/** Half the filter's reach, in zero crossings of its sinc: a stop band from 8 kHz on at 16 kHz out. */
const CROSSINGS = 32;
/** Where the pass band ends, as a part of the output's Nyquist frequency. */
const PASS = 0.92;

/**
 * Turns a stream of samples at one rate into a stream at another through a Blackman-windowed sinc,
 * one phase per output position, so that nothing above the new Nyquist frequency folds back.
 * `push` takes any number of samples and returns those that are due; the filter delays the sound by
 * its half length (about 4 ms at 48 kHz in).
 */
export function createResampler(fromHz: number, toHz: number): { push(input: Float32Array): Float32Array } {
  if (!(fromHz > 0) || !(toHz > 0)) throw new Error(`rates above 0 Hz expected, got ${fromHz} and ${toHz}`);
  if (fromHz === toHz) return { push: (input) => input };
  const divisor = gcd(Math.round(fromHz), Math.round(toHz));
  const up = Math.round(toHz) / divisor;
  const down = Math.round(fromHz) / divisor;
  const ratio = Math.max(1, fromHz / toHz);
  const half = Math.ceil(CROSSINGS * ratio);
  const cutoff = (0.5 * PASS) / ratio;
  const phases = Array.from({ length: up }, (_, phase) => kernel(phase / up, half, cutoff));

  let held = new Float32Array(2 * half);
  /** Input position of the next output, counted from held[half - 1], in units of 1/up samples. */
  let next = 0;

  return {
    push(input) {
      const all = new Float32Array(held.length + input.length);
      all.set(held);
      all.set(input, held.length);
      const out = new Float32Array(Math.ceil((input.length * up) / down) + 2);
      let count = 0;
      let start = Math.floor(next / up);
      while (start + 2 * half <= all.length) {
        const taps = phases[next % up]!;
        let sum = 0;
        for (let i = 0; i < taps.length; i++) sum += taps[i]! * all[start + i]!;
        out[count++] = sum;
        next += down;
        start = Math.floor(next / up);
      }
      held = all.slice(start);
      next -= start * up;
      return out.subarray(0, count);
    },
  };
}

/** Taps for an output that lies `shift` of a sample past the middle of the window; they sum to one. */
function kernel(shift: number, half: number, cutoff: number): Float32Array {
  const taps = new Float32Array(2 * half);
  let sum = 0;
  for (let i = 0; i < taps.length; i++) {
    const x = i - (half - 1) - shift;
    const sinc = x === 0 ? 2 * cutoff : Math.sin(2 * Math.PI * cutoff * x) / (Math.PI * x);
    const w = (x + half) / (2 * half);
    const window =
      w <= 0 || w >= 1 ? 0 : 0.42 - 0.5 * Math.cos(2 * Math.PI * w) + 0.08 * Math.cos(4 * Math.PI * w);
    taps[i] = sinc * window;
    sum += taps[i]!;
  }
  for (let i = 0; i < taps.length; i++) taps[i]! /= sum;
  return taps;
}

function gcd(a: number, b: number): number {
  return b ? gcd(b, a % b) : a;
}
