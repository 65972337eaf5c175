import type { QuiltGrid } from '../../shared/quilt.ts';
import { readCount } from '../text/read-number.ts';
import type { Token } from '../text/tokenise.ts';
import { wholeLines } from './places/line-spoken.ts';

const LEAD =
  /^(?:and|now|then|so|ok|okay|right|oh|also|plus|well|just|did|done|finished|doing|onto|same|on|for|with|again|ditto|i|'m|'ve|that|'s|,|&)$/;
const JOINT = /^(?:and|&|,|to|through|-)$/;
const TAIL =
  /^(?:too|as|well|now|done|'s|is|are|all|also|next|tomorrow|later|tonight|finished|still|to|do|go|same|the|likewise|ditto|today|,|\.|!)$/;

/**
 * "basted rows 1 and 2", then "3 and 4 as well now": where whole rows or columns were spoken of last and a short note is of numbers
 * alone, they are the next of them. The word is put in before the numbers.
 */
export function nameLines(tokens: Token[], focus: string[], grid: QuiltGrid): Token[] {
  if (tokens.length < 2 || tokens.length > 10 || focus.length < 2) return tokens;
  let i = 0;
  while (i < tokens.length && LEAD.test(tokens[i]!.w)) i++;
  const at = i;
  if (!readCount(tokens, at)) return tokens;
  const said = wholeLines(grid, focus);
  if (!said) return tokens;
  const most = said.axis === 'row' ? grid.rows : grid.blocks;
  const numbers: number[] = [];
  for (;;) {
    const n = readCount(tokens, i);
    if (!n || !Number.isInteger(n.value) || n.value > most || said.lines.includes(n.value)) return tokens;
    numbers.push(n.value);
    i = n.next;
    if (!JOINT.test(tokens[i]?.w ?? '') || !readCount(tokens, i + 1)) break;
    i++;
  }
  const behind = tokens.slice(i);
  if ((at === 0 && !behind.length) || !behind.every((t) => TAIL.test(t.w))) return tokens;
  const word = `${said.axis}${numbers.length > 1 ? 's' : ''}`;
  return [...tokens.slice(0, at), { ...tokens[at]!, w: word, kind: 'word' }, ...tokens.slice(at)];
}
