import type { Material } from '../../../../shared/vocabulary.ts';
import type { Item } from '../../item.ts';
import { itemWord as w } from '../../item-word.ts';
import type { Claims } from '../../read-amounts.ts';
import { findGood } from '../find-good.ts';
import { purposeAt } from '../purpose-at.ts';

/** "On hand for the crib quilt: 2 fat quarters": the first word behind the colon that the heading ends in. */
export function headingEnd(items: Item[], from: number): number | undefined {
  if (w(items, from) !== 'for') return undefined;
  for (let m = from + 1; m < from + 7; m++) {
    if (w(items, m) === ':') return m + 1;
    if (items[m]?.token.kind !== 'word' || items[m]!.quantity || items[m]!.material) return undefined;
  }
  return undefined;
}

/** "shopping: 2 m calico 14, roll of wadding 38": numbers behind the goods are their prices. */
export const isBill = (items: Item[]): boolean =>
  items[0]?.task === 'shopping' &&
  w(items, 1) === ':' &&
  items.some((x, k) => x.quantity && !x.quantity.unit && items[k - 1]?.material);

/** "batting: bought a crib size cotton one, 18 dollars": what the goods are for stands before a colon, and is none of them. */
function headingOf(items: Item[]): Material | undefined {
  const named = items[0]?.part ?? items[0]?.material;
  return w(items, 1) === ':' && (named === 'backing' || named === 'batting' || named === 'binding')
    ? named
    : undefined;
}

export const underHeading = (items: Item[], claims: Claims): Item[] => {
  // "for patches: 2 fat quarters of brown check": what they are for, and no deed
  const purpose = w(items, 0) === 'for' ? purposeAt(items, 0) : undefined;
  if (
    purpose?.for === 'none' &&
    !purpose.it &&
    w(items, purpose.next) === ':' &&
    !items.slice(0, purpose.next).some((x) => x.fabric) &&
    items.some((x) => x.quantity?.unit || x.cost) &&
    findGood(items, purpose.next + 1, true)
  ) {
    for (const x of items.slice(0, purpose.next + 1)) claims.cut.add(x);
    return items.slice(purpose.next + 1);
  }
  return underPart(items);
};

const underPart = (items: Item[]): Item[] =>
  headingOf(items) &&
  items.slice(2).some((x, k, rest) => (x.material || x.fabric) && !rest.slice(0, k).some((y) => y.place))
    ? items.slice(2)
    : items;

/** "For the backing I still have to buy flannel", "brown sheet for the back: have 1 m, need 2": what all of it is for. */
export function sentencePurpose(items: Item[]): Material | undefined {
  const headed = headingOf(items);
  if (headed) return headed;
  const colon = items.findIndex((x) => x.w === ':');
  const at = items.findIndex((x) => x.w === 'for');
  if (at < 0 || !(at === 0 || (colon > at && at < 5))) return undefined;
  for (const x of items.slice(at + 1, at + 4)) {
    if (x.part === 'backing' || x.material === 'backing' || x.w === 'back') return 'backing';
    if (x.part === 'batting') return 'batting';
    if (x.part === 'binding') return 'binding';
    if (x.w === 'ties') return 'tie-thread';
    if (!/^(the|new|a|its)$/.test(x.w)) return undefined;
  }
  return undefined;
}
