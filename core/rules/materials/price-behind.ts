import type { Item } from '../item.ts';
import { itemWord as w } from '../item-word.ts';
import { wordsBetween } from '../words-between.ts';

const SELLER =
  /(?:^| )(?:market|fair|shop|shops|store|sale|sales|stall|haberdasher|haberdashery|haberdashers|draper|drapers|boot|merchant|auction|town|mill)$/;
/** "two yards of calico at the fair for £6": the words for where it was got stand before the price. Gives the index behind them. */
export function behindSeller(items: Item[], k: number): number {
  if (!/^(?:at|from|in|off)(?: |$)/.test(w(items, k))) return k;
  let sold = false;
  for (let m = k; m < k + 6; m++) {
    sold ||= SELLER.test(w(items, m)) || items[m]?.task === 'shopping';
    if (/^(?:for|,)$/.test(w(items, m)) && items[m + 1]?.cost) return sold ? m : k;
    if (!items[m] || items[m]!.cost || items[m]!.quantity || items[m]!.material || items[m]!.place) return k;
  }
  return k;
}

/** "at the fair, 50p each": where it was bought, and the price of one. */
export function priceAfterPlace(items: Item[], k: number): boolean {
  if (!/^(at|from|in)$/.test(w(items, k))) return false;
  const q = items.findIndex((x, m) => m > k && !isPlain(x));
  return q > k && q < k + 7 && items[q]!.cost?.each === true;
}

/** What is said of goods before their price: "and it was", ", they were", "and they charged me", "so that's another", "and the lot cost me". */
const TELLS_PRICE =
  /^ (?:, )?(?:(?:and|so|but|then|which) )*(?:(?:it|that|they|those|these|the lot|all of it|all of them|the whole lot|each|each one|altogether|i|we|all) )*(?:(?:all|both|one|on|sale|for|only|just|'s|is|was|were|are|came|come|comes|cost|costs|paid|charged|asked|wanted|set|worked|works|ran|out|to|at|about|around|another|in|back|me|us|each|total) )*$/;
/** "bought four yards of muslin and it was thirty one dollars for all of it": the price in a clause of its own. */
export function priceInNext(items: Item[], k: number): number | undefined {
  if (!/^(,|and|so|but|which|they|it|that|those|came|comes|each|altogether|paid)$/.test(w(items, k)))
    return undefined;
  for (let m = k + 1; m < k + 10 && m < items.length; m++) {
    if (items[m]!.cost)
      return m > k + 1 || w(items, k) !== ','
        ? TELLS_PRICE.test(wordsBetween(items, k, m)) && !items.slice(m + 1, m + 5).some((x) => x.material)
          ? m
          : undefined
        : undefined;
    if (items[m]!.material || items[m]!.quantity || items[m]!.fabric) return undefined;
  }
  return undefined;
}

/** "they only had six skeins, so I took those, three dollars each": the price behind the buying of what was just named. */
export function priceOfTaken(items: Item[], k: number): number | undefined {
  let m = k;
  while (m < k + 2 && /^(,|so|and)$/.test(w(items, m))) m++;
  if (!/^(i|we)$/.test(w(items, m)) || !/^(took|got|bought|had|grabbed|ordered)$/.test(w(items, m + 1)))
    return undefined;
  for (m += 2; m < k + 9 && m < items.length; m++) {
    if (items[m]!.cost) return m;
    if (!/^(those|them|it|these|that|the|lot|all|both|of|two|three|four|anyway|at|for|,)$/.test(w(items, m)))
      return undefined;
  }
  return undefined;
}

/** "… 2 skeins 6.75 each, roll of batting 38": among prices a number behind an amount is one. */
export function bareSum(
  items: Item[],
  k: number,
  counted: boolean,
): { amount: number; each: false; whole?: undefined; unit?: undefined } | undefined {
  const n = items[k]?.quantity;
  if (!counted || n?.value === undefined || n.unit || !/^(|,|and|&|\+)$/.test(w(items, k + 1)))
    return undefined;
  return items.some((x) => x.cost || x.task === 'shopping') ? { amount: n.value, each: false } : undefined;
}

/** A word that says nothing of the quilt, of goods or of their amount: said between a thing and its price. */
export const isPlain = (x: Item): boolean =>
  (x.token.kind === 'word' || x.w === ',') &&
  !/^(and|but|so|then|because|for|need|needs|bought|used|got|paid)$/.test(x.w) &&
  !(
    x.material ||
    x.fabric ||
    x.quantity ||
    x.duration ||
    x.clock ||
    x.span ||
    x.cost ||
    x.finding ||
    (x.place?.places.length && x.w !== 'they') ||
    (x.action && x.action.form !== 'base')
  );
