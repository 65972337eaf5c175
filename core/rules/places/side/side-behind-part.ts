import type { Token } from '../../../text/tokenise.ts';
import { wordAt as w } from '../../../text/word-at.ts';
import type { PlaceFound } from '../place-found.ts';
import { LETTERS, PARTS_WITH_SIDES, partNamed, SIDE_OF } from './side-words.ts';
import { sidesFound } from './sides-found.ts';

/**
 * "border's stained at the top", "binding frayed, left", "edge frayed at foot", "the binding's gone on the left": one side told
 * after its part; "the bottom of the quilt".
 */
export function trailingSide(tokens: Token[], i: number): PlaceFound | undefined {
  const side = SIDE_OF.get(w(tokens, i));
  if (!side) return undefined;
  let j = i + 1;
  if (w(tokens, j) === 'hand') j++;
  if (/^(side|edge)$/.test(w(tokens, j)) && !PARTS_WITH_SIDES.has(w(tokens, j + 1))) j++;
  const before = w(tokens, i - 1);
  if (
    w(tokens, j) === 'of' &&
    /^(the|this)$/.test(w(tokens, j + 1)) &&
    /^(quilt|coverlet|thing)$/.test(w(tokens, j + 2))
  ) {
    if (side === 'top' && !/^(along|across|at)$/.test(w(tokens, i - 2))) return undefined;
    return sidesFound('edge', [side], j + 3, 'place.side-of-quilt');
  }
  const led = /^(on|at|along|down|across|up)$/.test(
    before === 'the' || before === 'its' ? w(tokens, i - 2) : before,
  );
  // "binding worn right side": led by nothing, where it is called a side
  const bare = /^(side|edge)$/.test(w(tokens, j - 1)) && DAMAGED.test(before) && j > i + 1;
  if (!led && !bare && before !== ',') return undefined;
  if (
    !(w(tokens, j) === 'to' && w(tokens, j + 1) === 'be') &&
    !/^(|,|\.|;|and|&|but|so|though|too|only|is|\)|where|because|with|by|for|i|it|that)$/.test(w(tokens, j))
  )
    return undefined;
  // "and the top right", "on the left and the bottom row" are other places
  if (
    /^(and|&|,)$/.test(w(tokens, j)) &&
    /^(rows?|columns?|blocks?)$/.test(w(tokens, j + 2) + w(tokens, j + 3))
  )
    return undefined;
  let part: 'border' | 'edge' | undefined;
  let stops = 0;
  for (let k = i - 1; k >= Math.max(0, i - (stops ? 16 : 9)) && !part; k--) {
    const word = w(tokens, k);
    // "binding frayed at the bottom. Loose on the left": of the part that the sentence before told of
    if (/^[.;]$/.test(word) && led && before === 'the' && stops++ === 0) continue;
    if (stops && /^(\d+|\d+-\d+|seams?|patch|quilt)$/.test(word)) return undefined;
    if (/^[.;!?]$/.test(word) || /^(rows?|blocks?|columns?|corners?|batting|wadding|backing)$/.test(word))
      return undefined;
    part = partNamed(word);
    if (part && stops) break;
    if (part && SIDE_OF.has(w(tokens, k - 1)) && before !== ',' && !led) return undefined;
    // "the top border is stained on the left": a side told already
    if (part && (SIDE_OF.has(w(tokens, k - 1)) || w(tokens, k - 1) === 'hand')) return undefined;
  }
  return part && sidesFound(part, [side], j, 'place.part-then-side');
}

const DAMAGED =
  /^(worn|frayed|fraying|torn|loose|stained|faded|thin|gone|off|undone|ripped|split|mouldy|moldy|rotten|ragged|through|chewed|puckered|shredded)$/;

/** "binding worn L & R", "border faded top and bottom", "edge frayed on the left and right": two sides told after their part. */
export function listedSides(tokens: Token[], i: number): PlaceFound | undefined {
  const first = SIDE_OF.get(w(tokens, i)) ?? LETTERS.get(w(tokens, i));
  const second = SIDE_OF.get(w(tokens, i + 2)) ?? LETTERS.get(w(tokens, i + 2));
  // "edge frayed left, right and bottom"
  const three =
    w(tokens, i + 1) === ',' && /^(&|\+|and)$/.test(w(tokens, i + 3)) && SIDE_OF.has(w(tokens, i + 4));
  if (!first || !second || first === second || !(three || /^(&|\+|and|\/)$/.test(w(tokens, i + 1))))
    return undefined;
  if (
    /^(border|borders|edge|edges|side|sides|hand|block|blocks|row|rows|corner|corners|column|columns|one|ones|binding|\d+)$/.test(
      w(tokens, i + 3),
    )
  )
    return undefined;
  for (let k = i - 1; k >= Math.max(0, i - 11); k--) {
    const word = w(tokens, k);
    if (/^[.;!?]$/.test(word)) return undefined;
    const part = partNamed(word);
    if (part) return sidesFound(part, [first, second], i + 3, 'place.listed-sides');
  }
  return undefined;
}

/** "trimmed the left edge and the right", "pressed the top border and the bottom": the other side of the part just named. */
export function oneMoreSide(tokens: Token[], i: number): PlaceFound | undefined {
  const side = SIDE_OF.get(w(tokens, i));
  if (!side) return undefined;
  const the = w(tokens, i - 1) === 'the';
  const k = the ? i - 2 : i - 1;
  if (!/^(and|&|\+|,)$/.test(w(tokens, k))) return undefined;
  const part = PARTS_WITH_SIDES.get(w(tokens, k - 1));
  const first = SIDE_OF.get(w(tokens, w(tokens, k - 2) === 'hand' ? k - 3 : k - 2));
  if (!part || !first || first === side) return undefined;
  // "… and left the rest", "… and the top" of patchwork
  if (!the && /^(left|right)$/.test(side)) return undefined;
  if (side === 'top' && first !== 'bottom') return undefined;
  const j = w(tokens, i + 1) === 'hand' ? i + 2 : i + 1;
  if (
    !/^(|[.;,!?\n]|and|&|by|with|in|an?|half|both|too|as|is|'s|are|have|has|tomorrow|today|now|then|took|take|on|at|for|\d+)$/.test(
      w(tokens, j),
    )
  )
    return undefined;
  return sidesFound(part, [side], j, 'place.one-more-side');
}
