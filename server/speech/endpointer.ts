import { VAD_FRAME } from './silero-vad.ts';

const RATE = 16_000;
const FRAME_MS = (VAD_FRAME / RATE) * 1000;

export type EndpointerSettings = {
  /** Probability at which speech starts. */
  startProbability: number;
  /** Probability above which begun speech goes on. */
  stayProbability: number;
  /** Silence that ends an utterance, ms. Slow talkers need 1000 to 1400. */
  endPauseMs: number;
  /** Lengthen the pause for a speaker who goes on soon after being cut off, up to `longestPauseMs`. */
  adaptPause: boolean;
  longestPauseMs: number;
  /** Sound kept from before the start, ms. */
  preRollMs: number;
  /** Sound kept after the last speech, ms. */
  postRollMs: number;
  /** Utterances with less speech than this are dropped, ms. */
  minSpeechMs: number;
  /** An utterance is cut at this length, at the longest recent pause, s. */
  longestUtteranceS: number;
  /** Frames quieter than this never start speech; dB below full scale. */
  energyGateDb: number;
};

/** Figures of the voice-activity network's makers for the thresholds; the pauses are the product's own. */
export const ENDPOINTER_DEFAULTS: EndpointerSettings = {
  startProbability: 0.5,
  stayProbability: 0.35,
  endPauseMs: 600,
  adaptPause: true,
  longestPauseMs: 1400,
  preRollMs: 400,
  postRollMs: 200,
  minSpeechMs: 250,
  longestUtteranceS: 25,
  energyGateDb: -58,
};

export type Utterance = {
  /** Samples from the start of the stream, 16 kHz. */
  startSample: number;
  endSample: number;
  pcm: Float32Array;
  /** Time with speech in it, ms. */
  speechMs: number;
  /** Mean probability over the frames with speech, 0–1. */
  speechProbability: number;
  /** What ended it: a pause, its length, or the end of the stream. */
  endedBy: 'pause' | 'length' | 'end';
};

export type EndpointEvent =
  | { type: 'speech-started'; startSample: number }
  /** What had started was too short to be speech: a knock, a cough. */
  | { type: 'speech-dismissed'; startSample: number }
  | { type: 'utterance-ended'; utterance: Utterance };

type Frame = { start: number; pcm: Float32Array; probability: number; speech: boolean };

/**
 * Cuts a stream into utterances by the probabilities of the voice-activity network. Pure but for its own memory: the same
 * frames always give the same events, live or from a file.
 */
export class Endpointer {
  readonly settings: EndpointerSettings;
  #position = 0;
  #roll: Frame[] = [];
  #open: Frame[] | undefined;
  #announced = false;
  #lastSpeech = 0;
  #pauseMs: number;
  #endedAt = Number.NEGATIVE_INFINITY;

  constructor(settings: Partial<EndpointerSettings> = {}) {
    this.settings = { ...ENDPOINTER_DEFAULTS, ...settings };
    this.#pauseMs = this.settings.endPauseMs;
  }

  /** The pause that ends an utterance as it stands now, ms. */
  get endPauseMs(): number {
    return this.#pauseMs;
  }

  /** True while an utterance is open. */
  get isOpen(): boolean {
    return this.#open !== undefined;
  }

  /** Silence since the last speech of the open utterance, ms; 0 when none is open. */
  get silenceMs(): number {
    return this.#open ? ((this.#position - this.#lastSpeech) / RATE) * 1000 : 0;
  }

