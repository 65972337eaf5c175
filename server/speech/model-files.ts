import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { readFile, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { z } from 'zod';

const Manifest = z.object({
  version: z.literal(1),
  folders: z.array(
    z.object({
      folder: z.string(),
      what: z.string(),
      licence: z.string(),
      copyright: z.string(),
      source: z.string(),
      made: z.string(),
      files: z.array(z.object({ file: z.string(), bytes: z.number().int(), sha256: z.string().length(64) })),
    }),
  ),
});
export type ModelManifest = z.infer<typeof Manifest>;

/** A model file is missing, cut or altered. `message` is one line fit to be shown as it stands. */
export class ModelFileError extends Error {
  override name = 'ModelFileError';
}

/** What a recogniser folder must hold when the manifest does not list it (a user's own model of the same layout). */
const RECOGNISER_LAYOUT = [
  'config.json',
  'generation_config.json',
  'preprocessor_config.json',
  'tokenizer.json',
  'tokenizer_config.json',
  'onnx/encoder_model_quantized.onnx',
  'onnx/decoder_model_merged_quantized.onnx',
];

/** Reads `models/manifest.json`. Throws ModelFileError when it is missing or is no manifest. */
export async function readModelManifest(modelsDir: string): Promise<ModelManifest> {
  const path = join(modelsDir, 'manifest.json');
  let text: string;
  try {
    text = await readFile(path, 'utf8');
  } catch {
    throw new ModelFileError(
      `The list of model files is missing: expected ${path}. Restore the models folder from the download.`,
    );
  }
  try {
    return Manifest.parse(JSON.parse(text));
  } catch {
    throw new ModelFileError(
      `The list of model files cannot be read: ${path} is damaged. Restore the models folder from the download.`,
    );
  }
}

/**
 * Checks that each file of one model folder is there with the right number of bytes; with `hashes`, its sha256 too.
 * Throws ModelFileError naming the first bad file. Sizes alone take under a millisecond, hashes about 0.3 s.
 */
export async function checkModelFolder(
  modelsDir: string,
  folder: string,
  { hashes = false }: { hashes?: boolean } = {},
): Promise<{ file: string; bytes: number }[]> {
  const manifest = await readModelManifest(modelsDir);
  const listed = manifest.folders.find((candidate) => candidate.folder === folder);
  const wanted =
    listed?.files ?? RECOGNISER_LAYOUT.map((file) => ({ file, bytes: undefined, sha256: undefined }));
  const checked: { file: string; bytes: number }[] = [];
  for (const { file, bytes, sha256 } of wanted) {
    const path = join(modelsDir, folder, file);
    const found = await stat(path).catch(() => undefined);
    if (!found?.isFile()) {
      throw new ModelFileError(
        `Model file missing: ${folder}/${file}. Restore it from the download (looked for ${path}).`,
      );
    }
    if (bytes !== undefined && found.size !== bytes) {
      throw new ModelFileError(
        `Model file damaged: ${folder}/${file} has ${found.size} bytes, expected ${bytes}. Restore it from the download.`,
      );
    }
    if (hashes && sha256 !== undefined && (await hashFile(path)) !== sha256) {
      throw new ModelFileError(
        `Model file damaged: ${folder}/${file} has the right size but other contents (sha256 differs). Restore it from the download.`,
      );
    }
    checked.push({ file: `${folder}/${file}`, bytes: found.size });
  }
  return checked;
}

async function hashFile(path: string): Promise<string> {
  const hash = createHash('sha256');
  for await (const piece of createReadStream(path)) hash.update(piece as Buffer);
  return hash.digest('hex');
}
