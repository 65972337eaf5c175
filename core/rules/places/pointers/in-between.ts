import type { Token } from '../../../text/tokenise.ts';
import { wordAt as w } from '../../../text/word-at.ts';
import { blocksBetween } from '../grid.ts';
import type { PlaceContext, PlaceFound } from '../place-found.ts';
import { pointingTo } from './pointing-to.ts';

/** "between them it's all sound", "everything in between is fine", after two blocks of one row or column: those that lie between. */
export function inBetween(
  tokens: Token[],
  i: number,
  { grid, focus, earlier }: PlaceContext,
): PlaceFound | undefined {
  if (
    w(tokens, i) !== 'between' ||
    tokens.slice(Math.max(0, i - 5), i).some((t) => /^(seams?|sashing|one|join)$/.test(t.w))
  )
    return undefined;
  const them = /^(them|those|these)$/.test(w(tokens, i + 1));
  // "left the two between"
  const theTwo = !them && /^(two|ones?|three|2|3)$/.test(w(tokens, i - 1)) && w(tokens, i - 2) === 'the';
  if (!them && !theTwo && w(tokens, i - 1) !== 'in') return undefined;
  const next = them ? (/^(two|2)$/.test(w(tokens, i + 2)) ? i + 3 : i + 2) : i + 1;
  if (
    !them &&
    tokens[next] &&
    !/^([.,;!]|as|alone|be|is|'s|are|all|and|looks?|too|i|has|needs|wants|gets)$/.test(w(tokens, next))
  )
    return undefined;
  const pair =
    focus.length === 2
      ? focus
      : focus.length === 1 && earlier.at(-1)?.length === 1
        ? [...earlier.at(-1)!, ...focus]
        : [];
  const [first, last] = pair;
  const places = first && last ? blocksBetween(grid, first, last) : [];
  return places.length ? pointingTo(next, places, 'place.in-between') : undefined;
}
