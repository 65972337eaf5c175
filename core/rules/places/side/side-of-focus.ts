import type { Token } from '../../../text/tokenise.ts';
import { wordAt as w } from '../../../text/word-at.ts';
import type { PlaceContext, PlaceFound } from '../place-found.ts';
import { readSides } from './read-sides.ts';
import { isSide, LETTERS, SIDE_OF } from './side-words.ts';
import { sidesFound } from './sides-found.ts';
import { isToldOfSides, TOLD_OF_SIDE } from './told-of-side.ts';

/**
 * After a border or an edge: "the right one", "the bottom one", "the side ones", "R tomorrow", "left to follow". A column
 * spoken of just before makes "the bottom one" a block, which the grid's rules read.
 */
export function sideOfFocus(tokens: Token[], i: number, ctx: PlaceContext): PlaceFound | undefined {
  const kind = sideKind(ctx);
  if (!kind) return undefined;
  const before = w(tokens, i - 1);
  const noun = w(tokens, i + 1);
  if (w(tokens, i) === 'side' && (noun === 'ones' || noun === 'pieces'))
    return sidesFound(kind, ['left', 'right'], i + 2, RULE, 'implied');
  // "borders are on top and bottom. The two sides go on tomorrow"
  if (
    /^(both|two|2)$/.test(w(tokens, i)) &&
    noun === 'sides' &&
    ctx.focus.length === 2 &&
    ctx.focus.every((p) => /-(top|bottom)$/.test(p)) &&
    !/^of$/.test(w(tokens, i + 2))
  )
    return sidesFound(kind, ['left', 'right'], i + 2, RULE, 'implied');
  const beginsClause = /^(|\.|,|;|:|the|then|and|&|\+|but|while|now)$/.test(before);
  if (w(tokens, i) === 'sides' && beginsClause && TOLD_OF_SIDE.test(noun))
    return sidesFound(kind, ['left', 'right'], i + 1, RULE, 'implied');
  const side = SIDE_OF.get(w(tokens, i)) ?? LETTERS.get(w(tokens, i));
  if (!side) return undefined;
  // "tomorrow the top and the bottom ones"
  const several = isSide(w(tokens, i)) ? readSides(tokens, i) : undefined;
  if (several && several.sides.length > 1 && w(tokens, several.next) === 'ones')
    return sidesFound(kind, several.sides, several.next + 1, RULE, 'implied');
  let j = i + 1;
  if (w(tokens, j) === 'hand') j++;
  if (/^(one|ones)$/.test(w(tokens, j)) && isSide(w(tokens, i)) && !/^(in|of)$/.test(w(tokens, j + 1)))
    return sidesFound(kind, [side], j + 1, RULE, 'implied');
  if (
    /^(tomorrow|tmrw|tmw|next|later|done|ditto|too|tonight|also)$/.test(w(tokens, j)) &&
    /^(|\.|,|;|the|then|and|&|\+)$/.test(before)
  )
    return sidesFound(kind, [side], j, RULE, 'implied');
  if (
    w(tokens, j) === 'to' &&
    /^(follow|do|come|go)$/.test(w(tokens, j + 1)) &&
    /^(|\.|,|;|the|then|and|&|\+)$/.test(before)
  )
    return sidesFound(kind, [side], j, RULE, 'implied');
  // "left frayed, right ok", "R fine"
  if (ctx.focus.some((p) => p.startsWith(`${kind}-`))) {
    // "left and bottom off, 30 min", "top and bottom on too"
    const listed = beginsClause ? readSides(tokens, i) : undefined;
    if (listed && isToldOfSides(tokens, listed.next))
      return sidesFound(kind, listed.sides, listed.next, RULE, 'implied');
    // "edges: top worn, right: sound"
    if (beginsClause && TOLD_OF_SIDE.test(w(tokens, w(tokens, j) === ':' ? j + 1 : j)))
      return sidesFound(kind, [side], j, RULE, 'implied');
    // "same on the bottom", "ditto the left", "the same again along the right hand side"
    const led = before === 'the' ? i - 2 : i - 1;
    const to = /^(on|for|along|down|up|across|at|to|with|round)$/.test(w(tokens, led)) ? led - 1 : led;
    if (
      /^(same|ditto|likewise|again|thing|treatment)$/.test(w(tokens, to)) &&
      /^(|,|\.|;|and|&|\+|too|as|side|edge|now|then|also)$/.test(w(tokens, j))
    )
      return sidesFound(kind, [side], /^(side|edge)$/.test(w(tokens, j)) ? j + 1 : j, RULE, 'implied');
    // "and the top", "now the bottom, and that's it all off"
    if (
      before === 'the' &&
      ((/^(and|then|now|also|next|,)$/.test(w(tokens, i - 2)) && i <= 4) ||
        // "so's the top", "the left border's frayed and so is the right"
        (/^('s|is|has|does)$/.test(w(tokens, i - 2)) && w(tokens, i - 3) === 'so')) &&
      /^(|,|\.|too|as|and|but)$/.test(w(tokens, j))
    )
      return sidesFound(kind, [side], j, RULE, 'implied');
  }
  return undefined;
}

/** What kind of side was last spoken of: border, edge, or none. */
function sideKind(ctx: PlaceContext): 'border' | 'edge' | undefined {
  for (const group of [ctx.focus, ...[...ctx.earlier].reverse()]) {
    const side = group.find((p) => /^(border|edge)(-|$)/.test(p) || p === 'binding');
    if (side) return side.startsWith('border') ? 'border' : 'edge';
    if (group.some((p) => /^\d/.test(p)) && group !== ctx.focus) return undefined;
  }
  return undefined;
}

const RULE = 'place.side-of-it';
