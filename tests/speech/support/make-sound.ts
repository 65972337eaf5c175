const RATE = 16_000;

/** Repeatable noise for tests: a linear congruential generator (Numerical Recipes' constants, from memory). */
export function makeNoise(seconds: number, level: number, seed = 1): Float32Array<ArrayBuffer> {
  let state = seed >>> 0;
  return Float32Array.from({ length: seconds * RATE }, () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return level * (state / 2 ** 31 - 1);
  });
}

/** Mains hum: 50 Hz with its odd overtones. */
export function makeHum(seconds: number, level: number): Float32Array<ArrayBuffer> {
  return Float32Array.from({ length: seconds * RATE }, (_, i) => {
    const t = (2 * Math.PI * 50 * i) / RATE;
    return level * (Math.sin(t) + 0.4 * Math.sin(3 * t) + 0.2 * Math.sin(5 * t));
  });
}

/** A sewing machine of sorts: thumps of filtered noise, so many a second. */
export function makeThumps(seconds: number, level: number, aSecond = 8): Float32Array<ArrayBuffer> {
  const period = RATE / aSecond;
  const noise = makeNoise(seconds, 1, 7);
  let low = 0;
  return noise.map((value, i) => {
    low += 0.2 * (value - low);
    const phase = (i % period) / period;
    return level * low * 4 * Math.exp(-12 * phase);
  });
}

/** Music of sorts: a slow scale of tones with overtones. */
export function makeTones(seconds: number, level: number): Float32Array<ArrayBuffer> {
  const scale = [262, 294, 330, 349, 392, 440, 494, 523];
  return Float32Array.from({ length: seconds * RATE }, (_, i) => {
    const note = Math.floor(i / 6400);
    const t = (2 * Math.PI * scale[note % 8]! * i) / RATE;
    const fade = Math.exp((-3 * (i % 6400)) / 6400);
    return level * fade * (Math.sin(t) + 0.5 * Math.sin(2 * t) + 0.25 * Math.sin(3 * t));
  });
}

/** Pink noise, as a fan or a heater makes it: white noise through Paul Kellet's three poles (coefficients from memory). */
export function makePinkNoise(samples: number, level: number, seed = 1): Float32Array<ArrayBuffer> {
  const white = makeNoise(Math.ceil(samples / RATE), 1, seed);
  let a = 0;
  let b = 0;
  let c = 0;
  return white.slice(0, samples).map((value) => {
    a = 0.99765 * a + value * 0.099046;
    b = 0.963 * b + value * 0.2965164;
    c = 0.57 * c + value * 1.0526913;
    return level * 0.1 * (a + b + c + value * 0.1848);
  });
}

/** Steam: noise without its low half, in puffs of three seconds. */
export function makeHiss(seconds: number, level: number): Float32Array<ArrayBuffer> {
  let before = 0;
  return makeNoise(seconds, 1, 11).map((value, i) => {
    const high = value - 0.95 * before;
    before = value;
    return level * 0.5 * high * Math.max(0, Math.sin((2 * Math.PI * i) / (6 * RATE)));
  });
}
