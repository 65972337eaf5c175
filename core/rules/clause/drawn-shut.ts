import type { Item } from '../item.ts';
import { wordsBetween } from '../words-between.ts';

const DRAWS =
  /^(?:drew|drawn|pulled|brought|eased|coaxed|drawing|pulling|bringing|easing|draw|pull|bring|ease|nipped|teased|worked)$/;
/** What is brought together, where it is not named again: "drew it shut", "pulled the two edges together". */
const IT =
  / (?:it|them|that|those|both|these|(?:the|its|both)(?: two)?(?: raw| torn| frayed| split)? (?:edges|sides|lips))(?: back)? (?:shut|together|to) /;
const PRONOUN = /^(?:it|them|that|those|both|these)$/;
const LEADS =
  /^(?:i|we|and|then|so|but|,|-|--|:|;|\.|'ve|have|had|'ll|will|to|now|just|was|is|got|must|should)$/;
const AHEAD = /^(?:'ll|will|to|must|should|maybe|might|could)$/;

const isOpen = (x: Item): boolean => Boolean(x.seam) || /^(?:tear|split-seam|hole)$/.test(x.finding ?? '');

/**
 * "the seam's gone, shut it with ladder stitch", "lawn behind the tear and drew it shut", "pulled the edges together": damage or a seam
 * that was told of before is closed. The verb is given its sense here, so that a statement can begin at it.
 */
export function withDrawnShut(items: Item[]): Item[] {
  if (!items.some((x) => x.w === 'shut' || x.w === 'together' || DRAWS.test(x.w))) return items;
  return items.map((x, k) => {
    if (x.action?.v === 'resew' || (k > 0 && !LEADS.test(items[k - 1]!.w))) return x;
    const behind = items.slice(k + 1, k + 8);
    const end = behind.findIndex((y) => y.w === 'shut' || y.w === 'together');
    // "pulled the tear shut", "drew the seam in 2-3 together"
    const named = end > 0 && behind.slice(0, end).some(isOpen);
    const shuts =
      x.w === 'shut'
        ? PRONOUN.test(behind[0]?.w ?? '')
        : DRAWS.test(x.w) && (named || IT.test(wordsBetween(behind)));
    const sewn = behind.some((y) => y.stitch && !y.weakStitch) && !items.slice(k).some(isOpen);
    if (!shuts || !(named || sewn || items.slice(0, k).some(isOpen))) return x;
    const form = /ing$/.test(x.w) ? 'ing' : AHEAD.test(items[k - 1]?.w ?? '') ? 'base' : 'past';
    return { ...x, deed: true, object: undefined, action: { v: 'resew', form } };
  });
}
