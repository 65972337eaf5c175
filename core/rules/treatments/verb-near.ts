import type { Action } from '../../../shared/vocabulary.ts';
import { isPredicate } from '../clause/is-predicate.ts';
import type { Item } from '../item.ts';
import type { Way } from './way.ts';

/** The nearest verb of these treatments, that nothing has taken yet. */
export function verbNear(
  items: Item[],
  k: number,
  actions: Action[],
  used: Set<number>,
): { k: number; form: Way['form'] } | undefined {
  let best: { k: number; form: Way['form'] } | undefined;
  for (let m = Math.max(0, k - 8); m < Math.min(items.length, k + 8); m++) {
    // "secured by couching" only says how
    if (
      items[m]!.stitch &&
      items[m]!.action?.form === 'ing' &&
      /^(by|with|in|using)$/.test(items[m - 1]?.w ?? '')
    )
      continue;
    const a = items[m]!.action;
    if (
      !a ||
      m === k ||
      used.has(m) ||
      !actions.includes(a.v) ||
      ((items[m]!.material || items[m]!.part) && a.form === 'base') ||
      // "a net overlay", "a support patch", "a layer of net": a thing
      (a.form === 'base' && !isPredicate(items, m))
    )
      continue;
    if (items[m]!.material === 'backing' && a.form === 'ing') continue;
    if (!best || Math.abs(m - k) < Math.abs(best.k - k)) best = { k: m, form: a.form };
  }
  return best;
}
