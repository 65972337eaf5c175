import type { Draft } from '../../draft.ts';
import type { Item } from '../../item.ts';
import { itemWord as w } from '../../item-word.ts';
import { wordsBetween } from '../../words-between.ts';
import { findGood, type GoodFound } from '../find-good.ts';
import { purposeAt } from '../purpose-at.ts';
import type { GoodsTold, ListBefore } from './goods-told.ts';
import { listedBefore } from './listed-before.ts';
import { pushGood } from './push-good.ts';
import { takeList } from './take-list.ts';

/** "spent £12.60 on a metre of silk", "paid 15 for the lining" */
export function takePaid(told: GoodsTold, k: number): number | undefined {
  const { items, claims, made } = told;
  const price = items[k]!.cost ?? nextPrice(items, k, made);
  // "parted with £8.40 at the market for …"
  let to = k + 1;
  while (
    to < k + 5 &&
    (items[to]?.task === 'shopping' ||
      /^(even|exactly|flat|at|in|from|down|the|a|my|town|market|shop|store|fair|sale|stall|haberdashers?|drapers?|i|we|paid)$/.test(
        w(items, to),
      ))
  )
    to++;
  if (
    price &&
    (/^(on|for)$/.test(w(items, to)) ||
      // "spent 26.40 at the haberdasher's: 3 m bias tape, …"
      (w(items, to) === ':' && to > k + 1 && /^(spent|paid)\b/.test(items[k]!.w))) &&
    // "1¾ m linen @ 12/m for binding": the price of what stands before it
    !(items[k]!.cost && (items[k - 1]?.material || items[k - 1]?.fabric)) &&
    (!made.length ||
      w(items, to) === 'on' ||
      !items[k]!.cost ||
      // "paid 56.25 for 5 yd backing and 3.10 each for 2 packs of sharps"
      (/^(,|and|&|\+)$/.test(w(items, k - 1)) && findGood(items, to + 1, false)?.quantity !== undefined))
  ) {
    const good = withoutNextPrice(items, findGood(items, to + 1, false));
    if (
      good &&
      (good.head !== undefined ||
        // "paid 18 for three yards"
        (/^(paid|spent|gave|to|)$/.test(w(items, k - 1)) && good.unit && good.quantity !== undefined)) &&
      !good.cost &&
      !/^(job|quilt|work|repair)$/.test(w(items, good.head ?? to))
    ) {
      pushGood(
        told,
        { ...good, cost: { amount: price.amount, ...(price.each ? { each: true as const } : {}) } },
        'bought',
      );
      for (let m = k; m < good.next; m++) claims.cut.add(items[m]!);
      if (/^(spent|paid|i|we|with)$/.test(w(items, k - 1))) claims.cut.add(items[k - 1]!);
      // "paid 18 for two yards of lining, and three spools of thread"
      let on = good.next;
      while (/^(,|and|&|\+|plus|there|were|was)$/.test(w(items, on))) on++;
      const more = on > good.next ? findGood(items, on, false) : undefined;
      return more?.head !== undefined &&
        (more.quantity !== undefined ||
          /^(|,|and|&|for|at|from|today|together|altogether|both)$/.test(w(items, more.next)))
        ? takeList(told, items, on, 'bought', true)
        : good.next;
    }
  }
  return undefined;
}

/** "came to 18.75 all in: a spool of ecru, two packs of pins": the sum, and what it was for behind a colon. */
export function takeBill(told: GoodsTold): number | undefined {
  const { items, claims, made } = told;
  const colon = items.findIndex((x) => x.w === ':');
  const sum = items.findIndex((x) => x.cost);
  if (made.length || sum < 0 || colon < sum || colon > 7) return undefined;
  if (
    !/ (?:came|come|comes|total|totalled|bill|shop|shops|shopping|all in|altogether|in all) /.test(
      wordsBetween(items, 0, colon),
    )
  )
    return undefined;
  if (items.slice(0, colon).some((x) => x.material || x.fabric || x.place)) return undefined;
  if (!findGood(items, colon + 1, true)) return undefined;
  for (const x of items.slice(0, colon + 1)) claims.cut.add(x);
  return takeList(told, items, colon + 1, 'bought', true);
}

/** "that net I bought was six pounds a metre and I took two metres" */
export function takeToldByPrice(told: GoodsTold, k: number): number | undefined {
  const { items, claims } = told;
  const bought = toldByPrice(items, k);
  if (!bought) return undefined;
  pushGood(told, bought, 'bought');
  for (let m = k; m < bought.next; m++) claims.cut.add(items[m]!);
  // "…, and three spools of thread came to eleven dollars"
  let on = bought.next;
  if (w(items, on) === 'of' && /^(it|that|them)$/.test(w(items, on + 1))) on += 2;
  const joint = on;
  while (/^(,|and|&|\+|plus)$/.test(w(items, on))) on++;
  const more = on > joint ? findGood(items, on, false) : undefined;
  return more?.head !== undefined && more.quantity !== undefined
    ? takeList(told, items, on, 'bought', true)
    : bought.next;
}

