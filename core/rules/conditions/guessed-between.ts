import { boundaryBefore, type Item } from '../item.ts';
import { wordsBetween } from '../words-between.ts';

/** What she takes it for: "I'd swear it's jam", "jam I think", "looks like coffee". */
const GUESS =
  /^ (?:(?:i|we) (?:'d|would|'ll|will)? ?(?:swear|say|guess|bet|reckon|wager|think|suppose|fancy)(?: (?:it|that) (?:'s|is|was|must be))? (?:\S+ ){0,4}|(?:it|that|this) (?:looks|smells|might|may|must|could|'s|is) (?:\S+ ){1,5}|(?:\S+ ){1,4}(?:i|we) (?:(?:'d|would) (?:have )?)?(?:think|thought|reckon|guess|say|said|suppose|imagine)(?: it is)? |(?:\S+ ){1,3}(?:most likely|by the (?:look|looks|smell|feel) of (?:it|things)|or something(?: like (?:it|that))?|or so it looks|if you ask me|at a guess|no doubt|for sure) |(?:looks|smells) (?:like|of) (?:\S+ ){1,4}|(?:probably|possibly|maybe|perhaps) (?:\S+ ){1,4})$/;
const LEADS_TO_PLACE =
  /^(?:on|in|at|along|across|over|near|round|around|by|down|between|beside|below|above|under|right|just)$/;
const LONGEST = 8;

/**
 * "there's a stain, I'd swear it's jam, on the middle block": what is guessed between two commas tells nothing of its own, and the place
 * behind it is the damage's. The items without it.
 */
export function withoutGuessed(items: Item[]): Item[] {
  const found = items.findIndex((x) => x.finding || x.fail);
  if (found < 0) return items;
  for (let a = found + 1; a < items.length; a++) {
    if (items[a]!.w !== ',') continue;
    const b = items.findIndex((x, k) => k > a + 1 && x.w === ',');
    if (b < 0) return items;
    if (b - a > LONGEST || !LEADS_TO_PLACE.test(items[b + 1]?.w ?? '')) continue;
    const between = items.slice(a + 1, b);
    if (between.some((x) => tells(x)) || !GUESS.test(wordsBetween(between))) continue;
    return [...items.slice(0, a), ...items.slice(b + 1)];
  }
  return items;
}

const tells = (x: Item): boolean =>
  Boolean(
    x.finding || x.fail || x.action || x.clock || x.duration || x.quantity || x.fabric || x.stitch || x.cost,
  ) ||
  (x.place !== undefined && x.place.how === 'said');

const ONLY_DAMAGE =
  /^(?:a|an|another|the|big|small|little|tiny|huge|nasty|bad|long|old|and|one|more|very|badly)$/;
const ONLY_PLACE = /^(?:,|in|on|at|the|and|&|along|down|of|right|just|there|over)$/;

/** "Hole. Row two, block five. About the size of a penny.": where it is, told in a sentence of its own. */
export function withPlaceBehindStop(items: Item[]): Item[] {
  const stop = items.findIndex((x) => /^[.!]$/.test(x.w));
  if (stop < 1 || stop > 4) return items;
  const damage = items.slice(0, stop);
  if (!damage.some((x) => x.finding) || !damage.every((x) => x.finding || ONLY_DAMAGE.test(x.w)))
    return items;
  const end = items.findIndex((x, k) => k > stop && /^[.;!?\n]$/.test(x.w));
  const where = items.slice(stop + 1, end < 0 ? undefined : end);
  const named = where.some((x) => x.place?.how === 'said' && x.place.places.length);
  if (!named || !where.every((x) => x.place || ONLY_PLACE.test(x.w))) return items;
  return [...damage, boundaryBefore(items[stop]!, ','), ...items.slice(stop + 1)];
}
