import { startOfSentence } from '../clause/joints.ts';
import type { Item } from '../item.ts';
import { itemsIn, wordsBetween } from '../words-between.ts';

/** "so none to buy", "no need to get any more", "none needed", up to the end of the statement. */
const NONE_TO_BUY =
  /^ ((?:(?:,|-|--|so|and|which means|that means) )*(?:none|nothing|nowt|no more|not any|no need|(?:(?:i|we) )?(?:do n't need|need n't|wo n't need|have n't|need no more|need none))(?: (?:to|needed|wanted|required|buy|buying|get|order|any|more|them|it|there|of|now|then|for))*) (?:$|[.;!?])/;
const HAS = /^(?:have|'ve|has|got|there|plenty|enough)$/;

/** "have 2 packs of needles, so none to buy": what is in the house is told before, and nothing is wanted. */
export function withoutNoneToBuy(items: Item[]): Item[] {
  for (let k = 3; k < items.length; k++) {
    const said = NONE_TO_BUY.exec(wordsBetween(items, k, k + 11))?.[1];
    if (!said || !/ (?:buy|get|order|need|needed|wanted|required)\b/.test(` ${said}`)) continue;
    const own = items.slice(startOfSentence(items, k), k);
    if (!own.some((x) => HAS.test(x.w)) || !own.some((x) => x.material || x.quantity?.unit)) continue;
    return [...items.slice(0, k), ...withoutNoneToBuy(items.slice(k + itemsIn(items, k, said)))];
  }
  return items;
}
