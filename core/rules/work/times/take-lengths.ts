import type { Task } from '../../../../shared/vocabulary.ts';
import type { Item } from '../../item.ts';
import { itemWord as w } from '../../item-word.ts';
import type { DayFound } from '../../times/find-day.ts';
import { wordsBetween } from '../../words-between.ts';
import { lengthOf } from '../break-of.ts';
import { isBreak } from '../find-work.ts';
import { isMeantFor } from '../meant-for.ts';
import { taskInShort } from '../task-in-short.ts';
import { errand, type Named, nearTask, otherTask, taskNear, worked } from '../task-near.ts';
import { isSpentAt } from '../work-items.ts';
import { takeListedLengths } from './listed-lengths.ts';
import { runningIn } from './running-in.ts';
import type { TimesTold } from './times-told.ts';

/** "shopping, 50 min", "half an hour on the paperwork" */
export function takeLengths(told: TimesTold): void {
  if (takeListedLengths(told)) return;
  const { state, items, sentence, preceding, days, used, push } = told;
  for (let k = 0; k < items.length; k++) {
    const item = items[k]!;
    if (!item.duration || used.has(k)) continue;
    if (
      /^(ago|old|late|early|later|from|apart)$/.test(w(items, k + 1)) ||
      (/^(another|every|in|within)$/.test(w(items, k - 1)) &&
        !/^(put|squeezed|got|fitted|managed|fit|crammed|did|put in|of)$/.test(w(items, k - 2)) &&
        // "in fifty minutes of shopping I purchased three yards of muslin"
        !(w(items, k - 1) === 'in' && w(items, k + 1) === 'of' && items[k + 2]?.task === 'shopping') &&
        // "another forty minutes on the binding"
        !(w(items, k - 1) === 'another' && nearTask(items, k + 1, 4)))
    )
      continue;
    if (isBreak(items, k) && items.some((x) => x.span || x.clock)) continue;
    // "going to work on it tonight for an hour": not worked yet
    if (isMeantFor(items, k)) continue;
    // "took forty minutes to take the binding off": the treatment's own
    if (w(items, k + 1) === 'to' && / (took|take|taken) /.test(wordsBetween(items, k - 4, k))) continue;
    if (items.length <= 8 && !items.some((x) => x.task || x.action)) {
      const ended = state.drafts.find(
        (d) =>
          d.entry.kind === 'work' &&
          d.sentence === preceding?.number &&
          d.entry.mark === 'stop' &&
          !d.entry.time,
      );
      // "Finished the tying. Four hours ten all told."
      if (ended && preceding && !preceding.items.some((x) => x.place?.kind === 'blocks')) {
        const { mark: _mark, ...rest } = ended.entry as { kind: 'work'; task?: Task; mark?: 'stop' };
        ended.entry = { ...rest, minutes: item.duration.minutes };
        used.add(k);
        continue;
      }
    }
    const task = otherTask(items, k) ?? worked(items, k) ?? taskNear(items, k, k + 1) ?? errand(items, k);
    // "two hours of quilting last night and another hour this morning": more of the same
    const ran = state.drafts.findLast(
      (d) => d.entry.kind === 'work' && d.sentence === sentence.number,
    )?.entry;
    if (
      (!task || used.has(task.at)) &&
      (w(items, k - 1) === 'another' || item.w.startsWith('another ')) &&
      ran?.kind === 'work' &&
      ran.task &&
      (ran.minutes || ran.start)
    ) {
      push({ task: ran.task }, { minutes: item.duration.minutes }, 'work.length', [item], k - 1, k + 1);
      continue;
    }
    // "2 hours on 19 July", "an hour and a half last night": how long, and the day
    if (!task && isLengthOnADay(items, days)) {
      push(runningIn(state), { minutes: item.duration.minutes }, 'work.length', items, 0, items.length);
      continue;
    }
    // "25 min on 2-2": nothing but how long, and where
    if (!task && isSpentAt(items, k)) {
      const running = state.memory.running ?? state.memory.ran;
      push(
        running ? { task: running } : undefined,
        { minutes: item.duration.minutes },
        'work.length',
        items,
        k,
        items.length,
      );
      continue;
    }
    if (!task || used.has(task.at)) continue;
    // "the vacuuming alone took 35 minutes"
    if (task.at < k && w(items, task.at + 1) === 'alone') continue;
    // "fifty minutes for the vacuuming alone" is the length of the treatment just told
    if (
      task.at > k &&
      (w(items, task.at + 1) === 'alone' ||
        (/ (just|only) (for )?(the )?$/.test(wordsBetween(items, task.at - 3, task.at)) &&
          task.task !== 'other'))
    )
      continue;
    // "vacuumed it all and the vacuuming took half an hour": of what was just told as done
    if (task.at < k && tookOwnLength(items, task.at, k)) continue;
    // "finished the binding, ladder stitch, two hours": the treatment's own length
    if (
      task.at < k &&
      /^(finished|done|did|completed)$/.test(w(items, task.at - 1).replace(/^the$/, w(items, task.at - 2)))
    ) {
      if (/^(binding|tying|quilting)$/.test(task.task) && items.some((x) => x.stitch || x.weakStitch))
        continue;
    }
    let minutes = item.duration.minutes;
    const less = items.findIndex(
      (_x, m) => m > k && !used.has(m) && isBreak(items, m) && !items.slice(k + 1, m).some((x) => x.duration),
    );
    if (less >= 0) {
      minutes -= lengthOf(items[less]!);
      used.add(less);
    }
    const from = Math.min(k, task.at);
    push(task, { minutes }, 'work.length', [item], from, Math.max(k, task.at) + 1);
    // what the length was spent on is no treatment: "twenty minutes putting the big frame up"
    if (task.task === 'other')
      for (let m = k; m < items.length && !/^(,|and|then|--)$/.test(w(items, m)); m++) used.add(m);
  }
  // "40m unpick", "1 hr bind", "inv 15m": a length and the work in short
  const short = workInShort(items);
  if (short && !used.has(short.at))
    push(short.task, { minutes: short.minutes }, 'work.length', items, 0, short.end);
}

