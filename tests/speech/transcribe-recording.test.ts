import { execFileSync, spawn, spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { hearFile } from '../../server/speech/hear-file.ts';
import { createRecogniser, type Recogniser } from '../../server/speech/recogniser.ts';
import { createRecordingReader } from '../../server/speech/recording-reader.ts';
import { type RecordedUtterance, transcribeRecording } from '../../server/speech/transcribe-recording.ts';
import { makeHum, makeNoise, makeThumps, makeTones } from './support/make-sound.ts';
import { AUDIO, CLIPS, MODELS } from './support/places.ts';
import { readWav } from './support/read-wav.ts';
import { countWordErrors } from './support/word-error.ts';
import { writeWav } from './support/write-wav.ts';

vi.setConfig({ testTimeout: 180_000, hookTimeout: 120_000 });

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
let recogniser: Recogniser;
let folder: string;
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'recordings-'));
  recogniser = createRecogniser({ modelsDir: MODELS });
  await recogniser.ready();
});
afterAll(async () => {
  await recogniser.close();
  rmSync(folder, { recursive: true, force: true });
});

async function all(path: string, options: { signal?: AbortSignal } = {}): Promise<RecordedUtterance[]> {
  const utterances: RecordedUtterance[] = [];
  for await (const utterance of transcribeRecording(path, { recogniser, modelsDir: MODELS, ...options }))
    utterances.push(utterance);
  return utterances;
}

it('cuts a reading at its pauses and gives each part at its true time', async () => {
  const shares: number[] = [];
  const utterances: RecordedUtterance[] = [];
  const kept: number[] = [];
  const reading = transcribeRecording(join(CLIPS, 'two-cities.wav'), {
    recogniser,
    modelsDir: MODELS,
    onProgress: ({ share }) => shares.push(share),
    onUtterance: ({ pcm }) => kept.push(pcm.length),
  });
  for await (const utterance of reading) utterances.push(utterance);
  // The text stands in transcripts.jsonl; the reading goes on past it, so the first 28 s are scored.
  const text = utterances
    .filter(({ startS }) => startS < 28)
    .map((utterance) => utterance.text)
    .join(' ');
  const said =
    'it was the best of times it was the worst of times it was the age of wisdom it was the age of foolishness it was the epoch of belief it was the epoch of incredulity it was the season of light it was the season of darkness it was the spring of hope it was the winter of despair we had everything before us we had nothing before us we were all going direct to heaven we were all going direct the other way';
  expect(countWordErrors(said, text).errors).toBeLessThanOrEqual(6);
  for (let i = 0; i < utterances.length; i++) {
    const { startS, endS, confidence, words } = utterances[i]!;
    expect(endS - startS).toBeLessThanOrEqual(25.1);
    if (i > 0) expect(startS).toBeGreaterThanOrEqual(utterances[i - 1]!.startS);
    expect(confidence).toBeGreaterThan(0.5);
    expect(words.length).toBeGreaterThan(0);
  }
  expect(kept).toHaveLength(utterances.length);
  expect(shares.at(-1)).toBe(1);
  expect(shares).toEqual([...shares].sort((a, b) => a - b));
});

describe('silence and noise give no entry at all', () => {
  // Two minutes of each at several levels, made here: no courtesies, no captions.
  const kinds: [string, (seconds: number, level: number) => Float32Array][] = [
    ['silence', (seconds) => new Float32Array(seconds * 16_000)],
    ['hiss', makeNoise],
    ['hum', makeHum],
    ['a machine', makeThumps],
    ['tones', makeTones],
  ];
  it.each(kinds)('%s', async (name, make) => {
    const path = join(folder, `${name}.wav`);
    const parts = [0.001, 0.01, 0.05, 0.3].map((level) => make(30, level));
    writeWav(path, Float32Array.from(parts.flatMap((part) => [...part])));
    expect(await all(path)).toEqual([]);
  });

  it('but speech between them is found, at its time', async () => {
    const path = join(folder, 'between.wav');
    const clip = readWav(join(CLIPS, 'voices-sp0307-sg0042.wav'));
    writeWav(path, Float32Array.from([...makeHum(10, 0.02), ...clip, ...makeNoise(10, 0.01)]));
    const utterances = await all(path);
    expect(utterances.map(({ text }) => text).join(' ')).toContain('curiosity');
    expect(utterances[0]!.startS).toBeGreaterThan(9.5);
    expect(utterances.at(-1)!.endS).toBeLessThan(15);
  });
});

it.each([
  'short.wav',
  'short.flac',
  'short.mp3',
  'short-vorbis.ogg',
  'short-opus.ogg',
  'short.m4a',
  'short.webm',
])('hears %s as one note', async (file) => {
  const { heard, confidence } = await hearFile(join(AUDIO, file), {}, { recogniser, modelsDir: MODELS });
  expect(countWordErrors('and so my fellow americans', heard).errors).toBeLessThanOrEqual(1);
  expect(confidence).toBeGreaterThan(0.5);
});

it('hears a whole file as one note across its pauses', async () => {
  const { heard } = await hearFile(join(CLIPS, 'jfk.wav'), {}, { recogniser, modelsDir: MODELS });
  const said =
    'and so my fellow americans ask not what your country can do for you ask what you can do for your country';
  expect(countWordErrors(said, heard).errors).toBeLessThanOrEqual(2);
});

