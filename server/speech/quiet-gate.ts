import { ENDPOINTER_DEFAULTS, energyDb } from './endpointer.ts';

const RATE = 16_000;
/** Corners of the bands, Hz: what lies below the first is rumble; then the ground of a voice, vowels, the formants that tell them apart, consonants and hiss. */
const CORNERS_HZ = [150, 400, 1_000, 3_000];
const BANDS = CORNERS_HZ.length;
/** No speech is told by less than this in a band, dB below full scale. */
const NOTHING_DB = -75;
/** Share of the way that a one-pole low-pass goes to the next sample. */
const STEPS = CORNERS_HZ.map((hz) => 1 - Math.exp((-2 * Math.PI * hz) / RATE));

/** Frames of 32 ms whose loudness makes the floor: three seconds. */
const FLOOR_FRAMES = 94;
/** A frame to which the network gives less than this is none of speech, and one of the floor. */
const SURELY_NOT = 0.1;
/** The gate shuts after so many such in a row: longer than the longest pause within what somebody says, 1.4 s. */
const SHUT_AFTER_FRAMES = 50;
/** After a loud frame the gate stays open for a second; as many of the frames passed over are given to the network first when it opens. */
const RUN_UP_FRAMES = 32;
/** In steady noise a frame seldom comes further above the middle than this many times what the middle lies above the lowest tenth. */
const SPREADS = 2.5;
const LEAST_MARGIN_DB = 0.5;
/** Speech this much above the floor in any band opens the gate, however uneven the noise is. */
const MOST_MARGIN_DB = 3;
/** Noise whose lowest and loudest tenth lie further apart than this is not passed over at all. */
const UNEVEN_DB = 6;
/** A single frame opens it only where it is above the limit by this much; else two in a row do. */
const CLEARLY_DB = 3;

/** Frames for the network to look at: those passed over just before, and last the one that opened the gate or came while it was open. */
export type Look = { frames: Float32Array[]; levels: Float64Array };

/**
 * Tells by loudness alone which frames need not be looked at by the voice-activity network: while nobody has spoken for a
 * while, and a frame is no louder in any of four bands than the steady noise that the network has found to be none of
 * speech, or quieter than what may begin speech at all. So an evening of silence costs little. What is uneven, such as a
 * sewing machine, keeps it open. Figures found by trial with speech down to the level of the noise (tests/speech).
 */
export class QuietGate {
  readonly #low = new Float64Array(STEPS.length);
  /** Of the last frames without speech, dB by band; a ring. */
  readonly #floor = Array.from({ length: BANDS }, () => new Float64Array(FLOOR_FRAMES));
  #floorCount = 0;
  readonly #limits = new Float64Array(BANDS);
  #sinceSpeech = 0;
  #sinceLoud = 0;
  #wasOver = false;
  #runUp: Float32Array[] = [];

  /** Frames in order, each once. Undefined where this one is quiet and passed over. */
  open(frame: Float32Array): Look | undefined {
    const levels = this.#measure(frame);
    this.#sinceLoud = this.#isQuiet(frame, levels) ? this.#sinceLoud + 1 : 0;
    if (this.#sinceSpeech >= SHUT_AFTER_FRAMES && this.#sinceLoud >= RUN_UP_FRAMES) {
      this.#runUp.push(frame);
      if (this.#runUp.length > RUN_UP_FRAMES) this.#runUp.shift();
      this.#learn(levels);
      return undefined;
    }
    const frames = [...this.#runUp, frame];
    this.#runUp = [];
    return { frames, levels };
  }

  /** What the network says of the last frame of a look; of one look after the other. */
  heard({ levels }: Look, probability: number): void {
    if (probability >= SURELY_NOT) this.#sinceSpeech = 0;
    else {
      this.#sinceSpeech++;
      this.#learn(levels);
    }
  }

  #measure(frame: Float32Array): Float64Array {
    const sums = new Float64Array(BANDS);
    let [r, a, b, c] = this.#low as unknown as [number, number, number, number];
    const [stepR, stepA, stepB, stepC] = STEPS as [number, number, number, number];
    for (let i = 0; i < frame.length; i++) {
      const x = frame[i]!;
      r += stepR * (x - r);
      a += stepA * (x - a);
      b += stepB * (x - b);
      c += stepC * (x - c);
      sums[0]! += (a - r) * (a - r);
      sums[1]! += (b - a) * (b - a);
      sums[2]! += (c - b) * (c - b);
      sums[3]! += (x - c) * (x - c);
    }
    this.#low.set([r, a, b, c]);
    for (let band = 0; band < BANDS; band++)
      sums[band] = Math.max(NOTHING_DB, 10 * Math.log10(sums[band]! / frame.length + 1e-12));
    return sums;
  }

  #isQuiet(frame: Float32Array, levels: Float64Array): boolean {
    if (energyDb(frame) < ENDPOINTER_DEFAULTS.energyGateDb) return true;
    if (this.#floorCount < FLOOR_FRAMES) return false;
    let over = Number.NEGATIVE_INFINITY;
    for (let band = 0; band < BANDS; band++) over = Math.max(over, levels[band]! - this.#limits[band]!);
    const isLoud = over > CLEARLY_DB || (over > 0 && this.#wasOver);
    this.#wasOver = over > 0;
    return !isLoud;
  }

  #learn(levels: Float64Array): void {
    const at = this.#floorCount % FLOOR_FRAMES;
    for (let band = 0; band < BANDS; band++) this.#floor[band]![at] = levels[band]!;
    this.#floorCount++;
    // Sorting costs more than all else here, and the floor of three seconds changes little in a quarter of one.
    if (this.#floorCount < FLOOR_FRAMES || this.#floorCount % 8 !== 0) return;
    for (let band = 0; band < BANDS; band++) {
      const sorted = this.#floor[band]!.slice().sort();
      const middle = sorted[FLOOR_FRAMES >> 1]!;
      const lowest = sorted[Math.floor(FLOOR_FRAMES / 10)]!;
      const isSteady = sorted[Math.ceil(FLOOR_FRAMES * 0.9)]! - lowest < UNEVEN_DB;
      this.#limits[band] = isSteady
        ? middle + Math.min(MOST_MARGIN_DB, LEAST_MARGIN_DB + SPREADS * (middle - lowest))
        : Number.NEGATIVE_INFINITY;
    }
  }
}