  /** The open utterance so far, cut after its last speech as it would be if it ended now. */
  openUtterance(): Utterance | undefined {
    if (!this.#open || !this.#announced) return undefined;
    return this.#utterance(this.#open, 'end');
  }

  /**
   * @param frame 512 samples that follow the last ones
   * @param probability that someone speaks in them, 0–1
   */
  push(frame: Float32Array, probability: number): EndpointEvent[] {
    const { startProbability, stayProbability, preRollMs, minSpeechMs, longestUtteranceS } = this.settings;
    const events: EndpointEvent[] = [];
    const start = this.#position;
    this.#position += frame.length;
    const loud = energyDb(frame) >= this.settings.energyGateDb;
    const speech = loud && probability >= (this.#open ? stayProbability : startProbability);
    const kept: Frame = { start, pcm: frame, probability, speech };

    if (!this.#open) {
      this.#roll.push(kept);
      if (this.#roll.length > Math.ceil(preRollMs / FRAME_MS) + 1) this.#roll.shift();
      if (!speech) return events;
      this.#adaptToResumption(start);
      this.#open = this.#roll;
      this.#roll = [];
      this.#announced = false;
      this.#lastSpeech = this.#position;
      return events;
    }

    this.#open.push(kept);
    if (speech) this.#lastSpeech = this.#position;
    // Half of the least speech is enough to show that someone speaks; the rest decides whether it is kept.
    if (!this.#announced && speechMsOf(this.#open) >= Math.min(minSpeechMs, 128)) {
      this.#announced = true;
      events.push({ type: 'speech-started', startSample: this.#open[0]!.start });
    }
    if (this.silenceMs >= this.#pauseMs) events.push(...this.#close('pause'));
    else if ((this.#position - this.#open[0]!.start) / RATE >= longestUtteranceS) events.push(...this.#cut());
    return events;
  }

  /** Ends the stream, or a held key: what is open is an utterance now. */
  flush(): EndpointEvent[] {
    return this.#open ? this.#close('end') : [];
  }

  #close(endedBy: Utterance['endedBy']): EndpointEvent[] {
    const frames = this.#open!;
    this.#open = undefined;
    const start = frames[0]!.start;
    // What follows the last speech serves as the next utterance's run-up.
    const after = frames.filter((frame) => frame.start >= this.#lastSpeech);
    this.#roll = after.slice(-(Math.ceil(this.settings.preRollMs / FRAME_MS) + 1));
    if (speechMsOf(frames) < this.settings.minSpeechMs) {
      return this.#announced ? [{ type: 'speech-dismissed', startSample: start }] : [];
    }
    this.#endedAt = endedBy === 'pause' ? this.#position : Number.NEGATIVE_INFINITY;
    if (endedBy === 'pause') this.#pauseMs += (this.settings.endPauseMs - this.#pauseMs) * 0.05;
    const started: EndpointEvent[] = this.#announced ? [] : [{ type: 'speech-started', startSample: start }];
    return [...started, { type: 'utterance-ended', utterance: this.#utterance(frames, endedBy) }];
  }

  /** The utterance is too long: cut it in the middle of the longest pause of its last two thirds, and go on with the rest. */
  #cut(): EndpointEvent[] {
    const frames = this.#open!;
    const from = Math.floor(frames.length / 3);
    let best = { at: frames.length, length: 0 };
    let lowest = { at: frames.length, probability: Number.POSITIVE_INFINITY };
    for (let i = from; i < frames.length - 8; i++) {
      let length = 0;
      while (i + length < frames.length - 8 && !frames[i + length]!.speech) length++;
      if (length > best.length) best = { at: i + Math.ceil(length / 2), length };
      if (frames[i]!.probability < lowest.probability)
        lowest = { at: i, probability: frames[i]!.probability };
      i += length;
    }
    const at = best.length > 0 ? best.at : Math.min(lowest.at, frames.length);
    const head = frames.slice(0, at);
    const rest = frames.slice(at);
    this.#open = rest.length > 0 ? rest : undefined;
    this.#announced = rest.length > 0;
    const events: EndpointEvent[] = [{ type: 'utterance-ended', utterance: this.#whole(head, 'length') }];
    if (rest.length > 0) events.push({ type: 'speech-started', startSample: rest[0]!.start });
    return events;
  }

  #utterance(frames: Frame[], endedBy: Utterance['endedBy']): Utterance {
    const stop = this.#lastSpeech + Math.ceil((this.settings.postRollMs / 1000) * RATE);
    return this.#whole(
      frames.filter((frame) => frame.start < stop),
      endedBy,
    );
  }

  #whole(frames: Frame[], endedBy: Utterance['endedBy']): Utterance {
    const pcm = new Float32Array(frames.length * VAD_FRAME);
    frames.forEach((frame, index) => {
      pcm.set(frame.pcm, index * VAD_FRAME);
    });
    const spoken = frames.filter((frame) => frame.speech);
    const startSample = frames[0]?.start ?? this.#position;
    return {
      startSample,
      endSample: startSample + pcm.length,
      pcm,
      speechMs: spoken.length * FRAME_MS,
      speechProbability:
        spoken.reduce((sum, frame) => sum + frame.probability, 0) / Math.max(1, spoken.length),
      endedBy,
    };
  }

  /** Speech that resumes within a second of being cut off belonged to the utterance before: this speaker pauses longer. */
  #adaptToResumption(start: number): void {
    const { adaptPause, longestPauseMs, endPauseMs } = this.settings;
    if (adaptPause && (start - this.#endedAt) / RATE < 0.7) {
      this.#pauseMs = Math.min(Math.max(longestPauseMs, endPauseMs), this.#pauseMs * 1.15);
    }
  }
}

const speechMsOf = (frames: readonly Frame[]): number =>
  frames.reduce((sum, frame) => sum + (frame.speech ? FRAME_MS : 0), 0);

/** Loudness of a frame, dB below full scale. */
export function energyDb(frame: Float32Array): number {
  let sum = 0;
  for (let i = 0; i < frame.length; i++) sum += frame[i]! * frame[i]!;
  return 10 * Math.log10(sum / Math.max(1, frame.length) + 1e-12);
}
