import { readFileSync } from 'node:fs';

/** Reads a 16 kHz, 16-bit, mono WAV file of the tests to samples from −1 to 1. */
export function readWav(path: string): Float32Array<ArrayBuffer> {
  const bytes = readFileSync(path);
  const start = bytes.indexOf('data') + 8;
  const samples = new Float32Array((bytes.length - start) >> 1);
  for (let i = 0; i < samples.length; i++) samples[i] = bytes.readInt16LE(start + 2 * i) / 32768;
  return samples;
}
