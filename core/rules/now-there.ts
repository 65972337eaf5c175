import { isStop, startOfSentence } from './clause/joints.ts';
import { boundaryBefore, type Item, wordsAt } from './item.ts';

const DONE = /^(?:done|finished|complete|completed|ticked off)$/;
const NOW = /^(?:now|at present|currently|right now)$/;
/** What may be said of the deed between it and where it goes on. */
const NOT_SO = /^(?:not|n't|never|no|will|'ll|to|maybe|wants?|needs?|should|going to)$/;

/**
 * "rows 1-3 tied, row 4 now", "darned 2-2, now 2-3", "quilted rows 1 to 3, row 4 at the moment": behind what is done, the one place that
 * is named with "now" and nothing else is where the same is in hand. "3-3 torn, 3-4 now too" tells of damage, and "2-2, 2-3 and 2-4
 * done now" of one list.
 */
export function withNowThere(items: Item[]): Item[] {
  for (let k = 2; k < items.length; k++) {
    const found = nowThereAt(items, k);
    if (!found) continue;
    const place = items[found.place]!;
    return [
      ...items.slice(0, k),
      boundaryBefore(items[k]!, ';'),
      ...wordsAt(place, 'doing'),
      place,
      ...wordsAt(place, 'now'),
      ...withNowThere(items.slice(found.next)),
    ];
  }
  return items;
}

/** The place, and where what is said of it ends, where the joint at `k` (or a place run on there) leads to such a place. */
function nowThereAt(items: Item[], k: number): { place: number; next: number } | undefined {
  const isPlace = (x: Item | undefined): boolean =>
    x?.place?.how === 'said' &&
    x.place.kind === 'blocks' &&
    x.place.places.length > 0 &&
    !x.action?.v.startsWith('re');
  const joined = /^(?:,|-|--|and|then)$/.test(items[k]!.w);
  // "rows one and two row three now", without a mark
  if (!joined && !(isPlace(items[k]) && isPlace(items[k - 1]) && items[k + 1]?.w === 'now')) return undefined;
  let at = joined ? k + 1 : k;
  while (at < k + 3 && /^(?:and|then|so|on|the|onto)$/.test(items[at]?.w ?? '')) at++;
  const first = NOW.test(items[at]?.w ?? '');
  if (first) at++;
  while (first && /^(?:on|onto|the|for)$/.test(items[at]?.w ?? '')) at++;
  if (!isPlace(items[at])) return undefined;
  let next = at + 1;
  if (!first) {
    if (NOW.test(items[next]?.w ?? '')) next++;
    else if (items[next]?.w === 'at' && items[next + 1]?.w === 'the' && items[next + 2]?.w === 'moment')
      next += 3;
    else return undefined;
  }
  if (items[next] && !isStop(items[next]!) && items[next]!.w !== ',') return undefined;
  return doneBefore(items, k) ? { place: at, next } : undefined;
}

/** Does a deed that is done, at a place, stand before `k` in its sentence, and no damage, plan or denial? */
function doneBefore(items: Item[], k: number): boolean {
  const own = items.slice(startOfSentence(items, k), k);
  return (
    own.some((x) => x.action?.form === 'past' || DONE.test(x.w)) &&
    own.some((x) => x.place?.how === 'said') &&
    !own.some((x) => (x.finding && x.action === undefined) || x.fail || NOT_SO.test(x.w)) &&
    // "2-2, 2-3, 2-4 now": a list goes on
    own.filter((x, n) => x.w === ',' && own[n + 1]?.place && own[n - 1]?.place).length === 0
  );
}
