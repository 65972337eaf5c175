import type { ClockFound } from '../times/find-clock.ts';
import type { DayFound } from '../times/find-day.ts';
import { latestClock, wallMinutes, wallTime } from '../times/local-time.ts';

export type Slots = {
  mark?: 'start' | 'stop';
  time?: string;
  start?: string;
  end?: string;
  minutes?: number;
};

export const AT = /^(at|since|from|till|until|til|by|around|about)$/;

/** A time that would lie after the note is the same reading half a day or a day before. */
export function pastOnly(slots: Slots, now: number): Slots {
  const out = { ...slots };
  for (const key of ['time', 'start', 'end'] as const) {
    const value = out[key];
    if (value !== undefined && wallMinutes(value) > now) return earlier(out, 1440, now);
  }
  return out;
}

export function earlier(slots: Slots, by: number, now: number): Slots {
  const out = { ...slots };
  for (const key of ['time', 'start', 'end'] as const) {
    const value = out[key];
    if (value !== undefined) out[key] = wallTime(wallMinutes(value) - by);
  }
  const latest = out.end ?? out.time ?? out.start;
  return latest !== undefined && wallMinutes(latest) > now ? earlier(out, by, now) : out;
}

/** Both ends of a stretch: the latest that the words can mean, the end not after `now`, the start before the end. */
export function resolve(
  start: ClockFound,
  end: ClockFound,
  now: number,
  day: { start: number; part?: DayFound['part'] } | undefined,
): { startAt: number; endAt: number } {
  const fixedDay = day ? { start: day.start, ...(day.part ? { part: day.part } : {}) } : undefined;
  // "from quarter to two until twenty-five past": the hour that follows the start
  if (end.anyHour && !start.anyHour) {
    const startAt = latestClock(start, now - 1, fixedDay as Parameters<typeof latestClock>[2]);
    return { startAt, endAt: startAt + ((((end.minute - start.minute) % 60) + 60) % 60 || 60) };
  }
  let endAt = latestClock(end, now, fixedDay as Parameters<typeof latestClock>[2]);
  // "on Tuesday from ten till half past midnight": the night that ends the day
  const nextDay = day && !day.part && end.fixed && end.minute < 240 && endAt + 1440 <= now;
  if (nextDay && !(start.fixed && start.minute < end.minute)) endAt += 1440;
  if (day && endAt > now && !end.fixed && end.minute < 780) endAt -= 720;
  const halves =
    start.fixed || start.minute >= 780 ? [start.minute] : [start.minute % 720, (start.minute % 720) + 720];
  // "from ten this morning till two": the morning is the start's
  if (day?.part === 'morning') {
    const startAt = day.start + (start.minute % 720);
    const later = [end.minute % 720, (end.minute % 720) + 720].find(
      (m) => day.start + m > startAt && (!end.fixed || m === end.minute),
    );
    if (later !== undefined && !(start.fixed && start.minute >= 720) && day.start + later <= now)
      return { startAt, endAt: day.start + later };
  }
  // "from midnight to two": the hours of the night
  if (
    start.fixed &&
    start.minute < 240 &&
    !end.fixed &&
    end.minute % 720 > start.minute &&
    endAt % 1440 > 720
  )
    endAt -= 720;
  const midnight = Math.floor(endAt / 1440) * 1440;
  const options = [midnight - 1440, midnight]
    .flatMap((base) => halves.map((m) => base + m))
    .filter((t) => t < endAt);
  const startAt = options.sort((a, b) => a - b).at(-1) ?? endAt - 1;
  return { startAt, endAt };
}
