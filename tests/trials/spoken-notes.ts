import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { loadavg } from 'node:os';
import { basename, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { buildPrompt } from '../../server/speech/build-prompt.ts';
import { hearFile } from '../../server/speech/hear-file.ts';
import { createRecogniser } from '../../server/speech/recogniser.ts';
import { createRecordingReader } from '../../server/speech/recording-reader.ts';
import { understandNotes } from '../../server/understand-notes.ts';
import { makePinkNoise } from '../speech/support/make-sound.ts';
import { mixNoise } from '../speech/support/mix-noise.ts';
import { MODELS } from '../speech/support/places.ts';
import { readWav } from '../speech/support/read-wav.ts';
import { countWordErrors } from '../speech/support/word-error.ts';
import { writeWav } from '../speech/support/write-wav.ts';

/**
 * `npm run trial:spoken`: how well annotated notes are understood when they are said aloud instead of typed. A sample of them
 * is read by synthetic voices (flite, espeak-ng), clean and with a fan's noise (pink, at so many dB below the speech), heard
 * by the real recogniser, read by the rules and scored by tests/contract/score.mjs. The notes between those of the sample are
 * given as text, so that the conversation goes on. What was heard is kept in tests/.out/spoken, and `--again` reads and
 * scores it with the rules of today without hearing it anew.
 */
const { values } = parseArgs({
  options: {
    set: { type: 'string', default: 'examples' },
    voices: { type: 'string', default: 'slt,rms,awb,espeak' },
    noise: { type: 'string', default: 'clean,15,10' },
    notes: { type: 'string', default: '40' },
    /** The sample begins at this note; another offset gives other notes. */
    from: { type: 'string', default: '0' },
    again: { type: 'boolean', default: false },
    show: { type: 'boolean', default: false },
  },
});

type Note = { id: string; text: string; gold: unknown };

const root = fileURLToPath(new URL('../..', import.meta.url));
const out = join(root, 'tests/.out/spoken');
mkdirSync(out, { recursive: true });

const files =
  values.set === 'examples'
    ? [join(root, 'tests/corpus/examples.jsonl')]
    : readdirSync(join(root, 'tests/corpus', values.set)).map((name) =>
        join(root, 'tests/corpus', values.set, name),
      );
const notes = files.flatMap((file) =>
  readFileSync(file, 'utf8')
    .split('\n')
    .filter(Boolean)
    .map((line) => JSON.parse(line) as Note),
);
const wanted = Math.min(Number(values.notes), notes.length);
const sample = new Set(
  Array.from(
    { length: wanted },
    (_, i) => (Math.floor((i * notes.length) / wanted) + Number(values.from)) % notes.length,
  ),
);
/** Names the sample in the files of what was heard. */
const name = `${values.set}${values.from === '0' ? '' : `+${values.from}`}`;
const gold = join(out, `${name}-gold.jsonl`);
writeFileSync(
  gold,
  notes.flatMap((note, i) => (sample.has(i) ? [`${JSON.stringify(note)}\n`] : [])).join(''),
);

const reader = createRecordingReader(MODELS);
const recogniser = createRecogniser({ modelsDir: MODELS });

/** Says a note and mixes noise into it, once; later runs use the file. */
function speak(note: Note, voice: string, noise: string): string {
  const clean = join(out, `${note.id}-${voice}.wav`);
  if (!existsSync(clean)) {
    const raw = join(out, 'raw.wav');
    if (voice === 'espeak')
      execFileSync('espeak-ng', ['-v', 'en-gb', '-s', '150', '-w', raw, '--', note.text]);
    else execFileSync('flite', ['-voice', voice, '-t', note.text, raw]);
    execFileSync('sox', ['-v', '0.8', raw, '-r', '16000', '-b', '16', '-c', '1', clean]);
  }
  if (noise === 'clean') return clean;
  const mixed = join(out, `${note.id}-${voice}-${noise}.wav`);
  if (!existsSync(mixed)) {
    const speech = readWav(clean);
    const fan = makePinkNoise(speech.length, 1, Number(noise));
    writeWav(
      mixed,
      mixNoise(speech, fan, Number(noise)).map((value) => value * 0.8),
    );
  }
  return mixed;
}

/** `heardBefore`, by the note's id, is taken for what is heard where it has the note. */
async function understand(lines: string[], heardBefore = new Map<string, string>()): Promise<string[]> {
  async function* each(): AsyncGenerator<string> {
    yield* lines;
  }
  const answers: string[] = [];
  for await (const answer of understandNotes(each(), {
    folder: root,
    hear: async (path, quilt, lastNote) => {
      const before = heardBefore.get(basename(path));
      return before === undefined
        ? hearFile(path, buildPrompt(quilt, lastNote), { recogniser, modelsDir: MODELS, reader })
        : { heard: before, others: [] };
    },
  }))
    answers.push(answer);
  return answers;
}

type Score = { slotF1: number; exact: number; act: number; ask: number | null };
function score(answers: string): Score {
  const scorer = join(root, 'tests/contract/score.mjs');
  return JSON.parse(execFileSync(process.execPath, [scorer, gold, answers, '--json'], { encoding: 'utf8' }));
}

const percent = (share: number): string => `${(share * 100).toFixed(1)} %`;
const line = (name: string, s: Score, errors: string): void => {
  console.log(
    `${name.padEnd(14)} slot F1 ${s.slotF1.toFixed(3)}  whole ${s.exact.toFixed(3)}  act ${s.act.toFixed(3)}  ask ${s.ask?.toFixed(2) ?? '-'}  ${errors}`,
  );
};

console.log(`${name}: ${sample.size} of ${notes.length} notes; load ${loadavg()[0]!.toFixed(1)}`);
const typed = join(out, `${name}-typed.jsonl`);
writeFileSync(
  typed,
  (await understand(notes.map(({ gold: _, ...note }) => JSON.stringify(note)))).join('\n'),
);
line('typed', score(typed), '');

for (const noise of values.noise.split(',')) {
  for (const voice of values.voices.split(',')) {
    const file = join(out, `${name}-${voice}-${noise}.jsonl`);
    const before = new Map<string, string>();
    if (values.again)
      for (const answer of readFileSync(file, 'utf8').split('\n').filter(Boolean)) {
        const { id, heard } = JSON.parse(answer) as { id: string; heard?: string };
        if (heard !== undefined) before.set(id, heard);
      }
    const lines = notes.map(({ gold: _, text, ...note }, i) => {
      if (!sample.has(i)) return JSON.stringify({ ...note, text });
      // as sound, so that the rules for what was heard apply
      if (values.again) return JSON.stringify({ ...note, audio: note.id });
      return JSON.stringify({ ...note, audio: speak({ ...note, text, gold: null }, voice, noise) });
    });
    const answers = await understand(lines, before);
    writeFileSync(file, answers.join('\n'));
    const heard = notes.flatMap((note, i) =>
      sample.has(i) ? [{ note, heard: (JSON.parse(answers[i]!) as { heard?: string }).heard ?? '' }] : [],
    );
    const counts = heard.map((one) => countWordErrors(one.note.text, one.heard));
    const wrong = counts.reduce((sum, c) => sum + c.errors, 0) / counts.reduce((sum, c) => sum + c.words, 0);
    line(`${voice} ${noise}`, score(file), `word error ${percent(wrong)}`);
    if (values.show)
      for (const one of heard) console.log(`  ${one.note.id} ${one.note.text}\n       ${one.heard}`);
  }
}
await reader.close();
await recogniser.close();
