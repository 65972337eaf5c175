import { List } from 'immutable';
import type { NumberedEvent } from '../../shared/event.ts';

/** Events from before a snapshot, which run from 1 to `last` without a gap and are fetched where they lie. */
export type OlderEvents = {
  last: number;
  /** Those numbered `from` to `to`, both among them. */
  between(from: number, to: number): NumberedEvent[];
};

/**
 * All events of a log. After a start from a snapshot the older ones are not held in memory: only an undoing of
 * something old, an archive, or a page that has nothing yet asks for them.
 */
export class EventTrail {
  static readonly EMPTY = new EventTrail(undefined, List());

  constructor(
    readonly older: OlderEvents | undefined,
    readonly recent: List<NumberedEvent>,
  ) {}

  get size(): number {
    return (this.older?.last ?? 0) + this.recent.size;
  }

  push(event: NumberedEvent): EventTrail {
    return new EventTrail(this.older, this.recent.push(event));
  }

  /** The events after `seq`, in order, at most `most` of them. */
  since(seq: number, most = Number.POSITIVE_INFINITY): NumberedEvent[] {
    const last = this.older?.last ?? 0;
    const old = seq < last ? this.older!.between(seq + 1, Math.min(last, seq + most)) : [];
    if (old.length >= most) return old;
    const from = this.#placeAfter(seq);
    const recent = this.recent.slice(from, Math.min(this.recent.size, from + most - old.length)).toArray();
    return old.length === 0 ? recent : [...old, ...recent];
  }

  at(seq: number): NumberedEvent | undefined {
    if (seq >= 1 && seq <= (this.older?.last ?? 0)) return this.older!.between(seq, seq)[0];
    const found = this.recent.get(this.#placeAfter(seq - 1));
    return found?.seq === seq ? found : undefined;
  }

  /** Place of the first held event past `seq`. Searched for, as a damaged journal may lack some numbers. */
  #placeAfter(seq: number): number {
    let low = 0;
    let high = this.recent.size;
    while (low < high) {
      const middle = (low + high) >>> 1;
      if (this.recent.get(middle)!.seq <= seq) low = middle + 1;
      else high = middle;
    }
    return low;
  }
}
