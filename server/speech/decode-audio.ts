import { type FileHandle, open } from 'node:fs/promises';
import { basename } from 'node:path';
import decode from 'audio-decode';
import { AudioFileError } from './audio-file-error.ts';
import { cutFlac } from './cut-flac.ts';
import { orderMp4 } from './order-mp4.ts';
import { Resampler } from './resampler.ts';
import { type AudioKind, sniffAudioKind } from './sniff-audio-kind.ts';

export { AudioFileError } from './audio-file-error.ts';
export type { AudioKind } from './sniff-audio-kind.ts';

export type DecodedAudio = {
  kind: AudioKind;
  seconds: number;
  /** The file ends before its own header says it should; all that is there was given. */
  isCutShort: boolean;
};
export type AudioPiece = { pcm: Float32Array; share: number };

/** The decoder library's names for our kinds. */
const DECODERS: Record<AudioKind, 'wav' | 'flac' | 'mp3' | 'oga' | 'opus' | 'm4a' | 'webm'> = {
  wav: 'wav',
  flac: 'flac',
  mp3: 'mp3',
  'ogg-vorbis': 'oga',
  'ogg-opus': 'opus',
  m4a: 'm4a',
  webm: 'webm',
};
const WELCOME = 'WAV, FLAC, MP3, Ogg Vorbis, Ogg Opus, M4A or WebM';
export const AUDIO_LIMITS = {
  bytes: 2_000_000_000,
  hours: 12,
  channels: 8,
  lowestRate: 4000,
  highestRate: 384_000,
} as const;
const PIECE = 65_536;
/** Of packed sound: a few bytes of it may stand for a tenth of a second. */
const PACKED_PIECE = 4_096;
/**
 * Hours of digital silence pack to a seven-hundredth (FLAC, blocks of 4,608); what packs to less than this was made to burst.
 * Counted from so much unpacked on.
 */
const MOST_RATIO = 3_000;
const RATIO_COUNTS_FROM_BYTES = 16 * 1024 * 1024;

/**
 * Tells by its first bytes, never by its name, what kind of audio a file is.
 * @throws AudioFileError when it is missing, empty, too large or no audio we read
 */
export async function probeAudio(path: string): Promise<{ kind: AudioKind; bytes: number }> {
  const file = await openFile(path);
  try {
    return await probe(file, path);
  } finally {
    await file.close();
  }
}

/**
 * Decodes a file of any length, piece by piece, to 16 kHz mono. Memory stays bounded: one piece of the file and what it
 * decodes to. Each piece says which share of the file's bytes has been read, 0–1.
 *
 * @returns (as the generator's result) kind, length, and whether the file is cut short
 * @throws AudioFileError; AbortError when called off
 */
export async function* decodeAudio(
  path: string,
  { signal }: { signal?: AbortSignal } = {},
): AsyncGenerator<AudioPiece, DecodedAudio, undefined> {
  const name = basename(path);
  const file = await openFile(path);
  const decoderErrors: string[] = [];
  try {
    const { kind, bytes } = await probe(file, path);
    const decoder = await decode[DECODERS[kind]]();
    let resampler: Resampler | undefined;
    let rate = 0;
    let samples = 0;
    let read = 0;
    let unpackedBytes = 0;
    const declared = kind === 'wav' ? await declaredWavEnd(file) : undefined;
    try {
      const source = await piecesOf(file, kind, bytes, name);
      for await (const piece of source) {
        signal?.throwIfAborted();
        read += piece.length;
        const audio = await decoder(piece);
        const pcm = convert(audio);
        if (pcm.length > 0) yield { pcm, share: Math.min(1, read / bytes) };
      }
      const last = convert(await decoder());
      if (last.length > 0) yield { pcm: last, share: 1 };
      const tail = resampler?.flush() ?? new Float32Array(0);
      samples += tail.length;
      if (tail.length > 0) yield { pcm: tail, share: 1 };
    } catch (error) {
      if (error instanceof AudioFileError || (error as Error).name === 'AbortError') throw error;
      decoderErrors.push(String((error as Error)?.message ?? error));
      // What was heard before the damage has been handed on; only a file with nothing in it is an error.
    } finally {
      decoder.free();
    }
    if (samples === 0) {
      throw decoderErrors.length > 0
        ? new AudioFileError(
            'damaged',
            `${name} begins like ${label(kind)} but cannot be decoded (${decoderErrors[0]}). Record or export it again.`,
          )
        : new AudioFileError(
            'cut-short',
            `${name} is ${label(kind)} with no sound in it: it was probably cut short. Copy it again from where it was recorded.`,
          );
    }
    return {
      kind,
      seconds: samples / 16_000,
      isCutShort: decoderErrors.length > 0 || (declared !== undefined && declared > bytes),
    };

    function convert(audio: { channelData: Float32Array[]; sampleRate: number }): Float32Array {
      if (audio.channelData.length === 0) return new Float32Array(0);
      const { channels, lowestRate, highestRate, hours } = AUDIO_LIMITS;
      if (audio.channelData.length > channels) {
        throw new AudioFileError(
          'unsupported',
          `${name} has ${audio.channelData.length} channels; expected 1 to ${channels}. Export it in mono or stereo.`,
        );
      }
      if (audio.sampleRate !== rate) {
        const whole = Math.round(audio.sampleRate);
        if (!(whole >= lowestRate && whole <= highestRate)) {
          throw new AudioFileError(
            'unsupported',
            `${name} has ${audio.sampleRate} samples a second; expected ${lowestRate} to ${highestRate}. Export it at 16000 or 48000.`,
          );
        }
        rate = audio.sampleRate;
        resampler = new Resampler(whole);
      }
      unpackedBytes += audio.channelData.length * audio.channelData[0]!.length * 2;
      if (unpackedBytes > RATIO_COUNTS_FROM_BYTES && unpackedBytes > read * MOST_RATIO) {
        throw new AudioFileError(
          'too-large',
          `${name} would grow from ${Math.ceil(bytes / 1000)} kB to hours of sound, as no recording does. Export the part with words in it.`,
        );
      }
      const pcm = resampler!.push(mixDown(audio.channelData));
      samples += pcm.length;
      if (samples > hours * 3600 * 16_000) {
        throw new AudioFileError(
          'too-long',
          `${name} is longer than ${hours} hours, the most that is read in one file. Split it and add the parts.`,
        );
      }
      return pcm;
    }
  } finally {
    await file.close();
  }
}

