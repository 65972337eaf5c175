import type { MaterialUse } from '../../../../shared/vocabulary.ts';
import type { Item } from '../../item.ts';
import { itemWord as w } from '../../item-word.ts';
import type { Claims, Sentence } from '../../read-amounts.ts';
import type { ReaderState } from '../../reader-state.ts';
import { wordsBetween } from '../../words-between.ts';
import { findGood, type GoodFound } from '../find-good.ts';
import { hadAfterAll } from '../had-after-all.ts';
import { amountWillDo } from './amount-will-do.ts';
import { markBarePrices } from './bare-prices.ts';
import { justCounted } from './count-again.ts';
import type { GoodsTold, ListBefore } from './goods-told.ts';
import { isBill, underHeading } from './heading.ts';
import { pushGood } from './push-good.ts';
import { takeAtCue } from './take-at-cue.ts';
import { takeBeforeVerb } from './take-before-verb.ts';
import {
  takeBill,
  takePaid,
  takePriced,
  takeSpent,
  takeSumBefore,
  takeToldByPrice,
} from './take-by-price.ts';
import { takeFromShop } from './take-from-shop.ts';
import { takeList } from './take-list.ts';
import { takeRelative } from './take-relative.ts';
import { toldPlainly } from './told-plainly.ts';
import { usedBehind } from './used-behind.ts';

/** Lists of goods bought, needed, on hand or used up; their words are claimed. */
export function readGoods(state: ReaderState, sentences: Sentence[], claims: Claims): void {
  let list: ListBefore | undefined;
  for (const [number, own] of sentences.entries()) {
    if (number > 0 && amountWillDo(state, own, claims)) continue;
    const items = markBarePrices(toldPlainly(underHeading(own.items, claims), claims), claims);
    const told: GoodsTold = {
      state,
      claims,
      items,
      sentence: { ...own, before: sentences[number - 1]?.items },
      priced: items.some((x) => x.cost) || isBill(items),
      shop: / (shop|shopping|store|market|town|receipt|stall|counter|haberdasher|draper) /.test(
        wordsBetween(items),
      ),
      use: undefined,
      made: [],
    };
    let k = takeBill(told) ?? 0;
    while (k < items.length) k = takeAt(told, k) ?? k + 1;
    if (list) goesOnWithList(told, list, number);
    else if (number === 0) goesOnFromLastNote(told);
    takeBeforeVerb(told, sentences[number + 1]);
    takePriced(told, list);
    takeSpent(told);
    takeWashed(told);
    takeSumBefore(told);
    const last = told.made.at(-1)?.entry;
    if (last) list = { use: (last as { use: MaterialUse }).use, sentence: own.number, number };
  }
}

/** The goods told from item `k` on, by the first that finds some; the index after their words. */
function takeAt(told: GoodsTold, k: number): number | undefined {
  return (
    takeFromShop(told, k) ??
    takeHad(told, k) ??
    takeNoneLeft(told, k) ??
    takeUsedBehind(told, k) ??
    takeRelative(told, k) ??
    takePaid(told, k) ??
    takeToldByPrice(told, k) ??
    takeAtCue(told, k)
  );
}

function takeHad(told: GoodsTold, k: number): number | undefined {
  const after = hadAlready(told, k);
  if (after) for (const x of told.items.slice(k, after)) told.claims.cut.add(x);
  return after || undefined;
}

/** "no pins left, two packs to get" */
function takeNoneLeft(told: GoodsTold, k: number): number | undefined {
  const none = noneLeft(told.items, k);
  if (!none) return undefined;
  pushGood(told, none, 'needed');
  for (const x of told.items.slice(k, none.next + 1)) told.claims.cut.add(x);
  return none.next + 1;
}

/** "75 cm calico used, 40 cm left", "four feet of binding left over in the box" */
function takeUsedBehind(told: GoodsTold, k: number): number | undefined {
  const behind = usedBehind(told.items, k, justCounted(told.state, told.sentence));
  if (!behind) return undefined;
  pushGood(told, behind.good, behind.use);
  for (const x of told.items.slice(behind.good.from, behind.next)) told.claims.cut.add(x);
  return behind.next;
}

/** A list that goes on behind a semicolon. */
function goesOnWithList(told: GoodsTold, list: ListBefore, number: number): void {
  const { state, sentence, items, made, priced } = told;
  // "to buy - net 2 yd; needles 1 pk"
  if (
    !made.length &&
    sentence.number === list.sentence + 1 &&
    state.tokens[(items[0]?.i ?? 0) - 1]?.w === ';' &&
    items.some((x) => x.quantity) &&
    !items.some((x) => x.action || x.place?.kind === 'blocks' || x.finding) &&
    findGood(items, 0, priced)?.head !== undefined
  )
    takeList(told, items, 0, list.use, true);
  // "still to get: batting, 2 yards; binding, 7 yards": the list goes on behind a semicolon
  if (!made.length && list.number === number - 1 && isAfterSemicolon(state, items)) {
    const good = findGood(items, 0, true);
    if (
      good?.head !== undefined &&
      (good.quantity !== undefined || good.next === items.length) &&
      // "…; maybe vacuum the binding"
      !items.some((x) => x.action && !x.material && !x.object)
    )
      takeList(told, items, 0, list.use, true);
  }
  // "Bought three yards of muslin. And two spools of thread"
  if (list.number === number - 1) goesOnFrom(told, list.use);
}

