import { createHash, type Hash } from 'node:crypto';
import { join } from 'node:path';
import type { OlderEvents } from '../../core/log/event-trail.ts';
import type { NumberedEvent } from '../../shared/event.ts';
import { DiskTrouble } from './disk-trouble.ts';
import type { FileSystem, OpenFile } from './file-system.ts';
import { readLine, writeLine } from './journal-line.ts';
import {
  hashOf,
  isAsClosed,
  readSegments,
  type Segment,
  segmentName,
  writeHead,
} from './journal-segments.ts';
import { writeWholeFile } from './write-whole-file.ts';

/** A place in a journal that could not be read, with what it held. */
export type Damage = {
  /** `tail`: the end of the last write, cut off. `line`: a line that is not what was written. `gap`: numbers missing. */
  kind: 'tail' | 'line' | 'gap';
  /** For people: what was found, what was lost and where it is kept. */
  message: string;
  /** What could still be read of it, at most 2,000 characters. */
  held: string;
  /** The file in the quilt's `damaged` folder that keeps its bytes. */
  keptIn?: string;
};

/** Up to where a journal is on the disk: the last event, its file, and what that file holds up to there. */
export type JournalPosition = { seq: number; file: string; bytes: number; sha256: string };

export type JournalOptions = {
  /** A segment that has reached this is closed before the next write. */
  segmentBytes?: number;
  /** Events up to here are known from elsewhere: where the journal is what it was then, they are not read. */
  upTo?: JournalPosition | undefined;
};

export type OpenedJournal = {
  journal: Journal;
  /** Those after `older`. */
  events: NumberedEvent[];
  damage: Damage[];
  /** The events up to `upTo`, unread; undefined where the journal is not what it was, so that all are in `events`. */
  older: OlderEvents | undefined;
};

type Waiting = {
  bytes: Uint8Array;
  last: number | undefined;
  done: () => void;
  failed: (why: Error) => void;
};

/** Some 3,500 notes; a reading of it all takes a fifth of a second. */
const SEGMENT_BYTES = 4 * 1024 * 1024;
const LINE_FEED = 10;

/**
 * The append-only files of one quilt's events. `append` returns when the events are on the disk itself; appends that
 * come while the disk is busy share the next write and fsync. A full file is closed for good, and the one after it
 * begins with the SHA-256 of it.
 */
export class Journal {
  #segment: { file: string; from: number; handle: OpenFile; hash: Hash };
  /** Length of the open segment up to which everything is acknowledged. */
  #end: number;
  #seq: number;
  /** Bytes past `#end` may be left of a write that failed. */
  #dirty = false;
  #waiting: Waiting[] = [];
  #running: Promise<void> | undefined;
  #closed = false;
  /** Called, before any append is refused, when a write failed: what is not acknowledged will not be. */
  onFailure: () => void = () => undefined;

  private constructor(
    readonly fs: FileSystem,
    readonly folder: string,
    readonly segmentBytes: number,
    open: { file: string; from: number; handle: OpenFile; bytes: Uint8Array; seq: number },
  ) {
    const { bytes, seq, ...segment } = open;
    this.#segment = { ...segment, hash: createHash('sha256').update(bytes) };
    this.#end = bytes.length;
    this.#seq = seq;
  }

  /** Opens or makes the journal in `folder` and reads what it holds. Damage is reported, never fatal. */
  static async open(
    fs: FileSystem,
    folder: string,
    { segmentBytes = SEGMENT_BYTES, upTo }: JournalOptions = {},
  ): Promise<OpenedJournal> {
    const segments = await readSegments(fs, folder);
    const open = segments.at(-1);
    if (!open) {
      const file = segmentName(1);
      const handle = await fs.open(join(folder, file), 'wx');
      await handle.sync();
      await fs.syncFolder(folder);
      const journal = new Journal(fs, folder, segmentBytes, {
        file,
        from: 1,
        handle,
        bytes: new Uint8Array(),
        seq: 0,
      });
      return { journal, events: [], damage: [], older: undefined };
    }
    const { older, events, damage, last, end, cutOff } = readEvents(segments, upTo);
    const { file, from, bytes } = open;
    const handle = await fs.open(join(folder, file), 'r+');
    let kept = bytes.subarray(0, end);
    if (cutOff.length > 0) {
      // Kept before it is cut from the journal, so that a crash between the two loses nothing.
      const keptIn = await keep(fs, folder, cutOff);
      for (const one of damage) if (one.kind === 'tail') one.keptIn = keptIn;
      await handle.truncate(end);
      await handle.sync();
    } else if (end > 0 && bytes[end - 1] !== LINE_FEED) {
      // The last line is whole but for its line feed.
      await handle.write(Uint8Array.of(LINE_FEED), end);
      await handle.sync();
      kept = Buffer.concat([kept, Uint8Array.of(LINE_FEED)]);
    }
    const journal = new Journal(fs, folder, segmentBytes, { file, from, handle, bytes: kept, seq: last });
    return { journal, events, damage, older };
  }

