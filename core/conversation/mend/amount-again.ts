import type { Entry } from '../../../shared/entry.ts';
import type { Item } from '../../rules/item.ts';
import { put, type Standing } from '../standing.ts';
import { named } from './items.ts';

const LEAD = String.raw`(?:(?:no|oh|ah|well|sorry|wait|and|but|so|hang on|actually|,|-) )*`;
/** "the net should be two and a half", "the needles ought to have been two packs" */
const SHOULD_BE = new RegExp(
  String.raw`^ ${LEAD}(?:(?:the|that|those|my) )?(?:\S+ ){1,3}?(?:should(?: n't)?|ought to|needs to|need to|has to|have to|must|was meant to|were meant to) (?:have been|be|say|read) (?:only |just |more like |really )*`,
);
/** "76, the length", "two and a half, the net", "five inches for the ties" */
const TOLD_BEHIND = new RegExp(
  String.raw`^ ${LEAD}(?:it 's |that 's |make it |make that )*\S+(?: \S+){0,3}? (?:, )?(?:for |on |of )?the (\S+)(?: (?:was|is|i mean|rather|actually|sorry|[.!]))* $`,
);

/** A number of the last note told again with the thing that it counts or measures; nothing else may stand in the note. */
export function amountAgain(standing: Standing[], items: Item[], words: string): boolean {
  return (
    items.length <= 12 &&
    (itCost(standing, items, words) || ofNamed(standing, items, words) || priceOfEach(standing, items, words))
  );
}

function ofNamed(standing: Standing[], items: Item[], words: string): boolean {
  const should = SHOULD_BE.test(words);
  if (!should && !(items.length <= 7 && TOLD_BEHIND.test(words))) return false;
  const numbers = items.filter((x) => x.quantity?.value !== undefined || x.cost);
  const [number] = numbers;
  if (numbers.length !== 1 || !number) return false;
  if (
    items.some(
      (x) =>
        x.duration ||
        x.clock ||
        x.span ||
        x.finding ||
        (x.place?.kind === 'blocks' && x.place.how === 'said'),
    )
  )
    return false;
  const rest = items.filter((x) => x !== number);
  const meant = standing.filter(({ was }) => rest.some((x) => names(was, x)));
  const [of] = meant;
  if (meant.length !== 1 || !of) return false;
  const { was, draft } = of;
  if (was.kind === 'material' && number.cost) {
    put(
      draft,
      'cost',
      { amount: number.cost.amount, ...(number.cost.each || was.cost?.each ? { each: true } : {}) },
      'amend.amount-again',
      [number],
    );
    return true;
  }
  if (!number.quantity || (was.kind !== 'material' && was.kind !== 'measurement')) return false;
  const slot = was.kind === 'material' ? 'quantity' : 'value';
  // "76, the length" says again what stood; of a thing that had no number it is news
  if (!should && (was.kind === 'material' ? was.quantity : was.value) === undefined) return false;
  put(draft, slot, number.quantity.value, 'amend.amount-again', [number]);
  if (number.quantity.unit) put(draft, 'unit', number.quantity.unit, 'amend.amount-again', [number]);
  return true;
}

const OF: Record<string, RegExp> = {
  width: /^(?:width|across|wide)$/,
  length: /^(?:length|long|down)$/,
  border: /^borders?$/,
  block: /^blocks?$/,
  strip: /^strips?$/,
  seam: /^(?:seams?|allowance|seam allowances?)$/,
  'tie-spacing': /^(?:ties|spacing|tie spacing|knots)$/,
  tail: /^(?:tails?|ends)$/,
  overhang: /^overhang$/,
};

/** Does the word name what was counted or measured? */
const names = (e: Entry, x: Item): boolean =>
  e.kind === 'measurement'
    ? (OF[e.of]?.test(x.w) ?? false)
    : named(e, x) || (e.kind === 'material' && x.material !== undefined && x.material === e.material);

const PRICE = String.raw`(?:(?:that|the|those|these|it|they) )?(?:(?:price|sum|figure|money|cost) )?(?:was|'s|is|were|are|'re) (?:only |just |actually )*(?:the (?:price|cost) )?`;
const FOR_ALL = new RegExp(
  String.raw`^ ${LEAD}${PRICE}(?:for )?(?:the (?:pair|lot|two|three|four|set|whole lot|whole thing)|both|all(?: of them)?|altogether|in all|in total|together|all told|the total)(?: (?:of them|,? ?not each|not apiece|[.!]))* $`,
);
const FOR_EACH = new RegExp(
  String.raw`^ ${LEAD}${PRICE}(?:each|apiece|(?:for )?(?:a|per|one|each|by the) (?:yard|metre|meter|pack|packet|spool|reel|skein|ball|roll|fat quarter|piece)|for one)(?: (?:,? ?not (?:for )?the (?:lot|pair)|not altogether|[.!]))* $`,
);

/** "that price was for the pair", "that's each": of the one price that stands. */
function priceOfEach(standing: Standing[], items: Item[], words: string): boolean {
  const each = FOR_EACH.test(words);
  if (!each && !FOR_ALL.test(words)) return false;
  const priced = standing.filter(({ was }) => was.kind === 'material' && was.cost);
  const [of] = priced;
  if (priced.length !== 1 || of?.was.kind !== 'material' || Boolean(of.was.cost!.each) === each) return false;
  put(
    of.draft,
    'cost',
    { amount: of.was.cost!.amount, ...(each ? { each: true } : {}) },
    'amend.amount-again',
    items,
  );
  return true;
}

const IT_COST = new RegExp(
  String.raw`^ ${LEAD}\S+(?: \S+){0,3} (?:it|that|they|those|the lot|i) (?:cost|was|were|came to|paid|set me back)(?: (?:me|actually|in the end|altogether|for (?:it|them|the lot)|[.!]))* $`,
);

/** "fourteen dollars it cost": of the one thing that was bought. */
function itCost(standing: Standing[], items: Item[], words: string): boolean {
  const sums = items.filter((x) => x.cost);
  if (
    sums.length !== 1 ||
    !IT_COST.test(words) ||
    items.some((x) => x.material || x.fabric || x.duration || x.place?.kind === 'blocks')
  )
    return false;
  const bought = standing.filter(({ was }) => was.kind === 'material' && was.use === 'bought');
  const [of] = bought;
  if (bought.length !== 1 || of?.was.kind !== 'material') return false;
  const { amount, each } = sums[0]!.cost!;
  put(
    of.draft,
    'cost',
    { amount, ...(each || (of.was.cost?.each && !sums[0]!.cost!.whole) ? { each: true } : {}) },
    'amend.amount-again',
    sums,
  );
  return true;
}
