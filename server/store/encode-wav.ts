/** 16 kHz mono PCM, 16 bit, as a WAV file (Microsoft/IBM Multimedia Programming Interface 1.0, 1991). Samples from -1 to 1. */
export function encodeWav(pcm: Float32Array, rate = 16_000): Uint8Array {
  const bytes = Buffer.alloc(44 + pcm.length * 2);
  bytes.write('RIFF', 0, 'latin1');
  bytes.writeUInt32LE(36 + pcm.length * 2, 4);
  bytes.write('WAVEfmt ', 8, 'latin1');
  bytes.writeUInt32LE(16, 16);
  bytes.writeUInt16LE(1, 20);
  bytes.writeUInt16LE(1, 22);
  bytes.writeUInt32LE(rate, 24);
  bytes.writeUInt32LE(rate * 2, 28);
  bytes.writeUInt16LE(2, 32);
  bytes.writeUInt16LE(16, 34);
  bytes.write('data', 36, 'latin1');
  bytes.writeUInt32LE(pcm.length * 2, 40);
  for (let i = 0; i < pcm.length; i++) {
    bytes.writeInt16LE(Math.round(Math.max(-1, Math.min(1, pcm[i]!)) * 32_767), 44 + i * 2);
  }
  return bytes;
}

/** The samples of a WAV file that `encodeWav` made. */
export function decodeWav(bytes: Uint8Array): Float32Array {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const pcm = new Float32Array(Math.max(0, Math.floor((bytes.length - 44) / 2)));
  for (let i = 0; i < pcm.length; i++) pcm[i] = view.getInt16(44 + i * 2, true) / 32_767;
  return pcm;
}
