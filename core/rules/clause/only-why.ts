import type { Item } from '../item.ts';
import { wordsBetween } from '../words-between.ts';
import { isStop } from './joints.ts';

/** What is told only as the aim of a deed, or as what might have come: nothing of it is found or done. */
const WHY: RegExp[] = [
  // "didn't press it in case the dye ran", "lest it tear"
  /^ (?:(?:just )?in case|lest|for fear) (?!of emergency|history|notes)/,
  // "netted it before it could fray any further"
  /^ before (?:it|they|that|those|things|the \S+) (?:could|can|frays?|tears?|goes|go|gets|get|got) (?:\S+ )?(?:any |too |worse|further|away|again|fray|tear|split|run|shed|off|more)/,
  // "darned it so it won't tear", "so that it doesn't fray"
  /^ so (?:that )?(?:it|they|nothing|the \S+(?: \S+)?) (?:does n't|do n't|wo n't|would n't|ca n't|could n't|will not|can not) (?!need|get|be (?:patched|netted|darned|washed)|want|take|go )/,
  // "so the batting can be shaken out"
  /^ so (?:that )?(?:it|they|i|we|the \S+(?: \S+)?) (?:can|could) (?:be )?(?:shaken|reached|seen|lifted|hung|aired|shake|reach|see|lift|hang|air|get at|breathe|lie|move) /,
  // "you'd never know it had a hole"
  /^ (?:you|nobody|no one) (?:'d|would|will|'ll) (?:never|hardly|scarcely|not)? ?(?:know|guess|think|tell|notice) /,
  // "took the backing off to get at the batting", "netted it to stop it fraying"
  /^ to (?:get at|reach|stop|prevent|avoid|keep (?:it|them) from|save) /,
];
const BEGINS = /^(just|in|lest|for|before|so|you|nobody|no|to)$/;
/** "the calico I washed last week", behind "with the": which one it is. */
const CLOTH_BEHIND = /^(with|using|from|of|in)$/;

/** Takes out what is told only as the reason or the aim of a deed; what is joined behind it stays. */
export function withoutOnlyWhy(items: Item[]): Item[] {
  for (let k = 1; k < items.length - 1; k++) {
    const why = BEGINS.test(items[k]!.w) && WHY.some((x) => x.test(wordsBetween(items, k, k + 9)));
    if (!why && !isWhichCloth(items, k)) continue;
    let end = k + 1;
    while (items[end] && !isStop(items[end]!) && !/^(,|and|but|then|--)$/.test(items[end]!.w)) end++;
    // "to stop the seam, 2-3": a place told behind belongs to the deed
    const start = /^(,|--)$/.test(items[k - 1]!.w) && (!items[end] || isStop(items[end]!)) ? k - 1 : k;
    return [...items.slice(0, start), ...withoutOnlyWhy(items.slice(end))];
  }
  return items;
}

function isWhichCloth(items: Item[], k: number): boolean {
  const cloth = items[k - 1];
  if (!/^(i|we)$/.test(items[k]!.w) || !(cloth?.material || cloth?.fabric)) return false;
  if (!/^(washed|bought|had|got|dyed|used|found|cut|ordered|pressed|saved|kept)$/.test(items[k + 1]?.w ?? ''))
    return false;
  if (/^(it|them|that|the|a|two|three|both)$/.test(items[k + 2]?.w ?? '') || items[k + 2]?.place)
    return false;
  let at = k - 2;
  while (at > 0 && k - at < 5 && !/^(the|that|some|those)$/.test(items[at]!.w)) at--;
  return /^(the|that|some|those)$/.test(items[at]?.w ?? '') && CLOTH_BEHIND.test(items[at - 1]?.w ?? '');
}
