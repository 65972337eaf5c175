import { removalAt } from '../clause/removal-at.ts';
import type { Item } from '../item.ts';

/** Does a verb of taking off or out stand near: such words tell what is taken off, and put nothing on. */
export function removalSoon(items: Item[], k: number): boolean {
  for (let m = Math.max(0, k - 6); m < Math.min(items.length, k + 3); m++)
    if (removalAt(items, m)) return true;
  return false;
}
