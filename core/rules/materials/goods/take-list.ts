import type { MaterialUse } from '../../../../shared/vocabulary.ts';
import type { Item } from '../../item.ts';
import { itemWord as w } from '../../item-word.ts';
import { wordsBetween } from '../../words-between.ts';
import { findGood, type GoodFound } from '../find-good.ts';
import { hadAfterAll } from '../had-after-all.ts';
import { countAgain, HAD_HERE } from './count-again.ts';
import { cueAt } from './cue-at.ts';
import type { GoodsTold } from './goods-told.ts';
import { isOther } from './is-other.ts';
import { pushGood } from './push-good.ts';

/** Takes goods one after the other from item `k` on, and gives the index after the last. */
export function takeList(
  told: GoodsTold,
  items: Item[],
  k: number,
  use: MaterialUse,
  listed: boolean,
): number {
  const { claims } = told;
  let at = k;
  let count = 0;
  while (at < items.length) {
    let from = at;
    if (count) {
      let next = at;
      while (/^(,|and|&|\+|plus|then|also|uh|um|er|oh)$/.test(w(items, next)) && next < at + 3) next++;
      if (next > at && leavesGoods(items, next)) break;
      while (
        /^(,|and|&|\+|plus|then|also|:|together|along|with|-|--|i|got|bought|had|took|there|were|was|uh|um|er|oh|ah|what|else|let|me|see|yes|yeah|as|well)$/.test(
          w(items, from),
        ) &&
        from < at + 6
      )
        from++;
      if (/^(we|she|he|they|it)$/.test(w(items, from))) break;
      const cue = cueAt(items, from === at ? at : from);
      if (cue && !/^(got|took|had|used|left|spare)$/.test(w(items, from)) && !(cue.use === use)) break;
      // "two rolls of batting in the shop and I bought two hundred pins"
      if (use !== 'bought' && boughtBetween(items, at, from)) break;
    }
    // "40 g of soap flakes, plenty of water, and the vinegar": water is no goods
    const wet = count ? WATER.exec(wordsBetween(items, from, from + 8))?.[0] : undefined;
    if (wet && /^(?:|,|and|&|\+|plus|[.;])$/.test(w(items, from + wet.trim().split(' ').length))) {
      at = from + wet.trim().split(' ').length;
      continue;
    }
    // "two packs of needles, scrap the needles, I found some"
    if (count && (hadAfterAll(items, at) ?? hadAfterAll(items, from))) break;
    let good = findGood(items, from, listed);
    // "a metre of net, because they close early, and two spools of thread": on to the next amount
    if (count && !listGood(good)) {
      const on = nextAmount(items, at);
      if (on !== undefined) {
        from = on;
        good = findGood(items, on, false);
      }
    }
    if (!good) break;
    if (count && good.quantity === undefined && !good.cost && !good.uncounted && good.head === undefined)
      break;
    // after the list the talk goes on: "…, and 3-2 patched with the linen"
    if (
      count &&
      good.head !== undefined &&
      good.quantity === undefined &&
      !good.cost &&
      items.slice(from, good.next + 3).some((x) => x.action && !x.material && x.action.form !== 'base')
    )
      break;
    if (count && good.quantity === undefined && !good.cost && from === at) break;
    // "half a yard of tulle and all the pearl satin ones are holding up": what is said of a cloth, and no more goods
    if (
      count &&
      good.quantity === undefined &&
      !good.cost &&
      items[good.head ?? from]?.fabric &&
      TOLD_OF.test(wordsBetween(items, good.next, good.next + 4))
    )
      break;
    // "… and a couple packs of pins I've got already"
    const own = use === 'needed' && count ? ownedBehind(items, good.next) : good.next;
    // "… and I got one roll of batting here already"
    const kept =
      use === 'bought' &&
      count > 0 &&
      /^(got|had)$/.test(w(items, good.from - 1)) &&
      HAD_HERE.test(wordsBetween(items, good.next, good.next + 5));
    // "used half a spool on that, two spools left": of the same, and not used
    const over = use === 'used' && count > 0 && LEFT.test(wordsBetween(items, own, own + 2)) ? 1 : 0;
    pushGood(told, good, kept || over || own > good.next ? 'on-hand' : use);
    for (let m = at; m < own + over; m++) claims.cut.add(items[m]!);
    at = own + over;
    count++;
    // what is said of the thing, up to the next joint
    let skip = at;
    while (
      skip < items.length &&
      skip < at + 9 &&
      !/^(,|and|&|\+|plus|then|but|so)$/.test(w(items, skip)) &&
      // "tape for hanging it": what is spoken of, and no block
      !(items[skip]!.place?.kind !== 'pointer' && items[skip]!.place?.places.some((p) => /\d/.test(p))) &&
      !items[skip]!.quantity?.unit &&
      !items[skip]!.cost &&
      // "one ball of it in the drawer I need to buy three more"
      !(skip > at && runsOn(items, skip, use)) &&
      // "two metres left in the drawer", "six feet of tape for hanging it"
      (!items[skip]!.action ||
        ((use === 'on-hand' || kept) && w(items, skip) === 'left') ||
        (w(items, skip - 1) === 'for' && items[skip]!.action!.form === 'ing')) &&
      !items[skip]!.finding
    )
      skip++;
    if (skip === items.length || /^(,|and|&|\+|plus|then|but)$/.test(w(items, skip))) {
      for (let m = at; m < skip; m++) claims.cut.add(items[m]!);
      at = skip;
    } else if (items[skip]?.quantity?.unit && skip === at) continue;
    if (
      !/^(,|and|&|\+|plus|then)$/.test(w(items, at)) &&
      !/^ (?:together|along) with /.test(wordsBetween(items, at, at + 2)) &&
      !items[at]?.quantity?.unit &&
      !items[at]?.quantity?.value &&
      // "muslin 4.5 yd @ 5.25 thread 3 @ 2.10"
      !(items[at]?.material && items[at - 1]?.cost && findGood(items, at, listed)?.cost)
    )
      break;
  }
  return Math.max(at, k + 1);
}

