import { join } from 'node:path';
import type { NumberedEvent } from '../../shared/event.ts';
import { DiskTrouble } from './disk-trouble.ts';
import type { FileSystem, OpenFile } from './file-system.ts';
import { readLine, writeLine } from './journal-line.ts';
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

type Waiting = { bytes: Uint8Array; done: () => void; failed: (why: Error) => void };

const NAME = 'journal.jsonl';
const LINE_FEED = 10;

/**
 * The append-only file of one quilt's events. `append` returns when the events are on the disk itself;
 * appends that come while the disk is busy share the next write and fsync.
 */
export class Journal {
  #file: OpenFile;
  /** Length up to which everything is acknowledged. */
  #end: number;
  /** Bytes past `#end` may be left of a write that failed. */
  #dirty = false;
  #waiting: Waiting[] = [];
  #running: Promise<void> | undefined;
  #closed = false;
  /** Called, before any append is refused, when a write failed: what is not acknowledged will not be. */
  onFailure: () => void = () => undefined;

  private constructor(file: OpenFile, end: number) {
    this.#file = file;
    this.#end = end;
  }

  /** Opens or makes the journal in `folder` and reads what it holds. Damage is reported, never fatal. */
  static async open(
    fs: FileSystem,
    folder: string,
  ): Promise<{ journal: Journal; events: NumberedEvent[]; damage: Damage[] }> {
    const path = join(folder, NAME);
    if (!(await fs.stat(path))) {
      const made = await fs.open(path, 'wx');
      await made.sync();
      await fs.syncFolder(folder);
      return { journal: new Journal(made, 0), events: [], damage: [] };
    }
    const bytes = await fs.readFile(path);
    const { events, damage, end, cutOff } = readJournal(bytes);
    const file = await fs.open(path, 'r+');
    const journal = new Journal(file, end);
    if (cutOff.length > 0) {
      // Kept before it is cut from the journal, so that a crash between the two loses nothing.
      const keptIn = await keep(fs, folder, cutOff);
      for (const one of damage) if (one.kind === 'tail') one.keptIn = keptIn;
      await file.truncate(end);
      await file.sync();
    } else if (end > 0 && bytes[end - 1] !== LINE_FEED) {
      // The last line is whole but for its line feed.
      await file.write(Uint8Array.of(LINE_FEED), end);
      await file.sync();
      journal.#end = end + 1;
    }
    return { journal, events, damage };
  }

  /** Appends events, whose numbers follow on. Throws `DiskTrouble`; then none of them is in the journal. */
  append(events: readonly NumberedEvent[]): Promise<void> {
    if (this.#closed) return Promise.reject(new Error('The journal is closed: the server is stopping.'));
    return new Promise((done, failed) => {
      const bytes = Buffer.from(events.map(writeLine).join(''), 'utf8');
      this.#waiting.push({ bytes, done, failed });
      this.#running ??= this.#run().finally(() => {
        this.#running = undefined;
      });
    });
  }

  async close(): Promise<void> {
    this.#closed = true;
    await this.#running;
    await this.#file.close();
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
          this.#dirty = true;
          await this.#file.write(bytes, this.#end);
          await this.#file.sync();
          this.#end += bytes.length;
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

  async #clean(): Promise<void> {
    await this.#file.truncate(this.#end);
    await this.#file.sync();
    this.#dirty = false;
  }
}

/** Reads the bytes of a journal. `cutOff` is the end that has to be set aside, from `end` on. */
export function readJournal(bytes: Uint8Array): {
  events: NumberedEvent[];
  damage: Damage[];
  end: number;
  cutOff: Uint8Array;
} {
  const text = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const events: NumberedEvent[] = [];
  const damage: Damage[] = [];
  let from = 0;
  let last = 0;
  let end = 0;
  let line = 0;
  let bad: { line: number; held: string; from: number }[] = [];
  while (from < text.length) {
    line++;
    const feed = text.indexOf(LINE_FEED, from);
    const to = feed === -1 ? text.length : feed;
    const words = text.toString('utf8', from, to);
    const event = readLine(words);
    if (event && event.seq > last) {
      for (const one of bad) damage.push(lineDamage(one.line, one.held, last + 1, event.seq - 1));
      if (bad.length === 0 && event.seq > last + 1) damage.push(gapDamage(last + 1, event.seq - 1));
      bad = [];
      events.push(event);
      last = event.seq;
      end = feed === -1 ? to : to + 1;
    } else {
      bad.push({ line, held: words.slice(0, 2000), from });
    }
    from = to + 1;
  }
  for (const one of bad) {
    damage.push({
      kind: 'tail',
      message: `The end of the journal (line ${one.line}) was cut off or damaged; it was set aside and the log opens at event ${last}.`,
      held: one.held,
    });
  }
  return { events, damage, end, cutOff: bad.length > 0 ? text.subarray(end) : new Uint8Array() };
}

const lineDamage = (line: number, held: string, from: number, to: number): Damage => ({
  kind: 'line',
  message:
    from > to
      ? `Line ${line} of the journal is damaged or a repetition and was left out; no event is missing.`
      : `Line ${line} of the journal is damaged; of events ${from} to ${to} something is missing. The rest is served.`,
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
