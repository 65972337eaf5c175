import { List, Map as PersistentMap } from 'immutable';
import type { EstimatePlan } from '../../shared/estimate-plan.ts';
import type { NumberedEvent, Photo, Recording } from '../../shared/event.ts';
import type { Conversation } from '../../shared/note.ts';
import type { Quilt } from '../../shared/quilt.ts';
import { EventTrail } from './event-trail.ts';
import type { HandSpan, LoggedEntry, LoggedNote, QuiltState, RecordAsking } from './state.ts';

/** A note in the log with its moment as a number, so that sorting parses no dates. */
export type NoteRow = { logged: LoggedNote; ms: number; seq: number };
/** An entry put in by hand without a note. */
export type LooseRow = { id: string; ms: number; seq: number };

/**
 * What a log is made of. Everything that grows with the job is persistent (a change shares all but a
 * few nodes with the log before it), so that the cost of an event does not grow with the log.
 */
export type LogParts = {
  seq: number;
  quilt: Quilt;
  /** In the order of the journal. */
  notes: List<NoteRow>;
  noteIndex: PersistentMap<string, number>;
  entries: PersistentMap<string, LoggedEntry>;
  loose: List<LooseRow>;
  /** Thread ('' or a recording's id) -> what its next words stand on. */
  conversations: PersistentMap<string, Conversation>;
  /** Thread -> its last note, whose reading alone gives the thread's conversation. */
  lastOfThread: PersistentMap<string, string>;
  confirmedDays: readonly { date: string; seq: number }[];
  handSpans: readonly HandSpan[];
  removedSpans: readonly string[];
  estimateSettings: Record<string, unknown>;
  settingNotes: QuiltState['settingNotes'] & object;
  recordEdits: Record<string, Record<string, { text: string; facts: string }>>;
  recordAsking: RecordAsking | undefined;
  detailNotes: Record<string, { noteId: string; seq: number }>;
  plans: readonly EstimatePlan[] | undefined;
  recordMade: { seq: number } | undefined;
  agreements: QuiltState['agreements'];
  photos: readonly Photo[];
  recordings: readonly Recording[];
  removedAudio: readonly string[];
  /** Every event so far: what an undone change is folded again from. */
  events: EventTrail;
  /** The log at some earlier events, the later the denser, so that undoing a late change folds little. */
  checkpoints: List<Log>;
};

const NO_QUILT: Quilt = {
  id: '',
  madeAt: '',
  name: '',
  rows: 1,
  blocks: 1,
  owner: '',
  mender: '',
  unit: 'in',
  zone: 'UTC',
  currency: 'GBP',
  spelling: 'british',
};

type Dated = { ms: number; seq: number };
const bySaid = (a: Dated, b: Dated): number => a.ms - b.ms || a.seq - b.seq;

/** The log of one quilt at one event: see `QuiltState`. Made by `evolve` and `fold` only. */
export class Log implements QuiltState {
  static readonly EMPTY = new Log({
    seq: 0,
    quilt: NO_QUILT,
    notes: List(),
    noteIndex: PersistentMap(),
    entries: PersistentMap(),
    loose: List(),
    conversations: PersistentMap(),
    lastOfThread: PersistentMap(),
    confirmedDays: [],
    handSpans: [],
    removedSpans: [],
    estimateSettings: {},
    settingNotes: {},
    recordEdits: {},
    recordAsking: undefined,
    detailNotes: {},
    plans: undefined,
    recordMade: undefined,
    agreements: [],
    photos: [],
    recordings: [],
    removedAudio: [],
    events: EventTrail.EMPTY,
    checkpoints: List(),
  });

  #notes: LoggedNote[] | undefined;
  #entries: LoggedEntry[] | undefined;

  constructor(readonly parts: LogParts) {}

