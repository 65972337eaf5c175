/** Root of the mean square. */
const rms = (pcm: Float32Array): number => Math.sqrt(pcm.reduce((sum, x) => sum + x * x, 0) / pcm.length);

/** Speech with a noise of its length in it, so many dB below the speech. */
export function mixNoise(
  speech: Float32Array<ArrayBuffer>,
  noise: Float32Array,
  belowDb: number,
): Float32Array<ArrayBuffer> {
  const gain = (rms(speech) / rms(noise)) * 10 ** (-belowDb / 20);
  return speech.map((value, i) => value + gain * noise[i]!);
}
