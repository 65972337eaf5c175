import type { Item } from '../../item.ts';
import { itemWord as w } from '../../item-word.ts';
import { bareSum, behindSeller, isPlain, priceInNext, priceOfTaken } from '../price-behind.ts';
import { latePurpose, madeFor, purposeAt } from '../purpose-at.ts';
import { type GoodInHand, isFigure } from './good-in-hand.ts';
import { CONTAINERS } from './unit-alone.ts';

/** Where the price stands: behind the good, the seller and some small words, or in brackets that end at `close`. */
function findPrice(g: GoodInHand): { at: number; close?: number } {
  const { items } = g;
  // "batting (wool), $48": an aside in brackets
  // "2 fat quarters rust plaid ($3.75 ea)" has its price in them
  const open = w(items, g.next) === '(' ? g.next : -1;
  const close = open < 0 ? -1 : items.findIndex((x, m) => m > open && m < open + 6 && x.w === ')');
  const inBrackets = close > 0 ? items.findIndex((x, m) => m > open && m < close && x.cost) : -1;
  // "8 skeins of yarn (have 2)": what is told of the goods, and no aside
  if (close > 0 && inBrackets < 0 && !items.slice(open, close).some((x) => /^(have|'ve|got)$/.test(x.w)))
    g.next = close + 1;
  g.next = behindSeller(items, g.next);
  if (inBrackets > 0) return { at: inBrackets, close };

  let c = g.next;
  let light = 0;
  if (
    /^(from|at|in|off|down|on|they|i|we|today|yesterday|arrived|came|turned|this|online|by)$/.test(
      w(items, c),
    ) ||
    items[c]?.task === 'shopping'
  ) {
    // "a hank of wool from the mill, 14.50", "that stuff they had on the sale table, 27 the lot"
    let q = c;
    while (
      q < c + 10 &&
      q < items.length &&
      // "…, bought it anyway, £4.20"
      (isPlain(items[q]!) || (/^(bought|got)$/.test(w(items, q)) && /^(it|them)$/.test(w(items, q + 1))))
    )
      q++;
    if (items[q]?.cost && (!/^(for|at|of)$/.test(w(items, q - 1)) || /^(it|them)$/.test(w(items, q - 2))))
      c = q;
  }
  while (
    c < items.length &&
    light < 6 &&
    !items[c]!.cost &&
    /^(,|:|-|was|were|is|'s|cost|costs|set|ran|worked|works|came|comes|out|came out|comes out|about|around|at|for|it|came|to|which|that|those|these|price|in|and|the|lot|them|they|all|=|@|me|only|just|of|i|we|paid|got|bought|ordered|together|altogether|dear|cheap|steep|reduced|online|too|as|well|as well|also|besides)$/.test(
      w(items, c),
    )
  ) {
    // "…, for it I paid 12 euro", "…, together 40 euro"
    if (
      w(items, c) === ',' &&
      !items[c + 1]?.cost &&
      !/^(at|for|which|that|it|i|we|together|altogether|dear|cheap|steep|reduced)$/.test(w(items, c + 1))
    )
      break;
    if (w(items, c) === 'and') break;
    c++;
    light++;
  }
  return { at: items[c]?.cost ? c : (priceOfTaken(items, g.next) ?? priceInNext(items, g.next) ?? c) };
}

/** Its price, and what the price tells besides: how much there was, what it is for. */
export function readPrice(g: GoodInHand): void {
  const { items, listed } = g;
  const found = findPrice(g);
  let c = found.at;
  // "1 can basting spray 14": counted by what it comes in
  const counted = g.unit !== undefined || items.slice(g.start, g.next).some((x) => CONTAINERS.has(x.w));
  const price = items[c]?.cost ?? bareSum(items, c, listed && counted);
  if (price) {
    const between = items.slice(g.next, c).map((x) => x.w);
    const by = items[c]!.w;
    const each =
      price.each ||
      (!price.whole &&
        (by.startsWith('@') ||
          between.includes('@') ||
          ((by.startsWith('at ') || between.at(-1) === 'at') && g.quantity !== undefined && g.quantity > 1)));
    g.cost = { amount: price.amount, ...(each ? { each: true as const } : {}) };
    if (g.quantity === undefined && price.each && price.unit && !g.figure && g.unit === undefined) {
      const amount = amountBehindPrice(items, c + 1, g.head >= 0);
      if (amount) {
        const { value, unit } = items[amount.at]!.quantity!;
        g.quantity = value!;
        g.unit = unit ?? price.unit;
        c = amount.end;
      }
    }
    g.next = (found.at === c ? found.close : undefined) ?? c;
    g.next++;
    // "thread 2.80 x 2"
    const times = /^[x×]$/.test(w(items, g.next)) ? items[g.next + 1]?.quantity : undefined;
    if (times?.value !== undefined && !times.unit && g.quantity === undefined) {
      g.quantity = times.value;
      g.cost = { amount: price.amount, each: true };
      g.next += 2;
    }
    // "spray $13 a can, two cans"
    const count = w(items, g.next) === ',' ? items[g.next + 1]?.quantity : undefined;
    if (
      each &&
      g.quantity === undefined &&
      count?.value !== undefined &&
      CONTAINERS.has(w(items, g.next + 2))
    ) {
      g.quantity = count.value;
      g.next += 3;
    }
    // "5 yds at 8.99 = 44.95": what it comes to
    if (each && items[g.next]?.w.startsWith('=') && items[g.next]!.cost) g.next++;
    // "the net cost twelve pounds for two metres"
    const size = w(items, g.next + 1) === 'the' ? g.next + 2 : g.next + 1;
    const got = w(items, g.next) === 'for' ? items[size]?.quantity : undefined;
    if (g.quantity === undefined && got?.unit && got.value !== undefined && !items[size + 1]?.material) {
      g.quantity = got.value;
      g.unit = got.unit;
      g.uncounted = false;
      g.next = size + 1;
    }
    if (/^(for|on)$/.test(w(items, g.next)) && /^(it|them|that|those)$/.test(w(items, g.next + 1)))
      g.next += 2;
    if (!g.purpose) {
      // "…, twenty five dollars, that's for the back"
      const late =
        purposeAt(items, g.next) ??
        (w(items, g.next) === ',' ? purposeAt(items, g.next + 1) : undefined) ??
        latePurpose(items, g.next);
      if (late) g.material = madeFor(g.material, late.for);
      // "…, it'll do for patches" goes with it; "4.20, for the border" tells of another
      if (late && (late.for !== 'none' || w(items, g.next) === ',')) g.next = late.next;
    }
  } else if (!g.purpose && g.head >= 0 && g.quantity !== undefined) {
    // "seven metres of old linen, it's going on the back"
    const late = /^(,|that|which|she|he|they)$/.test(w(items, g.next))
      ? latePurpose(items, g.next)
      : undefined;
    if (late) {
      g.material = madeFor(g.material, late.for);
      g.next = late.next;
    }
  }
}

/** What leads to the amount: "so I took", "and I got", "call it", "three of them". */
const LEADS_AMOUNT =
  /^(?:,|so|and|i|we|took|got|had|bought|need|that|that's|it|'s|was|making|about|call|say)$/;

/** The price tells the unit, and how much follows: "… nine dollars a yard, three yards", "… 4.50 a metre, so I took five metres of it". */
function amountBehindPrice(
  items: Item[],
  from: number,
  named: boolean,
): { at: number; end: number } | undefined {
  if (!/^(?:so|,|and)$/.test(w(items, from))) return undefined;
  let at = from;
  while (at < from + 6 && LEADS_AMOUNT.test(w(items, at)) && !isFigure(items[at])) at++;
  if (!isFigure(items[at])) {
    const q = items.slice(from, from + 6).findIndex((x) => isFigure(x));
    at = from + q;
    if (q < 0 || !items.slice(from, at).some((x) => /^(?:took|got|bought|had)$/.test(x.w))) return undefined;
    return { at, end: at };
  }
  const next = w(items, at + 1);
  // "…, 3 spools of thread" is the next of the goods
  const ofIt = next === 'of' && /^(?:it|that|them|those)$/.test(w(items, at + 2));
  if (ofIt) return { at, end: at + 2 };
  if (next === 'of') return undefined;
  if (
    /^(?:bought|used|worth)$/.test(next) ||
    items.slice(from, at).some((x) => /^(?:took|got|bought|had)$/.test(x.w))
  )
    return { at, end: at };
  // "muslin at 8 a yard, 3 yards, and a reel of white": nothing else is counted
  return named && items[at]!.quantity!.unit && ENDS_AMOUNT.test(next) ? { at, end: at } : undefined;
}
const ENDS_AMOUNT = /^(?:|,|\.|;|and|&|but|\(|for|in all|altogether)$/;
