import { WORK_THINGS } from '../../lexicon/deed-frames.ts';
import type { Item } from '../item.ts';
import { wordsBetween } from '../words-between.ts';
import { isStop } from './joints.ts';

const OVER = /^ (?:rather than|instead of|in preference to|sooner than|as opposed to|in place of) $/;
const FIRST = /^(rather|instead|in|sooner|as)$/;
const ENDS =
  /^(,|--|-|\(|\)|and|but|so|because|since|as|which|then|tomorrow|today|tonight|this|by|with|in|on|over)$/;
const MOST_WORDS = 9;

const isDeed = (x: Item): boolean =>
  x.action !== undefined || x.material === 'net' || Object.hasOwn(WORK_THINGS, x.w);

/**
 * Takes out the way that was not taken: "patched it rather than darning it", "net on 4-1 instead of a patch". A block named behind
 * "instead of" puts a place right, and stays.
 */
export function withoutNotChosen(items: Item[]): Item[] {
  for (let k = 0; k < items.length - 2; k++) {
    if (!FIRST.test(items[k]!.w)) continue;
    const lead = OVER.test(wordsBetween(items, k, k + 2))
      ? 2
      : OVER.test(wordsBetween(items, k, k + 3))
        ? 3
        : 0;
    if (!lead) continue;
    let end = k + lead;
    while (
      items[end] &&
      end < k + lead + MOST_WORDS &&
      !isStop(items[end]!) &&
      !ENDS.test(items[end]!.w) &&
      // "instead of patching it I netted it"
      !/^(i|we)$/.test(items[end]!.w)
    )
      end++;
    const run = items.slice(k + lead, end);
    const other = (x: Item): boolean =>
      x.place?.kind === 'blocks' && !/^place\.(it|them|that-one|those|both)$/.test(x.place.rule);
    if (!run.some(isDeed) || run.some((x) => other(x) || x.fabric)) continue;
    let from = k;
    while (from > 0 && !isStop(items[from - 1]!)) from--;
    let last = end;
    while (items[last] && !isStop(items[last]!)) last++;
    if (![...items.slice(from, k), ...items.slice(end, last)].some(isDeed)) continue;
    // a comma before it goes with it: "patched it, rather than darning it, by hand"
    const start = items[k - 1]?.w === ',' && (items[end]?.w === ',' || !items[end]) ? k - 1 : k;
    const next = k === from && items[end]?.w === ',' ? end + 1 : end;
    return [...items.slice(0, start), ...withoutNotChosen(items.slice(next))];
  }
  return items;
}
