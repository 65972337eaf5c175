import type { FileHandle } from 'node:fs/promises';
import { AudioFileError } from './audio-file-error.ts';

type Box = { type: string; start: number; size: number; head: number };
const LARGEST_INDEX = 64 * 1024 * 1024;

/**
 * Gives the bytes of an M4A file with its index first. Telephones write the index last, and the decoder would hold the whole
 * file until it came; with the index in front it needs only one piece at a time. Places in the index are moved by what is put
 * in front of them (ISO/IEC 14496-12, `stco` and `co64`).
 */
export async function orderMp4(
  file: FileHandle,
  bytes: number,
  pieceBytes: number,
  name: string,
): Promise<AsyncGenerator<Uint8Array> | Iterable<Uint8Array>> {
  const boxes = await topBoxes(file, bytes);
  const index = boxes.find((box) => box.type === 'moov');
  const sound = boxes.find((box) => box.type === 'mdat');
  if (!index) {
    throw new AudioFileError(
      'cut-short',
      `${name} has no index: it was cut short before the recorder could finish it. Copy it again, or let the recorder repair it.`,
    );
  }
  if (index.size > LARGEST_INDEX || index.start + index.size > bytes) {
    throw new AudioFileError(
      'damaged',
      `${name} has a damaged index (${index.size} bytes). Copy or export it again.`,
    );
  }
  if (!sound || index.start < sound.start) return pieces(file, 0, bytes, pieceBytes);
  const moved = Buffer.alloc(index.size);
  await file.read(moved, 0, index.size, index.start);
  shiftPlaces(moved, 8, index.size, index.size);
  return (async function* () {
    const first = boxes[0]!;
    const lead = first.type === 'ftyp' ? first.size : 0;
    yield* pieces(file, 0, lead, pieceBytes);
    yield new Uint8Array(moved);
    yield* pieces(file, lead, index.start, pieceBytes);
  })();
}

async function topBoxes(file: FileHandle, bytes: number): Promise<Box[]> {
  const boxes: Box[] = [];
  const head = Buffer.alloc(16);
  for (let start = 0; start + 8 <= bytes && boxes.length < 10_000; ) {
    await file.read(head, 0, 16, start);
    let size = head.readUInt32BE(0);
    let length = 8;
    if (size === 1) {
      size = Number(head.readBigUInt64BE(8));
      length = 16;
    } else if (size === 0) size = bytes - start;
    if (size < length) break;
    boxes.push({ type: head.toString('latin1', 4, 8), start, size, head: length });
    start += size;
  }
  return boxes;
}

const PARENTS = new Set(['trak', 'mdia', 'minf', 'stbl']);

function shiftPlaces(index: Buffer, from: number, to: number, by: number): void {
  for (let at = from; at + 8 <= to; ) {
    const size = index.readUInt32BE(at);
    if (size < 8 || at + size > to) return;
    const type = index.toString('latin1', at + 4, at + 8);
    if (PARENTS.has(type)) shiftPlaces(index, at + 8, at + size, by);
    else if (type === 'stco' || type === 'co64') {
      const wide = type === 'co64';
      const count = Math.min(index.readUInt32BE(at + 12), Math.floor((size - 16) / (wide ? 8 : 4)));
      for (let i = 0; i < count; i++) {
        if (wide)
          index.writeBigUInt64BE(index.readBigUInt64BE(at + 16 + i * 8) + BigInt(by), at + 16 + i * 8);
        else index.writeUInt32BE((index.readUInt32BE(at + 16 + i * 4) + by) >>> 0, at + 16 + i * 4);
      }
    }
    at += size;
  }
}

async function* pieces(
  file: FileHandle,
  from: number,
  to: number,
  pieceBytes: number,
): AsyncGenerator<Uint8Array> {
  for (let at = from; at < to; ) {
    const piece = new Uint8Array(Math.min(pieceBytes, to - at));
    const { bytesRead } = await file.read(piece, 0, piece.length, at);
    if (bytesRead === 0) return;
    yield piece.subarray(0, bytesRead);
    at += bytesRead;
  }
}
