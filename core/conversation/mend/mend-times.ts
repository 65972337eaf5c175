import type { Item } from '../../rules/item.ts';
import { findDay } from '../../rules/times/find-day.ts';
import { latestClock, wallMinutes, wallTime } from '../../rules/times/local-time.ts';
import { slotsOf } from './mend-numbers.ts';
import { change, type Segment, type Work } from './mending.ts';
import { tellsTime } from './wrong-items.ts';

const BREAK =
  / (less|minus|take off|knock off|take away|not counting|excluding|apart from|break|breaks|out|off) .*| for (tea|coffee|lunch|dinner|supper|breakfast|a break|a cuppa|the phone) /;

const BREAK_NAMED =
  / (?:the|my|that) (?:phone )?(?:call|break|lunch|tea|coffee|dinner|supper|phone|rest|walk|nap|interruption|visit)(?: break)? (?:was|took|came to|ran to|lasted) /;

/** Clock times of work: start, end, or a mark's own time; a break that was taken off stays taken off. */
export function mendTimes(work: Work, segment: Segment, items: Item[]): void {
  const target = work.standing.findLast(
    ({ draft: { entry: e } }) => e.kind === 'work' && (e.start !== undefined || e.mark !== undefined),
  );
  if (target?.draft.entry.kind !== 'work') return;
  const e = target.draft.entry;
  const now = wallMinutes(work.state.local);
  const broke = (): number | undefined =>
    e.start && e.end && e.minutes !== undefined
      ? wallMinutes(e.end) - wallMinutes(e.start) - e.minutes
      : undefined;
  const base = e.time ?? e.end ?? e.start;
  const day = base ? Math.floor(wallMinutes(base) / 1440) * 1440 : undefined;
  // "that wasn't right, I quit at five yesterday"
  const named = findDay(work.state.tokens.map((t) => t.w).join(' '), work.state.local);
  const onDay = (clock: { minute: number; fixed: boolean; anyHour?: true }): number => {
    if (named && !named.vague) return latestClock(clock, now, named);
    const today = Math.floor(now / 1440) * 1440;
    return latestClock(clock, now, day !== undefined && day < today ? { start: day } : undefined);
  };
  // "less ten minutes for tea": a break told afterwards
  const off = items.find((x) => x.duration);
  // "on reflection the call was half an hour": the break that was told with it
  const broken =
    e.start !== undefined &&
    e.end !== undefined &&
    e.minutes !== undefined &&
    BREAK_NAMED.test(segment.words);
  if (off && e.start && e.end && (broken || BREAK.test(segment.words))) {
    change(
      work,
      target,
      'minutes',
      wallMinutes(e.end) - wallMinutes(e.start) - off.duration!.minutes,
      'break',
      [off],
    );
    return;
  }
  const slots = slotsOf(work);
  const hoursOnly = slots.every(({ slot }) => slot === 'minutes');
  for (let k = 0; k < items.length; k++) {
    const x = items[k]!;
    if (work.used.has(x)) continue;
    if (x.span && e.start && e.end) {
      const rest = broke();
      // the half of the day that was told first holds, where the words leave it open
      const end = x.span.end.fixed ? onDay(x.span.end) : nearestClock(x.span.end.minute, wallMinutes(e.end));
      const start = latestClock(x.span.start, end - 1);
      change(work, target, 'start', wallTime(start), 'time', [x]);
      change(work, target, 'end', wallTime(end), 'time', [x]);
      if (rest !== undefined) change(work, target, 'minutes', end - start - rest, 'time', [x]);
      continue;
    }
    const pair = x.clock ? undefined : pairClock(items, k);
    const clock = x.clock ?? pair ?? bareClock(items, k, work.cue === 'strong' && !slots.length, hoursOnly);
    if (!clock) continue;
    if (pair) work.used.add(items[k + 1]!);
    // "half past nine, not 9.15": the end, where that is what is denied
    const denied = (['start', 'end'] as const).filter((slot) =>
      [...work.wrong].some((y) => e[slot] !== undefined && tellsTime(y, e[slot])),
    );
    if (denied.length === 1 && !clock.fixed) {
      const rest = broke();
      const slot = denied[0]!;
      change(work, target, slot, wallTime(nearestClock(clock.minute, wallMinutes(e[slot]!))), 'time', [x]);
      if (rest !== undefined)
        change(work, target, 'minutes', wallMinutes(e.end!) - wallMinutes(e.start!) - rest, 'time', [x]);
      continue;
    }
    const lone = x.clock === undefined && e.end !== undefined;
    const t = wallTime(
      lone
        ? nearestClock(clock.minute, wallMinutes(e.end!))
        : e.mark && e.time && !named && !('anyHour' in clock && clock.anyHour)
          ? beside(clock, wallMinutes(e.time), now)
          : onDay(clock),
    );
    if (e.mark) change(work, target, 'time', t, 'time', [x]);
    else if (e.start && e.end) {
      const rest = broke();
      const before = ` ${items
        .slice(Math.max(0, k - 6), k)
        .map((y) => y.w)
        .join(' ')} `;
      const toStart =
        /\b(start|started|began|begin|from|beginning)\b/.test(before) ||
        (!/\b(stop|stopped|finish|finished|end|ended|till|until|til|to|quit)\b/.test(before) &&
          Math.abs(wallMinutes(t) - wallMinutes(e.start)) < Math.abs(wallMinutes(t) - wallMinutes(e.end)));
      change(work, target, toStart ? 'start' : 'end', t, 'time', [x]);
      if (rest !== undefined)
        change(work, target, 'minutes', wallMinutes(e.end) - wallMinutes(e.start) - rest, 'time', [x]);
    }
  }
}