it('hears nothing in a silent file, and says so with empty words', async () => {
  const path = join(folder, 'silent.wav');
  writeWav(path, new Float32Array(32_000));
  const nothing = { heard: '', confidence: 0, others: [] };
  expect(await hearFile(path, {}, { recogniser, modelsDir: MODELS })).toEqual(nothing);
});

it('reads several files with one reader, also past one that can not be heard and one that was broken off', async () => {
  const reader = createRecordingReader(MODELS);
  const options = { recogniser, modelsDir: MODELS, reader };
  const cut = join(folder, 'head.wav');
  writeFileSync(cut, readFileSync(join(AUDIO, 'short.wav')).subarray(0, 44));
  const hear = async (file: string) => (await hearFile(join(AUDIO, file), {}, options)).heard;
  try {
    const first = await hear('short.wav');
    expect(countWordErrors('and so my fellow americans', first).errors).toBeLessThanOrEqual(1);
    await expect(hearFile(cut, {}, options)).rejects.toThrow(/^head\.wav is WAV with no sound in it/);
    const stop = new AbortController();
    const reading = transcribeRecording(join(CLIPS, 'two-cities.wav'), { ...options, signal: stop.signal });
    await reading.next();
    stop.abort();
    await expect(reading.next()).rejects.toMatchObject({ name: 'AbortError' });
    // The same words again: nothing of the files between is left in it.
    expect(await hear('short.wav')).toBe(first);
  } finally {
    await reader.close();
  }
});

it('is called off half way: what was given stands, and no process is left', async () => {
  const stop = new AbortController();
  const utterances: RecordedUtterance[] = [];
  const reading = (async () => {
    for await (const utterance of transcribeRecording(join(CLIPS, 'two-cities.wav'), {
      recogniser,
      modelsDir: MODELS,
      signal: stop.signal,
    })) {
      utterances.push(utterance);
      stop.abort();
    }
  })();
  await expect(reading).rejects.toMatchObject({ name: 'AbortError' });
  expect(utterances).toHaveLength(1);
  expect(recogniser.state()).toEqual({ state: 'ready', waiting: 0 });
});

it('fails at once, with a clear line, on a file that is no audio', async () => {
  const path = join(folder, 'notes.wav');
  writeFileSync(path, 'row three, block two');
  await expect(all(path)).rejects.toThrow(/^notes\.wav is no audio/);
});

describe('the transcribe command', () => {
  const run = (files: string[]) =>
    spawnSync('npm', ['run', '--silent', 'transcribe', '--', ...files], { cwd: ROOT, encoding: 'utf8' });

  it('prints one JSON line an utterance, tells progress apart, and goes on past a bad file', () => {
    const bad = join(folder, 'bad.wav');
    writeFileSync(bad, 'no audio');
    const good = join(AUDIO, 'short.mp3');
    const { stdout, stderr, status } = run([bad, good]);
    const lines = stdout
      .trim()
      .split('\n')
      .map((line) => JSON.parse(line) as Record<string, unknown>);
    expect(lines).toHaveLength(1);
    expect(Object.keys(lines[0]!)).toEqual(['file', 'start_s', 'end_s', 'text', 'confidence']);
    expect(lines[0]).toMatchObject({ file: good, start_s: expect.any(Number), end_s: expect.any(Number) });
    expect(String(lines[0]!.text).toLowerCase()).toContain('fellow americans');
    expect(stderr).toContain('bad.wav is no audio');
    expect(stderr).toContain('1 utterance');
    expect(status).toBe(1);
  });

  it('says what it wants when it is given nothing', () => {
    const { stdout, stderr, status } = run([]);
    expect(stdout).toBe('');
    expect(stderr).toMatch(/Expected one or more audio files/);
    expect(status).toBe(2);
  });

  it('stops at Ctrl-C with what it has', async () => {
    const child = spawn(
      process.execPath,
      ['--import', 'tsx', 'server/cli/transcribe.ts', join(CLIPS, 'two-cities.wav')],
      { cwd: ROOT },
    );
    let out = '';
    child.stdout.on('data', (piece) => {
      out += piece;
      child.kill('SIGINT');
    });
    const code = await new Promise((resolve) => child.once('close', resolve));
    expect(code).toBe(130);
    expect(out.trim().split('\n').length).toBeGreaterThanOrEqual(1);
  });
});

// Ten minutes of SoX's own noises, where Debian's sox is installed.
it.skipIf(!existsSync('/usr/bin/sox'))(
  'SoX noise: pink, brown, hum with clicks, plucked strings (needs sox)',
  async () => {
    for (const [name, effects] of [
      ['pink', ['pinknoise', 'vol', '0.3']],
      ['brown', ['brownnoise', 'vol', '0.5']],
      ['strings', ['pluck', 'C3', 'repeat', '20', 'vol', '0.4']],
      ['tremolo', ['square', '60', 'tremolo', '8', '90', 'lowpass', '900', 'vol', '0.3']],
    ] as const) {
      const path = join(folder, `${name}.wav`);
      execFileSync('sox', [
        '-n',
        '-r',
        '16000',
        '-b',
        '16',
        '-c',
        '1',
        path,
        'synth',
        name === 'strings' ? '4' : '60',
        ...effects,
      ]);
      expect(await all(path), name).toEqual([]);
    }
  },
);
