import type { Token } from '../../../text/tokenise.ts';
import { wordAt as w } from '../../../text/word-at.ts';
import type { PlaceFound } from '../place-found.ts';
import { readSides } from './read-sides.ts';
import { sidesFound } from './sides-found.ts';

/** "along the top", "down the left", "across the bottom": a side of the border, or else of the edge. */
export function sideAlone(tokens: Token[], i: number): PlaceFound | undefined {
  // "trim 15 mm off top & bottom": the article may be missing where two are told
  const bare = /^(off|from)$/.test(w(tokens, i - 1)) && /^(and|&|\+|\/)$/.test(w(tokens, i + 1));
  const way = w(tokens, bare ? i - 1 : i - 2);
  if (!bare && (w(tokens, i - 1) !== 'the' || !/^(along|across|down|up|off|from)$/.test(way)))
    return undefined;
  // "trimmed half an inch off the bottom", "the binding off the bottom", but "took the patch off the top"
  if (
    /^(off|from)$/.test(way) &&
    !tokens
      .slice(Math.max(0, i - 8), bare ? i - 1 : i - 2)
      .some((t) =>
        /^(inch|inches|in|cm|mm|eighths?|quarters?|centimetres?|centimeters?|millimetres?|millimeters?|half|sliver|strip|whisker|binding|bdg)$/.test(
          t.w,
        ),
      )
  )
    return undefined;
  const sides = readSides(tokens, i);
  if (!sides) return undefined;
  // "squared up the top" names no side; "up the left" does
  const upright = sides.sides.every((s) => s === 'left' || s === 'right');
  if (way === 'up' && !upright) return undefined;
  let next = sides.next;
  if (/^(side|sides)$/.test(w(tokens, next))) next++;
  if (/^(block|blocks|row|rows|corner|column|two|three|border|edge|half|of|seam)$/.test(w(tokens, next)))
    return undefined;
  return sidesFound('edge', sides.sides, next, 'place.side-alone');
}
