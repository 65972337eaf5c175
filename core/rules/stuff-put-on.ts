import type { Item } from './item.ts';

/** What is laid on, sewn behind or put over. */
const isStuff = (x: Item): boolean =>
  x.material === 'net' || x.material === 'interfacing' || /^patch(?:es)?$/.test(x.w);

/** Words that only tell that it was this and no other. */
const CHOSEN =
  /^(?:so|and|well|then|now|right|it|that|was|is|'s|the|a|an|my|some|in|end|after|all|finally|went|going|go|with|i|we|'ve|gone|chose|for|on|settled|won|wins|decided|did|new|,)$/;
const MARK = /^(?:[,.;:-]|--|and|but)$/;
const STOP = /^(?:[.;:!?\n]|--)$/;

/**
 * "so it was net in the end, it's on 1-1 and 2-4": the stuff is told by itself, and behind it where "it" is. Gives the items as if it had been
 * told in one ("net 's on 1-1 and 2-4").
 */
export function stuffPutOn(items: Item[]): Item[] {
  if (!items.some(isStuff)) return items;
  for (let k = 2; k < items.length - 2; k++) {
    if (!/^(?:it|that|they)$/.test(items[k]!.w) || !/^(?:'s|is|'re|are)$/.test(items[k + 1]!.w)) continue;
    if (!MARK.test(items[k - 1]!.w)) continue;
    let on = k + 2;
    while (/^(?:now|all|both|finally|already|down|sewn|gone)$/.test(items[on]?.w ?? '')) on++;
    if (!/^(?:on|over|behind|across)$/.test(items[on]?.w ?? '') || !isThere(items[on + 1])) continue;
    let end = k - 1;
    while (end > 0 && MARK.test(items[end - 1]!.w)) end--;
    let from = end;
    while (from > 0 && !STOP.test(items[from - 1]!.w)) from--;
    const told = items.slice(from, end);
    const stuff = told.filter(isStuff);
    if (stuff.length !== 1 || told.length > 12) continue;
    // what it is made of may stand beside it
    if (!told.every((x) => isStuff(x) || x.material || x.fabric || CHOSEN.test(x.w))) continue;
    const made = told.filter((x) => isStuff(x) || x.material || x.fabric);
    return [...items.slice(0, from), ...made, ...items.slice(k + 1)];
  }
  return items;
}

const isThere = (x: Item | undefined): boolean =>
  x !== undefined &&
  (x.place !== undefined || x.fabric !== undefined || /^(?:the|both|all|behind|over)$/.test(x.w));
