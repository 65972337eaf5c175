import type { WorkEntry } from '../../../shared/entry.ts';
import type { Action, Task } from '../../../shared/vocabulary.ts';
import type { Item } from '../item.ts';
import type { DayFound } from '../times/find-day.ts';
import { latestClock, wallMinutes, wallTime } from '../times/local-time.ts';

export type WorkFound = {
  entry: Omit<WorkEntry, 'kind' | 'task'>;
  task?: Task | undefined;
  items: Item[];
  rule: string;
  askTime?: boolean;
  minutesOnly?: boolean;
};

/** The kind of work that a treatment is part of. */
export const TASK_OF_ACTION: Partial<Record<Action, Task>> = {
  replace: 'mending',
  patch: 'mending',
  stabilize: 'mending',
  overlay: 'mending',
  resew: 'mending',
  darn: 'mending',
  remove: 'taking-apart',
  clean: 'cleaning',
  wash: 'cleaning',
  dry: 'cleaning',
  press: 'cleaning',
  cut: 'cutting',
  piece: 'piecing',
  'add-border': 'piecing',
  layer: 'layering',
  baste: 'layering',
  tie: 'tying',
  quilt: 'quilting',
  bind: 'binding',
  photograph: 'survey',
  measure: 'survey',
  trim: 'cutting',
  'square-up': 'cutting',
  label: 'other',
};

const START =
  /\b(started|starting|start|began|begin|beginning|begun|kicked off|sat down to|set to|getting going|got going|back on|back at|back to|picking up|in since|since|going since|have been at|off we go|here goes|clocking on|clocked on|kicking off|making a start|made a start|on it since|at it since|started in)\b/;
const STOP =
  /\b(stopped|stopping|stop|stops|quit|quitting|finished|finishing|finish|packed up|packing up|packing it in|packed it in|knocked off|knocking off|calling it|called it|done for|done now|that 's me done|that 's me|ended|gave up|clocked off|down tools|left off|leaving off|wrapped up|wrapping up|done looking|leave it there|put it down|put it away|laid it by|i 'm done|'m done|done at|enough for|call it)\b/;

/** The task named in a clause. */
export function taskIn(items: Item[]): { task: Task; item: Item } | undefined {
  const candidates = items.filter((x) => x.task);
  if (!candidates.length) return undefined;
  const led = candidates.find((x) => {
    const k = items.indexOf(x);
    const before = items.slice(Math.max(0, k - 3), k).map((y) => y.w);
    return before.some((b) =>
      /^(on|the|of|started|starting|began|beginning|start|stopped|quit|finished|with|at|in|done|for|to|into|doing|did|spent|back)$/.test(
        b,
      ),
    );
  });
  const chosen = led ?? candidates[0]!;
  return { task: chosen.task!, item: chosen };
}

/**
 * Work told in one clause or sentence: a stretch with its break, a start or stop with or without its clock time, or a
 * length. Times are resolved to the latest moment that the words can mean.
 */
