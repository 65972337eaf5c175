import type { Task } from '../../../../shared/vocabulary.ts';
import type { Item } from '../../item.ts';
import { itemWord as w } from '../../item-word.ts';
import { latestClock, wallTime } from '../../times/local-time.ts';
import { wordsBetween } from '../../words-between.ts';
import type { Push } from '../bare-marks.ts';
import { breakOf } from '../break-of.ts';
import { isBreak } from '../find-work.ts';
import type { Mark } from '../marks-of.ts';
import { aroundRests, type Piece, resumes } from '../rests.ts';
import { resolve } from '../slots.ts';
import { deedIn, isLight } from '../work-items.ts';
import { dayOf } from './day-of.ts';
import { runningIn } from './running-in.ts';
import type { TimedMark, TimesTold } from './times-told.ts';

/** Stretches made of starts and stops, and those that stand alone. */
export function pushTimed(told: TimesTold, timed: TimedMark[], marks: Mark[]): void {
  const { state, items, now, used, push } = told;
  const starts = timed.filter((t) => t.mark === 'start');
  const stops = timed.filter((t) => t.mark === 'stop');
  const pieces = aroundRests(timed, items, now, timed.length ? dayOf(told, timed.at(-1)!.k) : undefined);
  const nowStop = starts.length === 1 && !stops.length && isUntilNow(told, starts[0]!, marks);
  if (pieces) pushPieces(pieces, items, push, used, runningIn(state));
  else if (
    starts.length === 1 &&
    stops.length === 1 &&
    (starts[0]!.task?.task === stops[0]!.task?.task || !starts[0]!.task || !stops[0]!.task)
  ) {
    const [a, b] = [starts[0]!, stops[0]!];
    const { startAt, endAt } = resolve(a.clock, b.clock, now, dayOf(told, b.k) ?? dayOf(told, a.k));
    const rest =
      breakOf(items, Math.max(a.k, b.k), used, told.broken) ??
      breakOf(items, Math.min(a.k, b.k), used, told.broken);
    push(
      a.task ?? b.task,
      {
        start: wallTime(startAt),
        end: wallTime(endAt),
        ...(rest && endAt - startAt > rest.minutes ? { minutes: endAt - startAt - rest.minutes } : {}),
      },
      'work.start-and-stop',
      [items[a.k]!, items[b.k]!],
      Math.min(a.word.at, a.k),
      Math.max(a.word.end, a.k + 1),
    );
    for (let k = Math.min(b.word.at, b.k); k < Math.max(b.word.end, b.k + 1); k++) used.add(k);
  } else if (nowStop) {
    const a = starts[0]!;
    const at = latestClock(a.clock, now, dayOf(told, a.k));
    const rest = breakOf(items, a.k, used, told.broken);
    push(
      a.task,
      {
        start: wallTime(at),
        end: state.local,
        ...(rest && now - at > rest.minutes ? { minutes: now - at - rest.minutes } : {}),
      },
      'work.since-until-now',
      [items[a.k]!],
      Math.min(a.word.at, a.k),
      Math.max(a.word.end, a.k + 1),
    );
    const stop = marks.find((m) => m.mark === 'stop' && m.at > a.k);
    if (stop) for (let k = stop.at; k < stop.end; k++) used.add(k);
  } else {
    let last: number | undefined;
    for (const t of timed) {
      // "took a break at two, went back at half past": the next after the time before
      const at =
        t.clock.anyHour && last !== undefined
          ? last + ((((t.clock.minute - last) % 60) + 59) % 60) + 1
          : latestClock(t.clock, now, dayOf(told, t.k));
      last = at;
      const took = timed.length === 1 && t.mark === 'start' ? lengthBeside(items, t.k, used) : undefined;
      if (took !== undefined) used.add(took);
      push(
        t.task,
        took === undefined
          ? { mark: t.mark, time: wallTime(at) }
          : { start: wallTime(at), minutes: items[took]!.duration!.minutes },
        t.mark === 'start' && resumes(t, items) ? 'work.back-at' : `work.${t.mark}-at`,
        [items[t.k]!],
        Math.min(t.word.at, t.k),
        Math.max(t.word.end, t.k + 1),
      );
    }
  }
}

