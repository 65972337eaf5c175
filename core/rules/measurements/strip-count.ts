import type { Item } from '../item.ts';

const WIDTH = /^(?:in|cm|mm)$/;

/**
 * "cut 2 1/2 in, 8 strips", "strips cut, 8 of them, 2 1/2 in wide": the whole number without a unit at `at` is how many strips there are. Gives
 * the length that stands beside it as their width.
 */
export function widthForCount(items: Item[], at: number, used: ReadonlySet<number>): number | undefined {
  const count = items[at]?.quantity;
  if (count?.unit || count?.value === undefined || !Number.isInteger(count.value)) return undefined;
  const wide = items.findIndex(
    (x, k) =>
      !used.has(k) &&
      Math.abs(k - at) < 7 &&
      WIDTH.test(x.quantity?.unit ?? '') &&
      items[k + 1]?.measure !== 'seam',
  );
  return wide < 0 ? undefined : wide;
}