/** "bought 2 spools of grey thread", and in the next note or the next sentence "and a pack of needles", "3 m of calico too". */
function goesOnFrom(told: GoodsTold, use: MaterialUse): void {
  const { items, made } = told;
  if (made.length) return;
  if (items.some((x) => x.place || x.finding || (x.action && !x.material) || x.cost || x.duration || x.clock))
    return;
  let from = 0;
  while (/^(?:and|also|plus|oh|then|&|\+|,)$/.test(w(items, from))) from++;
  const good = findGood(items, from, true);
  // "and two spools of white" is told by what it comes on
  const named = good?.head !== undefined || /^(?:spool|skein|ball)$/.test(good?.unit ?? '');
  if (!good || !named || (good.quantity === undefined && !/^(?:a|an|some)$/.test(w(items, from)))) return;
  const behind = wordsBetween(items, good.next).trim();
  const too = /^(?:too|as well|also)(?: [.!])*$/.test(behind);
  if (!(too || (from > 0 && /^[.! ]*$/.test(behind)))) return;
  takeList(told, items, from, use, true);
}

function goesOnFromLastNote(told: GoodsTold): void {
  const before = told.state.memory.last?.entries.at(-1)?.entry;
  if (before?.kind === 'material' && before.use) goesOnFrom(told, before.use);
}

/** "been through the bath, forty grams of soap flakes": a wash uses up what it is told with. */
function takeWashed(told: GoodsTold): void {
  const { items, claims, made, priced } = told;
  // "cold it is, with a splash of vinegar": how it is going to be washed
  if (settlesWash(told)) return;
  if (!made.length && !priced)
    for (let m = 0; m < items.length; m++) {
      const little = A_LITTLE.test(w(items, m)) && w(items, m + 1) === 'of';
      if ((!items[m]!.quantity?.unit && !little) || claims.cut.has(items[m]!)) continue;
      const good = findGood(items, little ? m + 2 : m, false);
      if (!good || (good.material !== 'detergent' && !(little && good.material === 'other'))) continue;
      if (good.quantity === undefined && !little) continue;
      if (/ (will|'ll|need|needs|want|wants|going to|to|should|maybe|might) /.test(wordsBetween(items, 0, m)))
        continue;
      takeList(told, items, good.from, 'used', false);
      break;
    }
}

const settlesWash = ({ state, sentence }: GoodsTold): boolean =>
  state.drafts.some(
    ({ entry: e, sentence: n }) => e.kind === 'decision' && e.about === 'washing' && n === sentence.number,
  );

/** What soap and vinegar are measured in. */
const A_LITTLE =
  /^(?:splash|dash|drop|drops|squirt|glug|pinch|capful|cupful|cup|spoonful|spoonfuls|spoon|spoons|teaspoon|teaspoons|tablespoon|tablespoons|handful|dollop)$/;

/** "no hang on, I've got one of those": what was to be got, or told with no word for getting it, is on hand. Gives the index after the words. */
function hadAlready(told: GoodsTold, k: number): number | undefined {
  const { state, sentence, items, made } = told;
  const had = hadAfterAll(items, k);
  if (!had) return undefined;
  const wanted = state.drafts.findLast(
    ({ entry: e, sentence: n }) =>
      e.kind === 'material' &&
      e.use === 'needed' &&
      n >= sentence.number - 1 &&
      n <= sentence.number &&
      (!had.named || e.material === had.named.material),
  );
  if (wanted?.entry.kind === 'material') {
    const { quantity, unit, ...rest } = wanted.entry;
    wanted.entry = {
      ...rest,
      use: 'on-hand',
      ...(had.some || quantity === undefined ? {} : { quantity }),
      ...(had.some || !unit ? {} : { unit }),
    };
    return had.next;
  }
  // "three yards of muslin for the back, no hang on, I have that already"
  const good = made.length || had.named ? undefined : findGood(items, 0, false);
  if (good?.quantity === undefined || good.head === undefined) return undefined;
  if (good.next !== k && !(w(items, good.next) === ',' && good.next === k - 1)) return undefined;
  pushGood(told, good, 'on-hand');
  return had.next;
}

/** "no pins left", "not any thread left", "the thread's run out": what has run out. */
function noneLeft(items: Item[], k: number): GoodFound | undefined {
  const out = items[k]!.material && RUN_OUT.exec(wordsBetween(items, k + 1, k + 5))?.[0];
  if (out && (!items[k]!.action || items[k]!.material === 'pins') && !items[k]!.place) {
    const next = k + out.trim().split(' ').length;
    return { ...findGood(items, k, false)!, items: items.slice(k, next + 1), next };
  }
  if (w(items, k) !== 'no' && !(w(items, k) === 'any' && /^(n't|not)$/.test(w(items, k - 1))))
    return undefined;
  const good = findGood(items, k + 1, false);
  return good?.head !== undefined &&
    good.quantity === undefined &&
    /^(left|remaining)$/.test(w(items, good.next))
    ? good
    : undefined;
}

const RUN_OUT = /^ (?:'s|has|have|is|are) (?:now |just |all )?(?:run out|used up|all used up) /;

const isAfterSemicolon = (state: ReaderState, items: Item[]): boolean =>
  state.tokens[(items[0]?.i ?? 0) - 1]?.w === ';';
