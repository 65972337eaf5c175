import type { Token } from '../../../text/tokenise.ts';
import { wordAt as w } from '../../../text/word-at.ts';
import type { PlaceFound } from '../place-found.ts';
import { PARTS_WITH_SIDES, SIDE_OF } from './side-words.ts';
import { sidesFound } from './sides-found.ts';

/** "all four borders", "the side borders", "down both sides", "all four edges", "the sides are frayed". */
export function severalSides(tokens: Token[], i: number): PlaceFound | undefined {
  let j = i;
  if (w(tokens, j) === 'all') j++;
  if (w(tokens, j) === 'the') j++;
  const noun = w(tokens, j + 1);
  if (/^(four|4)$/.test(w(tokens, j)) && /^(borders|edges)$/.test(noun)) {
    return sidesFound(
      noun === 'borders' ? 'border' : 'edge',
      ['top', 'right', 'bottom', 'left'],
      j + 2,
      RULE,
    );
  }
  const first = SIDE_OF.get(w(tokens, i));
  if ((first === 'top' || first === 'bottom') && /^(and|&|\+|,)$/.test(w(tokens, i + 1))) {
    const at = /^(both|the|two)$/.test(w(tokens, i + 2)) ? i + 3 : i + 2;
    const of = w(tokens, at) === 'sides' ? (partNear(tokens, i, at + 1) ?? boundEdge(tokens)) : undefined;
    if (of) return sidesFound(of, [first, 'left', 'right'], at + 1, RULE);
  }
  // "other two sides" are those that were not told before
  if (/^(other|remaining)$/.test(w(tokens, i - 1))) return undefined;
  const both = /^(both|two)$/.test(w(tokens, i)) ? i + 1 : i;
  // "two sides, top and right" are told apart after it
  if (w(tokens, both) === 'sides' && SIDE_OF.has(w(tokens, both + (w(tokens, both + 1) === ',' ? 2 : 1))))
    return undefined;
  if (w(tokens, both) === 'side' && /^(borders|edges|bindings)$/.test(w(tokens, both + 1)))
    return sidesFound(
      w(tokens, both + 1) === 'borders' ? 'border' : 'edge',
      ['left', 'right'],
      both + 2,
      RULE,
    );
  if (w(tokens, both) !== 'sides' || /^(of)$/.test(w(tokens, both + 1))) return undefined;
  const led = w(tokens, i - 1);
  const part = partNear(tokens, i, both + 1) ?? boundEdge(tokens);
  if (both > i && (part || /^(down|up|along)$/.test(led)))
    return sidesFound(part ?? 'edge', ['left', 'right'], both + 1, RULE);
  // "top and bottom borders on, sides tomorrow"
  if (both === i && /^[,;]$/.test(led) && LATER.test(w(tokens, i + 1)) && part)
    return sidesFound(part, ['left', 'right'], both + 1, RULE);
  // "the sides are frayed"
  if (
    both === i &&
    led === 'the' &&
    !/^(on|in|at|from)$/.test(w(tokens, i - 2)) &&
    (part || /^(are|have|is|of|got|need|want)$/.test(w(tokens, both + 1)))
  )
    return sidesFound(part ?? 'edge', ['left', 'right'], both + 1, RULE);
  return undefined;
}

/** The border or the edge named shortly before token `i` in the same sentence, or right after it; a binding's sides are edges. */
function partNear(tokens: Token[], i: number, after: number): 'border' | 'edge' | undefined {
  for (let k = i - 1; k >= Math.max(0, i - 8); k--) {
    const word = w(tokens, k);
    if (/^[.;!?]$/.test(word)) break;
    if (/^(row|rows|block|blocks|column|corner|backing|batting)$/.test(word)) break;
    const part = PARTS_WITH_SIDES.get(word);
    if (part) return part;
  }
  for (let k = after; k < Math.min(after + 3, tokens.length); k++) {
    const part = PARTS_WITH_SIDES.get(w(tokens, k));
    if (part) return part;
    if (!/^(the|of|,)$/.test(w(tokens, k))) break;
  }
  return undefined;
}

const LATER = /^(?:tomorrow|tmrw|tmw|next|later|tonight|still|to|not|on|off|done|fine|okay|ok|sound)$/;
const RULE = 'place.several-sides';

/** "bound the top and both sides"; asked only where sides are told, since it looks at every word of the note. */
const boundEdge = (tokens: Token[]): 'edge' | undefined =>
  tokens.some((t) => BINDING.has(t.w)) ? 'edge' : undefined;

const BINDING = new Set(['bound', 'bind', 'binding', 'hemmed', 'bdg']);
