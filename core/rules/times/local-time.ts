/** Minutes since 1970 of a local wall time `2026-03-14T10:30`, as if the wall were UTC. */
export const wallMinutes = (local: string): number =>
  Math.floor(
    Date.UTC(
      +local.slice(0, 4),
      +local.slice(5, 7) - 1,
      +local.slice(8, 10),
      +local.slice(11, 13),
      +local.slice(14, 16),
    ) / 60000,
  );

/** The wall time of such a count of minutes. */
export const wallTime = (minutes: number): string => new Date(minutes * 60000).toISOString().slice(0, 16);

/** Wall time of a moment written with its offset: "2026-03-14T10:30:00-05:00" -> "2026-03-14T10:30". */
export function wallOf(at: string): string {
  return /^\d{4}-\d\d-\d\dT\d\d:\d\d/.test(at) ? at.slice(0, 16) : '1970-01-01T00:00';
}

const DAY = 1440;
export const dayStart = (minutes: number): number => Math.floor(minutes / DAY) * DAY;

/**
 * The latest moment that a clock reading can mean: not after `now`, on `day` where one is named. A reading without am or
 * pm may be either half of the day; one without its hour ("at twenty past") is of the hour that `now` lies in or the one before.
 */
export function latestClock(
  { minute, fixed, anyHour }: { minute: number; fixed: boolean; anyHour?: true },
  now: number,
  day?: { start: number; part?: 'morning' | 'afternoon' | 'evening' | 'night' },
): number {
  if (anyHour) {
    const here = Math.floor(now / 60) * 60 + (minute % 60);
    return here <= now ? here : here - 60;
  }
  const halves = fixed || minute >= 780 ? [minute] : [minute % 720, (minute % 720) + 720];
  if (day) {
    const options = halves.map((m) => day.start + m);
    if (day.part === 'night' || day.part === 'evening') {
      // "midnight last night" and "ten past twelve last night" lie after the day's end
      if (minute % 720 < 240 && day.part === 'night') return day.start + DAY + (minute % 720);
      // "from nine yesterday evening until midnight"
      if (fixed && minute < 240) return day.start + DAY + minute;
      return day.start + (halves.length > 1 ? (minute % 720) + 720 : minute);
    }
    // "this morning … stopped at noon"
    if (day.part === 'morning') return day.start + (fixed ? minute : minute % 720);
    if (day.part === 'afternoon') return day.start + (minute % 720) + 720;
    const past = options.filter((t) => t <= now);
    if (past.length > 1) {
      // working hours: one to seven is the afternoon, eight to twelve the morning
      const h = Math.floor((minute % 720) / 60);
      return (
        day.start +
        (h >= 8 || h === 0 ? (h === 0 ? 720 + (minute % 60) : minute % 720) : (minute % 720) + 720)
      );
    }
    return past[0] ?? options[0]!;
  }
  const today = dayStart(now);
  const options = [...halves.map((m) => today - DAY + m), ...halves.map((m) => today + m)].filter(
    (t) => t <= now,
  );
  return options.at(-1) ?? today + halves[0]!;
}
