import { isPredicate } from './clause/is-predicate.ts';
import { isStop } from './clause/joints.ts';
import { REMOVE_VERBS } from './clause/removal-at.ts';
import { boundaryBefore, type Item } from './item.ts';

const MARK = /^(?:no|nope|wait|hang|hold|on|actually|sorry|,|oh|well|--|-|but)$/;
const SUBJECT = /^(?:it|i|we|they|that)$/;
const VERB = /^(?:did|do|have|has|had|is|was|were|are|'ve|'s)$/;
const AFTER = /^(?:yet|though|actually|quite|,|--|-|in fact|at all)$/;

/**
 * "the backing came off no wait it didn't I only got the batting out of 2-3", "patched 2-2, no I didn't, I darned it": a statement
 * taken back in the same breath, where another follows. The items without it and without the words that take it back.
 */
export function withoutTakenBack(items: Item[]): Item[] {
  for (let k = 3; k < items.length - 3; k++) {
    if (!/^(?:no|nope|wait|actually|hang|hold)$/.test(items[k]!.w)) continue;
    let m = k;
    while (MARK.test(items[m]?.w ?? '') && m < k + 6) m++;
    if (!SUBJECT.test(items[m]?.w ?? '') || !VERB.test(items[m + 1]?.w ?? '')) continue;
    if (!/^(?:n't|not)$/.test(items[m + 2]?.w ?? '')) continue;
    let next = m + 3;
    while (AFTER.test(items[next]?.w ?? '')) next++;
    // "no, it isn't torn" says what is not so
    if (!tellsAnew(items, next)) continue;
    const from = startOf(items, k);
    if (from === undefined) continue;
    return withoutTakenBack([
      ...items.slice(0, from),
      ...(from > 0 && !isStop(items[from - 1]!) ? [boundaryBefore(items[next]!)] : []),
      ...items.slice(next),
    ]);
  }
  return items;
}

/** Does a new statement with a deed or damage of its own begin here: "I only got the batting out", "only sponged the border"? */
function tellsAnew(items: Item[], k: number): boolean {
  const led = /^(?:i|we|it|there|only|just|all i did)$/.test(items[k]?.w ?? '');
  const stop = items.findIndex((x, m) => m > k && isStop(x));
  const rest = items.slice(k, stop < 0 ? undefined : stop);
  return led && rest.some((x) => says(x)) && rest.some((x) => x.place || x.fabric || x.object || x.finding);
}

const says = (x: Item): boolean =>
  x.action?.form === 'past' ||
  Boolean(x.finding) ||
  (Object.hasOwn(REMOVE_VERBS, x.w) && REMOVE_VERBS[x.w]!.form === 'past');

/** Where the statement begins that stands before `k`: behind a stop, or behind the last "and" or comma with a statement on both sides. */
function startOf(items: Item[], k: number): number | undefined {
  let from = k;
  while (from > 0 && !isStop(items[from - 1]!)) from--;
  const joint = items.findLastIndex(
    (x, m) =>
      m > from &&
      m < k &&
      /^(?:and|then|,|&)$/.test(x.w) &&
      items.slice(from, m).some((y, n) => says(y) || isPredicate(items, from + n)) &&
      items.slice(m + 1, k).some(says),
  );
  const start = joint < 0 ? from : joint + 1;
  return items.slice(start, k).some(says) ? start : undefined;
}
