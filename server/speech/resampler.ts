/** Ripple and stop-band of the filter: 80 dB by Kaiser's formula, beta 7.86 (Kaiser 1974, from memory). */
const KAISER_BETA = 7.857;
const ZERO_CROSSINGS = 24;

/**
 * Streaming conversion of one channel from any whole rate to 16 kHz by a polyphase windowed-sinc filter, so that nothing
 * above 8 kHz folds back into the speech. Pieces of any length may be pushed; the delay of the filter is taken out.
 */
export class Resampler {
  readonly #up: number;
  readonly #down: number;
  readonly #half: number;
  readonly #phases: Float32Array[];
  #kept = new Float32Array(0);
  /** Index in the input stream of the first kept sample. */
  #keptFrom: number;
  #received = 0;
  #produced = 0;

  constructor(fromRate: number, toRate = 16_000) {
    if (!Number.isInteger(fromRate) || fromRate < 1)
      throw new RangeError(`Expected a whole sample rate, got ${fromRate}.`);
    const divisor = greatestCommonDivisor(fromRate, toRate);
    this.#up = toRate / divisor;
    this.#down = fromRate / divisor;
    // Pass band up to 94 % of the lower half-rate: the rest is the filter's slope.
    const cutoff = 0.94 * Math.min(1, toRate / fromRate);
    this.#half = Math.ceil(ZERO_CROSSINGS / cutoff);
    this.#phases = [];
    const norm = bessel0(KAISER_BETA);
    for (let phase = 0; phase < this.#up; phase++) {
      const offset = phase / this.#up;
      const taps = new Float32Array(2 * this.#half);
      for (let i = 0; i < taps.length; i++) {
        const x = i - this.#half + 1 - offset;
        const edge = x / this.#half;
        if (Math.abs(edge) >= 1) continue;
        const angle = Math.PI * cutoff * x;
        const sinc = angle === 0 ? 1 : Math.sin(angle) / angle;
        taps[i] = cutoff * sinc * (bessel0(KAISER_BETA * Math.sqrt(1 - edge * edge)) / norm);
      }
      this.#phases.push(taps);
    }
    this.#keptFrom = -this.#half;
    this.#kept = new Float32Array(this.#half);
  }

  push(samples: Float32Array): Float32Array {
    if (this.#up === this.#down) return samples;
    this.#received += samples.length;
    return this.#run(samples);
  }

  /** The last samples, once no more will come. */
  flush(): Float32Array {
    if (this.#up === this.#down) return new Float32Array(0);
    const wanted = Math.round((this.#received * this.#up) / this.#down);
    const tail = this.#run(new Float32Array(2 * this.#half));
    const over = this.#produced - wanted;
    return over > 0 ? tail.subarray(0, Math.max(0, tail.length - over)) : tail;
  }

  #run(samples: Float32Array): Float32Array {
    const input = new Float32Array(this.#kept.length + samples.length);
    input.set(this.#kept);
    input.set(samples, this.#kept.length);
    const end = this.#keptFrom + input.length;
    const output = new Float32Array(
      Math.max(0, Math.ceil(((end - this.#half) * this.#up) / this.#down) - this.#produced),
    );
    let count = 0;
    for (;;) {
      const ticks = this.#produced * this.#down;
      const centre = Math.floor(ticks / this.#up);
      if (centre + this.#half >= end) break;
      const taps = this.#phases[ticks % this.#up]!;
      const from = centre - this.#half + 1 - this.#keptFrom;
      let sum = 0;
      for (let i = 0; i < taps.length; i++) sum += taps[i]! * input[from + i]!;
      output[count++] = sum;
      this.#produced++;
    }
    const needed = Math.floor((this.#produced * this.#down) / this.#up) - this.#half + 1;
    const drop = Math.min(input.length, Math.max(0, needed - this.#keptFrom));
    this.#kept = input.slice(drop);
    this.#keptFrom += drop;
    return output.subarray(0, count);
  }
}

function greatestCommonDivisor(a: number, b: number): number {
  return b === 0 ? a : greatestCommonDivisor(b, a % b);
}

/** Modified Bessel function of the first kind, order nought, by its power series. */
function bessel0(x: number): number {
  let sum = 1;
  let term = 1;
  for (let k = 1; k < 40; k++) {
    term *= (x / (2 * k)) ** 2;
    sum += term;
    if (term < sum * 1e-12) break;
  }
  return sum;
}
