import type { Task } from '../../shared/vocabulary.ts';
import type { QuiltState } from '../log/state.ts';
import { type Claim, gatherClaims } from './gather-claims.ts';
import { inferRuns } from './infer-runs.ts';
import { shareByPlace } from './share-by-place.ts';
import { type Sign, signsOfWork } from './signs-of-work.ts';
import { lengthOf, type Stretch, TakenTime } from './stretches.ts';
import { mondayOf, ZoneClock } from './zone-clock.ts';

/**
 * How a stretch of work is known: set by hand; said (clock times, or "starting" and "stopping"); said
 * as a length only, so that its place on the clock is a guess; or inferred from a run of notes.
 */
export type How = 'hand' | 'said' | 'length' | 'inferred';

/** A stretch of work of one kind. Stretches of the same log never overlap in their `parts`. */
export type Span = {
  /** Stays the same while what it stands on does; the id to use with `set-span` and `remove-span`. */
  id: string;
  /** Absent where no task was said, implied or running. */
  task?: Task;
  how: How;
  /** Local minutes of the quilt's zone; the whole stretch as said, with what was taken off it. */
  start: string;
  end: string;
  startMin: number;
  endMin: number;
  /** The minutes that count, breaks and overlaps taken off: the length of `parts`. */
  minutes: number;
  /** Minutes of a break that was said. */
  breakMin: number;
  /** What counts, in minutes since 1970 UTC, in order. */
  parts: Stretch[];
  noteIds: string[];
  entryIds: string[];
  /** Begun and not stopped by the end of the log. */
  running?: true;
};

/** A figure with what it stands on. */
export type Tally = {
  minutes: number;
  /** Of these, inferred from the notes and not said or set. */
  inferredMin: number;
  noteIds: string[];
  spanIds: string[];
};
export type TaskTally = Tally & { task?: Task };
export type DayTally = Tally & { date: string; byTask: TaskTally[] };
/** `monday`: the first date of an ISO 8601 week. */
export type WeekTally = Tally & { monday: string };
/** `place` absent: time that no note ties to a place. Places of one note share its time evenly. */
export type PlaceTally = { place?: string; minutes: number; noteIds: string[] };

/** Time claimed twice: `spanId` gave way to the one that took it. */
export type Overlap = {
  spanId: string;
  task?: Task;
  by: string;
  byTask?: Task;
  minutes: number;
  start: string;
  end: string;
};

/** Something in the hours that a person should look at. `message` says what was assumed. */
export type HoursProblem = {
  kind:
    | 'left-running'
    | 'stop-without-start'
    | 'ends-before-start'
    | 'no-such-day'
    | 'longer-than-clock'
    | 'too-long'
    | 'no-room'
    | 'late-on-confirmed-day';
  message: string;
  date: string;
  spanId?: string;
  noteIds: string[];
};

export type Hours = {
  /** In the order of their start. */
  spans: Span[];
  totalMin: number;
  inferredMin: number;
  byTask: TaskTally[];
  byDay: DayTally[];
  byWeek: WeekTally[];
  byPlace: PlaceTally[];
  overlaps: Overlap[];
  problems: HoursProblem[];
  /** What is being worked on at the end of the log, if a start was said and no stop since. */
  running?: { task?: Task; start: string; spanId: string };
};

export type HoursSettings = {
  /** Minutes without a note after which an inferred run of work is closed. */
  idleMin: number;
  /** The moment now, ISO 8601: work still running counts up to it. Left out: up to the last note. */
  now?: string;
};

/**
 * The hours of a log: every stretch of work, said or inferred, without anything counted twice, and its
 * sums. Pure and total: contradictions become `problems`, never errors. The sums of `byTask`, `byDay`,
 * `byWeek` and `byPlace` each equal `totalMin`, which is the length of the union of all stretches.
 *
 * Order of belief: set by hand, then said with clock times (where two of these overlap, the one that
 * starts later has the time: she went over to something else), then said as a length, then inferred.
 */
