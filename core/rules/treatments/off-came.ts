import type { RemovedObject } from '../../../shared/vocabulary.ts';
import { isInverted } from '../clause/is-predicate.ts';
import { objectOfRepair } from './object-of-repair.ts';
import { found, type WayFound, type WordAt } from './way.ts';

/** "off came the patch", "out with the batting". */
export function offCame({ items, k, item, thing }: WordAt): WayFound {
  if (isInverted(items, k)) {
    const after = items.slice(k + 1, k + 7).find((x) => x.object || x.finding === 'old-repair');
    const of = after ?? (items[k + 1]!.w !== 'with' && thing && thing !== 'seam' ? undefined : null);
    if (after || of === undefined) {
      const object = after
        ? after.finding === 'old-repair'
          ? objectOfRepair(after.w)
          : after.object!
        : (thing as RemovedObject);
      return found(
        {
          action: 'remove',
          object,
          form:
            items[k + 1]!.w === 'with' ||
            items.slice(k + 1, k + 3).some((x) => /^(comes?|goes|go)$/.test(x.w))
              ? 'base'
              : 'past',
          at: k,
          items: after ? [item, after] : [item],
          rule: 'treatment.off-came',
        },
        k,
        ...(after ? [items.indexOf(after)] : []),
      );
    }
  }
  return undefined;
}