export function findWork(
  items: Item[],
  local: string,
  day: DayFound | undefined,
  sentence: Item[],
): WorkFound | undefined {
  const now = wallMinutes(local);
  const words = ` ${items.map((x) => x.w).join(' ')} `;
  const dayFor =
    day && !day.vague ? { start: day.start, ...(day.part ? { part: day.part } : {}) } : undefined;
  const named = taskIn(items);
  const span = items.find((x) => x.span);
  if (span?.span) {
    const { start, end } = span.span;
    const endAt = latestClock(end.minute, end.fixed, now, dayFor);
    let startAt = latestClock(
      start.minute,
      start.fixed,
      endAt - 1,
      dayFor ? { start: dayFor.start } : undefined,
    );
    if (dayFor) {
      const halves =
        start.fixed || start.minute >= 780
          ? [start.minute]
          : [start.minute % 720, (start.minute % 720) + 720];
      startAt =
        halves
          .map((m) => dayFor.start + m)
          .filter((t) => t < endAt)
          .at(-1) ?? startAt;
    }
    if (startAt >= endAt) startAt -= 1440;
    const entry: WorkFound['entry'] = { start: wallTime(startAt), end: wallTime(endAt) };
    const rest = breakIn(sentence, span);
    if (rest !== undefined && endAt - startAt - rest > 0) entry.minutes = endAt - startAt - rest;
    else {
      const said = sentence.find((x) => x.duration && x !== span && !isBreak(sentence, sentence.indexOf(x)));
      if (
        said?.duration &&
        said.duration.minutes < endAt - startAt &&
        /\b(so|that 's|makes|total|in all|=|of which|actual|altogether)\b/.test(
          sentence.map((x) => x.w).join(' '),
        )
      )
        entry.minutes = said.duration.minutes;
    }
    return { entry, task: named?.task, items: [span, ...(named ? [named.item] : [])], rule: 'work.span' };
  }
  const clockItem = items.find((x) => x.clock);
  const starts = START.test(words);
  const stops = STOP.test(words);
  const clock = clockItem?.clock;
  if (clock) {
    const k = items.indexOf(clockItem!);
    const lead = items
      .slice(Math.max(0, k - 3), k)
      .map((x) => x.w)
      .join(' ');
    const since = /\bsince\b/.test(lead);
    const until = /\b(till|until|til)\b/.test(lead);
    const at = latestClock(clock.minute, clock.fixed, now, dayFor);
    if (starts && stops) {
      // "mending since 6.20 pm, done now"
      if (since)
        return {
          entry: { start: wallTime(at), end: local },
          task: named?.task,
          items: [clockItem!],
          rule: 'work.since-until-now',
        };
      const clocks = items.filter((x) => x.clock);
      if (clocks.length > 1) {
        const endAt = latestClock(clocks[1]!.clock!.minute, clocks[1]!.clock!.fixed, now, dayFor);
        return {
          entry: {
            start: wallTime(latestClock(clock.minute, clock.fixed, endAt - 1, dayFor)),
            end: wallTime(endAt),
          },
          task: named?.task,
          items: clocks,
          rule: 'work.start-and-stop',
        };
      }
    }
    if (stops && !since)
      return {
        entry: { mark: 'stop', time: wallTime(at) },
        task: named?.task,
        items: [clockItem!],
        rule: 'work.stopped-at',
      };
    if (starts || since)
      return {
        entry: { mark: 'start', time: wallTime(at) },
        task: named?.task,
        items: [clockItem!],
        rule: 'work.started-at',
      };
    if (until)
      return {
        entry: { mark: 'stop', time: wallTime(at) },
        task: named?.task,
        items: [clockItem!],
        rule: 'work.until',
      };
    return undefined;
  }
  return undefined;
}

/** The length of a break in a sentence: "with half an hour off", "less 15 min phone", "minus 10 on the phone". */
export function breakIn(sentence: Item[], span: Item): number | undefined {
  let total: number | undefined;
  for (let k = 0; k < sentence.length; k++) {
    const item = sentence[k]!;
    if (item === span || !isBreak(sentence, k)) continue;
    if (item.duration) total = (total ?? 0) + item.duration.minutes;
    else if (item.quantity?.value !== undefined && !item.quantity.unit)
      total = (total ?? 0) + (item.quantity.value < 1 ? item.quantity.value * 60 : item.quantity.value);
  }
  return total;
}

/** Is the length at `k` a break? */
export function isBreak(sentence: Item[], k: number): boolean {
  const item = sentence[k];
  if (!item || !(item.duration || (item.quantity?.value !== undefined && !item.quantity.unit))) return false;
  const before = ` ${sentence
    .slice(Math.max(0, k - 5), k)
    .map((x) => x.w)
    .join(' ')} `;
  const after = ` ${sentence
    .slice(k + 1, k + 8)
    .map((x) => x.w)
    .join(' ')} `;
  if (
    / (less|minus|without|excluding|barring|take off|knock off|taking off|off for|lost|except|not counting|bar|-|--) (about |a |an |the |some |for )?$/.test(
      before,
    )
  )
    return true;
  if (!item.duration) return false;
  if (
    /^ (off|out|away|break|lunch|tea|dinner|supper|pause|rest|stop|for (my |the |a )?(lunch|tea|supper|dinner|break|coffee|phone|walk|dog)|on the phone|at the door|gone|of (that )?(was )?(lunch|tea)|phone|interruption|nap|lost|tea break|coffee|feeding|of chat|of nothing|wasted)\b/.test(
      after,
    )
  )
    return true;
  if (
    / (with|and) (about |a |an )?$/.test(before) &&
    /^ .{0,12}\b(off|out|break|lunch|tea|supper|dinner|phone|coffee|door|dog|rest)\b/.test(after)
  )
    return true;
  return / (break|lunch|tea|supper|dinner|stopped for|out for|paused) (of|for)? ?(about |a |an )?$/.test(
    before,
  );
}
