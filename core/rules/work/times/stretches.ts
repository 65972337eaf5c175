import { TASK_OF_ACTION } from '../../../../shared/task-of-action.ts';
import type { Task } from '../../../../shared/vocabulary.ts';
import type { Item } from '../../item.ts';
import { itemWord as w } from '../../item-word.ts';
import type { ReaderState } from '../../reader-state.ts';
import { wallMinutes, wallTime } from '../../times/local-time.ts';
import { wordsBetween } from '../../words-between.ts';
import { breakOf, isBreakSpan } from '../break-of.ts';
import { clippedTask } from '../clipped-mark.ts';
import { resolve, type Slots } from '../slots.ts';
import { type Named, otherTask, taskNear, verbBefore } from '../task-near.ts';
import { lead } from '../work-items.ts';
import { dayOf } from './day-of.ts';
import { runningIn } from './running-in.ts';
import type { TimesTold } from './times-told.ts';

/** "2:50-4:15 … no, 3:50-5:15": the later stretch stands for the earlier. */
export function dropWrongStretch({ state, items, sentence }: TimesTold): void {
  if (/^(no|sorry|wait|oops)$/.test(w(items, 0)) && items.slice(1, 4).some((x) => x.span)) {
    const wrong = state.drafts.findIndex(
      (d) => d.entry.kind === 'work' && d.entry.start && d.sentence < sentence.number,
    );
    if (wrong >= 0) state.drafts.splice(wrong, 1);
  }
}

/** "broke from seven to quarter to eight": a break in another stretch, or in what ran. */
export function takeBreaks(told: TimesTold): void {
  const { state, items, now, used, push } = told;
  for (let k = 0; k < items.length; k++) {
    const span = items[k]!.span;
    if (!span || !isBreakSpan(items, k)) continue;
    const { startAt, endAt } = resolve(span.start, span.end, now, dayOf(told, k));
    const others = items.filter((x, m) => m !== k && (x.span || x.clock));
    if (others.some((x) => x.span) || others.length > 1) {
      told.broken += endAt - startAt;
      used.add(k);
      lead(items, k, used);
      continue;
    }
    // "tea 8.15–8.40": no stretch that it is taken off, so the work stopped and went on
    const ran = runningIn(state);
    if (!ran && !others.length) {
      used.add(k);
      continue;
    }
    push(ran, { mark: 'stop', time: wallTime(startAt) }, 'work.stop-at', [items[k]!], k, k + 1);
    push(ran, { mark: 'start', time: wallTime(endAt) }, 'work.start-at', [items[k]!], k, k + 1);
    lead(items, k, used);
  }
}

