/**
 * Log-mel spectrogram for Whisper, the same figures as the library's feature extractor gives.
 *
 * Why our own: the library multiplies each frame by all 80 × 201 filter weights, most of them nought, and transforms the
 * padding too; at short lengths that costs as much as the encoder. Here two real frames share one transform, only the
 * non-zero weights are used, and frames of padding are filled in. Checked against the library in tests.
 */
const FFT = 400;
const HOP = 160;
const BINS = FFT / 2 + 1;
const RADICES = [5, 5, 4, 4];
const FLOOR = 1e-10;

type Samples = Float64Array<ArrayBuffer>;

/** Discrete Fourier transform of 400 complex points, in place, by Stockham's self-sorting scheme. */
function createTransform400(): (re: Samples, im: Samples) => void {
  const cos = new Float64Array(FFT);
  const sin = new Float64Array(FFT);
  for (let i = 0; i < FFT; i++) {
    cos[i] = Math.cos((2 * Math.PI * i) / FFT);
    sin[i] = -Math.sin((2 * Math.PI * i) / FFT);
  }
  const scratchRe = new Float64Array(FFT);
  const scratchIm = new Float64Array(FFT);
  const partRe = new Float64Array(5);
  const partIm = new Float64Array(5);
  return (re, im) => {
    let xRe = re;
    let xIm = im;
    let yRe = scratchRe;
    let yIm = scratchIm;
    let length = FFT;
    let stride = 1;
    for (const radix of RADICES) {
      const rest = length / radix;
      for (let p = 0; p < rest; p++) {
        for (let q = 0; q < stride; q++) {
          for (let k = 0; k < radix; k++) {
            const at = q + stride * (p + k * rest);
            partRe[k] = xRe[at]!;
            partIm[k] = xIm[at]!;
          }
          for (let j = 0; j < radix; j++) {
            let sumRe = partRe[0]!;
            let sumIm = partIm[0]!;
            for (let k = 1; k < radix; k++) {
              const turn = ((j * k) % radix) * (FFT / radix);
              const c = cos[turn]!;
              const s = sin[turn]!;
              sumRe += partRe[k]! * c - partIm[k]! * s;
              sumIm += partRe[k]! * s + partIm[k]! * c;
            }
            const twiddle = (p * j * (FFT / length)) % FFT;
            const c = cos[twiddle]!;
            const s = sin[twiddle]!;
            const to = q + stride * (radix * p + j);
            yRe[to] = sumRe * c - sumIm * s;
            yIm[to] = sumRe * s + sumIm * c;
          }
        }
      }
      [xRe, yRe] = [yRe, xRe];
      [xIm, yIm] = [yIm, xIm];
      length = rest;
      stride *= radix;
    }
    // RADICES has an even number of stages, so the result stands in `re` and `im` again.
  };
}

export type LogMel = (pcm: Float32Array, encoderFrames: number) => Float32Array;

/**
 * @param melFilters 80 rows of 201 weights, as the library's processor holds them
 * @param window 400 weights (periodic Hann)
 * @returns a function of 16 kHz mono samples and a number of encoder frames (320 samples each) that gives
 *   `[80, 2 × encoderFrames]` values in row order. Samples past the frames are left out, missing ones are silence.
 */
export function createLogMel(melFilters: ArrayLike<ArrayLike<number>>, window: ArrayLike<number>): LogMel {
  const bands = Array.from(melFilters, (row) => {
    const weights = Float64Array.from(row);
    let from = weights.findIndex((weight) => weight !== 0);
    let to = weights.findLastIndex((weight) => weight !== 0) + 1;
    if (from < 0) from = to = 0;
    return { from, to, weights };
  });
  const transform = createTransform400();
  const re = new Float64Array(FFT);
  const im = new Float64Array(FFT);
  const powerA = new Float64Array(BINS);
  const powerB = new Float64Array(BINS);

  return (pcm, encoderFrames) => {
    const total = encoderFrames * 320;
    const columns = encoderFrames * 2;
    const used = Math.min(pcm.length, total);
    // A column sees 200 samples to either side of its centre; later ones see nothing but padding.
    const live = Math.min(columns, Math.floor((used + FFT / 2 - 1) / HOP) + 1);
    const mel = new Float32Array(bands.length * columns);
    mel.fill(Math.log10(FLOOR));
    let highest = Math.log10(FLOOR);

    const fill = (target: Samples, column: number) => {
      const start = column * HOP - FFT / 2;
      for (let i = 0; i < FFT; i++) {
        let at = start + i;
        if (at < 0) at = -at;
        else if (at >= total) at = 2 * (total - 1) - at;
        target[i] = at < used ? pcm[at]! * window[i]! : 0;
      }
    };
    const store = (power: Samples, column: number) => {
      for (let band = 0; band < bands.length; band++) {
        const { from, to, weights } = bands[band]!;
        let sum = 0;
        for (let k = from; k < to; k++) sum += weights[k]! * power[k]!;
        const value = Math.log10(Math.max(FLOOR, sum));
        mel[band * columns + column] = value;
        if (value > highest) highest = value;
      }
    };

    for (let column = 0; column < live; column += 2) {
      fill(re, column);
      if (column + 1 < live) fill(im, column + 1);
      else im.fill(0);
      transform(re, im);
      for (let k = 0; k < BINS; k++) {
        const mirror = k === 0 ? 0 : FFT - k;
        const aRe = (re[k]! + re[mirror]!) / 2;
        const aIm = (im[k]! - im[mirror]!) / 2;
        const bRe = (im[k]! + im[mirror]!) / 2;
        const bIm = (re[mirror]! - re[k]!) / 2;
        powerA[k] = aRe * aRe + aIm * aIm;
        powerB[k] = bRe * bRe + bIm * bIm;
      }
      store(powerA, column);
      if (column + 1 < live) store(powerB, column + 1);
    }

    const lowest = highest - 8;
    for (let i = 0; i < mel.length; i++) mel[i] = (Math.max(mel[i]!, lowest) + 4) / 4;
    return mel;
  };
}
