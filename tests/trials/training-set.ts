import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { closeSync, mkdirSync, openSync, writeFileSync, writeSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { readNote, SILENCE } from '../../core/conversation/read-note.ts';
import { LEFT_OUT_NOTES } from '../../server/cli/left-out-notes.ts';
import { buildPrompt } from '../../server/speech/build-prompt.ts';
import { loadNetwork } from '../../server/speech/whisper-network.ts';
import { framesFor, MOST_PROMPT_TOKENS } from '../../server/speech/whisper-tokens.ts';
import { makePinkNoise } from '../speech/support/make-sound.ts';
import { mixNoise } from '../speech/support/mix-noise.ts';
import { readWav } from '../speech/support/read-wav.ts';
import { devThreads } from '../understand/gold-notes.ts';

/**
 * `npm run models:training-set -- FOLDER [MOST]`: what tests/trials/train-decoder.py learns from. The development notes are said by
 * synthetic voices, some in a noisy room, and what the recogniser's own encoder makes of the sound is kept beside the words.
 *
 * The voices that the checks listen to (flite's slt, rms and awb) are left out, so that the checks tell how a voice is heard that
 * was not learned from; so are the notes kept aside, the examples and the last lot of the examples in other words (earlier lots are
 * among the development notes). Notes whose spelling is a slip of the ear are left out too: nobody should learn those.
 *
 * Needs Debian's flite, festival with festvox-kdlpc16k, espeak-ng and sox. Writes `states.f16` (16-bit floats, 512 a frame of
 * 20 ms) and `notes.jsonl` (`at`: the first float, `frames`, `prompt` and `target`: tokens). 5,700 notes take 3 GB and half an hour.
 */
const TIMES_SAID = 2;
const RATE = 16_000;
const LONGEST_S = 21;
const ESPEAK_VOICES = [
  'en-us',
  'en-gb',
  'en-gb-x-rp',
  'en-gb-scotland',
  'en-029',
  'en-us+f2',
  'en-us+f4',
  'en-us+f5',
  'en-us+m3',
  'en-us+m7',
  'en-gb+f1',
  'en-gb+f3',
  'en-gb+m5',
  'en-gb-x-rp+f2',
];

type Saying = { id: string; text: string; prompt: string; chance: (of: string) => number };

const [folder = 'training-set', most = 'all'] = process.argv.slice(2);
mkdirSync(folder, { recursive: true });
const root = fileURLToPath(new URL('../..', import.meta.url));
const network = await loadNetwork(join(root, 'models'), 'whisper-base');
const states = openSync(join(folder, 'states.f16'), 'w');
const lines: string[] = [];
let at = 0;
for (const saying of sayings().slice(0, most === 'all' ? undefined : Number(most))) {
  const pcm = say(saying);
  const seconds = pcm.length / RATE;
  if (seconds > LONGEST_S) continue;
  const frames = framesFor(seconds);
  const encoded = (await network.encode(pcm, frames)).data as Float32Array;
  writeSync(states, new Uint8Array(Uint16Array.from(encoded, halfFloat).buffer));
  const { id, text, prompt } = saying;
  lines.push(
    JSON.stringify({
      id,
      at,
      frames,
      prompt: prompt === '' ? [] : network.encodeText(` ${prompt}`).slice(-MOST_PROMPT_TOKENS),
      target: network.encodeText(` ${text}`),
    }),
  );
  at += encoded.length;
  if (lines.length % 200 === 0) console.error(`${lines.length} said`);
}
closeSync(states);
writeFileSync(join(folder, 'notes.jsonl'), `${lines.join('\n')}\n`);
console.error(`${lines.length} said in all`);

/** The notes that are fit to be said, each with what the recogniser is told before it. */
function sayings(): Saying[] {
  const fit: Saying[] = [];
  for (const thread of devThreads(LEFT_OUT_NOTES)) {
    const quilt = thread[0]!.quilt!;
    let conversation = SILENCE;
    let last: string | undefined;
    for (const { id, at, text: written } of thread) {
      const text = written.replace(/\s+/g, ' ').trim();
      const read = readNote(text, { at, quilt, conversation });
      const words = text.split(' ').length;
      const isFit = !read.reading.slips?.length && words >= 3 && words <= 55;
      for (let time = 0; isFit && time < TIMES_SAID; time++) {
        const chance = (of: string) => chanceOf(`${id} ${time} ${of}`);
        const told = buildPrompt(quilt, chance('last note') < 0.75 ? last : undefined);
        const prompt = [told.sentence, told.lastNote].filter(Boolean).join(' ');
        fit.push({ id, text, chance, prompt: chance('prompt') < 0.92 ? prompt : '' });
      }
      conversation = read.conversation;
      last = text;
    }
  }
  return fit;
}

/** Says a note with one voice at one pace, in an echoing room now and then, and with a noise in one of three. */
function say({ text, chance }: Saying): Float32Array {
  const [raw, said] = [join(folder, 'raw.wav'), join(folder, 'said.wav')];
  const voice = chance('voice');
  if (voice < 0.42) run('flite', '-voice', 'kal16', '-t', text, raw);
  else if (voice < 0.68) {
    writeFileSync(join(folder, 'note.txt'), text.replace(/[^ -~]/g, ' '));
    run('text2wave', '-eval', '(voice_ked_diphone)', join(folder, 'note.txt'), '-o', raw);
  } else {
    const espeak = ESPEAK_VOICES[Math.floor(chance('espeak') * ESPEAK_VOICES.length)]!;
    run(
      'espeak-ng',
      '-v',
      espeak,
      '-s',
      String(Math.round(140 + 40 * chance('pace'))),
      '-w',
      raw,
      '--',
      text,
    );
  }
  const speed = voice < 0.68 ? 0.85 + 0.37 * chance('speed') : 0.92 + 0.16 * chance('speed');
  const room =
    chance('room') < 0.2 ? ['reverb', String(Math.round(10 + 150 * chance('room'))), '50', '40'] : [];
  // -R: its dither by the same chance each time
  run(
    'sox',
    '-R',
    '-v',
    '0.8',
    raw,
    '-r',
    String(RATE),
    '-b',
    '16',
    '-c',
    '1',
    said,
    'speed',
    String(speed),
    'rate',
    String(RATE),
    ...room,
  );
  const clean = readWav(said);
  const noise = chance('noise');
  const fan = (): Float32Array => makePinkNoise(clean.length, 1, Math.floor(chance('fan') * 2 ** 31));
  const speech = noise < 0.35 ? mixNoise(clean, fan(), 6 + 16 * (noise / 0.35)) : clean;
  const loudest = speech.reduce((most, value) => Math.max(most, Math.abs(value)), 1e-3);
  const level = (0.35 + 0.55 * chance('level')) / loudest;
  return speech.map((value) => value * level);
}

function run(command: string, ...rest: string[]): void {
  execFileSync(command, rest, { stdio: 'ignore' });
}

/** 0 to 1, always the same for the same words. */
function chanceOf(words: string): number {
  return createHash('sha256').update(words).digest().readUInt32BE(0) / 2 ** 32;
}

/** The bits of an IEEE 754 half float, towards nought; what is too large is the largest, what is too small is nought. */
function halfFloat(value: number): number {
  const bits = new Uint32Array(Float32Array.of(value).buffer)[0]!;
  const sign = (bits >>> 16) & 0x8000;
  const exponent = ((bits >>> 23) & 0xff) - 112;
  if (exponent <= 0) return sign;
  if (exponent >= 31) return sign | 0x7bff;
  return sign | (exponent << 10) | ((bits >>> 13) & 0x3ff);
}
