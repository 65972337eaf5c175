import type { Token } from '../../../text/tokenise.ts';
import { wordAt as w } from '../../../text/word-at.ts';
import type { PlaceContext, PlaceFound } from '../place-found.ts';
import { bothFaces } from './both-faces.ts';
import { boundSide } from './bound-side.ts';
import { readSides } from './read-sides.ts';
import { severalSides } from './several-sides.ts';
import { sideAlone } from './side-alone.ts';
import { listedSides, oneMoreSide, trailingSide } from './side-behind-part.ts';
import { sideNowOn } from './side-now-on.ts';
import { sideOfFocus } from './side-of-focus.ts';
import { partOf, SIDE_NOUNS } from './side-words.ts';
import { sidesCounted } from './sides-counted.ts';
import { sidesFound } from './sides-found.ts';
import { sidesPutOn } from './sides-put-on.ts';
import { withMoreSides } from './with-more-sides.ts';

/**
 * "left border", "top and bottom borders", "right-hand edge", "binding along the top", "bottom edge of the binding",
 * "left side". The sides of a binding are edges.
 */
export function sidedPart(tokens: Token[], i: number, ctx: PlaceContext): PlaceFound | undefined {
  const found = sidesAt(tokens, i, ctx);
  return found && withMoreSides(tokens, i, found);
}

function sidesAt(tokens: Token[], i: number, ctx: PlaceContext): PlaceFound | undefined {
  const faces = bothFaces(tokens, i);
  if (faces) return faces;
  const alone =
    sidesPutOn(tokens, i) ??
    sideNowOn(tokens, i) ??
    boundSide(tokens, i) ??
    sidesCounted(tokens, i) ??
    severalSides(tokens, i) ??
    sideOfFocus(tokens, i, ctx) ??
    listedSides(tokens, i) ??
    oneMoreSide(tokens, i) ??
    trailingSide(tokens, i);
  if (alone) return alone;
  const read = readSides(tokens, i);
  if (read) {
    let j = read.next;
    const noun = w(tokens, j);
    if (SIDE_NOUNS.has(noun)) {
      // "top and bottom borders" carries both; "top, bottom border" too.
      const part = partOf(noun);
      j++;
      if (part === 'border' && w(tokens, j) === 'strip') j++;
      return sidesFound(part, read.sides, j, 'place.sided-part');
    }
    if ((noun === 'side' || noun === 'sides') && read.next > i) {
      const after = w(tokens, j + 1);
      const part = after === 'border' || after === 'borders' ? 'border' : 'edge';
      if (after === 'of' && w(tokens, j + 2) === 'the' && SIDE_NOUNS.has(w(tokens, j + 3)))
        return sidesFound(partOf(w(tokens, j + 3)), read.sides, j + 4, 'place.sided-part');
      if (
        read.sides[0] === 'top' ||
        read.sides[0] === 'bottom' ||
        read.sides[0] === 'left' ||
        read.sides[0] === 'right'
      ) {
        if (w(tokens, i) === 'right' && !read.hand && part === 'edge' && w(tokens, i - 1) !== 'the')
          return undefined;
        return sidesFound(part, read.sides, part === 'border' ? j + 2 : j + 1, 'place.side');
      }
    }
    // "the bottom of the binding", "the top of the border"
    if (noun === 'of' && /^(the|its)$/.test(w(tokens, j + 1)) && SIDE_NOUNS.has(w(tokens, j + 2)))
      return sidesFound(partOf(w(tokens, j + 2)), read.sides, j + 3, 'place.side-of-part');
    return sideAlone(tokens, i);
  }
  const noun = w(tokens, i);
  if (!SIDE_NOUNS.has(noun)) return undefined;
  // "border on the left", "binding along the top edge", "edge at the bottom", "border L + R", "border, left side"
  let j = i + 1;
  let joined = false;
  while (
    ['on', 'along', 'at', 'the', 'to', ',', 'down', 'across', 'of', ':', '('].includes(w(tokens, j)) &&
    j < i + 4
  ) {
    joined = true;
    j++;
  }
  // "binding the left side now": the verb
  if (noun === 'binding' && (!joined || w(tokens, i + 1) === 'the')) return undefined;
  const sides = readSides(tokens, j);
  if (!sides) return undefined;
  if (!joined && noun !== 'border' && noun !== 'borders') return undefined;
  const after = w(tokens, sides.next);
  if (['block', 'corner', 'corners', 'row', 'column', 'border', 'borders', 'two', 'three'].includes(after))
    return undefined;
  // "the binding at the top left corner"
  if (
    /^(left|right)$/.test(after) &&
    /^corners?$/.test(w(tokens, w(tokens, sides.next + 1) === 'hand' ? sides.next + 2 : sides.next + 1))
  )
    return undefined;
  const part = partOf(noun);
  let next = sides.next;
  if (['edge', 'side', 'edges', 'sides'].includes(after)) next++;
  else if (w(tokens, j - 1) === ',' || (w(tokens, j - 1) === 'the' && w(tokens, j - 2) === 'of'))
    return undefined;
  return sidesFound(part, sides.sides, next, 'place.part-side');
}
