import type { Item } from '../item.ts';
import { wordsBetween } from '../words-between.ts';

const DENIED = / (?:not|n't)(?: (?:a|quite|the|really|exactly))? $/;
const IS_SO =
  /^ (?:(?:,|but|;) )+(?:(?:it|they|that|these|those) )?(?:(?:is|'s|are|'re|was|were|only|more like|nearer|just|about) )*$/;

/** "these blocks aren't twelve inch, they're eleven and a half": the length that is so, in the unit of the one that is not. */
export function withoutDeniedLength(items: Item[]): Item[] {
  const at = items.findIndex(
    (x, k) => x.quantity?.value !== undefined && DENIED.test(wordsBetween(items, Math.max(0, k - 2), k)),
  );
  if (at < 0) return items;
  const next = items.findIndex((x, k) => k > at && k < at + 8 && x.quantity?.value !== undefined);
  if (next < 0 || !IS_SO.test(wordsBetween(items, at + 1, next))) return items;
  const told = items[next]!;
  const unit = told.quantity!.unit ?? items[at]!.quantity!.unit;
  const not = items.findLastIndex((x, k) => k < at && /^(?:not|n't)$/.test(x.w));
  return [
    ...items.slice(0, not),
    { ...told, quantity: { ...told.quantity!, ...(unit ? { unit } : {}) } },
    ...items.slice(next + 1),
  ];
}
