import fc from 'fast-check';
import { expect } from 'vitest';
import type { Log } from '../../core/log/log.ts';
import { rereadNotes } from '../../core/log/reread-notes.ts';
import type { Entry } from '../../shared/entry.ts';
import type { Reading } from '../../shared/note.ts';
import type { Command } from '../../shared/wire.ts';
import { picture } from './picture.ts';

/**
 * What the log should hold, kept in the plainest way: notes as a list, each with what it gave and who
 * took it back. The real log is built by decide and evolve; after each command both must agree.
 */
export type ModelEntry = { id: string; entry: Entry; confirmed: boolean };
type ModelNote = {
  id: string;
  act: Reading['act'];
  entries: ModelEntry[];
  aside: ModelEntry[];
  target?: ModelNote;
  takenBack: boolean;
  touched: boolean;
};
export type Model = { notes: ModelNote[]; loose: ModelEntry[] };

/** The log under test, in memory or on a disk. */
export type Real = {
  readonly log: Log;
  /** Number of the next id that `id` gives. */
  readonly next: number;
  id: () => string;
  run(command: Command, reading?: Reading): Promise<void>;
  /** Forgets all but what is kept, and opens that again. */
  restart(): Promise<void>;
  /** Goes on with what an archive of it gives. */
  carryOver(): Promise<void>;
};

const standing = (model: Model): ModelEntry[] => [
  ...model.notes.flatMap((note) => note.entries),
  ...model.loose,
];

function check(model: Model, real: Real): void {
  const view = (entry: { id: string; entry: Entry; confirmed: boolean }) => [
    entry.id,
    entry.entry,
    entry.confirmed,
  ];
  const sorted = (list: { id: string; entry: Entry; confirmed: boolean }[]) =>
    list.map(view).sort((a, b) => String(a[0]).localeCompare(String(b[0])));
  expect(sorted(real.log.entries)).toEqual(sorted(standing(model)));
  expect(real.log.entryCount).toBe(standing(model).length);
  expect(real.log.notes).toHaveLength(model.notes.length);
}

export const reading = (act: Reading['act'], entries: Entry[]): Reading => ({
  act,
  entries: entries.map((entry) => ({ entry, origins: {} })),
  ask: null,
  reply: '',
});

export class Say implements fc.AsyncCommand<Model, Real> {
  constructor(
    readonly act: Reading['act'],
    readonly places: string[],
  ) {}
  check = (): boolean => true;
  async run(model: Model, real: Real): Promise<void> {
    const entries: Entry[] =
      this.act === 'log' || this.act === 'amend'
        ? this.places.map((place) => ({ kind: 'condition', finding: 'tear', places: [place] }))
        : [];
    const id = real.id();
    const first = real.next;
    await real.run({ type: 'take-note', clientId: id, text: 'said' }, reading(this.act, entries));
    const note: ModelNote = {
      id,
      act: this.act,
      entries: entries.map((entry, i) => ({ id: `id${first + i}`, entry, confirmed: false })),
      aside: [],
      takenBack: false,
      touched: false,
    };
    if (this.act === 'amend' || this.act === 'undo') {
      const target = model.notes.findLast(
        (one) => (one.act === 'log' || one.act === 'amend') && !one.takenBack && one.entries.length > 0,
      );
      if (target) {
        note.target = target;
        target.takenBack = true;
        target.aside = target.entries.filter((entry) => !entry.confirmed);
        target.entries = target.entries.filter((entry) => entry.confirmed);
        const before = target.target;
        if (this.act === 'undo' && before?.takenBack) {
          before.takenBack = false;
          before.entries.push(...before.aside);
          before.aside = [];
        }
      }
    }
    model.notes.push(note);
    check(model, real);
  }
  toString = (): string => `${this.act}(${this.places.join()})`;
}

abstract class OnEntry implements fc.AsyncCommand<Model, Real> {
  constructor(readonly pick: number) {}
  check = (model: Readonly<Model>): boolean => standing(model).length > 0;
  async run(model: Model, real: Real): Promise<void> {
    const entries = standing(model);
    const entry = entries[this.pick % entries.length]!;
    const note = model.notes.find((one) => one.entries.includes(entry));
    if (note) note.touched = true;
    await this.change(model, real, entry, note);
    check(model, real);
  }
  abstract change(model: Model, real: Real, entry: ModelEntry, note: ModelNote | undefined): Promise<void>;
  toString = (): string => `${this.constructor.name}(${this.pick})`;
}

