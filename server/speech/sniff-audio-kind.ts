export type AudioKind = 'wav' | 'flac' | 'mp3' | 'ogg-vorbis' | 'ogg-opus' | 'm4a' | 'webm';

/**
 * Tells the kind of an audio file by its first bytes: RIFF/WAVE, `fLaC`, the first Ogg page (RFC 3533, RFC 7845), the `ftyp`
 * box (ISO/IEC 14496-12), the EBML head (RFC 8794), or MPEG frames (ISO/IEC 11172-3), a leading ID3v2 tag skipped.
 * @param head the file's first bytes, at least 64 KB where there are as many
 */
export function sniffAudioKind(head: Uint8Array): AudioKind | undefined {
  const text = (at: number, length: number) => String.fromCharCode(...head.subarray(at, at + length));
  if (text(0, 4) === 'RIFF' && text(8, 4) === 'WAVE') return 'wav';
  if (text(0, 4) === 'OggS') {
    const codec = 27 + (head[26] ?? 0);
    if (text(codec, 8) === 'OpusHead') return 'ogg-opus';
    if (text(codec, 7) === '\x01vorbis') return 'ogg-vorbis';
    if (text(codec, 5) === '\x7fFLAC') return 'flac';
    return undefined;
  }
  if (text(4, 4) === 'ftyp') return 'm4a';
  if (head[0] === 0x1a && head[1] === 0x45 && head[2] === 0xdf && head[3] === 0xa3) return 'webm';
  const start = afterId3(head);
  if (text(start, 4) === 'fLaC') return 'flac';
  // A tag longer than what we were given is nearly always the cover picture of an MP3.
  if (start >= head.length && start > 0) return 'mp3';
  return startsWithMpegFrames(head, start) ? 'mp3' : undefined;
}

function afterId3(head: Uint8Array): number {
  if (head[0] !== 0x49 || head[1] !== 0x44 || head[2] !== 0x33 || head.length < 10) return 0;
  const [a, b, c, d] = head.subarray(6, 10) as unknown as [number, number, number, number];
  return (
    10 + ((a & 127) << 21) + ((b & 127) << 14) + ((c & 127) << 7) + (d & 127) + (head[5]! & 0x10 ? 10 : 0)
  );
}

// Layer III bit rates in kbit/s: MPEG-1, then MPEG-2 and 2.5.
const RATES_1 = [0, 32, 40, 48, 56, 64, 80, 96, 112, 128, 160, 192, 224, 256, 320];
const RATES_2 = [0, 8, 16, 24, 32, 40, 48, 56, 64, 80, 96, 112, 128, 144, 160];
const HERTZ = [44_100, 48_000, 32_000];

/** One sync word proves nothing (any picture has some): two frames must follow each other, or the file end after one. */
function startsWithMpegFrames(head: Uint8Array, from: number): boolean {
  // Some recorders leave a few bytes of nothing before the first frame.
  for (let at = from; at < Math.min(from + 2048, head.length - 4); at++) {
    const first = frameLength(head, at);
    if (first === undefined) continue;
    const next = at + first;
    if (next + 4 > head.length || frameLength(head, next) !== undefined) return true;
  }
  return false;
}

function frameLength(head: Uint8Array, at: number): number | undefined {
  if (head[at] !== 0xff || (head[at + 1]! & 0xe0) !== 0xe0) return undefined;
  const version = (head[at + 1]! >> 3) & 3;
  const layer = (head[at + 1]! >> 1) & 3;
  const rateIndex = head[at + 2]! >> 4;
  const hertzIndex = (head[at + 2]! >> 2) & 3;
  if (version === 1 || layer !== 1 || rateIndex === 0 || rateIndex === 15 || hertzIndex === 3)
    return undefined;
  const isFirst = version === 3;
  const rate = (isFirst ? RATES_1 : RATES_2)[rateIndex]! * 1000;
  const hertz = HERTZ[hertzIndex]! / (isFirst ? 1 : version === 2 ? 2 : 4);
  return Math.floor(((isFirst ? 144 : 72) * rate) / hertz) + ((head[at + 2]! >> 1) & 1);
}