async function openFile(path: string): Promise<FileHandle> {
  try {
    const file = await open(path, 'r');
    if ((await file.stat()).isFile()) return file;
    await file.close();
  } catch (error) {
    const why = (error as NodeJS.ErrnoException).code === 'EACCES' ? 'may not be read' : 'is not there';
    throw new AudioFileError('missing', `${path} ${why}: expected an audio file.`);
  }
  throw new AudioFileError('missing', `${path} is a folder or a device: expected an audio file.`);
}

async function probe(file: FileHandle, path: string): Promise<{ kind: AudioKind; bytes: number }> {
  const name = basename(path);
  const bytes = (await file.stat()).size;
  if (bytes === 0)
    throw new AudioFileError(
      'empty',
      `${name} is empty (0 bytes). Copy it again from where it was recorded.`,
    );
  if (bytes > AUDIO_LIMITS.bytes) {
    throw new AudioFileError(
      'too-large',
      `${name} is ${(bytes / 1e9).toFixed(1)} GB; the most that is read in one file is ${AUDIO_LIMITS.bytes / 1e9} GB. Split it and add the parts.`,
    );
  }
  const head = new Uint8Array(Math.min(bytes, PIECE));
  await file.read(head, 0, head.length, 0);
  const kind = sniffAudioKind(head);
  if (!kind)
    throw new AudioFileError('not-audio', `${name} is no audio that is read here: expected ${WELCOME}.`);
  return { kind, bytes };
}

async function piecesOf(
  file: FileHandle,
  kind: AudioKind,
  bytes: number,
  name: string,
): Promise<AsyncIterable<Uint8Array> | Iterable<Uint8Array>> {
  switch (kind) {
    case 'm4a':
      return orderMp4(file, bytes, PACKED_PIECE, name);
    case 'flac':
      return cutFlac(readPieces(file, bytes, PIECE));
    case 'wav':
      return readPieces(file, bytes, PIECE);
    default:
      return readPieces(file, bytes, PACKED_PIECE);
  }
}

async function* readPieces(file: FileHandle, bytes: number, most: number): AsyncGenerator<Uint8Array> {
  for (let at = 0; at < bytes; ) {
    const piece = new Uint8Array(Math.min(most, bytes - at));
    const { bytesRead } = await file.read(piece, 0, piece.length, at);
    if (bytesRead === 0) return;
    yield piece.subarray(0, bytesRead);
    at += bytesRead;
  }
}

/** Where the sound of a WAV file should end by its own header, in bytes; undefined where the header does not say. */
async function declaredWavEnd(file: FileHandle): Promise<number | undefined> {
  const head = Buffer.alloc(4096);
  const { bytesRead } = await file.read(head, 0, head.length, 0);
  for (let at = 12; at + 8 <= bytesRead; ) {
    const size = head.readUInt32LE(at + 4);
    if (head.toString('latin1', at, at + 4) === 'data') {
      // Recorders that stream leave the size at nought or at its most.
      return size === 0 || size >= 0x7fff_0000 ? undefined : at + 8 + size;
    }
    at += 8 + size + (size & 1);
  }
  return undefined;
}

/** Mean of the channels; the louder one where two cancel each other out (a lead wired the wrong way round). */
function mixDown(channels: Float32Array[]): Float32Array {
  if (channels.length === 1) return channels[0]!;
  const mixed = new Float32Array(channels[0]!.length);
  for (const channel of channels)
    for (let i = 0; i < mixed.length; i++) mixed[i]! += channel[i]! / channels.length;
  const energies = channels.map(energy);
  const loudest = Math.max(...energies);
  if (loudest === 0 || energy(mixed) >= loudest * 0.01) return mixed;
  // The first of those as loud, so that the choice does not change its sign from piece to piece.
  return channels[energies.findIndex((each) => each >= loudest / 2)]!;
}

function energy(samples: Float32Array): number {
  let sum = 0;
  for (let i = 0; i < samples.length; i++) sum += samples[i]! * samples[i]!;
  return sum;
}

function label(kind: AudioKind): string {
  return {
    wav: 'WAV',
    flac: 'FLAC',
    mp3: 'MP3',
    'ogg-vorbis': 'Ogg Vorbis',
    'ogg-opus': 'Ogg Opus',
    m4a: 'M4A',
    webm: 'WebM',
  }[kind];
}
