import type { Item } from '../../item.ts';
import { itemWord as w } from '../../item-word.ts';
import type { Claims } from '../../read-amounts.ts';
import { wordsBetween } from '../../words-between.ts';

const JOINT = /^(?:,|and|&|\+|;|plus|:)$/;
const ENDS = /^(?:|,|and|&|\+|;|\.|plus|\))$/;

type Bare = { at: number; good: boolean; measured: boolean };

/** A number without a unit at the end of what is told of one thing: "thread 2.50,", "a yard of web, six". */
function bareAt(items: Item[], k: number): Bare | undefined {
  const n = items[k]!.quantity;
  if (n?.value === undefined || n.unit || items[k]!.place || !ENDS.test(w(items, k + 1))) return undefined;
  if (/^(?:size|no|number|x|×|#|by|of|row|block|column|only|another)$/.test(w(items, k - 1)))
    return undefined;
  // "…, 8 pins": a number of the next thing; "a yard of web, six" one of the thing before the comma
  let from = w(items, k - 1) === ',' || w(items, k - 1) === ':' ? k - 1 : k;
  const to = from;
  while (from > 0 && !JOINT.test(w(items, from - 1))) from--;
  const part = items.slice(from, to);
  const good = part.some((x) => x.material || x.fabric);
  if (!part.length || part.some((x) => x.cost || x.finding || x.place?.kind === 'blocks')) return undefined;
  // "pins 250": the count, where nothing else was told of them
  return { at: k, good, measured: good && part.some((x) => x.quantity?.unit) };
}

const asPrice = (x: Item, whole: boolean): void => {
  const { value, next } = x.quantity!;
  x.cost = { next, amount: value!, each: false, ...(whole ? { whole: true } : {}), rule: 'cost.bare' };
  x.quantity = undefined;
};

const SUM_BEHIND =
  / (?:came|comes|coming|came out|comes out|total|totals|totalled|altogether|in all|all in|all told) (?:to |at |: |= |about |exactly )?$/;

/**
 * "muslin 2 yd 9.98, thread 2.50, pins 3", "… four dollars, and a yard of web, six", "1 yd tulle, 1 spool silk, came to 41", "spent twenty:
 * batting fifteen, thread five": numbers that stand where a price would are prices.
 */
export function markBarePrices(items: Item[], claims: Claims): Item[] {
  if (!items.some((x) => x.quantity && !x.quantity.unit)) return items;
  const rest = withoutSizes(items, claims);
  const bare = rest
    .map((x, k) => (x.quantity && !x.place ? bareAt(rest, k) : undefined))
    .filter((x) => x !== undefined);
  const amount = (x: Item): number => x.quantity?.value ?? x.cost?.amount ?? 0;
  const costs = rest.filter((x) => x.cost);
  const cents = bare.filter(({ at, good }) => good && /^\d+[.,]\d\d$/.test(w(rest, at)));
  const told = bare.filter(({ good }) => good);
  // "spent 22.50: batting fifteen, thread four, needles three fifty": they make up the sum told first
  const sum = /^(?:spent|paid)\b/.test(w(rest, 0)) && costs[0] ? costs[0].cost!.amount : undefined;
  const parts =
    told.reduce((s, { at }) => s + amount(rest[at]!), 0) +
    costs.slice(1).reduce((s, x) => s + x.cost!.amount, 0);
  const sums = sum !== undefined && Math.abs(parts - sum) < 0.005;
  const bill = costs.length > 0 || cents.length > 1;
  for (const { at, good, measured } of bare) {
    const x = rest[at]!;
    if (
      SUM_BEHIND.test(wordsBetween(rest, at - 3, at)) &&
      rest.slice(0, at).some((y) => y.material && !y.action)
    )
      asPrice(x, true);
    else if (sums && good) asPrice(x, false);
    else if (bill && (measured || (good && (cents.length > 1 || /^\d+[.,]\d\d$/.test(x.w)))))
      asPrice(x, false);
  }
  // the sum itself is of no one thing
  if (sums) for (const x of rest.slice(0, rest.indexOf(costs[0]!) + 1)) claims.cut.add(x);
  return sums ? rest.slice(rest.indexOf(costs[0]!) + 1) : rest;
}

/** "five balls, size eight, three twenty-five apiece": which of them, and no number of anything. */
function withoutSizes(items: Item[], claims: Claims): Item[] {
  // "a 90 by 108 batting for $29": how large it lies
  const by = items.findIndex(
    (x, k) =>
      /^(?:by|x|×)$/.test(x.w) &&
      items[k - 1]?.quantity &&
      items[k + 1]?.quantity &&
      items[k + 2]?.material &&
      items.slice(k + 3).some((y) => y.cost),
  );
  if (by > 0) {
    for (const x of items.slice(by - 1, by + 2)) claims.drop.add(x);
    return withoutSizes([...items.slice(0, by - 1), ...items.slice(by + 2)], claims);
  }
  const sized = items.findIndex(
    (x, k) =>
      (x.w === 'size' ||
        (/^(?:no|nr|number|#)$/.test(x.w) && (w(items, k - 1) === ',' || items[k - 1]?.material))) &&
      items[k + 1]?.quantity &&
      !items[k + 1]!.quantity!.unit &&
      items.some((y) => y.material),
  );
  if (sized < 0) return items;
  const from = w(items, sized - 1) === ',' && ENDS.test(w(items, sized + 2)) ? sized - 1 : sized;
  for (const x of items.slice(from, sized + 2)) claims.drop.add(x);
  return [...items.slice(0, from), ...items.slice(sized + 2)];
}
