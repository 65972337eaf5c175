import type { Item } from '../../item.ts';
import { itemWord as w } from '../../item-word.ts';
import { STORES } from '../stores.ts';

/** Do the words behind the goods tell where they are kept: "in the cedar chest", "up in the attic"? */
export function keptInStore(items: Item[], from: number): boolean {
  for (let m = from; m < from + 3; m++)
    if (/^(in|on)$/.test(w(items, m)) && STORES.test(w(items, m + 1))) return true;
    else if (/^(in|on)$/.test(w(items, m)) && /^(the|my|a)$/.test(w(items, m + 1)))
      return STORES.test(w(items, m + 2)) || (!items[m + 2]?.place && STORES.test(w(items, m + 3)));
  return false;
}
