import { itemWord as w } from '../../item-word.ts';
import { type GoodInHand, isFigure } from './good-in-hand.ts';
import { CONTAINERS, UNIT_ALONE } from './unit-alone.ts';

const DETERMINERS = new Set(
  'the a an some my that those these this more another of about around roughly nearly just only also extra further up to me myself us you her him your our another any full whole big small new old good nice same other loose long short wide narrow'.split(
    ' ',
  ),
);
/** "a queen size pack", "a double roll": for a bed of that size. */
export const BED_SIZES = /^(queen|king|twin|double|single|full|crib|cot|lap|throw|jumbo|bed)$/;

/** Determiners and the amount, before the thing itself. Gives where the noun phrase begins, or nothing where no goods are told. */
export function readAmount(g: GoodInHand): number | undefined {
  const { items } = g;
  let m = g.start;
  // determiners and the amount
  for (; m < items.length; m++) {
    const x = items[m]!;
    if (isFigure(x) && !g.figure && /^(number|no|size|weight|#)$/.test(w(items, m - 1))) continue;
    // "a yard of 45 inch muslin", "3 yards of 108 wide backing": how wide it lies
    if (
      isFigure(x) &&
      g.unit &&
      /^(of|x|,)$/.test(w(items, m - 1)) &&
      (/^(in|cm)$/.test(x.quantity!.unit ?? '') || /^wide$/.test(w(items, m + 1))) &&
      items.slice(m + 1, m + 5).some((y) => y.material || y.fabric)
    )
      continue;
    if (isFigure(x) && !g.figure) {
      g.figure = x;
      g.quantity = x.quantity!.value!;
      g.unit = x.quantity!.unit;
      // "two metres forty of calico": goods are told in the unit that was said
      if (x.quantity!.rule === 'amount.metre-and-cents') {
        g.quantity /= 100;
        g.unit = 'm';
      }
      continue;
    }
    // "dose: 70 ml, wool detergent"
    if (
      x.w === ',' &&
      /^(ml|g|oz)$/.test(g.unit ?? '') &&
      items.slice(m + 1, m + 4).some((y) => y.material === 'detergent')
    )
      continue;
    // "all 4 yd of the ribbon", "all of the floss"
    if (x.w === 'all' && (isFigure(items[m + 1]) || /^(of|the|my|that)$/.test(w(items, m + 1)))) continue;
    // "a few of those big needles": which of the goods, and no place
    if (
      /^(?:those|these|that|this)$/.test(x.w) &&
      w(items, m - 1) === 'of' &&
      items.slice(m + 1, m + 4).some((y) => y.material && !y.place)
    )
      continue;
    if (x.place && !x.part && !x.material && g.figure === undefined && x.place.rule !== 'place.it')
      return undefined;
    // "fat quarter black crepe", without an article: one, of what follows
    const fat = /^fat (?:quarter|qtr|q)(s?)$/.exec(x.w);
    if (fat && !g.unit) {
      g.unit = 'fat-quarter';
      if (g.quantity === undefined) {
        if (fat[1]) g.uncounted = true;
        else g.quantity = 1;
      }
      if (!g.figure) g.figure = x;
      continue;
    }
    if (x.material || x.fabric) break;
    if (x.w === 'more' || x.w === 'another' || x.w === 'extra' || x.w === 'same') g.more = true;
    if (Object.hasOwn(UNIT_ALONE, x.w) && !x.action && g.unit === undefined) {
      // "pkt pins", "spool of thread"; a plural without its number leaves it open
      if (g.quantity === undefined) {
        if (/^(many|x)$/.test(w(items, m - 1)) || /^(cm|mm)$/.test(x.w)) g.uncounted = true;
        else if (/s$/.test(x.w) && !/^(yds|pks|pcs|fqs)$/.test(x.w) && x.w !== 'gross') g.uncounted = true;
        else g.quantity = 1;
      }
      g.unit = UNIT_ALONE[x.w];
      if (!g.figure) g.figure = x;
      continue;
    }
    if (x.w === 'fat' && /^(?:quarters?|qtrs?|qrtrs?|qts?|qs?)$/.test(w(items, m + 1))) {
      g.unit = 'fat-quarter';
      if (g.quantity === undefined) g.quantity = 1;
      m++;
      continue;
    }
    // "fat quarters x 4"
    if (/^[x×]$/.test(x.w) && g.unit && isFigure(items[m + 1]) && !items[m + 1]!.quantity!.unit) {
      m++;
      g.figure = items[m]!;
      g.quantity = g.figure.quantity!.value!;
      g.uncounted = false;
      continue;
    }
    if (CONTAINERS.has(x.w) && (w(items, m + 1) === 'of' || items[m + 1]?.material)) continue;
    if (/^(number|many|few|couple|pair|length|amount|bit|lot|lots|much|however|x|whatever)$/.test(x.w))
      continue;
    if (DETERMINERS.has(x.w)) continue;
    // "used up the last 4 m of binding"
    if (x.w === 'last' && (isFigure(items[m + 1]) || Object.hasOwn(UNIT_ALONE, w(items, m + 1)))) continue;
    if (BED_SIZES.test(x.w) && !x.material && !x.fabric) continue;
    if (/^sized?$/.test(x.w) && BED_SIZES.test(w(items, m - 1))) continue;
    if (x.w === '#' && isFigure(items[m + 1])) continue;
    if (x.w === 'so' && w(items, m + 1) === 'many') continue;
    break;
  }
  return m;
}
