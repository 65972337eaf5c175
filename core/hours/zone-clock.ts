import { Temporal } from 'temporal-polyfill';

const MINUTE_MS = 60_000;
const QUARTER_MS = 900_000;

/**
 * The clock on the wall of a place: turns minutes since 1970 (UTC) into its local dates and times and
 * back. `zone` is an IANA name; the rules are those of the machine's time zone database.
 */
export class ZoneClock {
  readonly #days = new Map<string, number>();
  /** Quarter of an hour -> milliseconds ahead of UTC: clocks change on quarters (IANA, since 1972). */
  readonly #aheadMs = new Map<number, number>();
  readonly #dates: { from: number; to: number; date: string }[] = [];

  constructor(readonly zone: string) {}

  /**
   * The minute that a local time names. Where the clock goes back and a time comes twice, the first
   * is meant; where it goes forward and a time is skipped, the time as far past the change.
   */
  minuteOf(local: string): number {
    const zoned = Temporal.PlainDateTime.from(local).toZonedDateTime(this.zone, {
      disambiguation: 'compatible',
    });
    return zoned.epochMilliseconds / MINUTE_MS;
  }

  /** The second of the two minutes that a local time names where the clock goes back; else the only one. */
  laterMinuteOf(local: string): number {
    const zoned = Temporal.PlainDateTime.from(local).toZonedDateTime(this.zone, { disambiguation: 'later' });
    return Math.max(zoned.epochMilliseconds / MINUTE_MS, this.minuteOf(local));
  }

  /** `2026-03-14T09:00` */
  localOf(minute: number): string {
    const ms = Math.floor(minute * MINUTE_MS);
    const quarter = Math.floor(ms / QUARTER_MS);
    let aheadMs = this.#aheadMs.get(quarter);
    if (aheadMs === undefined) {
      aheadMs = this.#zoned(minute).offsetNanoseconds / 1e6;
      this.#aheadMs.set(quarter, aheadMs);
    }
    return new Date(ms + aheadMs).toISOString().slice(0, 16);
  }

  /** `2026-03-14` */
  dateOf(minute: number): string {
    const known = this.#dates.find((day) => minute >= day.from && minute < day.to);
    if (known) return known.date;
    const date = this.#zoned(minute).toPlainDate();
    const day = {
      date: date.toString(),
      from: this.dayStart(date.toString()),
      to: this.dayStart(date.add({ days: 1 }).toString()),
    };
    // Neighbouring questions ask about the same few days.
    this.#dates.unshift(day);
    if (this.#dates.length > 8) this.#dates.pop();
    return day.date;
  }

  /** The first minute of a date; not always at 00:00, as some clocks change at midnight. */
  dayStart(date: string): number {
    let start = this.#days.get(date);
    if (start === undefined) {
      start = Temporal.PlainDate.from(date).toZonedDateTime(this.zone).epochMilliseconds / MINUTE_MS;
      this.#days.set(date, start);
    }
    return start;
  }

  nextDate(date: string): string {
    return Temporal.PlainDate.from(date).add({ days: 1 }).toString();
  }

  #zoned(minute: number): Temporal.ZonedDateTime {
    return Temporal.Instant.fromEpochMilliseconds(Math.floor(minute * MINUTE_MS)).toZonedDateTimeISO(
      this.zone,
    );
  }
}

/** The Monday of a date's ISO 8601 week: `2026-03-09` for `2026-03-14`. */
export function mondayOf(date: string): string {
  const day = Temporal.PlainDate.from(date);
  return day.subtract({ days: day.dayOfWeek - 1 }).toString();
}
