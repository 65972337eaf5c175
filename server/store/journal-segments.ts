import { createHash } from 'node:crypto';
import { join } from 'node:path';
import type { FileSystem } from './file-system.ts';
import { sealLine, unsealLine } from './journal-line.ts';

/** How the segment before was when it was closed: for good, no byte of it changes again. */
export type ClosedSegment = { file: string; bytes: number; sha256: string };
/** The first line of every segment but the first of all. `from` is the number of its first event. */
export type SegmentHead = { from: number; closes: ClosedSegment };
/** One file of a journal. `head` is undefined for the first, which has none, and where it is damaged. */
export type Segment = {
  file: string;
  from: number;
  bytes: Uint8Array;
  head: SegmentHead | undefined;
  headBytes: number;
};

const FIRST = 'journal.jsonl';
const LATER = /^journal-(\d{8,15})\.jsonl$/;
const LINE_FEED = 10;

/** `journal.jsonl` for the first, `journal-00005001.jsonl` for that which begins with event 5001. */
export const segmentName = (from: number): string =>
  from === 1 ? FIRST : `journal-${String(from).padStart(8, '0')}.jsonl`;

/** The names of a journal's files in `folder`, in the order of their events; empty where there is no journal. */
export async function listSegments(fs: FileSystem, folder: string): Promise<string[]> {
  const found = (await fs.list(folder)).flatMap((file) => {
    const from = file === FIRST ? 1 : Number(LATER.exec(file)?.[1]);
    return Number.isSafeInteger(from) ? [{ file, from }] : [];
  });
  return found.sort((a, b) => a.from - b.from).map(({ file }) => file);
}

export async function readSegments(fs: FileSystem, folder: string): Promise<Segment[]> {
  const segments: Segment[] = [];
  for (const file of await listSegments(fs, folder)) {
    const bytes = await fs.readFile(join(folder, file));
    const from = file === FIRST ? 1 : Number(LATER.exec(file)![1]);
    const feed = bytes.indexOf(LINE_FEED);
    const head = file === FIRST || feed === -1 ? undefined : readHead(bytes.subarray(0, feed));
    segments.push({ file, from, bytes, head, headBytes: head ? feed + 1 : 0 });
  }
  return segments;
}

/** A whole journal as one file would hold it: its lines without the heads. */
export async function readWholeJournal(fs: FileSystem, folder: string): Promise<Uint8Array> {
  const segments = await readSegments(fs, folder);
  return Buffer.concat(segments.map(({ bytes, headBytes }) => bytes.subarray(headBytes)));
}

/** Whether a segment is, byte for byte, what the head of the next says that it was when it was closed. */
export function isAsClosed(segment: Segment, next: Segment): boolean {
  const closed = next.head?.closes;
  return (
    closed?.file === segment.file &&
    closed.bytes === segment.bytes.length &&
    closed.sha256 === hashOf(segment.bytes)
  );
}

export const hashOf = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

export const writeHead = (head: SegmentHead): Uint8Array =>
  Buffer.from(sealLine(JSON.stringify({ segment: head })));

function readHead(line: Uint8Array): SegmentHead | undefined {
  const { segment } = (unsealLine(Buffer.from(line).toString('utf8')) ?? {}) as { segment?: SegmentHead };
  return Number.isSafeInteger(segment?.from) && typeof segment?.closes?.sha256 === 'string'
    ? segment
    : undefined;
}
