import type { RemovedObject } from '../../../shared/vocabulary.ts';
import { isStuffWord } from '../is-stuff-word.ts';
import type { Item } from '../item.ts';
import { objectOfRepair } from './object-of-repair.ts';
import type { Way } from './way.ts';

const JOINT = /^(,|and|&|\+|plus)$/;
const LEAD = /^(the|all|both|old|its|that|then|most|of)$/;

/** "took the backing and the batting off", "the pins and the basting are out": each further thing is one more way. */
export function alsoTakenOff(items: Item[], ways: Way[]): Way[] {
  return ways.flatMap((way) => {
    if (way.action !== 'remove' || !way.object) return [];
    const at = items.findIndex((x) => way.items.includes(x) && objectOf(x) === way.object);
    if (at < 0) return [];
    return [...beside(items, at, 1), ...beside(items, at, -1)]
      .filter((x) => !ways.some((y) => y.object === objectOf(x)))
      .map((x) => ({ ...way, object: objectOf(x)!, items: [items[way.at]!, x] }));
  });
}

const objectOf = (x: Item): RemovedObject | undefined =>
  x.finding === 'old-repair' ? objectOfRepair(x.w) : x.seam ? undefined : x.object;

/** "the old wool batting": what the thing is made of, before it. */
const isStuffOf = (x: Item | undefined, next: Item | undefined): boolean =>
  isStuffWord(x) && next !== undefined && (objectOf(next) !== undefined || isStuffWord(next));

/** The things joined to the one at `at` by "and" or commas, to its right or to its left. */
function beside(items: Item[], at: number, step: 1 | -1): Item[] {
  const list: Item[] = [];
  let k = at;
  for (;;) {
    let m = k + step;
    while ((LEAD.test(items[m]?.w ?? '') || isStuffOf(items[m], items[m + 1])) && Math.abs(m - k) < 5)
      m += step;
    const joint = m;
    while (JOINT.test(items[m]?.w ?? '') && Math.abs(m - joint) < 2) m += step;
    if (m === joint) return list;
    while ((LEAD.test(items[m]?.w ?? '') || isStuffOf(items[m], items[m + 1])) && Math.abs(m - joint) < 6)
      m += step;
    const next = items[m];
    const object = next && objectOf(next);
    if (!object || object === 'piece' || next.action?.form === 'past') return list;
    list.push(next);
    k = m;
  }
}
