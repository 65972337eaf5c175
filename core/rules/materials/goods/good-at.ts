import type { Item } from '../../item.ts';
import { itemWord as w } from '../../item-word.ts';
import { wordsBetween } from '../../words-between.ts';
import { findGood, type GoodFound } from '../find-good.ts';
import { STORES } from '../stores.ts';
import type { Cue } from './cue-at.ts';
import { keptInStore } from './kept-in-store.ts';

/** When or where the goods were got, behind them and one more. */
const BOUGHT_THEN =
  /^ (?:(?:,|and|&) (?:\w+ ){1,3}){0,2}(?:today|yesterday|this (?:morning|afternoon|week)|last (?:night|week)|(?:at|from) the (?:\w+ )?(?:market|shop|store|fair|sale|haberdasher)|in town|on the way (?:home|back|in)|on (?:mon|tues|wednes|thurs|fri|satur|sun)day|online)\b/;

/** The first good after a cue; weak cues want an amount. */
export function goodAt(items: Item[], at: number, cue: Cue, priced: boolean): GoodFound | undefined {
  const good = findGood(items, at, !cue.weak);
  if (!good) return undefined;
  // "there's some of the calico missing in 3-1": how it was found
  if (
    cue.weak &&
    cue.use === 'on-hand' &&
    good.quantity === undefined &&
    items.slice(good.next, good.next + 3).some((x) => x.finding || (x.fail && x.w !== 'left'))
  )
    return undefined;
  // "found half a yard of the same pinstripe", but "found a piece of paper behind it"
  if (
    cue.weak &&
    /^(?:found|unearthed|dug|across|up|out)$/.test(w(items, cue.next - 1)) &&
    (!/^(?:yd|m|fat-quarter|spool|skein|ball|pack|roll)$/.test(good.unit ?? '') || good.head === undefined)
  )
    return undefined;
  // "there's four inches of overhang"
  if (
    items
      .slice(good.from, good.next)
      .some((x) => /^(overhang|tail|seam|diagonal|tie-spacing)$/.test(x.measure ?? '') && !x.material)
  )
    return undefined;
  // "get thread, pins and three metres of calico": an order to oneself that names nothing but goods
  if (cue.use === 'needed' && cue.next === 1 && good.head !== undefined && items[at]?.w !== 'the')
    if (/^(,|and|&|)$/.test(w(items, good.next))) return good;
  if (good.quantity === undefined && !good.uncounted && cue.weak && !(priced && good.cost)) {
    // "have the calico", "there's muslin in the drawer", "i 've plenty of calico"
    const store = STORES.test(w(items, good.next + 2)) || STORES.test(w(items, good.next + 1));
    if (
      (cue.use === 'on-hand' || (w(items, cue.next - 1) === 'got' && keptInStore(items, good.next))) &&
      good.head !== undefined &&
      (store ||
        // "need net, have thread": nothing but that
        (w(items, cue.next - 1) === 'have' &&
          /^(|[,.;]|i|we)$/.test(w(items, cue.next - 2)) &&
          /^(|[,;])$/.test(w(items, good.next))) ||
        /^(left|spare|already)$/.test(w(items, good.next)) ||
        // "I've net over", and not "over it"
        (w(items, good.next) === 'over' && !items[good.next + 1]) ||
        / (enough|plenty|some|loads|lots) /.test(wordsBetween(items, at - 1, good.head)))
    )
      return good;
    // "got some thread today", "got thread and needles at the market"
    if (
      cue.use === 'bought' &&
      w(items, cue.next - 1) === 'got' &&
      good.head !== undefined &&
      BOUGHT_THEN.test(wordsBetween(items, good.next))
    )
      return good;
    // "got the calico and the thread for £12 together"
    if (
      priced &&
      cue.use === 'bought' &&
      good.head !== undefined &&
      /^(and|,|&)$/.test(w(items, good.next))
    ) {
      const other = findGood(items, good.next + 1, false);
      if (other?.cost && other.head !== undefined) return good;
    }
    return undefined;
  }
  if (
    cue.weak &&
    good.quantity !== undefined &&
    !good.unit &&
    !good.cost &&
    !priced &&
    good.head === undefined &&
    !(good.points === 'more' && cue.use === 'needed')
  )
    return undefined;
  if (
    cue.weak &&
    good.quantity !== undefined &&
    (!good.unit || good.unit === 'piece') &&
    !good.cost &&
    !priced &&
    cue.use === 'bought'
  )
    return undefined;
  // "there's a piece of the top gone", "there are two inches of seam open": no goods
  if (cue.weak && cue.use === 'on-hand') {
    if (
      good.head !== undefined &&
      items.slice(good.from, good.next + 4).some((x) => x.finding || x.fail || x.seam)
    )
      return undefined;
    if (
      items
        .slice(good.next, good.next + 4)
        .some((x) => (x.finding && x.finding !== 'sound') || x.fail || x.w === 'gone')
    )
      return undefined;
    if (good.head === undefined && !good.points && !good.material && (!good.unit || good.unit === 'piece'))
      return undefined;
    // "I've got the denim one spread out": the quilt on the table
    if (/^(one|quilt)$/.test(w(items, good.next)) && good.quantity === undefined) return undefined;
  }
  return good;
}
