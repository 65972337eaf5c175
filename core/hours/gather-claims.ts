import type { WorkEntry } from '../../shared/entry.ts';
import type { Task } from '../../shared/vocabulary.ts';
import type { LoggedEntry, QuiltState } from '../log/state.ts';
import type { HoursProblem, How } from './hours.ts';
import { isRealMinute } from './is-real-minute.ts';
import { momentWords } from './moment-words.ts';
import type { Sign } from './signs-of-work.ts';
import type { Stretch } from './stretches.ts';
import { taskOfEntry } from './task-of-entry.ts';
import type { ZoneClock } from './zone-clock.ts';

/** A stretch of work as it was said or set, before overlaps are resolved. Minutes since 1970, UTC. */
export type Claim = {
  id: string;
  task?: Task;
  how: How;
  from: number;
  to: number;
  /** Minutes worked, where they were said. */
  minutes?: number;
  noteIds: string[];
  entryIds: string[];
  running?: true;
};

export type Claims = {
  /** Each list in the order in which time is given out. */
  hand: Claim[];
  said: Claim[];
  /** Lengths without clock times; `to` is when they were said. */
  lengths: Claim[];
  /** Where stretches were said that were since moved or taken out by hand: nothing is inferred there instead. */
  withdrawn: Stretch[];
};

/** Past this hour of the night a new day of work begins: who sews till one is still in her evening. */
const DAY_TURNS_MIN = 4 * 60;
/** Silence across the turn of the night after which work without a stop was left running. */
const LEFT_AFTER_MIN = 2 * 60;
/** The same where the next thing said is the stop itself, which is a sign that the work went on. */
const LEFT_BEFORE_STOP_MIN = 8 * 60;
const TOO_LONG_MIN = 16 * 60;

const fromTo = (from: string, to: string): string => `${momentWords(from)} to ${momentWords(to, from)}`;

type Moment = { at: number; mark: 'start' | 'stop'; entry: LoggedEntry; work: WorkEntry };

