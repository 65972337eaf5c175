/** Samples, over all channels, that one piece may unpack to: a megabyte of sound as floats. */
const MOST_SAMPLES = 262_144;
/** The longest head of a frame (RFC 9639, 9.1), and more than any of its bytes reach. */
const LONGEST_HEAD = 16;
/** Without the beginning of a frame in so much, it is no FLAC that could be cut. */
const MOST_WITHOUT_FRAME = 1_048_576;

/**
 * Cuts a FLAC stream where frames begin, by what they say they unpack to: eighty thousand bytes may hold hours of silence,
 * which would come out of the decoder in one piece. It also keeps the head of a frame whole, a cut through which costs that frame.
 *
 * @param pieces the bytes of the file in pieces of any size
 */
export async function* cutFlac(pieces: AsyncIterable<Uint8Array>): AsyncGenerator<Uint8Array> {
  let held: Uint8Array = new Uint8Array(0);
  /** Where in `held` to look on; what the frames before it come to. */
  let at = 0;
  let samples = 0;
  for await (const piece of pieces) {
    held = held.length === 0 ? piece : Buffer.concat([held, piece]);
    let from = 0;
    for (; at + LONGEST_HEAD <= held.length; at++) {
      const inFrame = held[at] === 0xff ? samplesOfFrame(held, at) : 0;
      if (inFrame === 0) continue;
      if (samples > 0 && samples + inFrame > MOST_SAMPLES) {
        yield held.subarray(from, at);
        from = at;
        samples = 0;
      }
      samples += inFrame;
    }
    held = held.subarray(from);
    at -= from;
    if (held.length < MOST_WITHOUT_FRAME) continue;
    yield held;
    held = new Uint8Array(0);
    at = 0;
    samples = 0;
  }
  if (held.length > 0) yield held;
}

/** Samples over all channels that the frame which begins at `at` says it holds (RFC 9639, 9.1); nought where none begins. */
function samplesOfFrame(bytes: Uint8Array, at: number): number {
  // Sync code and blocking strategy; then what is forbidden or reserved.
  if ((bytes[at + 1]! & 0xfe) !== 0xf8) return 0;
  const size = bytes[at + 2]! >> 4;
  const rate = bytes[at + 2]! & 0x0f;
  const channels = bytes[at + 3]! >> 4;
  if (size === 0 || rate === 15 || channels > 10 || (bytes[at + 3]! & 1) !== 0) return 0;
  // The number of the frame, or of its first sample, as UTF-8 writes characters, up to seven bytes.
  const first = bytes[at + 4]!;
  const more = first < 0x80 ? 0 : Math.clz32(~(first << 24)) - 1;
  if (more > 6 || (first >= 0x80 && more < 1)) return 0;
  let end = at + 5 + more;
  let block = size === 1 ? 192 : size <= 5 ? 144 << size : 1 << size;
  if (size === 6) block = bytes[end++]! + 1;
  if (size === 7) {
    block = ((bytes[end]! << 8) | bytes[end + 1]!) + 1;
    end += 2;
  }
  if (rate === 12) end += 1;
  if (rate === 13 || rate === 14) end += 2;
  if (crc8(bytes, at, end) !== bytes[end]) return 0;
  return block * (channels < 8 ? channels + 1 : 2);
}

/** Polynomial 07, as a table by byte. */
const CRC8 = Uint8Array.from({ length: 256 }, (_, byte) => {
  let sum = byte;
  for (let bit = 0; bit < 8; bit++) sum = sum & 0x80 ? ((sum << 1) ^ 0x07) & 0xff : (sum << 1) & 0xff;
  return sum;
});
function crc8(bytes: Uint8Array, from: number, to: number): number {
  let sum = 0;
  for (let at = from; at < to; at++) sum = CRC8[sum ^ bytes[at]!]!;
  return sum;
}