  get position(): JournalPosition {
    const { file, hash } = this.#segment;
    return { seq: this.#seq, file, bytes: this.#end, sha256: hash.copy().digest('hex') };
  }

  /** Appends events, whose numbers follow on. Throws `DiskTrouble`; then none of them is in the journal. */
  append(events: readonly NumberedEvent[]): Promise<void> {
    if (this.#closed) return Promise.reject(new Error('The journal is closed: the server is stopping.'));
    return new Promise((done, failed) => {
      const bytes = Buffer.from(events.map(writeLine).join(''), 'utf8');
      this.#waiting.push({ bytes, last: events.at(-1)?.seq, done, failed });
      this.#running ??= this.#run().finally(() => {
        this.#running = undefined;
      });
    });
  }

  async close(): Promise<void> {
    this.#closed = true;
    await this.#running;
    await this.#segment.handle.close();
  }

  async #run(): Promise<void> {
    // Lets all appends of this turn of the event loop into the first write.
    await Promise.resolve();
    while (this.#waiting.length > 0) {
      const batch = this.#waiting;
      this.#waiting = [];
      const bytes = Buffer.concat(batch.map((one) => one.bytes));
      try {
        if (this.#dirty) await this.#clean();
        if (bytes.length > 0) {
          if (this.#end >= this.segmentBytes) await this.#beginSegment();
          this.#dirty = true;
          await this.#segment.handle.write(bytes, this.#end);
          await this.#segment.handle.sync();
          this.#end += bytes.length;
          this.#segment.hash.update(bytes);
          this.#seq = batch.findLast((one) => one.last !== undefined)?.last ?? this.#seq;
          this.#dirty = false;
        }
        for (const one of batch) one.done();
      } catch (error) {
        const trouble = new DiskTrouble('This could not be written to the journal.', error);
        // What waits was decided on top of what has just failed.
        const refused = [...batch, ...this.#waiting];
        this.#waiting = [];
        this.onFailure();
        for (const one of refused) one.failed(trouble);
        await this.#clean().catch(() => undefined);
      }
    }
  }

  /**
   * Closes the open segment by beginning the next. Broken off at any point it is simply done again: nothing is written
   * to the old one meanwhile, so the head comes out the same.
   */
  async #beginSegment(): Promise<void> {
    const from = this.#seq + 1;
    if (from === this.#segment.from) return;
    const { file: old, bytes, sha256 } = this.position;
    const file = segmentName(from);
    const head = writeHead({ from, closes: { file: old, bytes, sha256 } });
    await writeWholeFile(this.fs, join(this.folder, file), head);
    const handle = await this.fs.open(join(this.folder, file), 'r+');
    await this.#segment.handle.close().catch(() => undefined);
    this.#segment = { file, from, handle, hash: createHash('sha256').update(head) };
    this.#end = head.length;
  }

  async #clean(): Promise<void> {
    await this.#segment.handle.truncate(this.#end);
    await this.#segment.handle.sync();
    this.#dirty = false;
  }
}

type Read = {
  events: NumberedEvent[];
  damage: Damage[];
  /** Number of the last event. */
  last: number;
  /** Length of the open segment up to which it is good. */
  end: number;
  cutOff: Uint8Array;
};

/** The events of a journal's files, those up to `upTo` unread where the files hold what they held then. */
export function readEvents(
  segments: readonly Segment[],
  upTo?: JournalPosition,
): Read & { older: OlderEvents | undefined } {
  const asClosed = segments.map(
    (segment, i) => i + 1 === segments.length || isAsClosed(segment, segments[i + 1]!),
  );
  const older = upTo && asClosed.every(Boolean) ? findOlder(segments, upTo) : undefined;
  const read: Read = { events: [], damage: [], last: older?.last ?? 0, end: 0, cutOff: new Uint8Array() };
  for (const [i, segment] of segments.entries()) {
    if (older && upTo && segment.from <= upTo.seq && segment.file !== upTo.file) continue;
    const next = segments[i + 1];
    const file = segments.length === 1 ? 'the journal' : segment.file;
    const found = readJournal(segment.bytes, {
      file,
      from: older && segment.file === upTo?.file ? upTo.bytes : segment.headBytes,
      last: read.last,
      ...(next ? { closedAt: next.from - 1 } : {}),
    });
    if (segment.from > 1 && !segment.head) read.damage.push(headDamage(file, segments[i - 1]?.file));
    if (!asClosed[i] && next?.head && found.damage.length === 0) read.damage.push(otherThanClosed(file));
    for (const event of found.events) read.events.push(event);
    read.damage.push(...found.damage);
    read.last = next ? Math.max(next.from - 1, found.last) : found.last;
    read.end = found.end;
    read.cutOff = found.cutOff;
  }
  return { ...read, older };
}

/** The events up to a position as the files hold them, where those hold what they held then. */
function findOlder(segments: readonly Segment[], upTo: JournalPosition): OlderEvents | undefined {
  const at = segments.findIndex((segment) => segment.file === upTo.file);
  const inLast = segments[at]?.bytes.subarray(0, upTo.bytes);
  if (!inLast || inLast.length !== upTo.bytes || hashOf(inLast) !== upTo.sha256) return undefined;
  const parts = segments.slice(0, at + 1).map(({ bytes, headBytes, from }, i) => ({
    from,
    bytes: Buffer.from(
      bytes.buffer,
      bytes.byteOffset + headBytes,
      (i === at ? upTo.bytes : bytes.length) - headBytes,
    ),
    /** Where each line begins, and the end; looked for when somebody asks. */
    starts: undefined as number[] | undefined,
  }));
  return {
    last: upTo.seq,
    between(from, to) {
      const events: NumberedEvent[] = [];
      for (const [i, part] of parts.entries()) {
        const last = (parts[i + 1]?.from ?? upTo.seq + 1) - 1;
        if (part.from > to || last < from) continue;
        part.starts ??= startsOfLines(part.bytes);
        const one = Math.max(from, part.from) - part.from;
        const other = Math.min(to, last) - part.from + 1;
        const lines = part.bytes.toString('utf8', part.starts[one], part.starts[other]! - 1).split('\n');
        for (const line of lines) events.push(readLine(line)!);
      }
      return events;
    },
  };
}

function startsOfLines(bytes: Buffer): number[] {
  const starts = [0];
  for (let feed = bytes.indexOf(LINE_FEED); feed !== -1; feed = bytes.indexOf(LINE_FEED, feed + 1))
    starts.push(feed + 1);
  return starts;
}

/**
 * Reads the bytes of a segment. `cutOff` is the end that has to be set aside, from `end` on; one that was `closedAt` a
 * number is never cut. `from`: where to begin; `last`: the number of the event before.
 */
export function readJournal(
  bytes: Uint8Array,
  {
    file = 'the journal',
    from: begin = 0,
    last: before = 0,
    closedAt,
  }: { file?: string; from?: number; last?: number; closedAt?: number } = {},
): Read {
  const text = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const events: NumberedEvent[] = [];
  const damage: Damage[] = [];
  let from = begin;
  let last = before;
  let end = begin;
  let line = begin > 0 ? 1 : 0;
  let bad: { line: number; held: string }[] = [];
  while (from < text.length) {
    line++;
    const feed = text.indexOf(LINE_FEED, from);
    const to = feed === -1 ? text.length : feed;
    const words = text.toString('utf8', from, to);
    const event = readLine(words);
    if (event && event.seq > last) {
      for (const one of bad) damage.push(lineDamage(file, one.line, one.held, last + 1, event.seq - 1));
      if (bad.length === 0 && event.seq > last + 1) damage.push(gapDamage(last + 1, event.seq - 1));
      bad = [];
      events.push(event);
      last = event.seq;
      end = feed === -1 ? to : to + 1;
    } else {
      bad.push({ line, held: words.slice(0, 2000) });
    }
    from = to + 1;
  }
  if (closedAt !== undefined) {
    for (const one of bad) damage.push(lineDamage(file, one.line, one.held, last + 1, closedAt));
    if (bad.length === 0 && last < closedAt) damage.push(gapDamage(last + 1, closedAt));
    return { events, damage, last, end: text.length, cutOff: new Uint8Array() };
  }
  for (const one of bad) {
    damage.push({
      kind: 'tail',
      message: `The end of ${file} (line ${one.line}) was cut off or damaged; it was set aside and the log opens at event ${last}.`,
      held: one.held,
    });
  }
  return { events, damage, last, end, cutOff: bad.length > 0 ? text.subarray(end) : new Uint8Array() };
}

const headDamage = (file: string, before: string | undefined): Damage => ({
  kind: 'line',
  message: `The head of ${file} is damaged, so ${before ?? 'what came before'} can't be compared with what it was when it was closed. Its lines have sums of their own; no event is missing for this.`,
  held: '',
});

const otherThanClosed = (file: string): Damage => ({
  kind: 'line',
  message: `${file} is not what it was when it was closed, though each line in it is whole. A copy of it from a backup may be compared with it.`,
  held: '',
});

const lineDamage = (file: string, line: number, held: string, from: number, to: number): Damage => ({
  kind: 'line',
  message:
    from > to
      ? `Line ${line} of ${file} is damaged or a repetition and was left out; no event is missing.`
      : `Line ${line} of ${file} is damaged; of events ${from} to ${to} something is missing. The rest is served.`,
  held,
});

const gapDamage = (from: number, to: number): Damage => ({
  kind: 'gap',
  message: `Events ${from} to ${to} are missing from the journal. The rest is served.`,
  held: '',
});

async function keep(fs: FileSystem, folder: string, bytes: Uint8Array): Promise<string> {
  const damaged = join(folder, 'damaged');
  await fs.makeFolder(damaged);
  const taken = new Set(await fs.list(damaged));
  let n = 1;
  while (taken.has(`tail-${n}.txt`)) n++;
  const name = `tail-${n}.txt`;
  await writeWholeFile(fs, join(damaged, name), bytes);
  await fs.syncFolder(folder);
  return name;
}
