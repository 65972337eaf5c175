import { evolve } from '../../core/log/evolve.ts';
import { lastStandingNote } from '../../core/log/last-standing-note.ts';
import { Log } from '../../core/log/log.ts';
import type { Entry } from '../../shared/entry.ts';
import type { LogEvent, NumberedEvent } from '../../shared/event.ts';
import type { Act } from '../../shared/vocabulary.ts';

/** Builds a log event by event, as a journal would hold it, from entries instead of words. */
export class LogBuilder {
  log: Log = Log.EMPTY;
  readonly events: NumberedEvent[] = [];

  constructor(zone = 'UTC') {
    this.happen({
      type: 'quilt-made',
      quilt: {
        id: 'quilt',
        name: 'Blue star',
        rows: 7,
        blocks: 5,
        owner: '',
        mender: '',
        unit: 'in',
        zone,
        currency: 'GBP',
        spelling: 'british',
        madeAt: '2026-01-01T00:00:00Z',
      },
    });
  }

  happen(event: LogEvent): this {
    const numbered = { seq: this.events.length + 1, at: '2026-06-01T00:00:00Z', event };
    this.events.push(numbered);
    this.log = evolve(this.log, numbered);
    return this;
  }

  /** A note said `at`, read as these entries. Its id is `n` and its number, its entries' `n1.0`, `n1.1`, … */
  note(at: string, ...entries: Entry[]): this {
    return this.say(at, entries.length > 0 ? 'log' : 'aside', entries);
  }

  say(at: string, act: Act, entries: Entry[] = [], recordingId?: string): this {
    const id = `n${this.log.parts.notes.size + 1}`;
    const takesBack = act === 'undo' || act === 'amend';
    const target = takesBack ? lastStandingNote(this.log.parts, recordingId ?? '') : undefined;
    this.happen({
      type: 'note-taken',
      note: {
        id,
        at,
        text: `${act} ${id}`,
        source: recordingId ? 'recording' : 'typed',
        ...(recordingId ? { audio: { file: 'a.wav', startS: 0, endS: 1, recordingId } } : {}),
      },
    });
    return this.happen({
      type: 'note-read',
      noteId: id,
      reading: {
        act,
        entries: entries.map((entry) => ({ entry, origins: {} })),
        ask: null,
        reply: '',
        entryIds: entries.map((_, i) => `${id}.${i}`),
        rules: '1',
        conversation: { last: id },
        ...(target === undefined ? {} : { targetNoteId: target }),
      },
    });
  }
}