const WATER =
  /^ (?:(?:with|in|plenty|lots|loads|lot|bath|bowl|bucket|tub|sink|jug|of|a|the|some|nice|clean|cold|cool|warm|hot|tepid|lukewarm|soft|rain|distilled|fresh|only|just) )*(?:water|rainwater) /;

/** "I might", "maybe", "the backing has to", "the batting is settled": said of work or of a matter. */
const ABOUT_TO_DO =
  /^ (?:(?:i|we) (?:might|may|'ll|will|'m|am|could|should|did) |(?:maybe|perhaps|possibly|leaving|left) |i 'm )/;
const SAYS = /^(is|'s|are|has|have|was|were|needs?|wants?|smells?|looks?|will|'ll|gets?)$/;

/** "used a spool of cream thread, and the backing has mildew": the talk leaves the goods. A price or an amount told of them does not. */
function leavesGoods(items: Item[], k: number): boolean {
  let to = k;
  while (to < items.length && !/^(,|and|&|\+|plus|\.|;|!|\?)$/.test(w(items, to))) to++;
  const rest = items.slice(k, to);
  if (rest.some((x) => x.cost || x.quantity?.value !== undefined)) return false;
  if (ABOUT_TO_DO.test(wordsBetween(rest))) return rest.some((x) => x.action);
  const head = /^(the|that|my)$/.test(w(items, k)) ? k + 1 : k;
  const said = items.slice(head + 2, to);
  return (
    items[head]?.part !== undefined &&
    SAYS.test(w(items, head + 1)) &&
    (said.some((x) => x.finding || x.fail || x.action) ||
      / (?:settled|decided|open|undecided|agreed|off|out) $/.test(wordsBetween(said)) ||
      / (?:has|have) to (?:come|go) /.test(wordsBetween(items, head, to)))
  );
}

const LEFT = /^ (?:left|remaining|spare|over)(?: over)? (?:$|[,.;]|and |now |yet |for )/;

/** "… ones are holding up", "… is frayed", "… blocks there all need lining". */
const TOLD_OF =
  /^ (?:(?:ones?|blocks?|patches|pieces|bits?|there|all|both) ){0,3}(?:is|'s|are|'re|was|were|has|have|looks?|seems?|needs?|wants?|got|held|holding) /;

/** Does the talk between two goods of a list turn to buying ("… and I bought", ", picked up", "… and got … for £7")? */
function boughtBetween(items: Item[], at: number, from: number): boolean {
  for (let m = at; m < from; m++) {
    const cue = cueAt(items, m);
    if (cue?.use !== 'bought') continue;
    if (!cue.weak) return true;
    const good = findGood(items, cue.next, false);
    if (good?.cost && good.quantity !== undefined) return true;
  }
  return false;
}

/** "I've got already", "we have at home": the index after such words, or `k` where there are none. */
function ownedBehind(items: Item[], k: number): number {
  const told =
    /^ (?:that |which )?(?:i|we) (?:'ve got|have got|already have|have already|'ve already got|have|own)(?: (?:already|here|at home|in (?:the|my) \S+))* /.exec(
      wordsBetween(items, k, k + 8),
    )?.[0];
  return told && !/(?:have|got) to $/.test(told) ? k + told.trim().split(' ').length : k;
}

/** Does another use of goods begin here, with nothing said to join it? */
function runsOn(items: Item[], k: number, use: MaterialUse): boolean {
  const from = /^(i|we)$/.test(w(items, k)) ? k + 1 : k;
  const cue = cueAt(items, from);
  if (cue && cue.use !== use && countAgain(items, from, cue)) return true;
  if (!cue || cue.use === use || cue.weak || isOther(items, from, cue, false)) return false;
  const good = findGood(items, cue.next, false);
  return good?.quantity !== undefined || good?.head !== undefined;
}

const listGood = (good: GoodFound | undefined): boolean =>
  good !== undefined && (good.quantity !== undefined || good.cost !== undefined || good.head !== undefined);

/** The amount of goods that goes on with the list after a few words of talk; nothing where work is told between. */
function nextAmount(items: Item[], at: number): number | undefined {
  for (let m = at; m < Math.min(items.length, at + 26); m++) {
    const x = items[m]!;
    if (x.finding || x.duration || x.span || x.place?.kind === 'blocks' || x.action?.form === 'past')
      return undefined;
    // another use begins: "three balls in the cupboard, but I'll have to buy half a dozen more"
    const cue = cueAt(items, m);
    if (cue && !isOther(items, m, cue, false)) return undefined;
    if (
      x.quantity?.unit &&
      x.quantity.value !== undefined &&
      /^(and|&|\+|plus|,)$/.test(w(items, m - 1)) &&
      items.slice(m + 1, m + 6).some((y) => y.material || y.fabric)
    )
      return m;
  }
  return undefined;
}
