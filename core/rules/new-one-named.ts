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
  if (!items.some((x, k) => x.w === 'one' && items[k - 1]?.w === 'new')) return items;
  return items.map((one, k) => {
    if (one.w !== 'one' || items[k - 1]?.w !== 'new') return one;
    if (!/^(the|a|its|her|my|this|for|of)$/.test(items[k - 2]?.w ?? '')) return one;
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
