import type { Material, MaterialUse } from '../../../shared/vocabulary.ts';
import { LENGTH_UNIT_SET } from '../../lexicon/units.ts';
import type { CostFound, QuantityFound } from '../amounts/find-amount.ts';
import type { Item } from '../item.ts';

/** A noun phrase for a material: its head noun decides what it is, its words name it. */
export type StuffFound = { material: Material; items: Item[]; name: string; from: number; to: number };

const w = (items: Item[], k: number): string => items[k]?.w ?? '';
const DETERMINERS = new Set([
  'the',
  'a',
  'an',
  'some',
  'my',
  'that',
  'this',
  'of',
  'more',
  'any',
  'same',
  'another',
  'old',
  'with',
  'in',
  'w',
  'from',
  'and',
  '&',
  '+',
  'for',
  'on',
]);

/** Noun phrases for materials in a clause. Words that are the place or the thing worked on are left out by the caller. */
export function findStuff(items: Item[], taken: ReadonlySet<Item>): StuffFound[] {
  const out: StuffFound[] = [];
  for (let k = 0; k < items.length; k++) {
    const item = items[k]!;
    if (taken.has(item) || !item.material) continue;
    let to = k;
    let head = item;
    // "wool batting", "cream cotton thread", "flannel for the backing"
    while (
      to + 1 < items.length &&
      (items[to + 1]!.material || items[to + 1]!.w === '-') &&
      !taken.has(items[to + 1]!) &&
      !items[to + 1]!.action?.form.startsWith('p')
    ) {
      to++;
      if (items[to]!.material) head = items[to]!;
    }
    let from = k;
    while (
      from > 0 &&
      items[from - 1]!.token.kind === 'word' &&
      isDescription(items[from - 1]!) &&
      from > k - 4
    )
      from--;
    let material = head.material!;
    // the last noun decides, but cloth words after another ("backing muslin") keep the first
    const first = items.slice(k, to + 1).find((x) => x.material && x.material !== 'fabric');
    if (material === 'fabric' && first && first !== head) material = first.material!;
    if (material === 'fabric' || material === 'tie-thread' || material === 'thread') {
      const purpose = purposeAfter(items, to + 1);
      if (purpose) material = purpose === 'ties' ? 'tie-thread' : material === 'fabric' ? purpose : material;
    }
    const phrase = items.slice(from, to + 1);
    out.push({ material, items: phrase, name: phrase.map((x) => x.w).join(' '), from, to });
    k = to;
  }
  return out;
}

function isDescription(item: Item): boolean {
  return (
    !DETERMINERS.has(item.w) &&
    !item.place &&
    !item.action &&
    !item.quantity &&
    !item.cost &&
    !item.duration &&
    !item.clock &&
    !item.finding &&
    /^[a-z]+$/.test(item.w) &&
    DESCRIBING.has(item.w)
  );
}
const DESCRIBING = new Set(
  'red blue green yellow pink white black brown grey gray cream ivory navy purple orange lilac rust mustard indigo natural unbleached bleached wide narrow big small fine heavy light lightweight thick thin new soft hand machine quilting sewing embroidery mild plain dark pale old vintage striped spotted checked bright brass curved long short strong invisible waxed extra undyed dyed washed printed organic scrap matching beige tan gold silver olive teal maroon claret charcoal rose peach turquoise ecru off buff'.split(
    ' ',
  ),
);

/** "for the back", "for new backing", "for the ties", "to bind it". */
function purposeAfter(items: Item[], k: number): Material | 'ties' | undefined {
  for (let m = k; m < Math.min(items.length, k + 5); m++) {
    if (w(items, m) === 'for' || (w(items, m) === 'as' && m === k)) {
      for (let n = m + 1; n < Math.min(items.length, m + 5); n++) {
        const x = items[n]!;
        if (x.part === 'backing' || x.material === 'backing') return 'backing';
        if (x.part === 'binding') return 'binding';
        if (x.part === 'batting') return 'batting';
        if (x.w === 'ties' || x.w === 'tying') return 'ties';
      }
      return undefined;
    }
    if (/^(,|and|\.|@|at)$/.test(w(items, m))) return undefined;
  }
  return undefined;
}

/** What commerce a clause is about: bought, needed, on hand, used; undefined where none is said. */
export function useOf(words: string): MaterialUse | undefined {
  if (
    /\b(still )?(need|needs|needed|to buy|to get|must buy|must get|have to buy|have to get|got to buy|got to get|'ll have to (buy|get)|want to buy|to order|must order|shopping list|to pick up|pick up|short of|run out of|running out|ran out|low on|out of|will need|'ll need|buy|order|get another|get some|lacking|wanted|going to want|could do with|shy of|after)\b/.test(
      words,
    ) &&
    !/\b(bought|used up|used|picked up|ordered|have bought)\b/.test(words) &&
    !/\b(out of (the|my) (stash|cupboard|box|drawer|scrap|scraps|square|true)|need(s)? (a|to be|no|it|the) (patch|new piece|wash|press))\b/.test(
      words,
    )
  )
    return 'needed';
  if (
    /\b(bought|ordered|purchased|picked up|paid|spent|bt|bght|got|came home with|treated myself|receipt|cost me|cost|invoice)\b/.test(
      words,
    )
  )
    return 'bought';
  if (
    /\b(have|'ve|on hand|in stock|in the (cupboard|drawer|stash|box|tin|chest)|on my shelf|on the shelf|already have|have got|left over|leftover|in my stash|to hand|own|spare|there (is|are|'s)|got plenty|enough)\b/.test(
      words,
    )
  )
    return 'on-hand';
  if (/\b(used|used up|went through|took|using|went into|gone through|with)\b/.test(words)) return 'used';
  return undefined;
}

/** A number that counts a material, with its unit; lengths of seams and tears are not. */
export const isMaterialQuantity = (q: QuantityFound): boolean =>
  q.value !== undefined && (q.unit === undefined || q.unit !== 'in' || true);
export const isLength = (q: QuantityFound): boolean => q.unit !== undefined && LENGTH_UNIT_SET.has(q.unit);
export type { CostFound };
