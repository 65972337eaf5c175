import { crc32 } from 'node:zlib';
import type { NumberedEvent } from '../../shared/event.ts';

/** One line of a journal: `{"seq":…,"at":…,"event":…,"sum":"…"}` and a line feed. */
export function writeLine(event: NumberedEvent): string {
  return sealLine(JSON.stringify({ seq: event.seq, at: event.at, event: event.event }));
}

/** Reads a line without its line feed; undefined where it is not what was written. */
export function readLine(line: string): NumberedEvent | undefined {
  const parsed = unsealLine(line) as NumberedEvent | undefined;
  return Number.isSafeInteger(parsed?.seq) && typeof parsed?.event?.type === 'string' ? parsed : undefined;
}

/**
 * Puts a sum into an object of JSON and ends its line. `sum` is the CRC-32 of everything before `,"sum"`, in
 * eight lower-case hex digits: it finds every damage of one bit and every burst of up to 32.
 */
export function sealLine(json: string): string {
  const body = json.slice(0, -1);
  return `${body},"sum":"${sumOf(body)}"}\n`;
}

const TAIL = /,"sum":"([0-9a-f]{8})"\}$/;
const TAIL_LENGTH = ',"sum":"00000000"}'.length;

/** The object of a sealed line without its line feed; undefined where it is not what was sealed. */
export function unsealLine(line: string): unknown {
  // Looked for at the end only: a pattern tried at every place of a long line costs more than the rest.
  const tail = TAIL.exec(line.slice(-TAIL_LENGTH));
  if (!tail) return undefined;
  const body = line.slice(0, -TAIL_LENGTH);
  if (sumOf(body) !== tail[1]) return undefined;
  try {
    return JSON.parse(`${body}}`);
  } catch {
    return undefined;
  }
}

const sumOf = (body: string): string => crc32(body).toString(16).padStart(8, '0');
