import { createResampler } from './resampler.ts';

/** What the worklet posts: one frame of 16 kHz mono, and its peak from 0 to 1. */
export type CapturedFrame = { samples: Int16Array; peak: number };

// The audio thread has globals of its own, which the DOM's types do not name.
declare const sampleRate: number;
declare class AudioWorkletProcessor {
  readonly port: MessagePort;
}
declare function registerProcessor(name: string, processor: new () => AudioWorkletProcessor): void;

const RATE = 16_000;
/** 32 ms, the step that the voice-activity model on the server takes. */
const FRAME = 512;

class CaptureProcessor extends AudioWorkletProcessor {
  #resampler = createResampler(sampleRate, RATE);
  #frame = new Int16Array(FRAME);
  #filled = 0;
  #peak = 0;

  process(inputs: Float32Array[][]): boolean {
    const channels = inputs[0];
    if (!channels?.length) return true;
    const mono = channels.length === 1 ? channels[0]! : average(channels);
    for (const sample of this.#resampler.push(mono)) {
      const held = Math.max(-1, Math.min(1, sample));
      this.#peak = Math.max(this.#peak, Math.abs(held));
      this.#frame[this.#filled++] = Math.round(held < 0 ? held * 0x8000 : held * 0x7fff);
      if (this.#filled === FRAME) {
        const message: CapturedFrame = { samples: this.#frame, peak: this.#peak };
        this.port.postMessage(message, [this.#frame.buffer]);
        this.#frame = new Int16Array(FRAME);
        this.#filled = 0;
        this.#peak = 0;
      }
    }
    return true;
  }
}

function average(channels: Float32Array[]): Float32Array {
  const mono = new Float32Array(channels[0]!.length);
  for (const channel of channels)
    for (let i = 0; i < mono.length; i++) mono[i]! += channel[i]! / channels.length;
  return mono;
}

registerProcessor('capture', CaptureProcessor);
