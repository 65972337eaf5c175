import type { Item } from '../item.ts';

const FILLER =
  /^(now|just|already|currently|well|about|halfway|half way|part way|partway|nearly|and|then|half|way)$/;

/**
 * "…, I'm on row four", "and now on the third", "on to row two", "doing row three now", "halfway through the fourth": does
 * the item at `k` begin to tell how far work that goes from row to row has come?
 */
export function goesOnTo(items: Item[], k: number): boolean {
  let m = k;
  const said = /^(i|we)$/.test(items[m]?.w ?? '');
  if (said) {
    if (!/^('m|am|'re|are)$/.test(items[m + 1]?.w ?? '')) return false;
    m += 2;
  }
  while (FILLER.test(items[m]?.w ?? '') && m < k + 6) m++;
  const verb = items[m]?.w ?? '';
  if (/^(working|starting|started|moving|moved|going|carrying|through|halfway|into|up)$/.test(verb)) m++;
  else if (verb === 'doing') m++;
  else if (!/^(on|onto|at)$/.test(verb)) return false;
  if (verb === 'on' && !said && !/^(now|to|onto)$/.test(items[m - 1]?.w ?? '') && items[m + 1]?.w !== 'to')
    return false;
  while (/^(on|to|onto|through|the|with|at|into)$/.test(items[m]?.w ?? '') && m < k + 8) m++;
  const place = items[m]?.place;
  return place !== undefined && place.kind !== 'part' && /row|column/.test(place.rule);
}
