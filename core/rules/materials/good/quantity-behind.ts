import { LENGTH_UNIT_SET } from '../../../lexicon/units.ts';
import { itemWord as w } from '../../item-word.ts';
import { behindWhen } from '../behind-good.ts';
import { purposeAt } from '../purpose-at.ts';
import { STORES } from '../stores.ts';
import { BED_SIZES } from './amount-of-good.ts';
import type { GoodInHand } from './good-in-hand.ts';
import { UNIT_ALONE } from './unit-alone.ts';

/** How much of it, told behind it: "flannel 3 1/2 yd", "wadding (2 m)". */
export function readQuantityBehind(g: GoodInHand): void {
  const { items } = g;
  // "flannel 3 1/2 yd", "muslin in the drawer, two metres"
  if (!g.figure && g.head >= 0) {
    let q = g.next;
    // "batting, crib size, one pack"
    if (w(items, q) === ',' && BED_SIZES.test(w(items, q + 1)) && /^sized?$/.test(w(items, q + 2))) q += 3;
    // "wadding (2 m)"
    if (w(items, q) === '(' && items[q + 1]?.quantity && w(items, q + 2) === ')') {
      g.figure = items[q + 1]!;
      g.quantity = g.figure.quantity!.value;
      g.unit = g.figure.quantity!.unit;
      g.next = q + 3;
      q = g.next;
    }
    // "nineteen for the silk, that's a metre and a half"
    if (
      w(items, q) === ',' &&
      /^(?:that|it|which)$/.test(w(items, q + 1)) &&
      /^(?:'s|is|was)$/.test(w(items, q + 2))
    )
      if (items[q + 3]?.quantity?.unit && !items[q + 4]?.material) q += 3;
    if (/^(in|on)$/.test(w(items, q)) && STORES.test(w(items, q + 1))) q += 2;
    else if (/^(in|on)$/.test(w(items, q)) && STORES.test(w(items, q + 2))) q += 3;
    // "the muslin was five yards at 4.99"
    if (
      /^(was|were)$/.test(w(items, q)) &&
      items[q + 1]?.quantity?.unit &&
      items.slice(q + 2, q + 4).some((x) => x.cost)
    )
      q++;
    q = behindWhen(items, q);
    while (
      /^[,:=x×-]$/.test(w(items, q)) ||
      /^(about|roughly|say|like|by|a single|single|plenty|lots|loads|maybe|around)$/.test(w(items, q))
    )
      q++;
    if (/^(some|so|however|x|several)$/.test(w(items, q)) || w(items, q) === 'number') {
      let u = q;
      while (/^(some|number|of|so|many|however|x|several)$/.test(w(items, u)) && u < q + 4) u++;
      if (/s$/.test(w(items, u)) && Object.hasOwn(UNIT_ALONE, w(items, u))) {
        g.uncounted = true;
        g.unit = UNIT_ALONE[w(items, u)];
        g.next = u + 1;
      }
    }
    const late = items[q];
    const follower = items[q + 1];
    if (
      late?.quantity?.value !== undefined &&
      // "thread 2 @ 3.49"
      (late.quantity.unit ||
        follower?.cost ||
        /^[x×]$/.test(w(items, q - 1)) ||
        // "pins 250, needles 12"
        // "safety pins: plenty, about 200 in the tin"
        ((q === g.next || (w(items, g.next) === ':' && /^(about|around|roughly)$/.test(w(items, q - 1)))) &&
          /^(?:pins|needle|thread)$/.test(g.material ?? '') &&
          /^(?:|,|and|&|\+|in|of|left|here|on)$/.test(w(items, q + 1)))) &&
      !(
        follower &&
        (follower.material ||
          follower.fabric ||
          (w(items, q + 1) === 'of' && !/^(it|that|them)$/.test(w(items, q + 2))) ||
          (items[q + 2]?.material && w(items, q + 1) !== ',' && !follower.cost))
      )
    ) {
      g.quantity = late.quantity.value;
      g.unit = late.quantity.unit;
      g.figure = late;
      g.next = q + 1;
      if (w(items, g.next) === 'of') g.next += 2;
      const late2 = purposeAt(items, g.next);
      if (late2) {
        if (late2.for === 'backing' && g.material === 'fabric') g.material = 'backing';
        if (late2.for === 'ties' && g.material && /^(fabric|thread)$/.test(g.material))
          g.material = 'tie-thread';
        g.next = late2.next;
      }
    }
  }
  // "a scrap of muslin, maybe a quarter of a yard": how much that is
  if (g.unit === 'piece' && g.head >= 0 && w(items, g.next) === ',') {
    let q = g.next + 1;
    while (/^(maybe|about|say|perhaps|roughly|around|nearly|call|it|just|some|not|quite)$/.test(w(items, q)))
      q++;
    const size = items[q]?.quantity;
    if (
      size?.unit &&
      LENGTH_UNIT_SET.has(size.unit) &&
      size.value !== undefined &&
      /^(|,|\.|;|and|for|on)$/.test(w(items, q + 1))
    ) {
      g.quantity = size.value;
      g.unit = size.unit;
      g.next = q + 1;
    }
  }
}