/** Collects what was said and set about the time of work. What contradicts itself goes to `problems`. */
export function gatherClaims(
  state: QuiltState,
  signs: readonly Sign[],
  clock: ZoneClock,
  now: number | undefined,
  problems: HoursProblem[],
): Claims {
  const noSuchDay = (times: (string | undefined)[], noteIds: string[], date: string): boolean => {
    const wrong = times.find((time) => time !== undefined && !isRealMinute(time));
    if (wrong === undefined) return false;
    problems.push({
      kind: 'no-such-day',
      message: `Work was told for ${wrong.slice(0, 10)}, and there is no such day, so it is not counted. Put its day right.`,
      date,
      noteIds,
    });
    return true;
  };
  const real = state.handSpans.filter(
    (span) => !noSuchDay([span.start, span.end], [], span.start.slice(0, 10)),
  );
  const hand = real.map(
    (span): Claim => ({
      id: span.spanId,
      ...(span.task === undefined ? {} : { task: span.task }),
      how: 'hand',
      from: clock.minuteOf(span.start),
      to: clock.laterMinuteOf(span.end),
      ...(span.minutes === undefined ? {} : { minutes: span.minutes }),
      noteIds: state.entries.filter((e) => span.entryIds.includes(e.id)).flatMap((e) => e.noteId ?? []),
      entryIds: span.entryIds,
    }),
  );
  const gone = new Set([
    ...state.handSpans.flatMap((span) => [span.spanId, ...span.entryIds]),
    ...(state.removedSpans ?? []),
  ]);
  const stands = (claim: Claim): boolean => !gone.has(claim.id) && !claim.entryIds.some((id) => gone.has(id));

  const said: Claim[] = [];
  const moments: Moment[] = [];
  const lengths: { claim: Claim; sign: Sign; isWork: boolean }[] = [];
  for (const sign of signs) {
    for (const entry of sign.entries) {
      const { entry: words } = entry;
      if (words.kind === 'treatment' && words.minutes !== undefined && isDone(words.state)) {
        lengths.push({ claim: lengthOf(entry, sign, words.minutes), sign, isWork: false });
      }
      if (words.kind !== 'work') continue;
      if (noSuchDay([words.time, words.start, words.end], noteIdsOf(entry), clock.dateOf(sign.at))) continue;
      const stretch = stretchSaid(words, sign, clock);
      if (stretch) {
        const [from, to] = stretch;
        if (to <= from) {
          problems.push({
            kind: 'ends-before-start',
            message: `Work from ${fromTo(clock.localOf(from), clock.localOf(to))} ends before it starts, so it is not counted. Correct one of the two.`,
            date: clock.dateOf(from),
            noteIds: noteIdsOf(entry),
          });
          continue;
        }
        const claim = claimOf(entry, words.task, 'said', from, to, words.minutes);
        said.push(claim);
      } else if (words.mark !== undefined || words.start !== undefined || words.end !== undefined) {
        const mark = words.mark ?? (words.start === undefined ? 'stop' : 'start');
        const time = words.time ?? words.start ?? words.end;
        moments.push({ at: time === undefined ? sign.at : clock.minuteOf(time), mark, entry, work: words });
      } else if (words.minutes !== undefined) {
        lengths.push({ claim: lengthOf(entry, sign, words.minutes), sign, isWork: true });
      }
    }
  }
  const running: HoursProblem[] = [];
  said.push(...pairMoments(moments, signs, clock, now, running));
  // Once its times are set by hand, or it is taken out, nothing is left to ask.
  problems.push(...running.filter(({ spanId }) => spanId === undefined || !gone.has(spanId)));

  const standing = said.filter(stands);
  for (const claim of standing) {
    if (claim.to - claim.from <= TOO_LONG_MIN) continue;
    problems.push({
      kind: 'too-long',
      message: `Work from ${fromTo(clock.localOf(claim.from), clock.localOf(claim.to))} is longer than sixteen hours. Check the times.`,
      date: clock.dateOf(claim.from),
      spanId: claim.id,
      noteIds: claim.noteIds,
    });
  }
  const fixed = [...hand, ...standing];
  const free: Claim[] = [];
  for (const { claim, sign, isWork } of lengths) {
    if (!stands(claim)) continue;
    // Within a stretch that is counted already, a length says how that stretch was spent.
    const around = fixed.find(
      (other) => (sign.at > other.from && sign.at <= other.to) || sharesNote(other, claim),
    );
    if (!around) free.push(claim);
    else if (isWork && claim.task !== undefined && claim.task !== around.task && !sharesNote(around, claim)) {
      // "Twenty minutes of that was shopping": its own task inside the other.
      standing.push({ ...claim, how: 'said', from: claim.to - (claim.minutes ?? 0) });
    }
  }
  return {
    hand: hand.sort(laterStartFirst),
    said: standing.sort(laterStartFirst),
    // The last said lies nearest to its note; those before are moved back before it.
    withdrawn: said.filter((claim) => !stands(claim)).map(({ from, to }) => [from, to]),
    lengths: free.reverse().sort((a, b) => b.to - a.to),
  };
}

const isDone = (state: string): boolean => state === 'done' || state === 'doing';
const noteIdsOf = (entry: LoggedEntry): string[] => (entry.noteId === undefined ? [] : [entry.noteId]);
const sharesNote = (a: Claim, b: Claim): boolean => a.noteIds.some((id) => b.noteIds.includes(id));

/** Where two overlap the one that starts later has the time; of two that start together, the shorter. */
const laterStartFirst = (a: Claim, b: Claim): number => b.from - a.from || a.to - b.to;

function claimOf(
  entry: LoggedEntry,
  task: Task | undefined,
  how: How,
  from: number,
  to: number,
  minutes?: number,
): Claim {
  return {
    id: `work-${entry.id}`,
    ...(task === undefined ? {} : { task }),
    how,
    from,
    to,
    ...(minutes === undefined ? {} : { minutes }),
    noteIds: noteIdsOf(entry),
    entryIds: [entry.id],
  };
}

const lengthOf = (entry: LoggedEntry, sign: Sign, minutes: number): Claim =>
  claimOf(entry, taskOfEntry(entry.entry), 'length', sign.at, sign.at, minutes);

/** From and to, where one entry gives both: as times, or as one time and a length. */
function stretchSaid(words: WorkEntry, sign: Sign, clock: ZoneClock): [number, number] | undefined {
  const { start, end, minutes, mark, time } = words;
  if (start !== undefined && end !== undefined) {
    const from = clock.minuteOf(start);
    // In the hour that comes twice the end may be the second of the two.
    const first = clock.minuteOf(end);
    return [from, first > from ? first : clock.laterMinuteOf(end)];
  }
  if (mark === 'stop' && start !== undefined) {
    return [clock.minuteOf(start), time === undefined ? sign.at : clock.laterMinuteOf(time)];
  }
  if (start !== undefined && minutes !== undefined) {
    const from = clock.minuteOf(start);
    return [from, from + minutes];
  }
  if (end !== undefined && minutes !== undefined) {
    const to = clock.laterMinuteOf(end);
    return [to - minutes, to];
  }
  return undefined;
}