export function hoursFromLog(state: QuiltState, settings: HoursSettings): Hours {
  const clock = new ZoneClock(state.quilt.zone);
  const signs = signsOfWork(state);
  const problems: HoursProblem[] = [];
  const now = settings.now === undefined ? undefined : Math.floor(Date.parse(settings.now) / 60_000);
  const claims = gatherClaims(state, signs, clock, now, problems);

  const taken = new TakenTime();
  const overlaps: Overlap[] = [];
  const spans: Span[] = [];
  const settled: Claim[] = [];
  for (const claim of [...claims.hand, ...claims.said]) {
    spans.push(settle(claim, taken, settled, overlaps, problems, clock));
    settled.push(claim);
  }
  for (const length of claims.lengths) spans.push(placeLength(length, taken, problems, clock));
  const removed = new Set([...(state.removedSpans ?? []), ...state.handSpans.map((span) => span.spanId)]);
  for (const [from, to] of claims.withdrawn) taken.take(from, to);
  for (const run of inferRuns(signs, settings.idleMin, clock)) {
    const parts = run.gaps.flatMap(([from, to]) => taken.freeIn(from, to));
    if (lengthOf(parts) === 0 || removed.has(run.id)) continue;
    spans.push(
      spanOf({ ...run, from: parts[0]![0], to: parts.at(-1)![1], how: 'inferred' }, joined(parts), 0, clock),
    );
  }
  const counted = spans
    .filter((span) => span.minutes > 0 || span.running)
    .sort((a, b) => a.startMin - b.startMin || a.endMin - b.endMin);
  addNotesWithin(counted, signs);
  const byDay = sumByDay(counted, clock);
  problems.push(...lateOnConfirmedDays(state, byDay));
  const running = counted.find((span) => span.running);
  return {
    spans: counted,
    totalMin: sum(counted.map((span) => span.minutes)),
    inferredMin: sum(counted.filter((span) => span.how === 'inferred').map((span) => span.minutes)),
    byTask: sumByTask(counted.map((span) => [span, span.minutes])),
    byDay,
    byWeek: sumByWeek(byDay),
    byPlace: shareByPlace(counted, signs),
    overlaps,
    problems,
    ...(running
      ? {
          running: {
            ...(running.task === undefined ? {} : { task: running.task }),
            start: running.start,
            spanId: running.id,
          },
        }
      : {}),
  };
}

/** Gives a claim with clock times what is free of its time, less its break. */
function settle(
  claim: Claim,
  taken: TakenTime,
  settled: readonly Claim[],
  overlaps: Overlap[],
  problems: HoursProblem[],
  clock: ZoneClock,
): Span {
  const free = taken.freeIn(claim.from, claim.to);
  const length = claim.to - claim.from;
  const lost = length - lengthOf(free);
  if (lost > 0) {
    for (const other of settled) {
      const from = Math.max(claim.from, other.from);
      const to = Math.min(claim.to, other.to);
      if (from >= to) continue;
      overlaps.push({
        spanId: claim.id,
        ...(claim.task === undefined ? {} : { task: claim.task }),
        by: other.id,
        ...(other.task === undefined ? {} : { byTask: other.task }),
        minutes: to - from,
        start: clock.localOf(from),
        end: clock.localOf(to),
      });
    }
  }
  if (claim.minutes !== undefined && claim.minutes > length) {
    problems.push({
      kind: 'longer-than-clock',
      message: `${claim.minutes} minutes were said for ${length} minutes on the clock; the clock was believed.`,
      date: clock.dateOf(claim.from),
      spanId: claim.id,
      noteIds: claim.noteIds,
    });
  }
  taken.take(claim.from, claim.to);
  const breakMin = claim.minutes === undefined ? 0 : Math.max(0, length - claim.minutes);
  // Where in the stretch the break lay is not known; what was lost to an overlap may be it.
  const parts = cutFromEnd(free, Math.max(0, breakMin - lost));
  return spanOf(claim, parts, breakMin, clock);
}

/** Puts a length without clock times into the last free time before it was said. */
function placeLength(claim: Claim, taken: TakenTime, problems: HoursProblem[], clock: ZoneClock): Span {
  const minutes = claim.minutes ?? 0;
  const parts = taken.freeBefore(claim.to, minutes, claim.to - 24 * 60);
  const found = lengthOf(parts);
  if (found < minutes) {
    problems.push({
      kind: 'no-room',
      message: `${minutes} minutes were said, but the day before it has room for only ${found} besides the other work.`,
      date: clock.dateOf(claim.to),
      spanId: claim.id,
      noteIds: claim.noteIds,
    });
  }
  for (const [from, to] of parts) taken.take(from, to);
  const first = parts[0]?.[0] ?? claim.to;
  return spanOf({ ...claim, from: first, to: parts.at(-1)?.[1] ?? claim.to }, parts, 0, clock);
}

function spanOf(claim: Claim, parts: Stretch[], breakMin: number, clock: ZoneClock): Span {
  return {
    id: claim.id,
    ...(claim.task === undefined ? {} : { task: claim.task }),
    how: claim.how,
    start: clock.localOf(claim.from),
    end: clock.localOf(claim.to),
    startMin: claim.from,
    endMin: claim.to,
    minutes: lengthOf(parts),
    breakMin,
    parts,
    noteIds: [...claim.noteIds],
    entryIds: [...claim.entryIds],
    ...(claim.running ? { running: true as const } : {}),
  };
}

