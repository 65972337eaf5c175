import type { Token } from '../../../text/tokenise.ts';
import { wordAt as w } from '../../../text/word-at.ts';
import type { PlaceContext, PlaceFound } from '../place-found.ts';
import { groupsBack, pointingTo } from './pointing-to.ts';

/**
 * "(trimmed an inch off the bottom and bound) that side", "(frayed down the right;) took the binding off that edge", "both those sides":
 * the side, or the sides, of border or edge that were told last. "Its corners on that side" are the corners.
 */
export function thatSide(tokens: Token[], i: number, ctx: PlaceContext): PlaceFound | undefined {
  const both = w(tokens, i) === 'both';
  let j = both ? (w(tokens, i + 1) === 'of' ? i + 2 : i + 1) : i;
  const many = /^(those|these)$/.test(w(tokens, j));
  if (both && !many) return undefined;
  if (!many && !/^(that|this|same)$/.test(w(tokens, j))) return undefined;
  if (/^(same|whole|very|two|2)$/.test(w(tokens, j + 1))) j++;
  if (!(many ? /^(sides|edges)$/ : /^(side|edge)$/).test(w(tokens, j + 1))) return undefined;
  // as the subject ("that side's done") it is what was in hand, and read as "that one"
  if (/^(of|'s|is|are|was|has|had)$/.test(w(tokens, j + 2))) return undefined;
  if (
    tokens.slice(Math.max(0, i - 4), i).some((t) => /^(corners?|ends?|blocks?|ones?|rows?|seams?)$/.test(t.w))
  )
    return undefined;
  for (const group of groupsBack(ctx)) {
    if (!group.length || !group.every((p) => /^(edge|border)-/.test(p))) continue;
    return many === group.length > 1 ? pointingTo(j + 2, group, 'place.that-side') : undefined;
  }
  return undefined;
}
