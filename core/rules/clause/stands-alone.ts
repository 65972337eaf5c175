import type { Item } from '../item.ts';
import { pointsElsewhere, tellsPlace } from '../tells-place.ts';
import { findWays } from '../treatments/find-ways.ts';
import { isManner } from '../treatments/is-manner.ts';
import { isPredicate } from './is-predicate.ts';
import { HARD, joinsPlaces, SOFT } from './joints.ts';
import { beginsSaying } from './new-subject.ts';

/** What tells where: a place in so many words or pointed at beside another, or a cloth of the quilt; "it" and "those" lean on what was said before. */
const tellsWhere = (x: Item): boolean => x.fabric !== undefined || tellsPlace(x) || pointsElsewhere(x);

/** Do these words say what is found or done, and where, without leaning on any others: "2-3 torn", "a stain on the backing", "ties in on row two"? */
export function standsAlone(items: Item[]): boolean {
  const where = items.filter((x) => tellsWhere(x) && !isManner(x, items));
  if (where.length === 0) return false;
  if (where.some((x) => x.place))
    return items.some((_, k) => isPredicate(items, k)) || findWays(items).length > 0;
  // a cloth may be what is put in; only where something is found it tells where
  return items.some((x) => x.finding || x.fail);
}

/** "binding frayed top and bottom, | ties in on row two": both sides of the joint at `k` say something of their own. */
export function bothStand(items: Item[], k: number, current: Item[]): boolean {
  if (/^(ditto|same|likewise)$/.test(items[k + 1]!.w)) return false;
  // "4-4 and 7-5": a list of places goes on
  if (joinsPlaces(items, k)) {
    let right = k + 1;
    while (!items[right]!.place) right++;
    if (!beginsSaying(items, right) || current.some((x) => x.w === 'between')) return false;
  }
  let end = k + 1;
  while (
    items[end] &&
    !HARD.has(items[end]!.w) &&
    !(SOFT.has(items[end]!.w) && end > k + 2 && !items[end + 1]?.place)
  )
    end++;
  const rest = items.slice(k + 1, end);
  return rest.length > 1 && standsAlone(current) && standsAlone(rest);
}
