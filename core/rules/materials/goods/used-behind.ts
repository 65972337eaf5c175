import type { MaterialUse } from '../../../../shared/vocabulary.ts';
import type { Item } from '../../item.ts';
import { itemWord as w } from '../../item-word.ts';
import { wordsBetween } from '../../words-between.ts';
import { findGood, type GoodFound } from '../find-good.ts';
import { listedBefore } from './listed-before.ts';

const BEHIND =
  /^(?:used up|used|used so far|gone|left over|left|spare|to spare|remaining|bought|ordered|purchased|needed|wanted|required|to buy|to get|to order|to find|on hand|in stock|in store|to hand|in hand|would do|will do|should do|'ll do)$/;
const JOINT_BEHIND = /^ *(?:$|[,;.)] |and |but |so |(?:in|on) (?:the|my) )/;

/** An amount whose verb stands behind it, in a list of such: "75 cm calico used, 40 cm left". */
export function usedBehind(
  items: Item[],
  k: number,
  counted: boolean,
): { good: GoodFound; use: MaterialUse; next: number } | undefined {
  const amount = items[k]!.quantity;
  if (amount?.value === undefined || items.slice(0, k).some((x) => x.cost)) return undefined;
  if (k > 0 && !/^(,|and|&|but|so|:|;|--|-)$/.test(w(items, k - 1))) return undefined;
  // "8 yd bias binding & 18 in fusible on hand": one list, with its verb behind it
  if (k > 0 && listedBefore(items, k) < k && items.filter((x) => BEHIND.test(x.w)).length < 2)
    return undefined;
  // "used two yards of muslin, one left": of the goods just told
  const bare = !amount.unit && k > 0 && counted;
  if (!amount.unit && !bare) return undefined;
  for (let at = k + 1; at < Math.min(items.length, k + 7); at++) {
    if (/^[,.;]$/.test(w(items, at))) return undefined;
    for (const n of [2, 1]) {
      const phrase = wordsBetween(items, at, at + n).trim();
      const use = BEHIND.test(phrase) && USE_BEHIND[phrase.split(' ').at(-1)!];
      if (!use || (bare && use !== 'on-hand')) continue;
      if (!JOINT_BEHIND.test(wordsBetween(items, at + n, at + n + 3).slice(1))) continue;
      // told alone it is a plain statement; "a packet of betweens to buy, and two reels of the ecru": one list, with its verb in it
      if ((k === 0 || (k === 1 && /^(and|but|so)$/.test(w(items, 0)))) && !toldBehind(items, at + n))
        return undefined;
      const told = items.slice(0, at);
      const good = bare
        ? { quantity: amount.value, items: told.slice(k), name: 'it', from: k, next: k + 1 }
        : findGood(told, k, false);
      return good?.quantity === undefined || good.cost || good.next !== at
        ? undefined
        : { good, use, next: at + n };
    }
  }
  return undefined;
}
/** Is there another such verb from `from` on: "… 40 cm left", "… 5 m in stock"? */
const toldBehind = (items: Item[], from: number): boolean =>
  items.some((x, m) => m >= from && (BEHIND.test(x.w) || BEHIND.test(`${x.w} ${w(items, m + 1)}`)));

const USE_BEHIND: Record<string, MaterialUse> = {
  up: 'used',
  used: 'used',
  gone: 'used',
  over: 'on-hand',
  left: 'on-hand',
  spare: 'on-hand',
  remaining: 'on-hand',
  bought: 'bought',
  ordered: 'bought',
  purchased: 'bought',
  needed: 'needed',
  wanted: 'needed',
  required: 'needed',
  buy: 'needed',
  get: 'needed',
  order: 'needed',
  find: 'needed',
  hand: 'on-hand',
  do: 'needed',
  stock: 'on-hand',
  store: 'on-hand',
};
