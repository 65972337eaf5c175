import fc from 'fast-check';
import { expect, test } from 'vitest';
import { decide } from '../../core/log/decide.ts';
import { evolve, fold } from '../../core/log/evolve.ts';
import type { Log } from '../../core/log/log.ts';
import { rereadNotes } from '../../core/log/reread-notes.ts';
import type { Entry } from '../../shared/entry.ts';
import { LogEvent, type NumberedEvent } from '../../shared/event.ts';
import type { Reading } from '../../shared/note.ts';
import type { Command } from '../../shared/wire.ts';
import { LogBuilder } from './log-builder.ts';
import { picture } from './picture.ts';

/**
 * What the log should hold, kept in the plainest way: notes as a list, each with what it gave and who
 * took it back. The real log is built by decide and evolve; after each command both must agree.
 */
type ModelEntry = { id: string; entry: Entry; confirmed: boolean };
type ModelNote = {
  id: string;
  act: Reading['act'];
  entries: ModelEntry[];
  aside: ModelEntry[];
  target?: ModelNote;
  takenBack: boolean;
  touched: boolean;
};
type Model = { notes: ModelNote[]; loose: ModelEntry[] };

class Real {
  log: Log = new LogBuilder().log;
  journal: NumberedEvent[] = this.log.eventsSince(0);
  next = 1;

  id = (): string => `id${this.next++}`;

  run(command: Command, reading?: Reading): boolean {
    const decision = decide(this.log, command, {
      at: '2026-03-14T10:00:00Z',
      id: this.id,
      ...(reading ? { reading: { reading, conversation: {}, rules: '1' } } : {}),
    });
    if ('refused' in decision) return false;
    for (const event of decision.events) {
      // Whatever is decided has to be what the schema says an event is.
      LogEvent.parse(event);
      const numbered = { seq: this.log.seq + 1, at: '2026-03-14T10:00:00Z', event };
      this.journal.push(numbered);
      this.log = evolve(this.log, numbered);
    }
    return true;
  }
}

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

const reading = (act: Reading['act'], entries: Entry[]): Reading => ({
  act,
  entries: entries.map((entry) => ({ entry, origins: {} })),
  ask: null,
  reply: '',
});

class Say implements fc.Command<Model, Real> {
  constructor(
    readonly act: Reading['act'],
    readonly places: string[],
  ) {}
  check = (): boolean => true;
  run(model: Model, real: Real): void {
    const entries: Entry[] =
      this.act === 'log' || this.act === 'amend'
        ? this.places.map((place) => ({ kind: 'condition', finding: 'tear', places: [place] }))
        : [];
    const id = real.id();
    const first = real.next;
    real.run({ type: 'take-note', clientId: id, text: 'said' }, reading(this.act, entries));
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

abstract class OnEntry implements fc.Command<Model, Real> {
  constructor(readonly pick: number) {}
  check = (model: Readonly<Model>): boolean => standing(model).length > 0;
  run(model: Model, real: Real): void {
    const entries = standing(model);
    const entry = entries[this.pick % entries.length]!;
    const note = model.notes.find((one) => one.entries.includes(entry));
    if (note) note.touched = true;
    this.change(model, real, entry, note);
    check(model, real);
  }
  abstract change(model: Model, real: Real, entry: ModelEntry, note: ModelNote | undefined): void;
  toString = (): string => `${this.constructor.name}(${this.pick})`;
}

class Confirm extends OnEntry {
  change(_: Model, real: Real, entry: ModelEntry): void {
    real.run({ type: 'confirm-entries', entryIds: [entry.id] });
    entry.confirmed = true;
  }
}
class Correct extends OnEntry {
  change(_: Model, real: Real, entry: ModelEntry): void {
    entry.entry = { kind: 'condition', finding: 'hole', places: ['7-5'] };
    real.run({ type: 'correct-entry', entryId: entry.id, entry: entry.entry });
  }
}
class Remove extends OnEntry {
  change(model: Model, real: Real, entry: ModelEntry, note: ModelNote | undefined): void {
    real.run({ type: 'remove-entry', entryId: entry.id });
    if (note) note.entries = note.entries.filter((one) => one !== entry);
    else model.loose = model.loose.filter((one) => one !== entry);
  }
}
/** Removes an entry and takes that back: nothing may have changed, but that the numbers went on. */
class RemoveAndUndo extends OnEntry {
  change(_: Model, real: Real, entry: ModelEntry, note: ModelNote | undefined): void {
    const wasTouched = real.log.note(note?.id ?? '')?.touched;
    real.run({ type: 'remove-entry', entryId: entry.id });
    real.run({ type: 'undo-change', seq: real.log.seq });
    if (note) note.touched = wasTouched === true;
  }
}
class Add implements fc.Command<Model, Real> {
  check = (): boolean => true;
  run(model: Model, real: Real): void {
    const id = `id${real.next}`;
    const entry: Entry = { kind: 'remark' };
    real.run({ type: 'add-entry', entry });
    model.loose.push({ id, entry, confirmed: false });
    check(model, real);
  }
  toString = (): string => 'add';
}
/** A restart: the log folded from the journal is the log there was. */
class Restart implements fc.Command<Model, Real> {
  check = (): boolean => true;
  run(model: Model, real: Real): void {
    const folded = fold(JSON.parse(JSON.stringify(real.journal)) as NumberedEvent[]);
    expect(picture(folded)).toEqual(picture(real.log));
    real.log = folded;
    check(model, real);
  }
  toString = (): string => 'restart';
}
/** The same rules read all notes again: nothing may come out otherwise. */
class Reread implements fc.Command<Model, Real> {
  check = (): boolean => true;
  run(model: Model, real: Real): void {
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

const place = fc.constantFrom('1-1', '2-3', '4-5', 'backing');
const said = (act: Reading['act'], most: number) =>
  fc.array(place, { minLength: most === 0 ? 0 : 1, maxLength: most }).map((places) => new Say(act, places));
const commands = fc.commands(
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
    fc.constant(new Reread()),
  ],
  { maxCommands: 60 },
);

test('the log behaves as its model: note, amend, undo, confirm, correct, remove, add, restart, reread', () => {
  fc.assert(
    fc.property(commands, (list) => {
      fc.modelRun(() => ({ model: { notes: [], loose: [] } as Model, real: new Real() }), list);
    }),
    { numRuns: 300 },
  );
});

test('a note emptied by hand after its mend was taken back: reading again changes nothing', () => {
  // Found by the test above with seed 537471620.
  fc.modelRun(
    () => ({ model: { notes: [], loose: [] } as Model, real: new Real() }),
    [new Say('amend', ['1-1']), new Say('amend', ['1-1']), new Say('undo', []), new Remove(0), new Reread()],
  );
});

test('an undo after a note restores the entries there were', () => {
  fc.assert(
    fc.property(commands, fc.array(place, { minLength: 1, maxLength: 3 }), (list, places) => {
      const real = new Real();
      fc.modelRun(() => ({ model: { notes: [], loose: [] } as Model, real }), list);
      const before = real.log.entries;
      for (const act of ['log', 'amend'] as const) {
        const entries: Entry[] = places.map((one) => ({ kind: 'condition', finding: 'tear', places: [one] }));
        real.run({ type: 'take-note', clientId: real.id(), text: 'said' }, reading(act, entries));
        real.run({ type: 'take-note', clientId: real.id(), text: 'scratch that' }, reading('undo', []));
        expect(new Set(real.log.entries)).toEqual(new Set(before));
      }
    }),
    { numRuns: 100 },
  );
});
