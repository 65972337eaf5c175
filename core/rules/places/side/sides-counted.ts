import type { Token } from '../../../text/tokenise.ts';
import { wordAt as w } from '../../../text/word-at.ts';
import type { PlaceFound } from '../place-found.ts';
import { NO_SIDE_BEFORE, SIDE_OF, STOP } from './side-words.ts';
import { sidesFound } from './sides-found.ts';

/** "three sides by hand: the top, the left and the right", "bound two sides, top and left": told after how many they are. */
export function sidesCounted(tokens: Token[], i: number): PlaceFound | undefined {
  const side = SIDE_OF.get(w(tokens, i));
  const lead = w(tokens, i - 1) === 'the' ? i - 2 : i - 1;
  if (
    !side ||
    NO_SIDE_BEFORE.test(w(tokens, i + 1)) ||
    /^(edge|side|hand|border|binding)/.test(w(tokens, i + 1))
  )
    return undefined;
  // "bound the bottom and the left", "bound top + R", "bound it top and right"
  const bound = w(tokens, lead) === 'it' ? lead - 1 : lead;
  if (
    /^(bound|hemmed)$/.test(w(tokens, bound)) &&
    // "bound the top and both sides" is read with its sides
    !/^(both|two|sides)$/.test(w(tokens, i + 2)) &&
    (w(tokens, lead + 1) === 'the' || /^(and|&|\+|,|\.|)$/.test(w(tokens, i + 1)))
  )
    return sidesFound('edge', [side], i + 1, 'place.sides-counted');
  if (!/^[:,]$/.test(w(tokens, lead))) return undefined;
  for (let k = lead - 1; k >= Math.max(1, lead - 7); k--) {
    if (STOP.test(w(tokens, k))) return undefined;
    if (!/^(sides|edges|borders)$/.test(w(tokens, k)) || !/^(two|three|four|2|3|4)$/.test(w(tokens, k - 1)))
      continue;
    const part = w(tokens, k) === 'borders' ? 'border' : 'edge';
    return sidesFound(part, [side], i + 1, 'place.sides-counted');
  }
  return undefined;
}
