import {
  closeSync,
  copyFileSync,
  ftruncateSync,
  mkdtempSync,
  openSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { cutFlac } from '../../server/speech/cut-flac.ts';
import {
  AudioFileError,
  type DecodedAudio,
  decodeAudio,
  probeAudio,
} from '../../server/speech/decode-audio.ts';
import { flacBomb } from './support/flac-bomb.ts';
import { opusBomb } from './support/opus-bomb.ts';
import { AUDIO, CLIPS } from './support/places.ts';
import { readWav } from './support/read-wav.ts';

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'audio-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

async function read(path: string): Promise<{ pcm: Float32Array; audio: DecodedAudio }> {
  const pieces: Float32Array[] = [];
  const decoding = decodeAudio(path);
  for (;;) {
    const next = await decoding.next();
    if (next.done)
      return { pcm: Float32Array.from(pieces.flatMap((piece) => [...piece])), audio: next.value };
    pieces.push(next.value.pcm.slice());
  }
}

/** Best correlation of two signals within 100 ms of each other, −1 to 1: codecs shift what they keep. */
function likeness(a: Float32Array, b: Float32Array): number {
  let best = -1;
  for (let shift = -1600; shift <= 1600; shift += 8) {
    let ab = 0;
    let aa = 0;
    let bb = 0;
    for (let i = 4000; i < 36_000; i += 3) {
      const x = a[i] ?? 0;
      const y = b[i + shift] ?? 0;
      ab += x * y;
      aa += x * x;
      bb += y * y;
    }
    best = Math.max(best, ab / Math.sqrt(aa * bb));
  }
  return best;
}

// One short clip (US presidential inaugural address, 1961, public domain) written by FFmpeg 7 in each kind.
describe.each([
  ['short.wav', 'wav', 0.999],
  ['short.flac', 'flac', 0.99],
  ['short.mp3', 'mp3', 0.95],
  ['short-vorbis.ogg', 'ogg-vorbis', 0.95],
  ['short-opus.ogg', 'ogg-opus', 0.9],
  ['short.m4a', 'm4a', 0.95],
  ['short-index-first.m4a', 'm4a', 0.95],
  ['short.webm', 'webm', 0.9],
] as const)('%s', (file, kind, least) => {
  it('is known by its bytes, decoded to 16 kHz mono, and sounds like the clip it was made from', async () => {
    const misnamed = join(folder, `${file}.txt`);
    copyFileSync(join(AUDIO, file), misnamed);
    expect((await probeAudio(misnamed)).kind).toBe(kind);
    const { pcm, audio } = await read(misnamed);
    expect(audio).toMatchObject({ kind, isCutShort: false });
    expect(audio.seconds).toBeGreaterThan(2.55);
    expect(audio.seconds).toBeLessThan(2.75);
    expect(pcm.length).toBe(Math.round(audio.seconds * 16_000));
    expect(likeness(readWav(join(CLIPS, 'jfk.wav')), pcm)).toBeGreaterThan(least);
  });
});

describe('a file that cannot be heard is told in one line that names it:', () => {
  const fails = async (
    name: string,
    bytes: Uint8Array | undefined,
    reason: AudioFileError['reason'],
    words: RegExp,
  ) => {
    const path = join(folder, name);
    if (bytes) writeFileSync(path, bytes);
    const error = await read(path).then(
      () => undefined,
      (thrown: unknown) => thrown,
    );
    expect(error).toBeInstanceOf(AudioFileError);
    expect(error).toMatchObject({ reason });
    expect((error as Error).message).toMatch(words);
    expect((error as Error).message).toContain(name);
    expect((error as Error).message).not.toContain('\n');
  };
  const text = (value: string) => new TextEncoder().encode(value);
  const fixture = (name: string) => readFileSync(join(AUDIO, name));

  it('missing', () => fails('nowhere.wav', undefined, 'missing', /is not there/));
  it('empty', () => fails('empty.wav', new Uint8Array(0), 'empty', /is empty/));
  it('text', () =>
    fails('notes.mp3', text('row three block two '.repeat(500)), 'not-audio', /expected WAV, FLAC/));
  it('a picture', () =>
    fails(
      'photo.wav',
      Uint8Array.of(0xff, 0xd8, 0xff, 0xe0, ...Array(5000).fill(0xff)),
      'not-audio',
      /no audio/,
    ));
  it('a WAV head with nothing behind it', () =>
    fails('head.wav', fixture('short.wav').subarray(0, 44), 'cut-short', /no sound in it/));
  it('an M4A cut before its index', () =>
    fails('cut.m4a', fixture('short.m4a').subarray(0, 9000), 'cut-short', /no index/));
  it('an Ogg of another kind', () =>
    fails(
      'video.ogg',
      Uint8Array.of(
        ...text('OggS'),
        ...Array(22).fill(0),
        1,
        30,
        0x80,
        ...text('theora'),
        ...Array(99).fill(0),
      ),
      'not-audio',
      /no audio/,
    ));
  it('a WAV at 100 Hz', () => {
    const wav = Uint8Array.from(fixture('short.wav'));
    new DataView(wav.buffer).setUint32(24, 100, true);
    return fails('slow.wav', wav, 'unsupported', /100 samples a second/);
  });
  it('2.2 GB (a sparse file)', async () => {
    const path = join(folder, 'huge.wav');
    const handle = openSync(path, 'w');
    ftruncateSync(handle, 2_200_000_000);
    closeSync(handle);
    await fails('huge.wav', undefined, 'too-large', /2\.2 GB.*Split it/);
  });
});

/** Pieces as they come out of the decoder are held in memory whole. */
const MOST_SAMPLES_A_PIECE = 2_000_000;

describe('a file made to burst', () => {
  it.each([
    ['FLAC of one channel', 'bomb.flac', flacBomb(6_000, 1)],
    ['FLAC of eight', 'bomb-8.flac', flacBomb(2_000, 8)],
    ['Ogg Opus', 'bomb.ogg', opusBomb(300)],
  ])(
    '%s ends with a clear line, long before its end, and never in a large piece',
    async (_, name, bytes) => {
      const path = join(folder, name);
      writeFileSync(path, bytes);
      let samples = 0;
      const read = async (): Promise<void> => {
        for await (const { pcm } of decodeAudio(path)) {
          expect(pcm.length).toBeLessThan(MOST_SAMPLES_A_PIECE);
          samples += pcm.length;
        }
      };
      const error = await read().then(
        () => undefined,
        (thrown: unknown) => thrown,
      );
      expect(error).toBeInstanceOf(AudioFileError);
      expect((error as Error).message).toMatch(/^bomb.* would grow from \d+ kB to hours of sound/);
      expect(samples).toBeLessThan(16_000 * 1_200);
    },
    60_000,
  );

  it('sound with seconds of true silence in it is none', async () => {
    const path = join(folder, 'quiet.flac');
    // Three minutes of it in frames of 65,535, then what is left: below what counts.
    writeFileSync(path, flacBomb(120, 1));
    let samples = 0;
    for await (const { pcm } of decodeAudio(path)) samples += pcm.length;
    expect(samples / 16_000).toBeCloseTo((120 * 65_535) / 48_000, 0);
  });
});

describe('a FLAC is cut where its frames begin', () => {
  it('whatever the pieces it comes in, and nothing of it is lost', async () => {
    const bytes = Uint8Array.from(readFileSync(join(AUDIO, 'short.flac')));
    const cut = async (size: number): Promise<Uint8Array[]> => {
      async function* pieces(): AsyncGenerator<Uint8Array> {
        for (let at = 0; at < bytes.length; at += size) yield bytes.subarray(at, at + size);
      }
      const found: Uint8Array[] = [];
      for await (const piece of cutFlac(pieces())) found.push(Uint8Array.from(piece));
      return found;
    };
    const whole = await cut(bytes.length);
    for (const size of [1, 7, 100, 4_096]) {
      const found = await cut(size);
      expect(Buffer.concat(found).equals(bytes)).toBe(true);
      expect(found.map(({ length }) => length)).toEqual(whole.map(({ length }) => length));
    }
    const bomb = flacBomb(100, 2);
    async function* once(): AsyncGenerator<Uint8Array> {
      yield bomb;
    }
    const found: number[] = [];
    for await (const piece of cutFlac(once())) found.push(piece.length);
    // Two frames of 65,535 samples, twice over, fill one piece.
    expect(found.length).toBeGreaterThan(45);
  });
});

describe('a file cut short gives all that is there', () => {
  it.each(['short.wav', 'short.flac', 'short.mp3', 'short-vorbis.ogg', 'short-opus.ogg', 'short.webm'])(
    '%s',
    async (file) => {
      const bytes = readFileSync(join(AUDIO, file));
      const path = join(folder, `half-${file}`);
      writeFileSync(path, bytes.subarray(0, Math.floor(bytes.length * 0.6)));
      const { pcm, audio } = await read(path);
      expect(audio.seconds).toBeGreaterThan(0.9);
      expect(pcm.length).toBe(Math.round(audio.seconds * 16_000));
      if (file === 'short.wav') expect(audio.isCutShort).toBe(true);
    },
  );
});

it('never throws anything but AudioFileError on damage, wherever it is', async () => {
  let seed = 42;
  const random = () => {
    seed = (Math.imul(seed, 1664525) + 1013904223) >>> 0;
    return seed / 2 ** 32;
  };
  for (const file of [
    'short.wav',
    'short.flac',
    'short.mp3',
    'short-vorbis.ogg',
    'short-opus.ogg',
    'short.m4a',
    'short.webm',
  ]) {
    for (let round = 0; round < 4; round++) {
      const bytes = Uint8Array.from(readFileSync(join(AUDIO, file)));
      for (let i = 0; i < 40; i++) bytes[Math.floor(random() * bytes.length)] = Math.floor(random() * 256);
      const path = join(folder, `damaged-${round}-${file}`);
      writeFileSync(path, bytes);
      const outcome = await read(path).catch((error: unknown) => error);
      if (outcome instanceof Error) expect(outcome).toBeInstanceOf(AudioFileError);
    }
  }
});

it('can be called off between two pieces', async () => {
  const stop = new AbortController();
  const decoding = decodeAudio(join(CLIPS, 'two-cities.wav'), { signal: stop.signal });
  await decoding.next();
  stop.abort();
  await expect(decoding.next()).rejects.toThrow(/abort/i);
});

it('takes the louder channel where two cancel each other out', async () => {
  const mono = readFileSync(join(AUDIO, 'short.wav'));
  const start = mono.indexOf('data') + 8;
  const samples = (mono.length - start) >> 1;
  const stereo = Buffer.alloc(44 + samples * 4);
  mono.copy(stereo, 0, 0, 36);
  stereo.writeUInt32LE(16, 16);
  stereo.writeUInt16LE(2, 22);
  stereo.writeUInt32LE(64_000, 28);
  stereo.writeUInt16LE(4, 32);
  stereo.write('data', 36, 'latin1');
  stereo.writeUInt32LE(samples * 4, 40);
  for (let i = 0; i < samples; i++) {
    const value = Math.max(-32_767, mono.readInt16LE(start + 2 * i));
    stereo.writeInt16LE(value, 44 + 4 * i);
    stereo.writeInt16LE(-value, 46 + 4 * i);
  }
  const path = join(folder, 'opposed.wav');
  writeFileSync(path, stereo);
  const { pcm } = await read(path);
  expect(likeness(readWav(join(CLIPS, 'jfk.wav')), pcm)).toBeGreaterThan(0.99);
});
