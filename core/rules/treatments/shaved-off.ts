import type { Item } from '../item.ts';
import { found, type Way, type WayFound, type WordAt } from './way.ts';

/** "took a quarter inch off the left side", "shaved a bit off the edge": trimming. */
export function shavedOff({ items, k, item }: WordAt): WayFound {
  const shaved = shaving(items, k);
  return (
    shaved && found({ action: 'trim', form: shaved, at: k, items: [item], rule: 'treatment.shaved-off' }, k)
  );
}

function shaving(items: Item[], k: number): Way['form'] | undefined {
  const w = items[k]!.w;
  if (
    !/^(took|take|takes|taken|taking|cut|cuts|cutting|shave|shaved|shaving|sliced|slice|slicing|lopped|lop|clipped|skimmed|nipped|snipped|pared|sheared|chopped)$/.test(
      w,
    )
  )
    return undefined;
  for (let m = k + 1; m < Math.min(items.length, k + 7); m++) {
    if (items[m]!.w !== 'off') continue;
    const amount = items.slice(k + 1, m);
    const little =
      amount.some(
        (x) =>
          (x.quantity?.unit && /^(in|cm|mm)$/.test(x.quantity.unit)) ||
          // "took three-eighths off the left side"
          (x.quantity?.value && !x.quantity.unit && x.quantity.value < 1),
      ) ||
      (amount.length <= 5 &&
        /^(a|an|the|just|about|another)$/.test(amount[0]?.w ?? '') &&
        amount.some((x) =>
          /^(bit|sliver|smidge|smidgen|hair|whisker|fraction|touch|shade|tad|strip|little|inch|eighth|quarter)$/.test(
            x.w,
          ),
        ) &&
        !amount.some((x) => x.fabric || x.finding || x.material || (x.object && x.object !== 'piece')));
    const edge = items
      .slice(m + 1, m + 6)
      .some(
        (x) =>
          x.part === 'edge' ||
          x.place?.places.some((p) => /^(edge|border|corner|binding|backing|batting)/.test(p)) ||
          /^(side|sides|edge|edges|end|ends|all)$/.test(x.w) ||
          x.part === 'backing' ||
          x.part === 'batting',
      );
    return little && edge
      ? /ing$/.test(w)
        ? 'ing'
        : /^(take|takes|cuts|shave|slice|lop)$/.test(w)
          ? 'base'
          : 'past'
      : undefined;
  }
  return undefined;
}
