import { COLOURS, PATTERN_WORDS } from '../lexicon/colours.ts';
import type { Item } from './item.ts';

const PARTS = ['backing', 'batting', 'binding'] as const;
type Part = (typeof PARTS)[number];

const partOf = (x: Item): Part | undefined => PARTS.find((p) => x.part === p || x.object === p);

/**
 * "Old batting is out. Going with wool for the new one", "took the backing off, need 3 m of flannel for a new one": the new one is of the part
 * spoken of just before in the note. Gives the items with the senses of that part on "one"; a block, a seam or another thing told in between
 * keeps "one" as it is.
 */
export function newOneNamed(items: Item[]): Item[] {
  if (!items.some((x, k) => x.w === 'one' && newBefore(items, k) >= 0)) return items;
  return items.map((one, k) => {
    const at = one.w === 'one' ? newBefore(items, k) : -1;
    if (at < 0) return one;
    // "old binding off, new one on": without an article where it is at once said to be on
    const goesOn = /^(?:on|in)$/.test(items[k + 1]?.w ?? '');
    if (!goesOn && !/^(the|a|its|her|my|this|for|of)$/.test(items[at - 1]?.w ?? '')) return one;
    const named = items
      .slice(0, k)
      .findLast((x) => partOf(x) || x.place?.kind === 'blocks' || x.object || x.seam || x.part);
    const part = named && partOf(named);
    if (!part) return one;
    return {
      ...one,
      w: part,
      quantity: undefined,
      part,
      object: part,
      material: part,
      topic: part,
      place: { next: one.j, places: [part], how: 'said', rule: 'place.new-one', kind: 'part' },
    };
  });
}

/** Where "new" stands before "one", with its colour or stuff between them at most ("new yellow one", "a new brown flannel one"), or -1. */
function newBefore(items: Item[], k: number): number {
  let at = k - 1;
  while (at >= k - 3 && at >= 0 && items[at]!.w !== 'new') {
    const x = items[at]!;
    if (!(COLOURS.has(x.w) || PATTERN_WORDS.has(x.w) || x.material || x.fabric)) return -1;
    at--;
  }
  return items[at]?.w === 'new' ? at : -1;
}
