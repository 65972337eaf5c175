import type { Item } from '../item.ts';

const WISHES = /^(would|hopes?|wishes|wish|asks|asked|says|said|thinks|'d)$/;
const WHOSE = /^(the|her|his|their|my|its|our)$/;

/**
 * "the backing's off | there's newspaper between the layers", "… on my list | the library would like the fold lines left": what is told
 * of the quilt's story or of its owner's wish has a sentence of its own.
 */
export function taleBegins(items: Item[], k: number): boolean {
  if (items[k]!.w === 'there')
    return (
      /^('s|is|are|was|were)$/.test(items[k + 1]?.w ?? '') &&
      !items
        .slice(k + 2, k + 9)
        .some((x) => x.finding || x.fail || x.place?.kind === 'blocks' || x.quantity?.unit)
    );
  // "that iron-on stuff | somebody fused behind 4-4" is no sentence of its own, "somebody's inked a name" is
  if (/^(somebody|someone)$/.test(items[k]!.w)) return /^('s|has)$/.test(items[k + 1]?.w ?? '');
  let at = WHOSE.test(items[k]!.w) ? k + 1 : k;
  const who = items[at];
  if (
    !who ||
    who.token.kind !== 'word' ||
    who.place ||
    who.part ||
    who.material ||
    who.object ||
    who.finding ||
    who.fabric ||
    who.seam
  )
    return false;
  if (at === k && !/^(owner|client|customer|she|he|they)$/.test(who.w)) return false;
  at++;
  if (!WISHES.test(items[at]?.w ?? '')) return false;
  return !/^(would|'d)$/.test(items[at]!.w) || /^(like|love|prefer|rather|be)$/.test(items[at + 1]?.w ?? '');
}
