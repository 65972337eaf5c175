import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { checkModelFolder, ModelFileError } from './model-files.ts';
import { PhraseCounts } from './phrase-counts.ts';
import { TradePhrases } from './trade-phrases.ts';

export const TRADE_PHRASES_FOLDER = 'trade-phrases';
export const TRADE_PHRASES_FILE = 'phrases.json';

/**
 * Reads the counted phrases beside the recogniser's folder.
 *
 * @param vocabulary the recogniser's tokens by their number
 * @throws ModelFileError when the file is missing or is none
 */
export async function readTradePhrases(
  modelsDir: string,
  vocabulary: readonly string[],
): Promise<TradePhrases> {
  await checkModelFolder(modelsDir, TRADE_PHRASES_FOLDER);
  const path = join(modelsDir, TRADE_PHRASES_FOLDER, TRADE_PHRASES_FILE);
  const text = await readFile(path, 'utf8');
  try {
    return new TradePhrases(PhraseCounts.parse(JSON.parse(text)), vocabulary);
  } catch {
    throw new ModelFileError(
      `Model file damaged: ${TRADE_PHRASES_FOLDER}/${TRADE_PHRASES_FILE} holds no counted phrases. Restore it from the download.`,
    );
  }
}
