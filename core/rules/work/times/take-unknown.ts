import type { Item } from '../../item.ts';
import { itemWord as w } from '../../item-word.ts';
import { wordsBetween } from '../../words-between.ts';
import { readBareMarks } from '../bare-marks.ts';
import type { Mark } from '../marks-of.ts';
import { taskOf, verbOfWork } from '../task-near.ts';
import { isLengthUnknown, saysNoMore, UNKNOWN_LENGTH, vagueWork } from '../vague-work.ts';
import { hasObject, isGoods } from '../work-items.ts';
import type { TimesTold } from './times-told.ts';

/** "i did some piecing over the weekend, couldn't tell you how long" */
export function takeUnknown(told: TimesTold, marks: Mark[]): void {
  const { state, items, all, sentence, following, used, push } = told;
  const next = following && following.items.length <= 8 ? wordsBetween(following.items, 0, 8) : ' ';
  const unknown =
    isLengthUnknown(all, items) || (following !== undefined && isLengthUnknown(next, following.items));
  const length = items.some((x) => x.duration);
  const timedWork = state.drafts.some((d) => d.sentence === sentence.number && d.entry.kind === 'work');
  const vague =
    unknown || !(length || timedWork)
      ? vagueWork(
          items,
          unknown,
          (k) => !used.has(k),
          (k) => !hasObject(items, k) && !isGoods(items, k),
          (k) => verbOfWork(items, k),
        )
      : undefined;
  if (vague) {
    const { task, at, from, to } = vague;
    push(task && { task, at, item: items[at]! }, {}, 'work.time-unknown', items.slice(from, to), from, to);
    for (let k = 0; k < items.length; k++) if (!used.has(k) && saysNoMore(items, k)) used.add(k);
  } else if (!timedWork) {
    // "binding: bias or straight? dunno" is a matter, and no time at work
    const matter = state.drafts.some((d) => d.sentence === sentence.number && d.entry.kind === 'decision');
    const at =
      unknown && !length && !matter
        ? items.findIndex((x, k) => !x.deed && taskOf(items, k) !== undefined)
        : -1;
    if (at >= 0)
      push(
        { task: taskOf(items, at)!, at, item: items[at]! },
        {},
        'work.time-unknown',
        [items[at]!],
        0,
        endOfUnknown(items, at),
      );
    else readBareMarks(state, items, marks, push, used);
  }
}

/** "I was out shopping, I never noticed how long, and came home with two packs of pins": where something else is told. */
function endOfUnknown(items: Item[], task: number): number {
  for (let k = task + 1; k < items.length; k++) {
    if (!/^(,|and|but)$/.test(w(items, k))) continue;
    if (!UNKNOWN_LENGTH.test(wordsBetween(items, 0, k))) continue;
    if (items.slice(k).some((x) => x.quantity?.unit || x.place?.kind === 'blocks')) return k;
  }
  return items.length;
}
