import type { Item } from '../../item.ts';
import { itemWord as w } from '../../item-word.ts';
import { findGood } from '../find-good.ts';

/** "muslin, two spools of thread and pins came to 31.40": where the list begins that ends in the priced good at `from`. */
export function listedBefore(items: Item[], from: number): number {
  for (let k = 0; k < from; k++) {
    let at = k;
    while (at < from) {
      const good = findGood(items, at, false);
      if (good?.head === undefined || good.next > from || good.cost) break;
      at = good.next;
      if (!/^(,|and|&|\+|plus)$/.test(w(items, at))) break;
      while (/^(,|and|&|\+|plus)$/.test(w(items, at))) at++;
    }
    if (at === from) return k;
  }
  return from;
}
