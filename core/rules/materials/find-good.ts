import type { Material, MaterialUnit } from '../../../shared/vocabulary.ts';
import { COLOURS } from '../../lexicon/colours.ts';
import { LENGTH_UNIT_SET, UNIT_WORDS } from '../../lexicon/units.ts';
import type { Item } from '../item.ts';
import { itemWord as w } from '../item-word.ts';
import { wordsBetween } from '../words-between.ts';
import { behindWhen, storeBehind, whenTold } from './behind-good.ts';
import {
  bareSum,
  behindSeller,
  isPlain,
  priceAfterPlace,
  priceInNext,
  priceOfTaken,
} from './price-behind.ts';
import { latePurpose, madeFor, purposeAt } from './purpose-at.ts';
import { STORES } from './stores.ts';

/** One material as it stands in a list: "2 packs needles @ £1.80", "five yards of blue ticking for the backing". */
export type GoodFound = {
  material?: Material;
  /** "it", "those", "more": what was spoken of before. */
  points?: 'it' | 'those' | 'more';
  quantity?: number;
  unit?: MaterialUnit;
  /** A unit in the plural with no number: something is missing. */
  uncounted?: boolean;
  cost?: { amount: number; each?: true };
  items: Item[];
  name: string;
  /** "for it": for what is being talked about. */
  forIt?: boolean;
  from: number;
  next: number;
  head?: number;
};

/** "used eight yards of binding label's gotta go on", "three skeins of floss backing needs a press": the next thing has a verb of its own. */
const beginsAnew = (items: Item[], head: number, k: number): boolean =>
  (items[k]!.object === 'label' || (items[k]!.part !== undefined && items[head]!.material !== 'fabric')) &&
  VERB_BEHIND.test(w(items, k + 1));
const VERB_BEHIND = /^(?:'s|is|has|still|needs?|wants?|goes|gotta|will|'ll|looks|next)$/;

const DETERMINERS = new Set(
  'the a an some my that those these this more another of about around roughly nearly just only also extra further up to me myself us another any full whole big small new old good nice same other loose long short wide narrow'.split(
    ' ',
  ),
);
/** A noun phrase for a thing bought ends before any of these. */
const STOP_WORDS = new Set(
  ", . ; : - -- ( ) / and & + plus or but so then for f at @ in on to from with w off out over under behind was were is are cost costs came left still i we she he they it that which because if when now already each apiece ea per worth have has had gone 've 's need needs needed bought got buy get order ordered used took there here at by into onto if as until the a an my this these those what where both all total together not n't no did do will would could should paid spent today tonight yesterday morning afternoon evening monday tuesday wednesday thursday friday saturday sunday went comes come gets be been just too also".split(
    ' ',
  ),
);
const CONTAINERS = new Set(
  'can cans tin tins bottle bottles jar jars tub tubs bag bags tube tubes bunch set sets bundle bundles box boxes stick sticks bar bars hanks cards pairs pair bit bits scrap scraps strip strips'.split(
    ' ',
  ),
);
/** "a queen size pack", "a double roll": for a bed of that size. */
const BED_SIZES = /^(queen|king|twin|double|single|full|crib|cot|lap|throw|jumbo|bed)$/;
const UNIT_ALONE: Record<string, MaterialUnit> = Object.fromEntries(
  Object.entries(UNIT_WORDS).filter(
    ([word]) =>
      ![
        'in',
        '"',
        'y',
        'm',
        'g',
        'p',
        'length',
        'lengths',
        'square',
        'squares',
        'scrap',
        'scraps',
        'card',
        'cards',
        'box',
        'boxes',
        'mil',
      ].includes(word),
  ),
);

const isFigure = (x: Item | undefined): boolean => x?.quantity?.value !== undefined;

/**
 * Reads the material that begins at item `k`, with its quantity before or after it, what it is for, and its price.
 * `listed`: the words stand in a list of goods, so that a noun of no known kind is a thing too.
 */
