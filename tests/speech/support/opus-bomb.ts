/** CRC-32 of an Ogg page: polynomial 04c11db7, nothing turned round (RFC 3533, 6). */
function oggSum(bytes: Uint8Array): number {
  let sum = 0;
  for (const byte of bytes) {
    sum ^= byte << 24;
    for (let bit = 0; bit < 8; bit++) sum = sum & 0x8000_0000 ? (sum << 1) ^ 0x04c1_1db7 : sum << 1;
  }
  return sum >>> 0;
}

function page(number: number, samples: number, flags: number, packets: readonly Uint8Array[]): Uint8Array {
  const body = Buffer.concat(packets);
  const head = Buffer.alloc(27 + packets.length);
  head.write('OggS');
  head[5] = flags;
  head.writeBigUInt64LE(BigInt(samples), 6);
  head.writeUInt32LE(7, 14);
  head.writeUInt32LE(number, 18);
  head[26] = packets.length;
  for (const [i, { length }] of packets.entries()) head[27 + i] = length;
  const whole = Buffer.concat([head, body]);
  whole.writeUInt32LE(oggSum(whole), 22);
  return whole;
}

/**
 * An Ogg Opus file whose every packet of two bytes says that a tenth of a second and a little is silent (RFC 6716, 3.2.5:
 * two frames of 60 ms, empty). Each of the `pages` holds 255 of them: half a minute.
 */
export function opusBomb(pages: number): Uint8Array {
  const head = Buffer.alloc(19);
  head.write('OpusHead');
  head[8] = 1;
  head[9] = 1;
  head.writeUInt32LE(48_000, 12);
  const tags = Buffer.alloc(16);
  tags.write('OpusTags');
  // Configuration 3 (60 ms), mono, code 3; two frames of one length, which is nought.
  const packet = Uint8Array.from([(3 << 3) | 3, 2]);
  const packets = Array.from({ length: 255 }, () => packet);
  const parts = [page(0, 0, 2, [head]), page(1, 0, 0, [tags])];
  for (let n = 0; n < pages; n++) parts.push(page(n + 2, (n + 1) * 255 * 5_760, 0, packets));
  return Buffer.concat(parts);
}
