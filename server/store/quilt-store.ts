import type { Decision } from '../../core/log/decide.ts';
import { evolve, fold, foldOnto } from '../../core/log/evolve.ts';
import type { Log } from '../../core/log/log.ts';
import type { LogEvent, NumberedEvent } from '../../shared/event.ts';
import { bringUpToDate, TODAY, type Versions } from './bring-up-to-date.ts';
import { checkFormat } from './check-format.ts';
import type { FileSystem } from './file-system.ts';
import { type Damage, Journal, type OpenedJournal } from './journal.ts';
import { type CachedLog, readLogCache, writeLogCache } from './log-cache.ts';

/** A command that can't be carried out; `message` says what was expected and what to do. */
export class Refusal extends Error {
  constructor(
    message: string,
    readonly statusCode: 401 | 403 | 404 | 409 | 413 | 415 | 422 = 409,
    readonly field?: string,
  ) {
    super(message);
  }
}

export type StoreOptions = {
  /** Others than today's in tests only. */
  versions?: Versions;
  /** See `JournalOptions`. */
  segmentBytes?: number;
  /** A snapshot is written when this many events are in none. */
  snapshotEvery?: number;
};

/** Folding so many takes a tenth of a second or two. */
const SNAPSHOT_EVERY = 4_000;

/** One quilt: its folder, its journal, and the log folded from it. */
export class QuiltStore {
  /** Everything acknowledged. */
  #log: Log;
  /** With what is on its way to the disk: the next decision stands on it. */
  #ahead: Log;
  readonly #listeners = new Set<(events: NumberedEvent[]) => void>();
  /** Number of the last event that is in the snapshot. */
  #snapshotAt: number;
  #snapshotting: Promise<void> | undefined;

  private constructor(
    readonly id: string,
    readonly folder: string,
    readonly fs: FileSystem,
    readonly damage: readonly Damage[],
    readonly journal: Journal,
    log: Log,
    snapshotAt: number,
    readonly snapshotEvery: number,
  ) {
    this.#log = log;
    this.#snapshotAt = snapshotAt;
    this.#ahead = log;
    journal.onFailure = () => {
      this.#ahead = this.#log;
    };
  }

  /** Opens a quilt's folder; an older version's is brought up to date first, a newer one's is refused untouched. */
  static async open(
    fs: FileSystem,
    id: string,
    folder: string,
    { versions = TODAY, segmentBytes, snapshotEvery = SNAPSHOT_EVERY }: StoreOptions = {},
  ): Promise<QuiltStore> {
    const from = await checkFormat(fs, folder, versions.version);
    const before = await bringUpToDate(fs, folder, from, versions);
    const cached = await readLogCache(fs, folder);
    const opened = await Journal.open(fs, folder, {
      upTo: cached?.upTo,
      ...(segmentBytes === undefined ? {} : { segmentBytes }),
    });
    const { log, snapshotAt } = logOf(opened, cached);
    const damage = [...before, ...opened.damage];
    const store = new QuiltStore(id, folder, fs, damage, opened.journal, log, snapshotAt, snapshotEvery);
    store.#snapshotWhenDue();
    return store;
  }

  get log(): Log {
    return this.#log;
  }

  /**
   * Lets `decide` look at the log as it will be, writes what it says happens, and returns when that is
   * on the disk. Throws `Refusal`, or `DiskTrouble`, after which the log is as it was.
   */
  async commit(decide: (log: Log) => Decision): Promise<{ events: NumberedEvent[]; log: Log }> {
    const decision = decide(this.#ahead);
    if ('refused' in decision) {
      const { refused, field } = decision;
      throw field === undefined ? new Refusal(refused) : new Refusal(refused, 422, field);
    }
    const events = this.#number(decision.events);
    const after = events.reduce(evolve, this.#ahead);
    this.#ahead = after;
    // Also where nothing happens: the answer may rest on a change that is still on its way.
    await this.journal.append(events);
    if (after.seq > this.#log.seq) this.#log = after;
    if (events.length > 0) for (const listener of this.#listeners) listener(events);
    this.#snapshotWhenDue();
    return { events, log: after };
  }

  /** Calls back with new events once they are on the disk. Returns what ends it. */
  subscribe(listener: (events: NumberedEvent[]) => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  async close(): Promise<void> {
    this.#listeners.clear();
    await this.#snapshotting;
    await this.journal.close();
  }

  /** A log with gaps gets none: what it lacks would be taken for what there was. */
  #snapshotWhenDue(): void {
    if (this.#snapshotting || this.damage.length > 0) return;
    if (this.#log.seq - this.#snapshotAt < this.snapshotEvery) return;
    const { position } = this.journal;
    // Others may be on the disk already whose commits have not come back: theirs is the next turn.
    if (position.seq !== this.#log.seq) return;
    this.#snapshotAt = this.#log.seq;
    this.#snapshotting = writeLogCache(this.fs, this.folder, this.#log, position).finally(() => {
      this.#snapshotting = undefined;
    });
  }

  #number(events: readonly LogEvent[]): NumberedEvent[] {
    const at = new Date().toISOString();
    return events.map((event, i) => ({ seq: this.#ahead.seq + 1 + i, at, event }));
  }
}

/** The log of a journal, from its snapshot where that fits. */
function logOf(
  { events, older }: OpenedJournal,
  cached: CachedLog | undefined,
): { log: Log; snapshotAt: number } {
  if (!cached || !older) return { log: fold(withoutGaps(events)), snapshotAt: 0 };
  const whole = withoutGaps(events, older.last);
  try {
    return { log: foldOnto(cached.log(older), whole), snapshotAt: older.last };
  } catch {
    return { log: fold([...older.between(1, older.last), ...whole]), snapshotAt: 0 };
  }
}

/** Puts `event-lost` in for numbers that a damaged journal lacks, so that pages get an unbroken stream. */
function withoutGaps(events: readonly NumberedEvent[], after = 0): NumberedEvent[] {
  const whole: NumberedEvent[] = [];
  for (const event of events) {
    for (let seq = after + whole.length + 1; seq < event.seq; seq++) {
      whole.push({ seq, at: event.at, event: { type: 'event-lost' } });
    }
    whole.push(event);
  }
  return whole;
}