/** Prices say that the goods were bought. */
export function takePriced(told: GoodsTold, list: ListBefore | undefined): void {
  const { sentence, items, made, priced } = told;
  if (
    !made.length &&
    priced &&
    !items.some(
      (x, m) =>
        x.action &&
        x.action.form !== 'base' &&
        !x.material &&
        !x.part &&
        // "six skeins of white floss for tying"
        w(items, m - 1) !== 'for',
    )
  ) {
    const goods = items
      .map((_x, m) => findGood(items, m, true))
      .filter((g): g is GoodFound => g?.cost !== undefined && (g.head !== undefined || g.unit !== undefined));
    const first = goods[0];
    if (first) {
      const from = listedBefore(
        items,
        Math.min(...goods.filter((g) => g.next === first.next).map((g) => g.from)),
      );
      if (!items.slice(0, from).some((x) => x.topic === 'price' || x.w === 'price'))
        takeList(
          told,
          items,
          from,
          list && sentence.number === list.sentence + 1 ? list.use : 'bought',
          true,
        );
    }
  }
}

/** "spent 12 dollars at the shop": on what is not told. */
export function takeSpent(told: GoodsTold): void {
  const { items, claims, made, shop } = told;
  const spent = made.length ? -1 : items.findIndex((x) => x.cost);
  if (
    spent >= 0 &&
    (/^(spent|paid)$/.test(w(items, spent - 1)) || /^(spent|paid) /.test(w(items, spent))) &&
    (items.length === spent + 1 ||
      items[spent + 1]?.task === 'shopping' ||
      (shop && items.length <= spent + 5))
  ) {
    const { amount } = items[spent]!.cost!;
    pushGood(told, { cost: { amount }, items, name: 'it', from: 0, next: items.length }, 'bought');
    for (const x of items) claims.cut.add(x);
  }
}

/** "18 all in, 2 m of it bought": the sum told first. */
export function takeSumBefore(told: GoodsTold): void {
  const { items, claims, made } = told;
  const [alone] = made;
  const sum = items[0]?.cost;
  if (
    sum?.whole &&
    w(items, 1) === ',' &&
    made.length === 1 &&
    alone?.entry.kind === 'material' &&
    alone.entry.use === 'bought' &&
    !alone.entry.cost
  ) {
    alone.entry.cost = { amount: sum.amount };
    claims.cut.add(items[0]!);
  }
}

/** "paid 3.99 for pins, 8 for a yard of tulle": a sum in a list of them. */
function nextPrice(items: Item[], k: number, made: Draft[]): { amount: number; each: false } | undefined {
  const value = items[k]!.quantity?.value;
  if (value === undefined || items[k]!.quantity!.unit) return undefined;
  // "it came to twenty-four for three yards of it"
  if (/ (?:came|comes|come) to $/.test(wordsBetween(items, k - 2, k)) && w(items, k + 1) === 'for')
    return { amount: value, each: false };
  // "I had to pay nineteen for the silk"
  if (/^(?:paid|pay|paying|spent)$/.test(w(items, k - 1)) && /^(?:for|on)$/.test(w(items, k + 1)))
    return { amount: value, each: false };
  if (!/^(,|and|&)$/.test(w(items, k - 1)) || !/^(for|on)$/.test(w(items, k + 1))) return undefined;
  const last = made.at(-1)?.entry;
  return last?.kind === 'material' && last.cost ? { amount: value, each: false } : undefined;
}

/** "£28 on wadding, £9.80 on two metres of lining": the sum behind the comma is of what comes next. */
function withoutNextPrice(items: Item[], good: GoodFound | undefined): GoodFound | undefined {
  if (!good?.cost || good.head === undefined) return good;
  const at = items.findIndex((x, m) => m > good.head! && m < good.next && x.cost);
  if (w(items, at - 1) !== ',' || !/^(on|for)$/.test(w(items, at + 1))) return good;
  const { cost: _cost, ...rest } = good;
  return { ...rest, items: items.slice(good.from, at - 1), next: at - 1 };
}

/** Goods that open with what they are and go on with the price of one: the amount follows it. */
function toldByPrice(items: Item[], k: number): GoodFound | undefined {
  // "needles were a pound a pack and I bought three packs", "the lawn for patches was 7.20 a metre and …"
  const was = (w(items, k + 1) === 'for' ? purposeAt(items, k + 1)?.next : undefined) ?? k + 1;
  if (
    (items[k]!.material || items[k]!.fabric) &&
    /^(was|were|is|are|'s|cost|came)$/.test(w(items, was)) &&
    items.slice(was + 1, was + 3).some((x) => x.cost?.each)
  ) {
    const priced = findGood(items, k, false);
    return priced?.cost?.each && priced.quantity !== undefined ? priced : undefined;
  }
  if (
    !(items[k]!.material || items[k]!.fabric) ||
    !/^(i|we)$/.test(w(items, k + 1)) ||
    !/^(bought|ordered|got|had)$/.test(w(items, k + 2)) ||
    !/^(was|were|cost|came)$/.test(w(items, k + 3))
  )
    return undefined;
  const good = findGood(items, k, false);
  return good?.cost ? good : undefined;
}
