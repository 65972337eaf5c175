import type { LengthUnit, Measure } from '../../../shared/vocabulary.ts';
import type { Item } from '../item.ts';
import { itemWord as w } from '../item-word.ts';
import { wordsBetween } from '../words-between.ts';
import type { PlainSize } from './plain-sizes.ts';

/** "of yarn on each tie", "of wool left at every knot": how long its ends are. */
const OF_YARN =
  /^ (?:or so )?of (?:\w+ ){0,2}(?:yarn|thread|wool|floss|cotton|string|twine|tail|end)s? (?:(?:left|hanging|showing|loose) )*(?:on|at|to|for|from|either side of|each side of) (?:each|every|the|all the|all|both)?/;
const TIES = / (?:tie|ties|knot|knots|tying) /;
/** "for the seams", "on all the seams", "to the seams" */
const FOR_SEAMS =
  /^ (?:for|on|in|to|as) (?:(?:the|all|every|each|my|a) )*(?:seams?|seam allowances?|allowances?|turnings?|sa) /;
const MOST_SEAM: Record<string, number> = { in: 1, cm: 2.5, mm: 25 };
/** "spacing of the ties is to be", "ties go in at a hand's breadth, say", "ties are about" */
const TIES_LIE =
  / (?:(?:spacing|distance|gap|space)s? (?:(?:of|for|between|on|from) (?:the |each |one )?(?:ties|tie|knots|knot|tying)(?: to (?:the next|tie|knot|another))?|will|is|'s)|(?:ties|knots) (?:to )?(?:go|sit|come|are|lie|fall)(?: in| about| roughly)*(?: at| every| with)?) (?:(?!and |but |so |[.;] )\S+ ){0,7}$/;
const NO_SPACING = /^ (?:long|tails?|ends?|wide|of|left|wool|cotton) /;

/**
 * Sizes told in other words than their names: "six mil for the seams", "an inch of yarn on each tie", "ties go in at a hand's breadth, say
 * ten centimetres", "the spacing of the ties is to be 10 cm", "a nine inch block".
 */
export function sizesOtherwise(
  items: Item[],
  lengthUnit: (x: Item | undefined) => LengthUnit | undefined,
): PlainSize[] {
  const out: PlainSize[] = [];
  const all = wordsBetween(items);
  const ties = TIES.test(all);
  items.forEach((x, k) => {
    const unit = lengthUnit(x);
    if (!unit || x.quantity?.value === undefined || !/^(?:in|cm|mm)$/.test(unit)) return;
    const put = (of: Measure): void => {
      out.push({ of, at: k, head: x });
    };
    const behind = wordsBetween(items, k + 1, k + 9);
    if (FOR_SEAMS.test(behind) && x.quantity.value <= MOST_SEAM[unit]!) put('seam');
    else if (ties && OF_YARN.test(behind) && TIES.test(behind)) put('tail');
    else if (ties && TIES_LIE.test(wordsBetween(items, k - 14, k)) && !NO_SPACING.test(behind))
      put('tie-spacing');
    else if (
      /^blocks?$/.test(w(items, k + 1)) &&
      /^(?:a|an|each|every)$/.test(w(items, k - 1)) &&
      !items[k + 1]!.place
    )
      put('block');
  });
  return out;
}
