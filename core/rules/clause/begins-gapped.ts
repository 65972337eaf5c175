import type { Item } from '../item.ts';
import { removalAt } from './removal-at.ts';

const isHow = (x: Item | undefined): boolean => x?.stitch !== undefined && x.action?.form !== 'past';

/**
 * "3-1 sewn with backstitch and 3-2 with whipstitch", "…the seam with a ladder stitch and the tear with herringbone": does
 * the verb said before hold for what follows the "and" at `k`, done another way?
 */
export function beginsGapped(items: Item[], k: number, current: Item[]): boolean {
  if (takenOffElsewhere(items, k, current)) return true;
  if (!current.some((x) => x.stitch)) return false;
  let m = k + 1;
  // "… and the one on 1-5 by machine"
  while (/^(the|that|then|in|at|on|one|ones)$/.test(items[m]?.w ?? '') && m < k + 5) m++;
  const subject = items[m];
  if (!subject || !(subject.place?.places.length || subject.seam || subject.finding)) return false;
  m++;
  while ((items[m]?.place || /^(in|at|on|and|,|of|\/|-|seam)$/.test(items[m]?.w ?? '')) && m < k + 9) m++;
  if (/^(with|w|using)$/.test(items[m]?.w ?? '')) m++;
  if (/^(a|an|some)$/.test(items[m]?.w ?? '')) m++;
  return isHow(items[m]);
}

/** "and along with it a label", "and with them the label": how many words lead to the other thing. */
const ledAlong = (items: Item[], from: number): number => {
  const m = /^(along|together)$/.test(items[from]?.w ?? '') ? from + 1 : from;
  return items[m]?.w === 'with' && /^(it|them|that|those|this)$/.test(items[m + 1]?.w ?? '')
    ? m + 2 - from
    : 0;
};

const thingAt = (items: Item[], from: number): number => {
  let m = from;
  while (TELLS_OF_THING.test(items[m]?.w ?? '') || items[m]?.quantity || isLook(items[m])) m++;
  const x = items[m];
  return x && !x.seam && (x.object || x.finding === 'old-repair') && x.object !== 'piece' ? m : -1;
};

/** What is said of a thing that is taken off before it is named. */
export const TELLS_OF_THING =
  /^(the|an?|its|old|that|piece|bit|of|strip|modern|other|some|paper|cloth|little|small|second|loose|another|scrap|also|then)$/;
const isLook = (x: Item | undefined): boolean =>
  x?.finding !== undefined && /^(stain|fading)$/.test(x.finding);

/** "unpicked a label from the corner and a piece of interfacing from behind 2-3": another thing, taken off another place. */
function takenOffElsewhere(items: Item[], k: number, current: Item[]): boolean {
  if (!/^(and|,|&|\+)$/.test(items[k]!.w)) return false;
  const along = ledAlong(items, k + 1);
  const at = thingAt(items, k + 1 + along);
  if (at < 0) return false;
  const start = k - current.length;
  const verb = current.findIndex((_x, m) => removalAt(items, start + m) !== undefined);
  // "interfacing's off, also a label from the corner"
  const off = verb < 0 && /^(off|out)$/.test(current.at(-1)?.w ?? '') && current.some((x) => x.object);
  const also = items.slice(k + 1, at).some((x) => x.w === 'also');
  // "removed that interfacing and an old label, top right corner": the one known, the other told new
  const anew =
    /^(a|an|another|old)$/.test(items[k + 1 + along]!.w) &&
    verb >= 0 &&
    current.slice(verb, verb + 4).some((x) => /^(the|that|its|said|this|those|these)$/.test(x.w));
  if (!(off && also) && (verb < 0 || !(along || anew || current.slice(verb).some((x) => x.place))))
    return false;
  // "the border along the top" says where by itself
  if (items[at]!.place?.places[0]?.includes('-')) return true;
  // "the pins, row 2, and the ties, row 3"
  if (
    items[at + 1]?.w === ',' &&
    items.slice(at + 2, at + 4).some((x) => x.place?.places.length) &&
    (anew || current.slice(verb).some((x, m, all) => x.place && all[m - 1]?.w === ','))
  )
    return true;
  const led = items.slice(at + 1, at + 3).some((x) => /^(from|on|in|at|along|off|behind)$/.test(x.w));
  const place = items.slice(at + 2, at + 5).find((x) => x.place);
  return led && place?.place !== undefined && place.place.places.length > 0;
}
