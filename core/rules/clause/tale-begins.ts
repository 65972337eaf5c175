import type { Item } from '../item.ts';

/**
 * "the backing's off | there's newspaper between the layers", "darned 2-3 | somebody's inked a name on the back": what is told of the
 * quilt's story has a sentence of its own. (An owner's wish has not: what she wishes often stands in the middle of what is told.)
 */
export function taleBegins(items: Item[], k: number): boolean {
  if (items[k]!.w === 'there')
    return (
      /^('s|is|are|was|were)$/.test(items[k + 1]?.w ?? '') &&
      // "there's some left", "there's one in the drawer": of the goods just spoken of
      !/^(some|any|one|plenty|enough|no|none|more|another|loads|lots|still)$/.test(items[k + 2]?.w ?? '') &&
      !items
        .slice(k + 2, k + 9)
        .some((x) => x.finding || x.fail || x.place?.kind === 'blocks' || x.quantity?.unit)
    );
  // "that iron-on stuff | somebody fused behind 4-4" is no sentence of its own, "somebody's inked a name" is
  return tellsOfSomebody(items, k);
}

/** "somebody has inked a name". */
export const tellsOfSomebody = (items: Item[], k: number): boolean =>
  /^(somebody|someone)$/.test(items[k]?.w ?? '') && /^('s|has|had)$/.test(items[k + 1]?.w ?? '');