export class Confirm extends OnEntry {
  async change(_: Model, real: Real, entry: ModelEntry): Promise<void> {
    await real.run({ type: 'confirm-entries', entryIds: [entry.id] });
    entry.confirmed = true;
  }
}
class Correct extends OnEntry {
  async change(_: Model, real: Real, entry: ModelEntry): Promise<void> {
    entry.entry = { kind: 'condition', finding: 'hole', places: ['7-5'] };
    await real.run({ type: 'correct-entry', entryId: entry.id, entry: entry.entry });
  }
}
export class Remove extends OnEntry {
  async change(model: Model, real: Real, entry: ModelEntry, note: ModelNote | undefined): Promise<void> {
    await real.run({ type: 'remove-entry', entryId: entry.id });
    if (note) note.entries = note.entries.filter((one) => one !== entry);
    else model.loose = model.loose.filter((one) => one !== entry);
  }
}
/** Removes an entry and takes that back: nothing may have changed, but that the numbers went on. */
class RemoveAndUndo extends OnEntry {
  async change(_: Model, real: Real, entry: ModelEntry, note: ModelNote | undefined): Promise<void> {
    const wasTouched = real.log.note(note?.id ?? '')?.touched;
    await real.run({ type: 'remove-entry', entryId: entry.id });
    await real.run({ type: 'undo-change', seq: real.log.seq });
    if (note) note.touched = wasTouched === true;
  }
}
class Add implements fc.AsyncCommand<Model, Real> {
  check = (): boolean => true;
  async run(model: Model, real: Real): Promise<void> {
    const id = `id${real.next}`;
    const entry: Entry = { kind: 'remark' };
    await real.run({ type: 'add-entry', entry });
    model.loose.push({ id, entry, confirmed: false });
    check(model, real);
  }
  toString = (): string => 'add';
}
/** A restart: the log that is opened again is the log there was. */
class Restart implements fc.AsyncCommand<Model, Real> {
  check = (): boolean => true;
  async run(model: Model, real: Real): Promise<void> {
    const before = JSON.stringify(picture(real.log));
    await real.restart();
    expect(JSON.stringify(picture(real.log))).toBe(before);
    check(model, real);
  }
  toString = (): string => 'restart';
}
/** Out into an archive and in again. */
class CarryOver implements fc.AsyncCommand<Model, Real> {
  check = (): boolean => true;
  async run(model: Model, real: Real): Promise<void> {
    const before = JSON.stringify(picture(real.log));
    await real.carryOver();
    expect(JSON.stringify(picture(real.log))).toBe(before);
    check(model, real);
  }
  toString = (): string => 'import';
}
/** The same rules read all notes again: nothing may come out otherwise. */
export class Reread implements fc.AsyncCommand<Model, Real> {
  check = (): boolean => true;
  async run(model: Model, real: Real): Promise<void> {
    const readings = rereadNotes(
      real.log,
      (note) => ({ reading: real.log.note(note.id)!.reading!, conversation: {} }),
      { rules: '1', id: real.id },
    );
    expect(readings).toEqual([]);
    check(model, real);
  }
  toString = (): string => 'reread';
}

/** note, amend, undo, aside, query, confirm, edit, remove, add, reread, restart, import. */
export const commandsOfLog = (maxCommands: number): fc.Arbitrary<Iterable<fc.AsyncCommand<Model, Real>>> =>
  fc.commands(
    [
      said('log', 3),
      said('amend', 2),
      said('undo', 0),
      said('aside', 0),
      said('query', 0),
      fc.nat(50).map((n) => new Confirm(n)),
      fc.nat(50).map((n) => new Correct(n)),
      fc.nat(50).map((n) => new Remove(n)),
      fc.nat(50).map((n) => new RemoveAndUndo(n)),
      fc.constant(new Add()),
      fc.constant(new Restart()),
      fc.constant(new CarryOver()),
      fc.constant(new Reread()),
    ],
    { maxCommands },
  );

export const place = fc.constantFrom('1-1', '2-3', '4-5', 'backing');
const said = (act: Reading['act'], most: number) =>
  fc.array(place, { minLength: most === 0 ? 0 : 1, maxLength: most }).map((places) => new Say(act, places));
