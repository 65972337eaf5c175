import { execFileSync, spawn } from 'node:child_process';
import { mkdirSync, readdirSync, readFileSync } from 'node:fs';
import { loadavg } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import { createRecogniser } from '../../server/speech/recogniser.ts';
import { hasLibrivox, LIBRIVOX, MODELS } from '../speech/support/places.ts';
import { readWav } from '../speech/support/read-wav.ts';
import { countWordErrors } from '../speech/support/word-error.ts';

/**
 * `npm run trial:other-engine -- PYTHON WEIGHTS`: the recogniser beside an outside engine on the same weights, sentence by
 * sentence in one run, each first every other time, neither with context. PYTHON has faster-whisper from its registry; WEIGHTS
 * is a folder in CTranslate2's layout (models/manifest.json says where the weights come from). LibriVox's five sentences come from
 * Debian's pocketsphinx-testdata, sixty development notes are said by flite's three voices.
 */
const [python, weights] = process.argv.slice(2);
if (!python || !weights) {
  console.error(
    'expected a Python with faster-whisper and a folder of weights: npm run trial:other-engine -- PYTHON WEIGHTS',
  );
  process.exit(2);
}

type Sentence = { path: string; text: string };
type Heard = { text: string; ms: number };
type Engine = (sentence: Sentence) => Promise<Heard>;

const root = fileURLToPath(new URL('../..', import.meta.url));
const out = join(root, 'tests/.out/other-engine');
mkdirSync(out, { recursive: true });
const ROUNDS = 3;
const NOTES = 60;
const VOICES = ['slt', 'rms', 'awb'];

// The plain weights: the ones that the other engine has too.
const recogniser = createRecogniser({ modelsDir: MODELS, model: 'whisper-base' });
const other = spawn(python, [fileURLToPath(new URL('./other-engine.py', import.meta.url)), weights], {
  stdio: ['pipe', 'pipe', 'inherit'],
});
const lines = createInterface({ input: other.stdout })[Symbol.asyncIterator]();

const ours: Engine = async ({ path }) =>
  recogniser.recognise(readWav(path), { sentence: '' }, { priority: 'live', beam: 1 });
const theirs: Engine = async ({ path }) => {
  other.stdin.write(`${path}\n`);
  const { value } = await lines.next();
  if (value === undefined) throw new Error('the other engine ended; what it said stands above');
  return JSON.parse(value) as Heard;
};

function librivox(): Sentence[] {
  return readFileSync(`${LIBRIVOX}/transcription`, 'utf8')
    .split('\n')
    .filter(Boolean)
    .map((line) => {
      const [, text = '', id = ''] = /^<s> (.*) <\/s> \((.*)\)$/.exec(line) ?? [];
      return { path: `${LIBRIVOX}/${id}.wav`, text };
    });
}

function notes(): Sentence[] {
  const folder = join(root, 'tests/corpus/dev');
  const all = readdirSync(folder).flatMap((name) =>
    readFileSync(join(folder, name), 'utf8')
      .split('\n')
      .filter(Boolean)
      .map((line) => (JSON.parse(line) as { text: string }).text),
  );
  return Array.from({ length: NOTES }, (_, i) => {
    const text = all[Math.floor((i * all.length) / NOTES)]!;
    const path = join(out, `${i}.wav`);
    execFileSync('flite', ['-voice', VOICES[i % VOICES.length]!, '-t', text, `${path}.raw.wav`]);
    execFileSync('sox', ['-v', '0.8', `${path}.raw.wav`, '-r', '16000', '-b', '16', '-c', '1', path]);
    return { path, text };
  });
}

const percent = (share: number): string => `${(share * 100).toFixed(1)} %`;
const middle = (values: number[]): number => values.toSorted((a, b) => a - b)[values.length >> 1]!;

async function compare(name: string, sentences: Sentence[]): Promise<void> {
  const engines = { ours, theirs };
  const ms = { ours: [] as number[], theirs: [] as number[] };
  const wrong = { ours: 0, theirs: 0 };
  let words = 0;
  for (let round = 0; round < ROUNDS; round++) {
    for (const [i, sentence] of sentences.entries()) {
      const order = (round + i) % 2 === 0 ? (['ours', 'theirs'] as const) : (['theirs', 'ours'] as const);
      for (const who of order) {
        const heard = await engines[who](sentence);
        ms[who].push(heard.ms);
        if (round > 0) continue;
        const counted = countWordErrors(sentence.text, heard.text);
        wrong[who] += counted.errors;
        if (who === 'ours') words += counted.words;
      }
    }
  }
  const sum = (values: number[]): number => values.reduce((total, each) => total + each, 0);
  const each = ms.ours.map((mine, i) => ms.theirs[i]! / mine);
  console.log(
    `${name}: ${sentences.length} sentences, ${words} words, ${ROUNDS} rounds; load ${loadavg()[0]!.toFixed(1)}\n` +
      `  word error ${percent(wrong.ours / words)} here, ${percent(wrong.theirs / words)} there\n` +
      `  time, all   ${(sum(ms.ours) / ROUNDS / 1000).toFixed(1)} s here, ${(sum(ms.theirs) / ROUNDS / 1000).toFixed(1)} s there: ${(sum(ms.theirs) / sum(ms.ours)).toFixed(2)} times\n` +
      `  time, each  median ${middle(ms.ours).toFixed(0)} ms here, ${middle(ms.theirs).toFixed(0)} ms there; median of the ratios ${middle(each).toFixed(2)}`,
  );
}

await recogniser.ready();
if (hasLibrivox) await compare('LibriVox', librivox());
else console.log('LibriVox: pocketsphinx-testdata is not installed, left out');
await compare('notes', notes());
other.stdin.end();
await recogniser.close();
