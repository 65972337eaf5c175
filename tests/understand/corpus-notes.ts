import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const CORPUS = fileURLToPath(new URL('../corpus', import.meta.url));
const FILES = ['examples.jsonl', 'demo.jsonl', ...readdirSync(`${CORPUS}/dev`).map((name) => `dev/${name}`)];

/** The words of every note of the examples, the demo and the development corpora. */
export const CORPUS_TEXTS: readonly string[] = FILES.flatMap((name) =>
  readFileSync(`${CORPUS}/${name}`, 'utf8')
    .split('\n')
    .filter(Boolean)
    .map((line) => (JSON.parse(line) as { text: string }).text),
);