export function findGood(items: Item[], k: number, listed: boolean): GoodFound | undefined {
  return w(items, k) === 'for' ? goodForPart(items, k, listed) : goodFrom(items, k, listed);
}

/** "for the backing five yards of flannel": what it is for comes first. */
function goodForPart(items: Item[], k: number, listed: boolean): GoodFound | undefined {
  const purpose = purposeAt(items, k);
  if (!purpose || purpose.for === 'none') return undefined;
  // "ordered for the backing: 5 yd flannel"
  const at = /^[:,]$/.test(w(items, purpose.next)) ? purpose.next + 1 : purpose.next;
  if (!items[at]?.quantity?.unit) return undefined;
  const good = goodFrom(items, at, listed);
  if (!good) return undefined;
  const material = madeFor(good.material, purpose.for);
  return {
    ...good,
    ...(material ? { material } : {}),
    items: items.slice(k, good.next),
    from: k,
  };
}

function goodFrom(items: Item[], k: number, listed: boolean): GoodFound | undefined {
  let m = k;
  let quantity: number | undefined;
  let unit: MaterialUnit | undefined;
  let figure: Item | undefined;
  let uncounted = false;
  let more = false;
  const start = k;
  // determiners and the amount
  for (; m < items.length; m++) {
    const x = items[m]!;
    if (isFigure(x) && !figure && /^(number|no|size|weight|#)$/.test(w(items, m - 1))) continue;
    // "a yard of 45 inch muslin", "3 yards of 108 wide backing": how wide it lies
    if (
      isFigure(x) &&
      unit &&
      /^(of|x|,)$/.test(w(items, m - 1)) &&
      (/^(in|cm)$/.test(x.quantity!.unit ?? '') || /^wide$/.test(w(items, m + 1))) &&
      items.slice(m + 1, m + 5).some((y) => y.material || y.fabric)
    )
      continue;
    if (isFigure(x) && !figure) {
      figure = x;
      quantity = x.quantity!.value!;
      unit = x.quantity!.unit;
      // "two metres forty of calico": goods are told in the unit that was said
      if (x.quantity!.rule === 'amount.metre-and-cents') {
        quantity /= 100;
        unit = 'm';
      }
      continue;
    }
    // "dose: 70 ml, wool detergent"
    if (
      x.w === ',' &&
      /^(ml|g|oz)$/.test(unit ?? '') &&
      items.slice(m + 1, m + 4).some((y) => y.material === 'detergent')
    )
      continue;
    // "all 4 yd of the ribbon", "all of the floss"
    if (x.w === 'all' && (isFigure(items[m + 1]) || /^(of|the|my|that)$/.test(w(items, m + 1)))) continue;
    if (x.place && !x.part && !x.material && figure === undefined && x.place.rule !== 'place.it')
      return undefined;
    if (x.material || x.fabric) break;
    if (x.w === 'more' || x.w === 'another' || x.w === 'extra' || x.w === 'same') more = true;
    if (Object.hasOwn(UNIT_ALONE, x.w) && !x.action && unit === undefined) {
      // "pkt pins", "spool of thread"; a plural without its number leaves it open
      if (quantity === undefined) {
        if (/^(many|x)$/.test(w(items, m - 1)) || /^(cm|mm)$/.test(x.w)) uncounted = true;
        else if (/s$/.test(x.w) && !/^(yds|pks|pcs|fqs)$/.test(x.w) && x.w !== 'gross') uncounted = true;
        else quantity = 1;
      }
      unit = UNIT_ALONE[x.w];
      if (!figure) figure = x;
      continue;
    }
    if (x.w === 'fat' && /^(?:quarters?|qtrs?|qrtrs?|qts?|qs?)$/.test(w(items, m + 1))) {
      unit = 'fat-quarter';
      if (quantity === undefined) quantity = 1;
      m++;
      continue;
    }
    // "fat quarters x 4"
    if (/^[x×]$/.test(x.w) && unit && isFigure(items[m + 1]) && !items[m + 1]!.quantity!.unit) {
      m++;
      figure = items[m]!;
      quantity = figure.quantity!.value!;
      uncounted = false;
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
  // the noun phrase
  let head = -1;
  let first = -1;
  let n = m;
  for (; n < Math.min(items.length, m + 6); n++) {
    const x = items[n]!;
    if (x.cost || x.duration || x.clock || x.span || (x.task && !x.material && !x.action)) break;
    if (
      isFigure(x) &&
      !(x.w.startsWith('size') || w(items, n - 1) === 'size' || w(items, n - 1) === 'number')
    )
      break;
    if (x.material || x.fabric) {
      if (x.action?.form === 'past' && !x.fabric) break;
      if (head >= 0 && figure && beginsAnew(items, head, n)) break;
      // "…, and the label goes on tomorrow"
      if (head < 0 && !figure && x.object === 'label' && VERB_BEHIND.test(w(items, n + 1))) return undefined;
      head = n;
      if (first < 0) first = n;
      continue;
    }
    if (x.token.kind === 'mark' && x.w !== '-') break;
    if (head >= 0) {
      // "cotton tape", "jeans thread": a known noun later in the phrase decides
      if (STOP_WORDS.has(x.w) || x.place || x.action || x.finding) break;
      const later = items.slice(n + 1, n + 3).findIndex((y) => y.material);
      if (later < 0 || items.slice(n, n + 1 + later).some((y) => STOP_WORDS.has(y.w) || isFigure(y))) break;
      continue;
    }
    // "tailor's chalk"
    if (x.w === "'s" && n > m && items[n + 1]?.material && !items[n - 1]!.place) continue;
    if (STOP_WORDS.has(x.w) && !(x.w === 'of' || x.w === 'that' || x.w === 'the')) break;
    if (x.w === 'that' || x.w === 'the') continue;
    if (x.place && !x.part && !x.place.rule.startsWith('place.it')) break;
    if (x.action && x.action.form !== 'base') break;
    if (first < 0) first = n;
  }
  const phraseEnd = head >= 0 ? head + 1 : n;
  const words = items
    .slice(m, phraseEnd)
    .filter((x) => x.token.kind === 'word' && !/^(of|the|that)$/.test(x.w));
  let material: Material | undefined;
  let points: GoodFound['points'];
  let next: number;
  if (head >= 0) {
    const named = items.slice(m, head + 1).filter((x) => x.material || x.fabric);
    material = named.at(-1)!.material ?? 'fabric';
    if (material === 'fabric')
      material =
        named.findLast((x) => x.material && x.material !== 'fabric' && x.material !== 'other')?.material ??
        'fabric';
    next = head + 1;
  } else if (
    /^(it|them|those|these|that|this)$/.test(w(items, m)) ||
    (w(items, m) === 'of' && /^(it|them|those|these|that)$/.test(w(items, m + 1)))
  ) {
    if (!figure) return undefined;
    points = /^(those|these|them)$/.test(w(items, m)) ? 'those' : 'it';
    next = m + 1;
    if (w(items, m) === 'of') next++;
    // "four metres of it there for thirty two euro"
    if (w(items, next) === 'there' && /^(for|at|,)$/.test(w(items, next + 1))) next++;
  } else if (figure && /^(those|these|them|that|this)$/.test(w(items, m - 1)) && w(items, m - 2) === 'of') {
    points = /^(those|these|them)$/.test(w(items, m - 1)) ? 'those' : 'it';
    // "five yards of that stuff they had on the table"
    next = w(items, m) === 'stuff' ? m + 1 : m;
  } else if (
    figure &&
    /^(in|cm|mm)$/.test(unit ?? '') &&
    /^(sq|square|squares|across|wide|long|each)$/.test(words[0]?.w ?? '')
  ) {
    // "cut 4 patches 3.5in sq": how large
    return undefined;
  } else if (figure && unit && words.length && NAMELESS.test(words[0]!.w)) {
    // "four and a half yards of that stuff on the sale table", "five yards of the same"
    points = words[0]!.w === 'same' ? 'more' : undefined;
    next = phraseEnd;
  } else if (figure && words.length && (unit || listed)) {
    material =
      unit && (LENGTH_UNIT_SET.has(unit) || unit === 'fat-quarter') && unit !== 'in' && unit !== 'ft'
        ? 'fabric'
        : unit === 'spool'
          ? 'thread'
          : unit === 'skein'
            ? 'tie-thread'
            : unit === 'ball' && words.every((x) => COLOURS.has(x.w))
              ? 'tie-thread'
              : unit === 'pack' || unit === 'piece'
                ? undefined
                : 'other';
    // "three spools of ecru, one of black": of the same
    if (!unit)
      material = words.every((x) => COLOURS.has(x.w)) && w(items, m - 1) === 'of' ? undefined : 'other';
    next = phraseEnd;
  } else if (
    listed &&
    !figure &&
    words.length >= 1 &&
    words.length <= 3 &&
    words.every((x) => /^[a-z]+$/.test(x.w)) &&
    /^(,|\(|)$/.test(w(items, phraseEnd)) &&
    m > 0 &&
    w(items, start - 1) === ','
  ) {
    material = 'other';
    next = phraseEnd;
  } else if (
    figure &&
    (unit ||
      more ||
      // "… three metres for the backing and six for the binding"
      (listed && FOR_A_PART.test(purposeAt(items, m)?.for ?? '')) ||
      // "five at 3.80 each": what was bought is not told
      (listed && items.slice(m, m + 3).some((x) => x.cost) && /^(at|@|for|,|£|\$|€)/.test(w(items, m))) ||
      (listed && Boolean(items[m]?.cost)) ||
      // "got half a dozen at a dollar apiece", "bought 6 at the fair, 50p each"
      items[m]?.cost?.each ||
      (listed && priceAfterPlace(items, m)))
  ) {
    points = more ? 'more' : undefined;
    next = m;
  } else return undefined;
  if (material === 'fabric' && unit === 'spool') material = 'thread';
  if (material === 'fabric' && (unit === 'skein' || unit === 'ball')) material = 'tie-thread';
  if (!material && unit === 'fat-quarter') {
    material = 'fabric';
    points = undefined;
  }
  // what it is for
  const name = items
    .slice(first < 0 ? m : Math.min(first, m), next)
    .map((x) => x.w)
    .filter((x) => x !== 'of')
    .join(' ');
  // "a yard and a half of twill put by for the backing", "3 yd of muslin, enough for the backing"
  const kept = PUT_BY.test(wordsBetween(items, next, next + 3))
    ? next + 2
    : w(items, next) === ',' && w(items, next + 1) === 'enough'
      ? next + 2
      : w(items, next) === 'enough'
        ? next + 1
        : next;
  // "black sateen in the cupboard for the new backing"
  const store = storeBehind(items, kept);
  const purpose = purposeAt(items, kept) ?? (store > kept ? purposeAt(items, store) : undefined);
  if (purpose) {
    material = madeFor(material, purpose.for);
    // "short of half a yard for the border": nothing but cloth is sewn there by the yard
    if (
      !material &&
      points !== 'it' &&
      unit &&
      CLOTH_BY.test(unit) &&
      FOR_CLOTH.test(w(items, purpose.next - 1))
    )
      material = 'fabric';
    if (purpose.for !== 'none' && points && material) points = undefined;
    next = purpose.next;
  }
  // "mil" is short for millimetres of cloth and millilitres of anything wet
  if (
    unit === 'ml' &&
    figure &&
    /\bmils?\b/.test(figure.w) &&
    material &&
    !/^(detergent|adhesive|other)$/.test(material)
  )
    unit = 'mm';
  // "the backing today, white sheeting, six yards": what it is made of, named beside it
  const beside = !figure && head >= 0 ? besideIt(items, k, head, next) : undefined;
  if (beside) {
    quantity = beside.quantity;
    unit = beside.unit;
    uncounted = beside.uncounted === true;
    if (beside.quantity !== undefined || beside.uncounted) figure = beside.items[0];
    next = beside.next;
    if (beside.cost)
      return { ...beside, material: material!, items: items.slice(start, next), name, from: start, head };
  }
  // "flannel 3 1/2 yd", "muslin in the drawer, two metres"
  if (!figure && head >= 0) {
    let q = next;
    // "wadding (2 m)"
    if (w(items, q) === '(' && items[q + 1]?.quantity && w(items, q + 2) === ')') {
      figure = items[q + 1]!;
      quantity = figure.quantity!.value;
      unit = figure.quantity!.unit;
      next = q + 3;
      q = next;
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
        uncounted = true;
        unit = UNIT_ALONE[w(items, u)];
        next = u + 1;
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
        ((q === next || (w(items, next) === ':' && /^(about|around|roughly)$/.test(w(items, q - 1)))) &&
          /^(?:pins|needle|thread)$/.test(material ?? '') &&
          /^(?:|,|and|&|\+|in|of|left|here|on)$/.test(w(items, q + 1)))) &&
      !(
        follower &&
        (follower.material ||
          follower.fabric ||
          (w(items, q + 1) === 'of' && !/^(it|that|them)$/.test(w(items, q + 2))) ||
          (items[q + 2]?.material && w(items, q + 1) !== ',' && !follower.cost))
      )
    ) {
      quantity = late.quantity.value;
      unit = late.quantity.unit;
      figure = late;
      next = q + 1;
      if (w(items, next) === 'of') next += 2;
      const late2 = purposeAt(items, next);
      if (late2) {
        if (late2.for === 'backing' && material === 'fabric') material = 'backing';
        if (late2.for === 'ties' && material && /^(fabric|thread)$/.test(material)) material = 'tie-thread';
        next = late2.next;
      }
    }
  }
  // "a scrap of muslin, maybe a quarter of a yard": how much that is
  if (unit === 'piece' && head >= 0 && w(items, next) === ',') {
    let q = next + 1;
    while (/^(maybe|about|say|perhaps|roughly|around|nearly|call|it|just|some|not|quite)$/.test(w(items, q)))
      q++;
    const size = items[q]?.quantity;
    if (
      size?.unit &&
      LENGTH_UNIT_SET.has(size.unit) &&
      size.value !== undefined &&
      /^(|,|\.|;|and|for|on)$/.test(w(items, q + 1))
    ) {
      quantity = size.value;
      unit = size.unit;
      next = q + 1;
    }
  }
  // "a crib size cotton one", "batting, the wool one, 40 dollars": which of them
  if (head >= 0) {
    if (/^ones?$/.test(w(items, next))) next++;
    else if (w(items, next) === ',' && /^(the|a|an)$/.test(w(items, next + 1))) {
      const one = items.slice(next + 2, next + 6).findIndex((x) => /^ones?$/.test(x.w));
      if (one > 0 && !items.slice(next + 2, next + 2 + one).some((x) => x.place || x.finding || x.w === ','))
        next += one + 3;
    }
  }
  // "batting (wool), $48": an aside in brackets
  // "2 fat quarters rust plaid ($3.75 ea)" has its price in them
  const open = w(items, next) === '(' ? next : -1;
  const close = open < 0 ? -1 : items.findIndex((x, m) => m > open && m < open + 6 && x.w === ')');
  const inBrackets = close > 0 ? items.findIndex((x, m) => m > open && m < close && x.cost) : -1;
  // "8 skeins of yarn (have 2)": what is told of the goods, and no aside
  if (close > 0 && inBrackets < 0 && !items.slice(open, close).some((x) => /^(have|'ve|got)$/.test(x.w)))
    next = close + 1;
  next = behindSeller(items, next);
  // the price
  let cost: GoodFound['cost'];
  let c = inBrackets > 0 ? inBrackets : next;
  let light = 0;
  if (
    /^(from|at|in|off|down|on|they|i|we|today|yesterday|arrived|came|turned|this|online|by)$/.test(
      w(items, c),
    ) ||
    items[c]?.task === 'shopping'
  ) {
    // "a hank of wool from the mill, 14.50", "that stuff they had on the sale table, 27 the lot"
    let q = c;
    while (
      q < c + 10 &&
      q < items.length &&
      // "…, bought it anyway, £4.20"
      (isPlain(items[q]!) || (/^(bought|got)$/.test(w(items, q)) && /^(it|them)$/.test(w(items, q + 1))))
    )
      q++;
    if (items[q]?.cost && (!/^(for|at|of)$/.test(w(items, q - 1)) || /^(it|them)$/.test(w(items, q - 2))))
      c = q;
  }
  while (
    c < items.length &&
    light < 6 &&
    !items[c]!.cost &&
    /^(,|:|-|was|were|is|'s|cost|costs|set|ran|worked|works|came|comes|out|came out|comes out|about|around|at|for|it|came|to|which|that|those|these|price|in|and|the|lot|them|they|all|=|@|me|only|just|of|i|we|paid|got|bought|ordered|together|altogether|dear|cheap|steep|reduced|online)$/.test(
      w(items, c),
    )
  ) {
    // "…, for it I paid 12 euro", "…, together 40 euro"
    if (
      w(items, c) === ',' &&
      !items[c + 1]?.cost &&
      !/^(at|for|which|that|it|i|we|together|altogether|dear|cheap|steep|reduced)$/.test(w(items, c + 1))
    )
      break;
    if (w(items, c) === 'and') break;
    c++;
    light++;
  }
  if (!items[c]?.cost) c = priceOfTaken(items, next) ?? priceInNext(items, next) ?? c;
  const price = items[c]?.cost ?? bareSum(items, c, listed && unit !== undefined);
  if (price) {
    const between = items.slice(next, c).map((x) => x.w);
    const by = items[c]!.w;
    const each =
      price.each ||
      (!price.whole &&
        (by.startsWith('@') ||
          between.includes('@') ||
          ((by.startsWith('at ') || between.at(-1) === 'at') && quantity !== undefined && quantity > 1)));
    cost = { amount: price.amount, ...(each ? { each: true as const } : {}) };
    if (quantity === undefined && price.each && price.unit && !figure && unit === undefined) {
      // the price tells the unit, the quantity may follow
      if (/^(so|,|and)$/.test(w(items, c + 1))) {
        const q = items.slice(c + 1, c + 7).findIndex((x) => isFigure(x));
        const at = c + 1 + q;
        if (q >= 0 && items.slice(c + 1, at).some((x) => /^(took|got|bought|had)$/.test(x.w))) {
          quantity = items[at]!.quantity!.value!;
          unit = items[at]!.quantity!.unit ?? price.unit;
          c = at;
        } else if (q >= 0 && /^(bought|used|worth|of)$/.test(w(items, at + 1))) {
          quantity = items[at]!.quantity!.value!;
          unit = items[at]!.quantity!.unit ?? price.unit;
          c = at;
        }
      }
    }
    next = inBrackets === c ? close + 1 : c + 1;
    // "thread 2.80 x 2"
    const times = /^[x×]$/.test(w(items, next)) ? items[next + 1]?.quantity : undefined;
    if (times?.value !== undefined && !times.unit && quantity === undefined) {
      quantity = times.value;
      cost = { amount: price.amount, each: true };
      next += 2;
    }
    // "spray $13 a can, two cans"
    const count = w(items, next) === ',' ? items[next + 1]?.quantity : undefined;
    if (each && quantity === undefined && count?.value !== undefined && CONTAINERS.has(w(items, next + 2))) {
      quantity = count.value;
      next += 3;
    }
    // "5 yds at 8.99 = 44.95": what it comes to
    if (each && items[next]?.w.startsWith('=') && items[next]!.cost) next++;
    // "the net cost twelve pounds for two metres"
    const size = w(items, next + 1) === 'the' ? next + 2 : next + 1;
    const got = w(items, next) === 'for' ? items[size]?.quantity : undefined;
    if (quantity === undefined && got?.unit && got.value !== undefined && !items[size + 1]?.material) {
      quantity = got.value;
      unit = got.unit;
      uncounted = false;
      next = size + 1;
    }
    if (/^(for|on)$/.test(w(items, next)) && /^(it|them|that|those)$/.test(w(items, next + 1))) next += 2;
    if (!purpose) {
      // "…, twenty five dollars, that's for the back"
      const late =
        purposeAt(items, next) ??
        (w(items, next) === ',' ? purposeAt(items, next + 1) : undefined) ??
        latePurpose(items, next);
      if (late) material = madeFor(material, late.for);
      // "…, it'll do for patches" goes with it; "4.20, for the border" tells of another
      if (late && (late.for !== 'none' || w(items, next) === ',')) next = late.next;
    }
  } else if (!purpose && head >= 0 && quantity !== undefined) {
    // "seven metres of old linen, it's going on the back"
    const late = /^(,|that|which|she|he|they)$/.test(w(items, next)) ? latePurpose(items, next) : undefined;
    if (late) {
      material = madeFor(material, late.for);
      next = late.next;
    }
  }
  if (uncounted && (material === 'thread' || material === 'pins' || material === 'needle') && !unit)
    uncounted = false;
  return {
    ...(material ? { material } : {}),
    ...(points ? { points } : {}),
    ...(quantity !== undefined ? { quantity } : {}),
    ...(unit ? { unit } : {}),
    ...(uncounted ? { uncounted } : {}),
    ...(cost ? { cost } : {}),
    items: items.slice(start, next),
    name: (name || 'it').replace(/ - /g, '-'),
    from: start,
    next,
    ...(head >= 0 ? { head } : {}),
    ...(purpose?.it ? { forIt: true } : {}),
  };
}

/** The cloth or stuff told in a comma behind "the backing", "the new binding", with how much of it or what it cost. */
function besideIt(items: Item[], from: number, head: number, k: number): GoodFound | undefined {
  const thing = items[head]!;
  if (!/^(backing|binding|batting)$/.test(thing.part ?? thing.material ?? '')) return undefined;
  if (!items.slice(Math.max(0, from - 1), head).some((x) => /^(the|my|a|its)$/.test(x.w))) return undefined;
  const at = k + whenTold(items, k);
  if (!/^(,|:|\(|-)$/.test(w(items, at)) || items[at + 1]?.w === ',') return undefined;
  const good = goodFrom(items, /^(some|a)$/.test(w(items, at + 1)) ? at + 2 : at + 1, false);
  if (good?.head === undefined || !/^(fabric|batting|binding|backing)$/.test(good.material ?? ''))
    return undefined;
  if (items.slice(at + 1, good.head + 1).some((x) => x.part)) return undefined;
  return good.quantity !== undefined || good.uncounted || good.cost ? good : undefined;
}

const CLOTH_BY = /^(?:yd|m|cm|fat-quarter)$/;
const FOR_CLOTH = /^(?:borders?|patch|patches|patching|blocks|sashing|strips|corners|piecing)$/;

const PUT_BY = /^ (?:put|set|laid|kept|saved|tucked|left) (?:by|aside|away|back|over) (?:for|as) /;

/** Words that name no thing. */
const NAMELESS = /^(stuff|things?|same|kind|sort|whatever|something)$/;

const FOR_A_PART = /^(backing|batting|binding|ties)$/;