/** "…, the vacuuming alone took thirty-five minutes": how long one treatment took that the same sentence tells as done. */
function tookOwnLength(items: Item[], at: number, length: number): boolean {
  const action = items[at]!.action;
  return (
    action?.form === 'ing' &&
    TOOK.test(wordsBetween(items, at + 1, length)) &&
    items.slice(0, at).some((x) => x.action?.v === action.v && x.action.form === 'past')
  );
}
const TOOK =
  /^ (?:(?:alone|itself|by itself|all|part|bit|me) )*(?:took|was|ran to|came to|lasted)(?: (?:me|about|just|only|nearly|over|a good|all of))* $/;

function workInShort(items: Item[]): { task: Named; minutes: number; at: number; end: number } | undefined {
  // "shop 35 min: 2 FQ tan print, 1 roll batting": what it was spent on stands behind the colon
  const colon = items.findIndex((x) => x.w === ':');
  const head = colon > 1 && items.slice(0, colon).some((x) => x.duration) ? items.slice(0, colon) : items;
  const said = head.filter((x) => !/^[:,=-]$/.test(x.w));
  const length = said.find((x) => x.duration);
  const other = said.find((x) => x !== length);
  if (said.length !== 2 || !length || !other) return undefined;
  const task = taskInShort(other);
  const at = items.indexOf(other);
  return task && { task: { task, at, item: other }, minutes: length.duration!.minutes, at, end: head.length };
}

/** Is nothing told but a length of time and the day it was on? */
const isLengthOnADay = (items: Item[], days: DayFound[]): boolean => {
  const dayAt = (x: Item): boolean =>
    days.some((d) => x.token.from >= d.index && x.token.from < d.index + d.length);
  return (
    items.some(dayAt) &&
    items.every(
      (x) =>
        x.duration ||
        dayAt(x) ||
        /^(on|of|,|and|about|around|just|over|a|good|nearly|i|did|put|in|was|it|that|then|work|so|all|told|total|altogether)$/.test(
          x.w,
        ),
    )
  );
};
