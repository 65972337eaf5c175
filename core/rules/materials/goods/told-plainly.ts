import { boundaryBefore, type Item } from '../../item.ts';
import { itemWord as w } from '../../item-word.ts';
import type { Claims } from '../../read-amounts.ts';
import { wordsBetween } from '../../words-between.ts';
import { countedBehindVerb } from './counted-behind-verb.ts';

/** Where goods were got, behind them in a list. */
const SOURCE =
  /^ (?!in store )(?:(?:from|at|off|in|down) (?:the |a |my |one |that )?(?:(?:other|same|one|first|second|corner|local|new|big|little|charity|fabric|quilt|sewing|wool|next) )*(?:shop|shops|store|stores|market|stall|fair|sale|place|mill|website|haberdashers?|drapers?|'s)(?: 's)?|online|on line|by post|by mail|second hand) /;
const ENDS = /^(?:|[,.;)]|and|&|\+|plus|at|@|for|cost)$/;

/**
 * Goods told in looser words, as a plain list would have them: "two yards of lining from the market, another three online, 6.40 a yard" (where
 * they were got falls out, the unit holds for the next), "fat quarters, three of them" ("three fat quarters"), "muslin (3 yds, 5.20/yd)".
 */
export function toldPlainly(items: Item[], claims: Claims): Item[] {
  if (!items.some((x) => x.quantity || x.cost) || items.some((x) => x.finding || x.place?.kind === 'blocks'))
    return items;
  const named = withoutSources(items, claims);
  openBrackets(named);
  pricesOn(named);
  carryUnits(named);
  return leftBehind(countedBehind(countedBehindVerb(partedByPrice(named))));
}

function withoutSources(items: Item[], claims: Claims): Item[] {
  const out: Item[] = [];
  for (let k = 0; k < items.length; k++) {
    const told = SOURCE.exec(wordsBetween(items, k, k + 8))?.[0];
    const piece = out.slice(out.findLastIndex((x) => /^[,;.]$/.test(x.w)) + 1);
    const length = told ? told.trim().split(' ').length : 0;
    if (
      !told ||
      !piece.some((x) => x.quantity) ||
      !ENDS.test(w(items, k + length)) ||
      wordsBetween(items, k, k + length) !== told
    ) {
      out.push(items[k]!);
      continue;
    }
    for (const x of items.slice(k, k + length)) claims.drop.add(x);
    k += length - 1;
  }
  return out.length === items.length ? items : out;
}

/** "muslin (3 yds, 5.20/yd), thread (2 spools)" */
function openBrackets(items: Item[]): void {
  items.forEach((x, k) => {
    if (x.w !== '(' || !(items[k - 1]?.material || items[k - 1]?.fabric) || !items[k + 1]?.quantity?.unit)
      return;
    const close = items.findIndex((y, m) => m > k && y.w === ')');
    if (close < 0 || close - k > 6 || !items.slice(k, close).some((y) => y.cost)) return;
    x.w = ',';
    x.token = { ...x.token, w: ',' };
    items[close]!.w = ',';
    items[close]!.token = { ...items[close]!.token, w: ',' };
  });
}

/** "spent 14.60 on thread and 3.20 on needles": a price where the first was one, and no hour. */
function pricesOn(items: Item[]): void {
  if (!items.some((x) => x.cost)) return;
  items.forEach((x, k) => {
    if (!x.clock || !/^\d{1,3}\.\d\d$/.test(x.w) || !/^(?:and|,|&|\+)$/.test(w(items, k - 1))) return;
    if (!/^(?:on|for)$/.test(w(items, k + 1)) || !items.slice(k + 2, k + 5).some((y) => y.material)) return;
    x.cost = { next: x.clock.next, amount: Number(x.w), each: false, rule: 'cost.bare' };
    x.clock = undefined;
  });
}

/** "two reels …, another two": of the same unit. */
function carryUnits(items: Item[]): void {
  items.forEach((x, k) => {
    const q = x.quantity;
    if (w(items, k - 1) !== 'another' || !q?.value || q.unit || !ENDS.test(w(items, k + 1))) return;
    const unit = items.slice(0, k).findLast((y) => y.quantity?.unit)?.quantity?.unit;
    if (unit && unit !== 'in') x.quantity = { ...q, unit };
  });
}

/** "fat quarters, three of them, 2.75 apiece": how many, before what they are. */
function countedBehind(items: Item[]): Item[] {
  const at = items.findIndex(
    (x, k) =>
      x.quantity?.value !== undefined &&
      !x.quantity.unit &&
      w(items, k - 1) === ',' &&
      w(items, k + 1) === 'of' &&
      /^(?:them|those|these)$/.test(w(items, k + 2)) &&
      ENDS.test(w(items, k + 3)),
  );
  if (at < 2) return items;
  let from = at - 1;
  while (
    from > 0 &&
    !/^(?:[,.;:]|and|&|\+|plus|bought|got|need)$/.test(w(items, from - 1)) &&
    !items[from - 1]!.quantity
  )
    from--;
  const thing = items.slice(from, at - 1);
  if (!thing.length || thing.length > 4 || thing.some((x) => x.quantity)) return items;
  return [...items.slice(0, from), items[at]!, ...thing, ...items.slice(at + 3)];
}

/** "needles four packs one ninety each thread two spools three fifty": a new thing behind a price, with nothing between. */
function partedByPrice(items: Item[]): Item[] {
  if (items.filter((x) => x.cost).length < 1) return items;
  return items.flatMap((x, k) => {
    const thing = (x.material || x.fabric) && !x.place && !x.action;
    const sold = thing && items.slice(k + 1, k + 5).some((y) => y.quantity?.unit || y.cost);
    return sold && k > 1 && items[k - 1]!.cost ? [boundaryBefore(x, ','), x] : [x];
  });
}

/** "a yard left of the muslin": of the muslin, a yard left. */
function leftBehind(items: Item[]): Item[] {
  const at = items.findIndex(
    (x, k) =>
      /^(?:left|spare|over)$/.test(x.w) &&
      !x.place &&
      items[k - 1]?.quantity?.unit &&
      w(items, k + 1) === 'of',
  );
  if (at < 1) return items;
  let end = at + 2;
  while (end < at + 6 && items[end] && !(items[end]!.material || items[end]!.fabric)) end++;
  if (!items[end] || end >= at + 6) return items;
  return [...items.slice(0, at), ...items.slice(at + 1, end + 1), items[at]!, ...items.slice(end + 1)];
}