  get seq(): number {
    return this.parts.seq;
  }
  get quilt(): Quilt {
    return this.parts.quilt;
  }
  get conversation(): Conversation {
    return this.conversationOf('');
  }
  get confirmedDays(): string[] {
    return this.parts.confirmedDays.map((day) => day.date);
  }
  get dayConfirmations(): readonly { date: string; seq: number }[] {
    return this.parts.confirmedDays;
  }
  get handSpans(): HandSpan[] {
    return this.parts.handSpans as HandSpan[];
  }
  get removedSpans(): string[] {
    return this.parts.removedSpans as string[];
  }
  get estimateSettings(): Record<string, unknown> {
    return this.parts.estimateSettings;
  }
  get settingNotes(): Record<string, { noteId: string; seq: number }> {
    return this.parts.settingNotes;
  }
  get plans(): readonly EstimatePlan[] | undefined {
    return this.parts.plans;
  }
  get recordMade(): { seq: number } | undefined {
    return this.parts.recordMade;
  }
  get recordEdits(): QuiltState['recordEdits'] {
    return this.parts.recordEdits;
  }
  get recordAsking(): RecordAsking | undefined {
    return this.parts.recordAsking;
  }
  get detailNotes(): Record<string, { noteId: string; seq: number }> {
    return this.parts.detailNotes;
  }
  get agreements(): QuiltState['agreements'] {
    return this.parts.agreements;
  }
  get photos(): Photo[] {
    return this.parts.photos as Photo[];
  }
  get recordings(): Recording[] {
    return this.parts.recordings as Recording[];
  }
  get removedAudio(): string[] {
    return this.parts.removedAudio as string[];
  }

  get notes(): LoggedNote[] {
    this.#notes ??= inOrder(this.parts.notes.toArray()).map((row) => row.logged);
    return this.#notes;
  }

  get entries(): LoggedEntry[] {
    this.#entries ??= this.#listEntries();
    return this.#entries;
  }

  /** Entries put in by hand without a note, without listing all others. */
  get looseEntries(): LoggedEntry[] {
    return inOrder(this.parts.loose.toArray()).flatMap(({ id }) => this.parts.entries.get(id) ?? []);
  }

  /** How many entries stand, without listing them. */
  get entryCount(): number {
    return this.parts.entries.size;
  }

  note(id: string): LoggedNote | undefined {
    const index = this.parts.noteIndex.get(id);
    return index === undefined ? undefined : this.parts.notes.get(index)?.logged;
  }

  entry(id: string): LoggedEntry | undefined {
    return this.parts.entries.get(id);
  }

  /** What the next words of a thread stand on: '' for what is said live, else a recording's id. */
  conversationOf(thread: string): Conversation {
    return this.parts.conversations.get(thread) ?? {};
  }

  /** The events after `seq`, in order, at most `most` of them. */
  eventsSince(seq: number, most?: number): NumberedEvent[] {
    return this.parts.events.since(seq, most);
  }

  eventAt(seq: number): NumberedEvent | undefined {
    return this.parts.events.at(seq);
  }

  #listEntries(): LoggedEntry[] {
    const rows: (Dated & { entries: LoggedEntry[] })[] = [];
    const stands = (id: string): LoggedEntry[] => {
      const entry = this.parts.entries.get(id);
      return entry ? [entry] : [];
    };
    for (const { logged, ms, seq } of this.parts.notes) {
      if (logged.entryIds.length > 0) rows.push({ ms, seq, entries: logged.entryIds.flatMap(stands) });
    }
    for (const { id, ms, seq } of this.parts.loose) rows.push({ ms, seq, entries: stands(id) });
    return inOrder(rows).flatMap((row) => row.entries);
  }
}

/** Nearly always in order already, so look before sorting. */
function inOrder<T extends Dated>(rows: T[]): T[] {
  for (let i = 1; i < rows.length; i++) {
    if (bySaid(rows[i - 1]!, rows[i]!) > 0) return rows.sort(bySaid);
  }
  return rows;
}
