import type { Item } from '../item.ts';
import { itemWord as w } from '../item-word.ts';
import { wordsBetween } from '../words-between.ts';
import { STORES } from './stores.ts';

/** The index behind "in the cupboard", "on the shelf upstairs", where goods are kept. */
export const storeBehind = (items: Item[], k: number): number => {
  if (!/^(in|on)$/.test(w(items, k))) return k;
  const at = /^(the|my|our)$/.test(w(items, k + 1)) ? k + 2 : k + 1;
  const store = STORES.test(w(items, at)) ? at : STORES.test(w(items, at + 1)) ? at + 1 : -1;
  return store < 0
    ? k
    : /^(already|here|upstairs|downstairs)$/.test(w(items, store + 1))
      ? store + 2
      : store + 1;
};

/** "got the wadding today, three yards of it": when it was, between a thing and how much of it. */
export const behindWhen = (items: Item[], k: number): number => {
  const told = whenTold(items, k);
  const next = k + told;
  const amount = w(items, next) === ',' ? next + 1 : next;
  return told &&
    items[/^(about|roughly|around)$/.test(w(items, amount)) ? amount + 1 : amount]?.quantity?.unit
    ? next
    : k;
};
const WHEN_GOT =
  /^ ((?:today|yesterday|this (?:morning|afternoon|week)|tonight|last (?:night|week)|(?:on )?(?:mon|tues|wednes|thurs|fri|satur|sun)day|in town|online|to patch with|to mend with))(?= )/;

/** How many words from `k` on tell when it was got. */
export const whenTold = (items: Item[], k: number): number =>
  WHEN_GOT.exec(wordsBetween(items, k, k + 5))?.[1]
    ?.trim()
    .split(' ').length ?? 0;
