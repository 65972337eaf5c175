import type { Item } from '../item.ts';

/** What a quilt is called behind the cloth that it is made of. */
const QUILT = /^(?:quilt|comforter|throw|coverlet|bedspread|eiderdown|counterpane|patchwork|bedcover)$/;
/** Words that may stand between: "velvet crazy quilt", "wool log cabin quilt". */
const MAKE =
  /^(?:crazy|patchwork|pieced|hexagon|log|cabin|nine|patch|whole|wholecloth|tied|summer|crib|cot|baby|strip|strippy|block|star|tufted|double|single|old|army)$/;

/**
 * "it's the velvet crazy quilt and the seam in 2-4 has come open": the cloth tells which quilt it is, and not which of its blocks,
 * though one of them is of a cloth that is called so. The items without that sense.
 */
export function withoutQuiltsCloth(items: Item[]): Item[] {
  if (!items.some((x) => x.fabric)) return items;
  return items.map((x, k) => {
    if (!x.fabric) return x;
    let next = k + 1;
    while (next < k + 3 && MAKE.test(items[next]?.w ?? '')) next++;
    return QUILT.test(items[next]?.w ?? '') ? { ...x, fabric: undefined, material: undefined } : x;
  });
}