/** "10.15–12.10 mending, less 15 min phone" */
export function takeStretches(told: TimesTold): void {
  const { state, items, now, used, push } = told;
  let lastEnd: number | undefined;
  for (let k = 0; k < items.length; k++) {
    const span = items[k]!.span;
    if (!span || used.has(k)) continue;
    const task =
      otherTask(items, k) ??
      taskNear(items, k, k + 1) ??
      verbBefore(items, k) ??
      goesOnWith(state, items, k) ??
      ranFrom(items, k) ??
      clippedTask(items, k);
    const isBetween =
      w(items, k - 1) === 'between' &&
      span.start.rule === 'time.hour' &&
      span.end.rule === 'time.hour' &&
      !span.start.fixed &&
      !span.end.fixed;
    if (
      isBetween &&
      !task &&
      !/ (worked|work|at it|sat|on it|was|sewing|did) /.test(wordsBetween(items, k - 5, k)) &&
      !deedBetween(items, k)
    )
      continue;
    const { startAt, endAt } = afterLast(
      resolve(span.start, span.end, now, dayOf(told, k)),
      span,
      lastEnd,
      now,
    );
    lastEnd = endAt;
    const slots: Slots = { start: wallTime(startAt), end: wallTime(endAt) };
    const rest = breakOf(items, k, used, told.broken);
    if (rest && endAt - startAt - rest.minutes > 0) slots.minutes = endAt - startAt - rest.minutes;
    else {
      const said = items.findIndex(
        (x, m) =>
          x.duration &&
          m > k &&
          m < k + 9 &&
          /^(so|'s|that|makes|total|=|is|in|all|altogether|,)$/.test(w(items, m - 1)) &&
          // "…, and the estimate after, forty minutes": of another piece of work
          !items.slice(k + 1, m).some((y) => y.task && task && y.task !== task.task),
      );
      const length = said >= 0 ? items[said]!.duration!.minutes : undefined;
      // "…, lunch out of that, thirty minutes"
      const off = / (?:lunch|dinner|tea|break|coffee|supper) (?:out|off)(?: of (?:that|it))? ,? ?$/.test(
        wordsBetween(items, k + 1, said),
      );
      if (length && off && length < endAt - startAt) {
        slots.minutes = endAt - startAt - length;
        for (let m = k + 1; m <= said; m++) used.add(m);
      } else if (length && length <= endAt - startAt && !taskNear(items, said, said + 1)) {
        slots.minutes = length;
        used.add(said);
      }
    }
    push(task, slots, 'work.span', [items[k]!], k, k + 1);
    lead(items, k, used);
  }
}

/** "cutting from ten past one to two, and piecing from then until quarter to three": begun when the other ended. */
export function takeFromThen({ state, items, now, used, push }: TimesTold): void {
  for (let k = 1; k < items.length; k++) {
    const { clock } = items[k]!;
    const joint = clock && !used.has(k) ? FROM_THEN.exec(wordsBetween(items, k - 5, k)) : null;
    const ended = joint && state.drafts.findLast((d) => d.entry.kind === 'work' && d.entry.end)?.entry;
    if (!joint || ended?.kind !== 'work' || !ended.end) continue;
    const begun = wallMinutes(ended.end);
    const from = k - joint[0].trim().split(' ').length;
    const start = { next: 0, minute: begun % 1440, fixed: true, firm: true, rule: 'time.from-then' };
    const { endAt } = resolve(start, clock!, now, { start: begun - (begun % 1440) });
    if (endAt <= begun || endAt - begun > 720) continue;
    push(
      taskNear(items, from, k + 1) ?? verbBefore(items, from),
      { start: ended.end, end: wallTime(endAt) },
      'work.span',
      [items[k]!],
      from,
      k + 1,
    );
    used.add(k);
  }
}

/** "nine till noon and one till four on the cutting": the kind of work holds for both. */
export function shareTask({ state, sentence }: TimesTold): void {
  const own = state.drafts.filter(
    (d) => d.entry.kind === 'work' && d.entry.start && d.sentence === sentence.number,
  );
  const told = own.find((d) => d.entry.kind === 'work' && d.entry.task)?.entry as { task?: Task } | undefined;
  if (told?.task) for (const d of own) if (d.entry.kind === 'work') d.entry.task ??= told.task;
}

/** "yesterday 2-4 and 7-9": of two stretches in a list the second is the later. */
function afterLast(
  told: { startAt: number; endAt: number },
  { start, end }: { start: { fixed: boolean }; end: { fixed: boolean } },
  last: number | undefined,
  now: number,
): { startAt: number; endAt: number } {
  const { startAt, endAt } = told;
  return last === undefined ||
    startAt >= last ||
    start.fixed ||
    end.fixed ||
    startAt + 720 < last ||
    endAt + 720 > now
    ? told
    : { startAt: startAt + 720, endAt: endAt + 720 };
}

const FROM_THEN =
  / (?:from (?:then|there|that)(?: on)?|(?:and )?then|(?:and )?after that|from when that ended) (?:on )?(?:until|till|til|to|up to|through to) $/;

/** "between nine and ten this morning I cleaned the border", "closed four seams in column five between twelve and two": hours, and no blocks. */
const deedBetween = (items: Item[], k: number): boolean =>
  items.some((x) => x.action?.form === 'past') &&
  !items
    .slice(Math.max(0, k - 3), k - 1)
    .some((x) => x.seam || x.finding || /^(?:blocks?|rows?|columns?|squares?|seams?)$/.test(x.w)) &&
  !/^(?:in|of|on|down|across|along|both|inches|cm|is|was|are)$/.test(w(items, k + 1));

/** "the overlay ran from 10.55 to 13.00", "the wash took from one till two": the kind of work of what was done. */
function ranFrom(items: Item[], k: number): Named | undefined {
  let at = k - 1;
  while (at > 0 && /^(from|between|me|on|us|was)$/.test(w(items, at))) at--;
  if (!/^(ran|run|went|took|lasted|occupied|kept|is|was)$/.test(w(items, at))) return undefined;
  const deed = items[at - 1];
  const task = deed?.action && !deed.part && TASK_OF_ACTION[deed.action.v];
  return task && /^(the|that|my|,|and|)$/.test(w(items, at - 2))
    ? { task, at: at - 1, item: deed }
    : undefined;
}

/** "carried on with that, seven to nine", "more of the same": the work that ran last. */
function goesOnWith(state: ReaderState, items: Item[], k: number): { task: Task } | undefined {
  const ran = state.memory.running ?? state.memory.ran;
  return ran !== undefined &&
    /^ (?:(?:and|so|then|i|we|just) )*(?:(?:carried|carrying|kept|keeping|went|going|cracked) on(?: with| at)? (?:that|it|this|the same)|more of (?:that|the same|it)|same again|(?:the )?same|back (?:to|at|on) (?:it|that)|at it again)(?: again| tonight| today| this morning| this afternoon)*(?: ,| :| -)? (?:from )?$/.test(
      wordsBetween(items, 0, k),
    )
    ? { task: ran }
    : undefined;
}
