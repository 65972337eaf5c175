import { readOrdinal } from '../../../text/read-number.ts';
import type { Token } from '../../../text/tokenise.ts';
import { wordAt as w } from '../../../text/word-at.ts';
import type { PlaceContext, PlaceFound } from '../place-found.ts';
import { pointingTo } from './pointing-to.ts';

/** "the first of them", "the last of those": one of the places last spoken of, in their order. */
export function nthOf(tokens: Token[], i: number, ctx: PlaceContext): PlaceFound | undefined {
  const last = w(tokens, i + 1) === 'last';
  const n = last ? { value: ctx.focus.length, next: i + 2 } : readOrdinal(tokens, i + 1);
  if (!n || w(tokens, n.next) !== 'of' || !/^(them|those|these|the)$/.test(w(tokens, n.next + 1)))
    return undefined;
  let next = n.next + 2;
  if (w(tokens, next - 1) === 'the') {
    if (!/^(two|three|pair|four|lot)$/.test(w(tokens, next))) return undefined;
    next++;
  }
  const place = ctx.focus.length > 1 && ctx.focus.length < 13 ? ctx.focus[n.value - 1] : undefined;
  return place ? pointingTo(next, [place], 'place.nth-of-them') : undefined;
}