/** Turns starts and stops into stretches. A start while something runs ends that: she went over to it. */
function pairMoments(
  moments: Moment[],
  signs: readonly Sign[],
  clock: ZoneClock,
  now: number | undefined,
  problems: HoursProblem[],
): Claim[] {
  const claims: Claim[] = [];
  let running: Moment | undefined;

  const close = (opened: Moment, at: number, by?: Moment): boolean => {
    const left = lastSignBeforeNight(opened.at, at, by?.mark === 'stop', signs, clock);
    const claim = claimOf(opened.entry, opened.work.task, 'said', opened.at, left ?? at);
    if (left !== undefined) {
      problems.push({
        kind: 'left-running',
        message: `The ${opened.work.task?.replaceAll('-', ' ') ?? 'work'} begun at ${momentWords(clock.localOf(opened.at))} was not stopped; it is counted up to the last note of that day, ${momentWords(clock.localOf(left), clock.localOf(opened.at))}. When did you stop?`,
        date: clock.dateOf(opened.at),
        spanId: claim.id,
        noteIds: noteIdsOf(opened.entry),
      });
    } else if (by?.mark === 'stop') {
      claim.noteIds.push(...noteIdsOf(by.entry));
      claim.entryIds.push(by.entry.id);
      if (by.work.minutes !== undefined) claim.minutes = by.work.minutes;
      if (claim.task === undefined && by.work.task !== undefined) claim.task = by.work.task;
    }
    claims.push(claim);
    return left === undefined;
  };

  for (const moment of moments.sort((a, b) => a.at - b.at)) {
    if (moment.mark === 'start') {
      if (running) close(running, moment.at, moment);
      running = moment;
      continue;
    }
    const closed = running !== undefined && close(running, moment.at, moment);
    running = undefined;
    if (closed) continue;
    const begun = firstOfRunBefore(moment.at, signs);
    if (moment.work.minutes !== undefined) {
      const { minutes } = moment.work;
      claims.push(claimOf(moment.entry, moment.work.task, 'said', moment.at - minutes, moment.at));
    } else {
      problems.push({
        kind: 'stop-without-start',
        message: `A stop at ${momentWords(clock.localOf(moment.at))} has no start before it. ${begun === undefined ? 'No time is counted for it' : `The notes before it count from ${momentWords(clock.localOf(begun), clock.localOf(moment.at))}`}; say when you began.`,
        date: clock.dateOf(moment.at),
        noteIds: noteIdsOf(moment.entry),
      });
    }
  }
  if (running) {
    const last = signs.at(-1)?.at ?? running.at;
    const until = Math.max(running.at, now ?? last);
    if (close(running, until)) claims.at(-1)!.running = true;
  }
  return claims;
}

/**
 * The last sign of work before a night in which nothing was said, where there was such a night between
 * two moments. One that ends in a stop has to be longer: the stop tells that the work went on.
 */
function lastSignBeforeNight(
  from: number,
  to: number,
  toIsStop: boolean,
  signs: readonly Sign[],
  clock: ZoneClock,
): number | undefined {
  const moments = [from];
  for (let i = firstAfter(signs, from); i < signs.length && signs[i]!.at < to; i++)
    moments.push(signs[i]!.at);
  moments.push(to);
  for (let i = 1; i < moments.length; i++) {
    const before = moments[i - 1]!;
    const after = moments[i]!;
    const isStop = toIsStop && i === moments.length - 1;
    if (after - before < (isStop ? LEFT_BEFORE_STOP_MIN : LEFT_AFTER_MIN)) continue;
    if (clock.dateOf(before - DAY_TURNS_MIN) !== clock.dateOf(after - DAY_TURNS_MIN)) return before;
  }
  return undefined;
}

/** The first note of the unbroken run of notes that leads up to a moment: what inference will count. */
function firstOfRunBefore(at: number, signs: readonly Sign[]): number | undefined {
  let first: number | undefined;
  for (let i = signs.length - 1; i >= 0; i--) {
    const sign = signs[i]!;
    if (sign.at >= at) continue;
    if ((first ?? at) - sign.at > 30) break;
    first = sign.at;
  }
  return first;
}

function firstAfter(signs: readonly Sign[], at: number): number {
  let low = 0;
  let high = signs.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (signs[middle]!.at <= at) low = middle + 1;
    else high = middle;
  }
  return low;
}
