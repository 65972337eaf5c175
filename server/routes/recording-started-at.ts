import { open } from 'node:fs/promises';

/**
 * When a recording began, by what its file says of itself: the creation time in an MP4's movie header
 * (ISO/IEC 14496-12, seconds since 1904-01-01 UTC), or the origination date and time of a Broadcast
 * Wave (EBU Tech 3285), which are local to `offset` ("-05:00"). Undefined where it says nothing.
 */
export async function recordingStartedAt(path: string, offset: string): Promise<string | undefined> {
  const file = await open(path, 'r');
  try {
    const { size } = await file.stat();
    const read = async (at: number, length: number): Promise<Buffer> => {
      const buffer = Buffer.alloc(Math.max(0, Math.min(length, size - at)));
      await file.read(buffer, 0, buffer.length, at);
      return buffer;
    };
    const head = await read(0, 12);
    if (head.toString('latin1', 4, 8) === 'ftyp') return await fromMp4(read, size);
    if (head.toString('latin1', 0, 4) === 'RIFF') return await fromWave(read, size, offset);
    return undefined;
  } finally {
    await file.close();
  }
}

type Read = (at: number, length: number) => Promise<Buffer>;
/** Seconds from 1904-01-01 to 1970-01-01. */
const MP4_EPOCH_S = 2_082_844_800;

async function fromMp4(read: Read, size: number): Promise<string | undefined> {
  for (let at = 0, boxes = 0; at + 8 <= size && boxes < 1000; boxes++) {
    const box = await read(at, 16);
    let length = box.readUInt32BE(0);
    if (length === 1 && box.length === 16) length = Number(box.readBigUInt64BE(8));
    if (length < 8) return undefined;
    if (box.toString('latin1', 4, 8) === 'moov') {
      const movie = await read(at + 8, Math.min(length, 4096));
      const found = movie.indexOf('mvhd', 0, 'latin1');
      if (found === -1 || found + 16 > movie.length) return undefined;
      const isLong = movie[found + 4] === 1;
      const since1904 = isLong ? Number(movie.readBigUInt64BE(found + 8)) : movie.readUInt32BE(found + 8);
      return believable((since1904 - MP4_EPOCH_S) * 1000);
    }
    at += length;
  }
  return undefined;
}

async function fromWave(read: Read, size: number, offset: string): Promise<string | undefined> {
  for (let at = 12, chunks = 0; at + 8 <= size && chunks < 100; chunks++) {
    const head = await read(at, 8);
    const length = head.readUInt32LE(4);
    if (head.toString('latin1', 0, 4) === 'bext') {
      const text = (await read(at + 8 + 320, 18)).toString('latin1');
      const parts = /^(\d{4})[-_:. ](\d\d)[-_:. ](\d\d)(\d\d)[-_:. ](\d\d)[-_:. ](\d\d)$/.exec(text);
      if (!parts) return undefined;
      const [, year, month, day, hour, minute, second] = parts;
      return believable(Date.parse(`${year}-${month}-${day}T${hour}:${minute}:${second}${offset}`));
    }
    at += 8 + length + (length % 2);
  }
  return undefined;
}

/** Recorders whose clock was never set say 1904 or 1970. */
function believable(ms: number): string | undefined {
  if (!Number.isFinite(ms) || ms < Date.parse('2000-01-01T00:00:00Z') || ms > Date.now() + 86_400_000)
    return undefined;
  return new Date(ms).toISOString();
}
