import { makeDraft } from '../../draft.ts';
import type { Item } from '../../item.ts';
import { itemWord as w } from '../../item-word.ts';
import type { Claims, Sentence } from '../../read-amounts.ts';
import type { ReaderState } from '../../reader-state.ts';
import type { DayFound } from '../../times/find-day.ts';
import { wallMinutes, wallTime } from '../../times/local-time.ts';
import { wordsBetween } from '../../words-between.ts';
import type { Push } from '../bare-marks.ts';
import { between, isStillToCome, type Mark, marksOf } from '../marks-of.ts';
import { AT, pastOnly } from '../slots.ts';
import { taskNear } from '../task-near.ts';
import { deedIn, isDeedDone } from '../work-items.ts';
import { hoursAndMinutes, hoursInList } from './figures-as-lengths.ts';
import { lendTask } from './lend-task.ts';
import { pushTimed } from './push-timed.ts';
import { dropWrongStretch, shareTask, takeBreaks, takeFromThen, takeStretches } from './stretches.ts';
import { takeLengths } from './take-lengths.ts';
import { takeUnknown } from './take-unknown.ts';
import { timedMarks, withMeals } from './timed-marks.ts';
import type { TimesTold } from './times-told.ts';
import { tookTime } from './took-time.ts';

/** Reads the time at work told in one sentence, and claims its words. */
export function readTimes(
  state: ReaderState,
  sentence: Sentence,
  preceding: Sentence | undefined,
  following: Sentence | undefined,
  days: DayFound[],
  claims: Claims,
): void {
  const { items } = sentence;
  const told: TimesTold = {
    state,
    items,
    all: wordsBetween(items),
    sentence,
    preceding,
    following,
    days,
    now: wallMinutes(state.local),
    used: new Set(),
    broken: 0,
    push: (...draft) => pushWork(told, ...draft),
  };
  dropWrongStretch(told);
  // 1. Stretches: "10.15–12.10 mending, less 15 min phone"; "broke from seven to quarter to eight" is a break in another
  takeBreaks(told);
  takeStretches(told);
  takeFromThen(told);
  shareTask(told);
  // 2. Starts and stops with their clock times
  tookTime(items, claims);
  const marks = withMeals(marksOf(items), items, state.memory.running !== undefined);
  if (!marks.length) hoursAndMinutes(items);
  pushTimed(told, timedMarks(told, marks), marks);
  lendTask(state, sentence, preceding, following, claims);
  // 3. "finished the looking over ten minutes ago"
  takeAgo(told, marks);
  hoursInList(items);
  // 4. Lengths of a named kind of work: "shopping, 50 min", "half an hour on the paperwork"
  takeLengths(told);
  // 5. Work whose time nobody knows, and marks without a clock
  takeUnknown(told, marks);
  for (const k of told.used) claims.cut.add(items[k]!);
}

/** Makes the draft of a time at work, and takes its words. */
function pushWork(
  { state, items, sentence, now, used }: TimesTold,
  ...[task, slots, rule, on, from, to]: Parameters<Push>
): void {
  const draft = makeDraft(
    'work',
    { index: -1, sentence: sentence.number, items },
    {
      task: [
        task?.task,
        'work.task',
        task && 'item' in task ? task.item : undefined,
        task && 'item' in task ? 'said' : 'implied',
      ],
      ...Object.fromEntries(
        Object.entries(pastOnly(slots, now)).map(([slot, value]) => [slot, [value, rule, on]]),
      ),
    } as Parameters<typeof makeDraft>[2],
    'unneeded',
  );
  state.drafts.push(draft);
  // "started unpicking the patch on 3-2 at four": the deed is told as well, only its time is taken
  const told = on.length > 0 && deedIn(items, from, to);
  for (let k = from; k < to; k++)
    if (!told || on.includes(items[k]!) || (on.includes(items[k + 1]!) && AT.test(w(items, k)))) used.add(k);
  // "unpicked the binding from nine to ten": what was done is told as well
  if (task && 'at' in task && !told && !isDeedDone(items, task.at) && !isFinishedBy(items, task.at))
    used.add(task.at);
}

/** "finished the binding by hand, eight till ten": how it was done tells that it was. */
const isFinishedBy = (items: Item[], at: number): boolean =>
  items[at]!.part === 'binding' &&
  / (?:finished|did|done|completed) (?:the |off the )?$/.test(wordsBetween(items, at - 3, at)) &&
  items[at + 1]?.stitch !== undefined;

/** "finished the looking over ten minutes ago" */
function takeAgo({ items, now, used, push }: TimesTold, marks: Mark[]): void {
  for (let k = 0; k < items.length; k++) {
    const item = items[k]!;
    if (!item.duration || w(items, k + 1) !== 'ago' || used.has(k)) continue;
    const mark = marks.filter((m) => m.end <= k).at(-1) ?? marks.find((m) => m.at > k);
    if (!mark) continue;
    if (isStillToCome(items, mark)) continue;
    const near = taskNear(items, mark.at, mark.end) ?? between(items, mark, k);
    push(
      near,
      { mark: mark.mark, time: wallTime(now - item.duration.minutes) },
      'work.ago',
      [item],
      mark.at,
      k + 2,
    );
  }
}