function cutFromEnd(stretches: readonly Stretch[], minutes: number): Stretch[] {
  const kept = [...stretches];
  let left = minutes;
  while (left > 0 && kept.length > 0) {
    const [from, to] = kept.pop()!;
    if (to - from > left) kept.push([from, to - left]);
    left -= Math.min(left, to - from);
  }
  return kept;
}

/** Joins stretches that touch. */
function joined(stretches: readonly Stretch[]): Stretch[] {
  const whole: Stretch[] = [];
  for (const [from, to] of stretches) {
    const last = whole.at(-1);
    if (last && last[1] === from) whole[whole.length - 1] = [last[0], to];
    else whole.push([from, to]);
  }
  return whole;
}

/** The notes said within a stretch belong to the figures that it gives. */
function addNotesWithin(spans: readonly Span[], signs: readonly Sign[]): void {
  for (const span of spans) {
    const known = new Set(span.noteIds);
    for (let i = firstAtOrAfter(signs, span.startMin); i < signs.length && signs[i]!.at <= span.endMin; i++) {
      const { at, noteId } = signs[i]!;
      if (noteId !== undefined && span.parts.some(([from, to]) => at >= from && at <= to)) known.add(noteId);
    }
    span.noteIds = [...known];
  }
}

function firstAtOrAfter(signs: readonly Sign[], at: number): number {
  let low = 0;
  let high = signs.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (signs[middle]!.at < at) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** Sums shares of spans by task, the largest first. */
function sumByTask(shares: readonly (readonly [Span, number])[]): TaskTally[] {
  const sums = new Map<Task | undefined, TaskTally>();
  for (const [span, minutes] of shares) {
    let tally = sums.get(span.task);
    if (!tally) {
      tally = { ...(span.task === undefined ? {} : { task: span.task }), ...emptyTally() };
      sums.set(span.task, tally);
    }
    addTo(tally, span, minutes);
  }
  return [...sums.values()].sort((a, b) => b.minutes - a.minutes);
}

function sumByDay(spans: readonly Span[], clock: ZoneClock): DayTally[] {
  const days = new Map<string, [Span, number][]>();
  for (const span of spans) {
    for (const [from, to] of span.parts) {
      for (let at = from; at < to; ) {
        const date = clock.dateOf(at);
        const until = Math.min(to, clock.dayStart(clock.nextDate(date)));
        const shares = days.get(date) ?? [];
        days.set(date, shares);
        const last = shares.at(-1);
        if (last?.[0] === span) last[1] += until - at;
        else shares.push([span, until - at]);
        at = until;
      }
    }
  }
  return [...days]
    .sort(([a], [b]) => a.localeCompare(b))
    .map(([date, shares]) => {
      const tally: DayTally = { date, ...emptyTally(), byTask: sumByTask(shares) };
      for (const [span, minutes] of shares) addTo(tally, span, minutes);
      return tally;
    });
}

function sumByWeek(days: readonly DayTally[]): WeekTally[] {
  const weeks = new Map<string, WeekTally>();
  for (const day of days) {
    const monday = mondayOf(day.date);
    const week = weeks.get(monday) ?? { monday, ...emptyTally() };
    weeks.set(monday, week);
    week.minutes += day.minutes;
    week.inferredMin += day.inferredMin;
    week.noteIds = [...new Set([...week.noteIds, ...day.noteIds])];
    week.spanIds = [...new Set([...week.spanIds, ...day.spanIds])];
  }
  return [...weeks.values()];
}

const emptyTally = (): Tally => ({ minutes: 0, inferredMin: 0, noteIds: [], spanIds: [] });

function addTo(tally: Tally, span: Span, minutes: number): void {
  tally.minutes += minutes;
  if (span.how === 'inferred') tally.inferredMin += minutes;
  if (!tally.spanIds.includes(span.id)) tally.spanIds.push(span.id);
  const known = new Set(tally.noteIds);
  for (const id of span.noteIds) if (!known.has(id)) tally.noteIds.push(id);
}

/** A day that was closed by the user, and notes that came in after and touch it. */
function lateOnConfirmedDays(state: QuiltState, byDay: readonly DayTally[]): HoursProblem[] {
  const problems: HoursProblem[] = [];
  for (const { date, seq } of state.dayConfirmations ?? []) {
    const behind = new Set(byDay.find((day) => day.date === date)?.noteIds ?? []);
    const late = state.notes.filter((logged) => (logged.seq ?? 0) > seq && behind.has(logged.note.id));
    if (late.length === 0) continue;
    problems.push({
      kind: 'late-on-confirmed-day',
      message: `${date} was closed, and ${late.length === 1 ? 'a note has' : `${late.length} notes have`} come in since that count towards its hours. Look at the day again.`,
      date,
      noteIds: late.map((logged) => logged.note.id),
    });
  }
  return problems;
}

const sum = (numbers: readonly number[]): number => numbers.reduce((a, b) => a + b, 0);
