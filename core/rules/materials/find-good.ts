import type { Material, MaterialUnit } from '../../../shared/vocabulary.ts';
import type { Item } from '../item.ts';
import { itemWord as w } from '../item-word.ts';
import { wordsBetween } from '../words-between.ts';
import { storeBehind, whenTold } from './behind-good.ts';
import { readAmount } from './good/amount-of-good.ts';
import type { GoodInHand } from './good/good-in-hand.ts';
import { readKind } from './good/kind-of-good.ts';
import { readNounPhrase } from './good/noun-phrase.ts';
import { readPrice } from './good/price-of-good.ts';
import { readQuantityBehind } from './good/quantity-behind.ts';
import { madeFor, purposeAt } from './purpose-at.ts';

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
  const g: GoodInHand = {
    items,
    start: k,
    listed,
    uncounted: false,
    more: false,
    head: -1,
    first: -1,
    next: k,
  };
  const m = readAmount(g);
  const phraseEnd = m === undefined ? undefined : readNounPhrase(g, m);
  if (m === undefined || phraseEnd === undefined || !readKind(g, m, phraseEnd)) return undefined;
  const name = items
    .slice(g.first < 0 ? m : Math.min(g.first, m), g.next)
    .map((x) => x.w)
    .filter((x) => x !== 'of')
    .join(' ')
    // "the last of the brown thread": how much of it, and no name
    .replace(
      /^(?:last|rest|remainder|remains|end|remnants) (?:(?:bit|piece|scrap) )?(?:the|that|my|this) (?=\S)/,
      '',
    );
  readPurpose(g);
  // "the backing today, white sheeting, six yards": what it is made of, named beside it
  const beside = !g.figure && g.head >= 0 ? besideIt(items, k, g.head, g.next) : undefined;
  if (beside) {
    g.quantity = beside.quantity;
    g.unit = beside.unit;
    g.uncounted = beside.uncounted === true;
    if (beside.quantity !== undefined || beside.uncounted) g.figure = beside.items[0];
    g.next = beside.next;
    if (beside.cost)
      return { ...beside, material: g.material!, items: items.slice(k, g.next), name, from: k, head: g.head };
  }
  readQuantityBehind(g);
  // "a crib size cotton one", "batting, the wool one, 40 dollars": which of them
  if (g.head >= 0) {
    if (/^ones?$/.test(w(items, g.next))) g.next++;
    else if (w(items, g.next) === ',' && /^(the|a|an)$/.test(w(items, g.next + 1))) {
      const one = items.slice(g.next + 2, g.next + 6).findIndex((x) => /^ones?$/.test(x.w));
      if (
        one > 0 &&
        !items.slice(g.next + 2, g.next + 2 + one).some((x) => x.place || x.finding || x.w === ',')
      )
        g.next += one + 3;
    }
  }
  readPrice(g);
  if (g.uncounted && (g.material === 'thread' || g.material === 'pins' || g.material === 'needle') && !g.unit)
    g.uncounted = false;
  const { material, points, quantity, unit, uncounted, cost, head, next } = g;
  return {
    ...(material ? { material } : {}),
    ...(points ? { points } : {}),
    ...(quantity !== undefined ? { quantity } : {}),
    ...(unit ? { unit } : {}),
    ...(uncounted ? { uncounted } : {}),
    ...(cost ? { cost } : {}),
    items: items.slice(k, next),
    name: (name || 'it').replace(/ - /g, '-'),
    from: k,
    next,
    ...(head >= 0 ? { head } : {}),
    ...(g.purpose?.it ? { forIt: true } : {}),
  };
}

/** What it is for: it may be put by for that, or lie in a cupboard. */
function readPurpose(g: GoodInHand): void {
  const { items } = g;
  // "a yard and a half of twill put by for the backing", "3 yd of muslin, enough for the backing"
  const kept = PUT_BY.test(wordsBetween(items, g.next, g.next + 3))
    ? g.next + 2
    : w(items, g.next) === ',' && w(items, g.next + 1) === 'enough'
      ? g.next + 2
      : w(items, g.next) === 'enough'
        ? g.next + 1
        : g.next;
  // "black sateen in the cupboard for the new backing"
  const store = storeBehind(items, kept);
  g.purpose = purposeAt(items, kept) ?? (store > kept ? purposeAt(items, store) : undefined);
  if (g.purpose) {
    g.material = madeFor(g.material, g.purpose.for);
    // "short of half a yard for the border": nothing but cloth is sewn there by the yard
    if (
      !g.material &&
      g.points !== 'it' &&
      g.unit &&
      CLOTH_BY.test(g.unit) &&
      FOR_CLOTH.test(w(items, g.purpose.next - 1))
    )
      g.material = 'fabric';
    if (g.purpose.for !== 'none' && g.points && g.material) g.points = undefined;
    g.next = g.purpose.next;
  }
  // "mil" is short for millimetres of cloth and millilitres of anything wet
  if (
    g.unit === 'ml' &&
    g.figure &&
    /\bmils?\b/.test(g.figure.w) &&
    g.material &&
    !/^(detergent|adhesive|other)$/.test(g.material)
  )
    g.unit = 'mm';
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
