import { AutoProcessor, env } from '@xenova/transformers';
import { expect, it } from 'vitest';
import { createLogMel } from '../../server/speech/log-mel.ts';
import { CLIPS, MODELS } from './support/places.ts';
import { readWav } from './support/read-wav.ts';

// Outside check: the feature extractor of @xenova/transformers 2.17.2, itself checked against the model's authors' code.
it.each([
  ['a clip shorter than its frames', 500, 3.4],
  ['a clip cut at its frames', 500, 13],
  ['the whole window of 30 s', 1500, 30],
])('gives the same spectrogram as the library for %s', async (_, frames, seconds) => {
  env.allowRemoteModels = false;
  env.localModelPath = MODELS;
  env.useFSCache = false;
  const processor = await AutoProcessor.from_pretrained('whisper-base');
  const extractor = processor.feature_extractor as unknown as {
    config: { mel_filters: number[][]; n_samples: number; nb_max_frames: number };
    window: Float64Array;
  };
  extractor.config.n_samples = frames * 320;
  extractor.config.nb_max_frames = frames * 2;
  const pcm = readWav(`${CLIPS}/two-cities.wav`).slice(0, Math.min(seconds * 16_000, frames * 320));
  const { input_features: theirs } = await processor(pcm);
  const ours = createLogMel(extractor.config.mel_filters, extractor.window)(pcm, frames);
  expect(theirs.dims).toEqual([1, 80, frames * 2]);
  expect(ours.length).toBe(theirs.data.length);
  let worst = 0;
  for (let i = 0; i < ours.length; i++) worst = Math.max(worst, Math.abs(ours[i]! - theirs.data[i]));
  expect(worst).toBeLessThan(1e-3);
});
