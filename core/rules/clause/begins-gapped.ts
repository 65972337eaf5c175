import type { Item } from '../item.ts';

const isHow = (x: Item | undefined): boolean => x?.stitch !== undefined && x.action?.form !== 'past';

/**
 * "3-1 sewn with backstitch and 3-2 with whipstitch", "…the seam with a ladder stitch and the tear with herringbone": does
 * the verb said before hold for what follows the "and" at `k`, done another way?
 */
export function beginsGapped(items: Item[], k: number, current: Item[]): boolean {
  if (!current.some((x) => isHow(x))) return false;
  let m = k + 1;
  while (/^(the|that|then|in|at|on)$/.test(items[m]?.w ?? '') && m < k + 4) m++;
  const subject = items[m];
  if (!subject || !(subject.place?.places.length || subject.seam || subject.finding)) return false;
  m++;
  while ((items[m]?.place || /^(in|at|on|and|,|of)$/.test(items[m]?.w ?? '')) && m < k + 9) m++;
  if (/^(with|w|using)$/.test(items[m]?.w ?? '')) m++;
  if (/^(a|an|some)$/.test(items[m]?.w ?? '')) m++;
  return isHow(items[m]);
}
