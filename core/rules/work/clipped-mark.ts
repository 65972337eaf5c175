import { TASK_OF_ACTION } from '../../../shared/task-of-action.ts';
import type { Item } from '../item.ts';
import { itemWord as w } from '../item-word.ts';
import type { Mark } from './marks-of.ts';
import type { Named } from './task-near.ts';

const ON = /^(on|in|back|back on|back in)$/;
const OFF = /^(off|out|fin|done|home)$/;
/** What else a line of a time sheet has: days, and marks between its figures. */
const LIGHT =
  /^([,:;()@-]|--|at|the|and|then|now|again|today|tonight|yesterday|yest|mon|tue|tues|wed|thu|thur|thurs|fri|sat|sun|this|last|morning|afternoon|evening|night|am|pm|for|with|from|to)$/;

/** Nothing but times, kinds of work and words for coming and going: a line as on a time sheet. */
const isTimeSheet = (items: Item[]): boolean =>
  items.length <= 10 &&
  items.every((x) => x.clock || x.task || x.duration || ON.test(x.w) || OFF.test(x.w) || LIGHT.test(x.w));

/** "0915h on", "2110h off", "in 9:10, out 11:40", "13:00: taking apart": what the clock at `k` marks, where nothing else is told. */
export function clippedMark(items: Item[], k: number): Mark | undefined {
  if (!isTimeSheet(items)) return undefined;
  const markAt = (m: number): Mark | undefined => {
    const word = w(items, m);
    return ON.test(word)
      ? { at: m, end: m + 1, mark: 'start', word }
      : OFF.test(word)
        ? { at: m, end: m + 1, mark: 'stop', word }
        : undefined;
  };
  // on a line that begins with the word each time follows its own
  const leads = markAt(0) !== undefined;
  const near = leads ? markAt(k - 1) : (markAt(k + 1) ?? markAt(k - 1));
  if (near) return near;
  if (items.some((x, m) => x.clock && m !== k)) return undefined;
  const told = items.findIndex((_x, m) => markAt(m));
  if (told >= 0) return markAt(told);
  // "13:00: taking apart"
  const task = items.findIndex((x) => x.task);
  return task >= 0 && k < task && items.length <= 5 && !items.some((x) => x.duration)
    ? { at: task, end: task + 1, mark: 'start', word: 'task' }
    : undefined;
}

/** "mend 9.15-11", "1-2:15 piece": the bare verb beside a stretch names the work of it. */
export function clippedTask(items: Item[], k: number): Named | undefined {
  const at = [k - 1, k + 1].find((m) => items[m]?.action?.form === 'base');
  if (at === undefined) return undefined;
  const edge = at < k ? items[at - 1] : items[at + 1];
  if (edge && edge.token.kind !== 'mark') return undefined;
  const item = items[at]!;
  const task = TASK_OF_ACTION[item.action!.v];
  return task && { task, at, item };
}
