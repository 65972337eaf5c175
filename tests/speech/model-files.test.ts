import { cpSync, mkdtempSync, readFileSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it, vi } from 'vitest';

import { checkModelFolder, readModelManifest } from '../../server/speech/model-files.ts';
import { createRecogniser } from '../../server/speech/recogniser.ts';
import { RECOGNISER_MODEL } from '../../shared/recogniser-model.ts';
import { MODELS } from './support/places.ts';

// A loaded machine is slow, not wrong: speed is measured in the bench.
vi.setConfig({ testTimeout: 180_000, hookTimeout: 120_000 });

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'models-'));
  cpSync(MODELS, folder, { recursive: true });
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

it('finds the shipped models whole, byte for byte', async () => {
  const { folders } = await readModelManifest(MODELS);
  expect(folders.map((each) => each.folder)).toEqual([
    'whisper-base',
    RECOGNISER_MODEL,
    'silero-vad',
    'trade-phrases',
  ]);
  for (const each of folders) {
    expect(each.licence).toBe('MIT');
    const files = await checkModelFolder(MODELS, each.folder, { hashes: true });
    expect(files.map(({ file }) => file)).toContain(`${each.folder}/LICENSE`);
  }
});

it('says in one line which file is cut short', async () => {
  truncateSync(join(folder, RECOGNISER_MODEL, 'onnx/encoder_model_quantized.onnx'), 1000);
  const recogniser = createRecogniser({ modelsDir: folder });
  await expect(recogniser.ready()).rejects.toThrow(
    /^Model file damaged: whisper-base-trade\/onnx\/encoder_model_quantized\.onnx has 1000 bytes, expected \d+\. .*$/,
  );
  await expect(recogniser.recognise(new Float32Array(16_000), {}, { priority: 'live' })).rejects.toThrow(
    'Model file damaged',
  );
  expect(recogniser.state()).toMatchObject({ state: 'unusable', waiting: 0 });
  await recogniser.close();
});

it('says in one line which file is missing', async () => {
  rmSync(join(folder, 'whisper-base/tokenizer.json'));
  await expect(checkModelFolder(folder, 'whisper-base')).rejects.toThrow(
    /^Model file missing: whisper-base\/tokenizer\.json/,
  );
  rmSync(join(folder, 'manifest.json'));
  await expect(checkModelFolder(folder, 'whisper-base')).rejects.toThrow(
    /^The list of model files is missing/,
  );
  writeFileSync(join(folder, 'manifest.json'), '{"version":1');
  await expect(checkModelFolder(folder, 'whisper-base')).rejects.toThrow(
    /^The list of model files cannot be read/,
  );
});

it('finds a file of the right size with other contents by its hash', async () => {
  const path = join(folder, 'silero-vad/silero_vad_16k_op15.onnx');
  const bytes = readFileSync(path);
  bytes[1000]! ^= 1;
  writeFileSync(path, bytes);
  await checkModelFolder(folder, 'silero-vad');
  await expect(checkModelFolder(folder, 'silero-vad', { hashes: true })).rejects.toThrow(/sha256 differs/);
});

it('tells of a model that has the right size but cannot be loaded', async () => {
  const path = join(folder, RECOGNISER_MODEL, 'onnx/encoder_model_quantized.onnx');
  writeFileSync(path, Buffer.alloc(readFileSync(path).length, 7));
  const recogniser = createRecogniser({ modelsDir: folder });
  await expect(recogniser.ready()).rejects.toThrow(
    /^The recogniser did not start \(.+\)\. Typed notes still work/,
  );
  // The folder is put right: no restart of the server is needed.
  cpSync(join(MODELS, RECOGNISER_MODEL), join(folder, RECOGNISER_MODEL), { recursive: true });
  await recogniser.ready();
  expect(recogniser.state()).toEqual({ state: 'ready', waiting: 0 });
  await recogniser.close();
});

it('takes another recogniser of the same layout that the manifest does not list', async () => {
  cpSync(join(folder, 'whisper-base'), join(folder, 'my-own'), { recursive: true });
  const files = await checkModelFolder(folder, 'my-own');
  expect(files).toHaveLength(7);
});
