import { crc32 } from 'node:zlib';
import type { NumberedEvent } from '../../shared/event.ts';

/**
 * One line of a journal: `{"seq":…,"at":…,"event":…,"sum":"…"}` and a line feed. `sum` is the CRC-32
 * of everything before `,"sum"`, in eight lower-case hex digits: it finds every damage of one bit and
 * every burst of up to 32.
 */
export function writeLine(event: NumberedEvent): string {
  const body = JSON.stringify({ seq: event.seq, at: event.at, event: event.event }).slice(0, -1);
  return `${body},"sum":"${sumOf(body)}"}\n`;
}

const TAIL = /,"sum":"([0-9a-f]{8})"\}$/;

/** Reads a line without its line feed; undefined where it is not what was written. */
export function readLine(line: string): NumberedEvent | undefined {
  const tail = TAIL.exec(line);
  if (!tail) return undefined;
  const body = line.slice(0, tail.index);
  if (sumOf(body) !== tail[1]) return undefined;
  try {
    const parsed = JSON.parse(`${body}}`) as NumberedEvent;
    return Number.isSafeInteger(parsed.seq) && typeof parsed.event?.type === 'string' ? parsed : undefined;
  } catch {
    return undefined;
  }
}

const sumOf = (body: string): string => crc32(body).toString(16).padStart(8, '0');
