import type { Item } from '../item.ts';

const GIVEN_UP =
  /^(?:the |that |my |a |an )?(?:\S+ ){0,5}?(?:(?:idea|plan|option|notion)(?: is| 's)? (?:off|out)\b|(?:is|'s|are|was) (?:now )?(?:abandoned|given up|scrapped|shelved|forgotten|dropped|off the (?:table|cards)|out of the question)\b|(?:net|netting|tulle|crepeline|patch|patching|darn|darning|support|lining|overlay|new piece|wash|washing)(?: is| 's) (?:now )?(?:off|out)(?: now| then)?$)/;

/** "crepeline it is, the new piece idea is off", "…, and the support from behind is abandoned": a way is given up from item `k` on. */
export function givesUp(items: Item[], k: number): boolean {
  const words: string[] = [];
  for (let m = k; m < Math.min(items.length, k + 11); m++) {
    const { token, w } = items[m]!;
    if (token.kind === 'mark' || /^(i|it|but|because|so)$/.test(w)) break;
    words.push(w);
  }
  return (
    /^(idea|plan|option|notion|is|'s|are|was)$/m.test(words.join('\n')) && GIVEN_UP.test(words.join(' '))
  );
}