/** "about two and a half hours unpicking, started at one": the length of what began then, with nothing else told between. */
function lengthBeside(items: Item[], clock: number, used: Set<number>): number | undefined {
  const at = items.findIndex((x, k) => x.duration && !used.has(k) && !isBreak(items, k));
  if (
    at < 0 ||
    /^(?:ago|later|early|late|to|left|off|still|more|yet)$/.test(w(items, at + 1)) ||
    deedIn(items, 0, items.length) ||
    // "vacuumed front and back, 40 minutes, and I started cleaning at two": the deed's own
    items.some(
      (x, k) =>
        k < at &&
        at < clock &&
        x.action?.form === 'past' &&
        (items[k + 1]?.place !== undefined || /^(the|all|both)$/.test(w(items, k + 1))),
    )
  )
    return undefined;
  const [from, to] = at < clock ? [at + 1, clock] : [clock + 1, at];
  return items.slice(from, to).every((x) => isLight(x) || x.task) ? at : undefined;
}

/** Has the work begun at `start` gone on until this moment? */
function isUntilNow({ items, all }: TimesTold, start: TimedMark, marks: Mark[]): boolean {
  return (
    / (?:till|until|til|to|-) (?:just |right )?now /.test(all) ||
    // "okay that's it, I'm done, been on this since a quarter after eight"
    isDoneFirst(wordsBetween(items, 0, start.word.at)) ||
    // "sat down to the mending at half ten and only getting up from it now"
    / (?:only|just) (?:now )?(?:getting up|got up|getting out of the chair|putting it (?:down|away)|laying it by)(?: from (?:it|that|the \w+))?(?: now)? /.test(
      all,
    ) ||
    marks.some(
      (m) =>
        m.mark === 'stop' &&
        m.at > start.k &&
        !/^(till|until|til)$/.test(m.word) &&
        !items.slice(m.end, m.end + 3).some((x) => x.duration) &&
        // "I've done all of row two": so much of it
        !(/^(?:done|finished)$/.test(m.word) && items[m.end]?.place?.kind === 'blocks') &&
        // herself, or just now: "rows one to three are finished" ends no work
        (!/^(are|is|were|was|'s|'re)$/.test(w(items, m.at - 1)) ||
          // "the mending I started at one is done now"
          (start.task !== undefined &&
            / (?:i|we) $/.test(wordsBetween(items, start.word.at - 1, start.word.at)) &&
            / now $/.test(all))) &&
        (/^(now|here|there|for|)$/.test(w(items, m.end)) ||
          / as of now $/.test(wordsBetween(items, m.end, m.end + 3)) ||
          /^(i|'m|'ve|just|now|me|and|,)$/.test(w(items, m.at - 1)) ||
          /ing( (it|up|off|in))*$/.test(m.word)),
    )
  );
}
const isDoneFirst = (lead: string): boolean =>
  / (?:done|finished|stopping|packing|knocking|calling|through|that 's (?:it|me|us|enough)) /.test(lead) &&
  DONE_FIRST.test(lead);
const DONE_FIRST =
  /^ (?:(?:okay|ok|right|so|well|and|oh|phew|there|,) )*(?:that 's (?:it|that|me|us|all|enough)(?: ,)? )?(?:(?:for (?:today|tonight|now|me)|then|now|folks|,) )*(?:(?:i 'm|i am|me|we 're|all)? ?(?:done|finished|stopping|off|packing (?:it )?(?:in|up)|knocking off|calling it(?: a (?:day|night)| quits)?|through)(?: (?:for (?:today|tonight|now|the (?:day|night|evening))|here|there|now|,))* )?(?:, )?(?:(?:(?:i 've )?been|i was|was|were|had been) )?(?:(?:on|at) (?:it|this|that|the \S+) )?$/;

function pushPieces(
  pieces: Piece<TimedMark>[],
  items: Item[],
  push: Push,
  used: Set<number>,
  ran: { task: Task } | undefined,
): void {
  const task =
    pieces.map((p) => ('only' in p ? p.only.task : (p.from.task ?? p.to.task))).find(Boolean) ?? ran;
  const cover = (t: TimedMark): void => {
    for (let k = Math.min(t.word.at, t.k); k < Math.max(t.word.end, t.k + 1); k++) used.add(k);
  };
  for (const p of pieces) {
    const first = 'only' in p ? p.only : p.from;
    const from = Math.min(first.word.at, first.k);
    const to = Math.max(first.word.end, first.k + 1);
    if ('only' in p) {
      push(
        p.only.task ?? task,
        { mark: p.only.mark, time: wallTime(p.at) },
        `work.${p.only.mark}-at`,
        [items[p.only.k]!],
        from,
        to,
      );
      continue;
    }
    const minutes = p.rest ? { minutes: p.endAt - p.startAt - p.rest } : {};
    push(
      task,
      { start: wallTime(p.startAt), end: wallTime(p.endAt), ...minutes },
      'work.around-rests',
      [items[p.from.k]!, items[p.to.k]!],
      from,
      to,
    );
    cover(p.to);
  }
  // the rest itself is told with it
  for (let n = 0; n < items.length; n++) if (items[n]!.clock) used.add(n);
}
