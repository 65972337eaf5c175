import type { RemovedObject } from '../../../shared/vocabulary.ts';
import type { Item } from '../item.ts';
import { objectOfRepair } from './object-of-repair.ts';
import { removable } from './removed-object.ts';
import { found, type WayFound, type WordAt } from './way.ts';

const objectOf = (x: Item): RemovedObject | undefined =>
  x.finding === 'old-repair' ? objectOfRepair(x.w) : x.object;

const goes = (at: number, items: Item[], object: RemovedObject, ...takes: number[]): WayFound =>
  found({ action: 'remove', object, form: 'base', at, items, rule: 'treatment.has-to-go' }, at, ...takes);

/** What must go. */
export function hasToGo({ items, k, item, before, after, thing }: WordAt): WayFound {
  // "the wadding stays, the backing goes"
  const gone = items[k - 1];
  if (
    item.w === 'goes' &&
    gone &&
    (gone.finding === 'old-repair' ||
      /^(?:backing|batting|binding|border|ties|old-patch)$/.test(gone.object ?? '')) &&
    /^(|[.,;!]|first|next|too|then|tomorrow|and|but)$/.test(items[k + 1]?.w ?? '')
  )
    return goes(k, [item, gone], objectOf(gone)!, k - 1);
  // "that patch has to go", "the batting must go"
  if (
    item.w === 'go' &&
    / (to|must|should|can|could|'ll|will|gotta) $/.test(before) &&
    !/^ (on|in|to|over|under|behind|back|round|with|into|for|up|down|out|off|through|there) /.test(after) &&
    // "label to go bottom right corner" goes on
    !(items[k - 2]?.object === 'label' && items[k + 1]?.place)
  ) {
    const told = items.slice(Math.max(0, k - 9), k).findLast((x) => x.object || x.finding === 'old-repair');
    if (told && (told.finding === 'old-repair' || (told.object && told.object !== 'piece' && !told.seam))) {
      return goes(k, [item, told], objectOf(told)!, items.indexOf(told));
    }
    // "the batting's all mouldy, so that has to go"
    const it =
      / (it|that|they|those) (has|have|had|must|'ll have|will have|should|gotta)(?: got)?(?: all| both| just)?(?: to)? $/.test(
        before,
      )
        ? removable(thing)
        : undefined;
    if (it && !told) return goes(k, [item], it);
  }
  return undefined;
}
