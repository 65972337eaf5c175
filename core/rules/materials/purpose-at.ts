import type { Material } from '../../../shared/vocabulary.ts';
import type { Item } from '../item.ts';
import { itemWord as w } from '../item-word.ts';
import { wordsBetween } from '../words-between.ts';

type Purpose = 'backing' | 'batting' | 'binding' | 'ties' | 'none';

/** What stuff becomes by what it is for: linen for the backing is backing, a needle stays a needle. */
export function madeFor(material: Material | undefined, purpose: Purpose): Material | undefined {
  if (purpose === 'ties')
    return !material || /^(fabric|thread|tie-thread|other)$/.test(material) ? 'tie-thread' : material;
  if (purpose === 'binding') return !material || /^(fabric|other)$/.test(material) ? 'binding' : material;
  if (purpose === 'backing') return !material || material === 'fabric' ? 'backing' : material;
  if (purpose === 'batting')
    return !material || /^(fabric|tie-thread|other)$/.test(material) ? 'batting' : material;
  return material;
}

/** "for the backing", "(backing)", "for tying", "to bind with": what a material is for, and the index after those words. */
export function purposeAt(
  items: Item[],
  k: number,
): { for: Purpose; next: number; it?: boolean } | undefined {
  let m = k;
  const bracket = w(items, m) === '(';
  if (bracket) m++;
  else if (/^(for|as|f|to)$/.test(w(items, m)) || (w(items, m) === 'f' && w(items, m + 1) === '.'))
    m += w(items, m + 1) === '.' ? 2 : 1;
  else if (w(items, m) === 'that' && w(items, m + 1) === "'s" && w(items, m + 2) === 'for') m += 3;
  else return undefined;
  return purposeFrom(items, m, bracket);
}

/** "…, and it's for the backing", "…, that's going on the back", "…, they are for the ties": told behind the goods and their price. */
export function latePurpose(items: Item[], k: number): ReturnType<typeof purposeFrom> {
  const told = IS_FOR.exec(wordsBetween(items, k, k + 9))?.[0];
  const found = told ? purposeFrom(items, k + told.trim().split(' ').length, false) : undefined;
  // "it'll do for patches" is no plan to patch
  return found?.for === 'none' && !/ do | enough | use /.test(told ?? '') ? undefined : found;
}
const IS_FOR =
  /^ (?:(?:that |which )?(?:she|he|they) had(?: there| left| in)? )?(?:, )?(?:and |so |which |all )*(?:(?:it|that|this|they|those|these|all of it) )?(?:(?:is|'s|are|'re|was|were|will be|'ll be) )?(?:all |just |meant |intended |'ll do |will do |would do |should do |enough |good |plenty )*(?:for |(?:going|to go|goes|go) (?:on|for|to|into|in|towards) )/;

function purposeFrom(
  items: Item[],
  m: number,
  bracket: boolean,
): { for: Purpose; next: number; it?: boolean } | undefined {
  for (let n = m; n < Math.min(items.length, m + 5); n++) {
    const x = items[n]!;
    const close = bracket && w(items, n + 1) === ')' ? n + 2 : n + 1;
    if (/^(ties|tying|tie|tieing|knots|knotting|tying it)$/.test(x.w) || /^(the )?ties$/.test(x.w))
      return { for: 'ties', next: close };
    if (
      x.part === 'backing' ||
      x.material === 'backing' ||
      /^(back|reverse|backing|b'king|bkg|bking|bkng)$/.test(x.w)
    )
      return { for: 'backing', next: close };
    if (x.part === 'binding' || x.material === 'binding' || /^(bind|edging|binding)$/.test(x.w))
      return { for: 'binding', next: close };
    if (x.part === 'batting' || x.material === 'batting' || /^(fill|stuff|pad|filling|stuffing)$/.test(x.w))
      return { for: 'batting', next: close };
    // "pins to baste with", "cloth to mend it with"
    if (
      x.action?.form === 'base' &&
      w(items, m - 1) === 'to' &&
      (w(items, n + 1) === 'with' || w(items, n + 2) === 'with')
    )
      return { for: 'none', next: w(items, n + 1) === 'with' ? n + 2 : n + 3 };
    if (x.cost || x.quantity || /^[,.;&]$/.test(x.w) || x.w === 'and') return undefined;
    if (
      (x.place && !/^(it|this)$/.test(x.w)) ||
      x.part ||
      x.fabric ||
      /^(border|borders|patches|patch|blocks|quilt|top|repairs?|mends?|mending|supports?|overlays?|darns?|sashing|corners|strips|piecing|quilting|basting|label|sleeve|it|them|washing|darning)$/.test(
        x.w,
      )
    )
      return {
        for: 'none',
        next: w(items, close) === 'with' ? close + 1 : close,
        ...(/^(it|them)$/.test(x.w) ? { it: true } : {}),
      };
    if (!/^(the|new|a|an|my|its|your|his|her|their|our|old|this|that|with|doing|use|go|on|in|for)$/.test(x.w))
      return undefined;
  }
  return undefined;
}
