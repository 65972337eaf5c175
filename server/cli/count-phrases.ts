import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { AutoTokenizer, env } from '@xenova/transformers';
import { readModelManifest } from '../speech/model-files.ts';
import { countPhrases } from '../speech/phrase-counts.ts';
import { TRADE_PHRASES_FILE, TRADE_PHRASES_FOLDER } from '../speech/read-trade-phrases.ts';
import { LEFT_OUT_NOTES } from './left-out-notes.ts';

/**
 * `npm run models:phrases`: counts how the development notes go on, for the recogniser to choose by where the sound leaves it
 * torn. Notes in shorthand are left out, because nobody says them so; so are the examples, the last lot of them in other words, and
 * the notes kept aside, which tell how well notes are heard that were not counted.
 */
const root = fileURLToPath(new URL('../..', import.meta.url));
const modelsDir = join(root, 'models');
const SHORTHAND = /\b[rb]\d|[&/>=|#]/i;

env.allowRemoteModels = false;
env.localModelPath = modelsDir;
const tokenizer = await AutoTokenizer.from_pretrained('whisper-base');
const { vocab } = (tokenizer as unknown as { model: { vocab: string[] } }).model;
const tokensOf = (text: string): string[] =>
  (tokenizer.encode(` ${text}`, null, { add_special_tokens: false }) as number[]).map((id) => vocab[id]!);

const corpus = join(root, 'tests/corpus/dev');
const notes = readdirSync(corpus)
  .filter((name) => name !== LEFT_OUT_NOTES)
  .sort()
  .flatMap((name) => readFileSync(join(corpus, name), 'utf8').split('\n').filter(Boolean))
  .map((line) => (JSON.parse(line) as { text: string }).text)
  .filter((text) => !SHORTHAND.test(text))
  .map((text) =>
    text
      .toLowerCase()
      .replace(/[^\p{L}\p{N}' -]+/gu, ' ')
      .replace(/\s+/g, ' ')
      .trim(),
  );

const path = join(modelsDir, TRADE_PHRASES_FOLDER, TRADE_PHRASES_FILE);
const counts = countPhrases(notes.map(tokensOf));
const text = `${JSON.stringify(counts)}\n`;
writeFileSync(path, text);

const manifest = await readModelManifest(modelsDir);
const listed = manifest.folders.find(({ folder }) => folder === TRADE_PHRASES_FOLDER);
if (!listed) throw new Error(`models/manifest.json has no folder ${TRADE_PHRASES_FOLDER}.`);
listed.files = [
  ...listed.files.filter(({ file }) => file !== TRADE_PHRASES_FILE),
  {
    file: TRADE_PHRASES_FILE,
    bytes: Buffer.byteLength(text),
    sha256: createHash('sha256').update(text).digest('hex'),
  },
];
writeFileSync(join(modelsDir, 'manifest.json'), `${JSON.stringify(manifest, null, 2)}\n`);
console.log(
  `${notes.length} notes, ${counts.tokens.length} tokens, ${counts.triples.length / 4} phrases of three.`,
);
