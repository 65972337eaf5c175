import type { Token } from '../../../text/tokenise.ts';
import { wordAt as w } from '../../../text/word-at.ts';
import type { PlaceFound } from '../place-found.ts';
import { readSides } from './read-sides.ts';
import { isSide, SIDE_OF, STOP } from './side-words.ts';
import { sidesFound } from './sides-found.ts';

/**
 * "left and right went on by machine", "top and bottom to go on tomorrow", "they go on left and right tonight, and after that top
 * and bottom": sides of the border that was spoken of before.
 */
export function sidesPutOn(tokens: Token[], i: number): PlaceFound | undefined {
  // "new borders are on by machine, the top one and the bottom one"
  if (
    isSide(w(tokens, i)) &&
    w(tokens, i + 1) === 'one' &&
    !/^(in|of)$/.test(w(tokens, i + 2)) &&
    / borders are /.test(
      ` ${tokens
        .slice(Math.max(0, i - 9), i)
        .map((t) => t.w)
        .join(' ')} `,
    )
  )
    return sidesFound('border', [SIDE_OF.get(w(tokens, i))!], i + 2, 'place.sides-put-on', 'implied');
  if (!isSide(w(tokens, i)) || !/^(and|&|\+|hand|side|both)$/.test(w(tokens, i + 1))) return undefined;
  const read = readSides(tokens, i);
  if (!read || read.sides.length < 2 || !tokens.slice(0, i).some((t) => BORDERS.test(t.w))) return undefined;
  let j = read.next;
  if (/^(hand|sides?|ones?)$/.test(w(tokens, j))) j++;
  // the words of the sentence on both sides, as far as the next stop
  let a = i;
  while (a > 0 && a > i - 10 && !STOP.test(w(tokens, a - 1))) a--;
  let b = j;
  while (b < tokens.length && b < j + 7 && !STOP.test(w(tokens, b))) b++;
  const before = ` ${tokens
    .slice(a, i)
    .map((t) => t.w)
    .join(' ')} `;
  const after = ` ${tokens
    .slice(j, b)
    .map((t) => t.w)
    .join(' ')} `;
  const on =
    / (?:go|goes|went|going|put|sewn|sewed|are|is|was|were) on (?:(?:the|left|right|top|bottom|and|both|sides|tonight|first|then|after|that|now|,) )*$/.test(
      before,
    ) ||
    /^ (?:(?:will|'ll|to|be|being|are|is|were|all|both|now|have|been|going) )*(?:go|goes|went|gone|going|put|sewn|sewed|stitched|joined|are|is|were|got|get)? ?on /.test(
      after,
    );
  if (!on) return undefined;
  return sidesFound('border', read.sides, j, 'place.sides-put-on', 'implied');
}

const BORDERS = /^borders?$/;
