/** CRC-8 of a frame's head (polynomial 07) and CRC-16 of a frame (8005), RFC 9639, section 9. */
function crc(bytes: readonly number[], width: 8 | 16, polynomial: number): number {
  const top = 1 << (width - 1);
  const mask = (1 << width) - 1;
  let sum = 0;
  for (const byte of bytes) {
    sum ^= byte << (width - 8);
    for (let bit = 0; bit < 8; bit++) sum = (sum & top ? (sum << 1) ^ polynomial : sum << 1) & mask;
  }
  return sum;
}

const BLOCK = 65_535;

/**
 * A FLAC file whose every frame says in some twenty bytes that 65,535 samples of each channel are the same (RFC 9639):
 * `frames` of them. It unpacks to more than ten thousand times its size.
 */
export function flacBomb(frames: number, channels: number): Uint8Array {
  const info = new Uint8Array(34);
  const view = new DataView(info.buffer);
  view.setUint16(0, BLOCK);
  view.setUint16(2, BLOCK);
  // 20 bits rate, 3 bits channels − 1, 5 bits depth − 1; the rest, how long it is, is left unknown.
  view.setUint32(10, ((48_000 << 12) | ((channels - 1) << 9) | (15 << 4)) >>> 0);
  const parts: Uint8Array[] = [Uint8Array.from([0x66, 0x4c, 0x61, 0x43, 0x80, 0, 0, 34]), info];
  for (let n = 0; n < frames; n++) {
    // Sync and fixed block size; block size in 16 bits at the end, 48 kHz; channels; 16 bits deep.
    const head = [0xff, 0xf8, 0x7a, ((channels - 1) << 4) | 0x08, ...utf8Number(n), 0xff, 0xfe];
    head.push(crc(head, 8, 0x07));
    // A subframe: constant (eight bits of nought), then its one value.
    for (let channel = 0; channel < channels; channel++) head.push(0, 0x01, 0x00);
    const sum = crc(head, 16, 0x8005);
    parts.push(Uint8Array.from([...head, sum >> 8, sum & 0xff]));
  }
  return Buffer.concat(parts);
}

/** As UTF-8 writes a character of that number. */
function utf8Number(n: number): number[] {
  if (n < 0x80) return [n];
  if (n < 0x800) return [0xc0 | (n >> 6), 0x80 | (n & 0x3f)];
  return [0xe0 | (n >> 12), 0x80 | ((n >> 6) & 0x3f), 0x80 | (n & 0x3f)];
}