/** The clock time in whichever half of the day lies nearer. */
function nearestClock(minute: number, old: number): number {
  const day = Math.floor(old / 1440) * 1440;
  return [day + (minute % 720), day + (minute % 720) + 720].reduce((a, b) =>
    Math.abs(b - old) < Math.abs(a - old) ? b : a,
  );
}

/** "no, it was ten past twelve", of a stop at a quarter to: the moment next to the one that was told, also over midnight. */
function beside(clock: { minute: number; fixed: boolean }, old: number, now: number): number {
  const day = Math.floor(old / 1440) * 1440;
  const at = clock.fixed ? [clock.minute] : [clock.minute % 720, (clock.minute % 720) + 720];
  const times = [day - 1440, day, day + 1440].flatMap((d) => at.map((m) => d + m)).filter((t) => t <= now);
  return times.reduce((a, b) => (Math.abs(b - old) < Math.abs(a - old) ? b : a), times[0] ?? old);
}

/** "eleven fifteen it was": hour and minutes. */
function pairClock(items: Item[], k: number): { minute: number; fixed: boolean } | undefined {
  const hour = items[k]!.quantity;
  const past = items[k + 1]?.quantity;
  if (!hour || !past || hour.unit || past.unit) return undefined;
  const h = hour.value ?? 0;
  const m = past.value ?? 0;
  if (!Number.isInteger(h) || h < 1 || h > 12 || !Number.isInteger(m) || m < 5 || m > 59 || m % 5 !== 0)
    return undefined;
  return { minute: h * 60 + m, fixed: false };
}

/** "stopped at seven": a bare number after such a word is a clock. */
function bareClock(
  items: Item[],
  k: number,
  lone: boolean,
  hoursOnly: boolean,
): { minute: number; fixed: boolean } | undefined {
  const x = items[k]!;
  const value = x.quantity?.value;
  // "no, 9.30"
  const figures = hoursOnly ? /^(\d{1,2})[.:]([0-5]\d)$/.exec(x.w) : null;
  if (figures && Number(figures[1]) <= 12)
    return { minute: Number(figures[1]) * 60 + Number(figures[2]), fixed: false };
  if (value === undefined || x.quantity?.unit || !Number.isInteger(value) || value < 1 || value > 12)
    return undefined;
  return lone || /^(at|till|until|til|since|by)$/.test(items[k - 1]?.w ?? '')
    ? { minute: value * 60, fixed: false }
    : undefined;
}
