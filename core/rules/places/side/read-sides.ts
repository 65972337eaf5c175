import type { Token } from '../../../text/tokenise.ts';
import { wordAt as w } from '../../../text/word-at.ts';
import { isSide, LETTERS, SIDE_NOUNS, SIDE_OF } from './side-words.ts';

/** "top", "left hand", "top and bottom", "L + R", "top, right and bottom". */
export function readSides(
  tokens: Token[],
  i: number,
): { sides: ('top' | 'right' | 'bottom' | 'left')[]; next: number; hand: boolean } | undefined {
  const letter = LETTERS.get(w(tokens, i));
  const lettered =
    letter !== undefined &&
    (/^(border|edge|side|borders|edges|and|&|\+|,|\/)$/.test(w(tokens, i + 1)) ||
      // "border R frayed"
      SIDE_NOUNS.has(w(tokens, i - 1)));
  if (!isSide(w(tokens, i)) && !lettered) return undefined;
  const sides = [SIDE_OF.get(w(tokens, i)) ?? letter!];
  let j = i + 1;
  let hand = false;
  const skipHand = (): void => {
    while (w(tokens, j) === 'hand' || w(tokens, j) === 'most') {
      hand = true;
      j++;
    }
  };
  skipHand();
  for (;;) {
    let k = j;
    while ([',', 'and', '&', '+', 'the', '/'].includes(w(tokens, k)) && k < j + 3) k++;
    if (k === j || !(isSide(w(tokens, k)) || LETTERS.get(w(tokens, k)) !== undefined)) break;
    // "right border and the bottom row": the second side must lead to the same noun or to none
    sides.push(SIDE_OF.get(w(tokens, k)) ?? LETTERS.get(w(tokens, k))!);
    j = k + 1;
    skipHand();
  }
  return { sides: [...new Set(sides)], next: j, hand };
}
