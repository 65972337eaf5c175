import type { Item } from '../../item.ts';
import { itemWord as w } from '../../item-word.ts';
import { wordsBetween } from '../../words-between.ts';
import { clippedMark } from '../clipped-mark.ts';
import { between, isStillToCome, type Mark } from '../marks-of.ts';
import { mealMarks } from '../rests.ts';
import { taskNear, verbBefore } from '../task-near.ts';
import { hasObject } from '../work-items.ts';
import type { TimedMark, TimesTold } from './times-told.ts';

/** The starts and stops with a clock: each clock with the mark that it belongs to. */
export function timedMarks({ items, used }: TimesTold, marks: Mark[]): TimedMark[] {
  const clocks = items.map((x, k) => (x.clock && !used.has(k) ? k : -1)).filter((k) => k >= 0);
  const timed: TimedMark[] = [];
  // "9.30 start, 11.15 stop": each mark after its clock
  const paired =
    clocks.length > 1 &&
    clocks.length === marks.length &&
    clocks.every((k, n) => k < marks[n]!.at && marks[n]!.at - k <= 3);
  for (const k of clocks) {
    const before = marks
      .filter((m) => m.end <= k && k - m.end <= reachOf(items, m) && !clocks.some((c) => c > m.at && c < k))
      .at(-1);
    const after = marks.find(
      (m) => m.at > k && m.at - k <= (k <= 2 ? 14 : 7) && !clocks.some((c) => c > k && c < m.at),
    );
    let mark = before;
    // "seven o'clock it was when I sat down and half past eight when I got up"
    const when =
      after !== undefined && / when (?:i |we )?(?:\w+ly )?$/.test(wordsBetween(items, k + 1, after.at))
        ? after
        : undefined;
    // "at", "since" and the like tie the clock to what was said before it
    const tied =
      /^(at|since|till|until|til|from|by|around|about|before|after|past|round)$/.test(w(items, k - 1)) ||
      (after !== undefined && clocks.some((c) => c > k && c >= after.end && c - after.end <= 3));
    // "mending 18:40 to now", "tying 13:15-now", "that was three till just now on the binding"
    const tillNow = TILL_NOW.test(wordsBetween(items, k + 1, k + 4));
    if (tillNow) mark = { at: k, end: k + 1, mark: 'start', word: 'from' };
    else if (paired) mark = marks[clocks.indexOf(k)];
    else if (when) mark = when;
    else if (!before || (after && !tied && after.at - k < k - before.end && k - before.end > 2))
      mark = after ?? before;
    const from = w(items, k - 1) === 'from';
    if (from && (!mark || mark.mark === 'stop' || mark.at > k))
      mark = { at: k - 1, end: k, mark: 'start', word: 'from' };
    // "went on to half twelve"
    if (mark?.end === k && /^(go|went|gone|kept|carried|worked) (right |straight )?on to$/.test(mark.word))
      mark = { ...mark, mark: 'stop' };
    // "and didn't get back to it till after two"
    if (
      mark &&
      /^(till|until|til)$/.test(mark.word) &&
      / (?:n't|not|never) (?:\w+ ){0,2}?(?:back|start|started|begin|going|resume|pick|sit|settle)(?: \w+){0,3} $/.test(
        wordsBetween(items, mark.at - 8, mark.at),
      )
    )
      mark = { ...mark, mark: 'start', word: 'back' };
    // "it wasn't till two that I got going on the mending"
    if (
      mark &&
      /^(till|until|til)$/.test(mark.word) &&
      / (?:not|n't) $/.test(wordsBetween(items, mark.at - 1, mark.at)) &&
      / (?:that|when|before) (?:i|we) $/.test(wordsBetween(items, k + 1, k + 3))
    )
      mark = marks.find((m) => m.mark === 'start' && m.at >= k + 3 && m.at <= k + 5) ?? mark;
    if (!mark && w(items, k - 1) === 'back') mark = { at: k - 1, end: k, mark: 'start', word: 'back' };
    // "survey 2pm"
    if (
      !mark &&
      k <= 2 &&
      items[0]!.task &&
      k === items.length - 1 &&
      !hasObject(items, 0) &&
      (k === 1 || /^(at|@|-|:|,)$/.test(w(items, 1)))
    )
      mark = { at: 0, end: 1, mark: 'start', word: 'task' };
    // "began looking it over at a quarter to nine and it's nine-thirty now"
    if (
      / it (?:is|'s) (?:about |nearly |just )?$/.test(wordsBetween(items, k - 4, k)) &&
      w(items, k + 1) === 'now' &&
      timed.length === 1 &&
      timed[0]!.mark === 'start'
    )
      mark = { at: k, end: k + 1, mark: 'stop', word: 'till' };
    mark ??= atTaskBy(items, k) ?? clippedMark(items, k);
    if (!mark) continue;
    if (isStillToCome(items, mark)) continue;
    const near =
      mark.task ??
      taskNear(items, Math.min(mark.at, k), Math.max(k + 1, mark.end)) ??
      between(items, mark, k) ??
      (/^(till|until|til)$/.test(mark.word) ? verbBefore(items, k) : undefined);
    timed.push({ k, mark: mark.mark, word: mark, task: near, clock: items[k]!.clock! });
  }
  return timed;
}

/** "I was at the taking apart by half past eight", "at the tying from 9.15": at work by then, so that it had begun. */
function atTaskBy(items: Item[], k: number): Mark | undefined {
  if (!/^(?:by|from|since)$/.test(w(items, k - 1))) return undefined;
  const task = items.findLastIndex((x, m) => m < k && m > k - 4 && x.task !== undefined);
  return task >= 0 && AT_IT.test(wordsBetween(items, 0, task)) && !hasObject(items, task)
    ? { at: task, end: task + 1, mark: 'start', word: 'at' }
    : undefined;
}
const AT_IT =
  /(?:^| (?:,|and|so|then)) (?:(?:i|we) (?:was|were|am|'m|'re|'ve been|have been|had been|sat) (?:already |back |well )?|(?:sat|already|back|hard) )?(?:at|on|into) (?:the |my |some )?$/;

/** "beginning the survey of the coverlet from the costume store at 09:40": further, where nothing else is told between. */
const reachOf = (items: Item[], m: Mark): number => {
  const next = items.slice(m.end, m.end + 15);
  const other = next.findIndex((x) => x.w === ',' || x.w === 'and' || (x.action && !x.task) || x.finding);
  return other < 0 ? 14 : Math.max(9, other);
};
const TILL_NOW = /^ (?:to|till|until|til|-) (?:just |right )?now /;

/** Marks of a sentence in order, with the meals and rests for which work is stopped at a clock. */
export function withMeals(marks: Mark[], items: Item[], running: boolean): Mark[] {
  if (!items.some((x) => x.clock)) return marks;
  const meals = mealMarks(items)
    // a meal alone stops nothing that does not run
    .filter(
      (m) =>
        marks.length ||
        running ||
        /^(on|off|in|out|back)$/.test(m.word) ||
        items.filter((x) => x.clock).length > 1,
    )
    .filter((m) => !marks.some((x) => x.at < m.end && x.end > m.at));
  return meals.length ? [...marks, ...meals].sort((a, b) => a.at - b.at) : marks;
}
