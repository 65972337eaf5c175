import type { Token } from '../../../text/tokenise.ts';
import { wordAt as w } from '../../../text/word-at.ts';
import { countUp } from '../grid.ts';
import { BLOCK_NOUNS } from '../place-tokens.ts';
import { readIndex } from '../read-index.ts';
import { axisOf } from './axis-of.ts';

/** After a number: "down to row three", "and below", "on down", "to the bottom", "onwards", "and up". */
export function reaching(
  tokens: Token[],
  i: number,
  prefix: ReadonlySet<string>,
  from: number,
  total: number,
  fromLed: boolean,
): { lines: number[]; next: number } | undefined {
  let j = i;
  if (/^(right|all|on|and)$/.test(w(tokens, j))) j++;
  if (/^(right|all|on)$/.test(w(tokens, j))) j++;
  if (/^(the|way)$/.test(w(tokens, j)) && w(tokens, j + 1) === 'way') j += 2;
  const word = w(tokens, j);
  const down = /^(down|downwards?|below|under|beneath|onwards?|along|across|out)$/.test(word);
  const up = /^(up|upwards?|above)$/.test(word);
  let k = down || up ? j + 1 : j;
  if (
    /^(to|until|till|through|thru)$/.test(w(tokens, k)) ||
    (w(tokens, k) === 'as' && w(tokens, k + 1) === 'far')
  ) {
    k += w(tokens, k) === 'as' ? 3 : 1;
    if (w(tokens, k) === 'and') k += 2;
    const bottom = w(tokens, k) === 'the' ? k + 1 : k;
    if (
      /^(end|bottom|edge|last|right)$/.test(w(tokens, bottom)) &&
      bottom > k &&
      !axisOf(w(tokens, bottom + 1)) &&
      !BLOCK_NOUNS.has(w(tokens, bottom + 1))
    )
      return {
        lines: countUp(from, total),
        next: /^(edge|end|one|side)$/.test(w(tokens, bottom + 1)) ? bottom + 2 : bottom + 1,
      };
    if (prefix.has(w(tokens, k))) {
      const last = readIndex(tokens, k + 1, true);
      if (last && last.value <= total && last.value !== from)
        return { lines: countUp(from, last.value), next: last.next };
    }
    return undefined;
  }
  const led = j > i && w(tokens, j - 1) !== 'right';
  if (!(down || up)) {
    // "from row three on"
    return fromLed && w(tokens, i) === 'on' ? { lines: countUp(from, total), next: i + 1 } : undefined;
  }
  const next = w(tokens, k);
  // "row five down" ends there; "row five down the left side", "row five up the middle" go on
  if (/^(the|by|at|with|from|one|two|a|left|right|there)$/.test(next) && !led) return undefined;
  if (/^(along|across|out|under)$/.test(word) && !(fromLed && /^(along|across)$/.test(word)))
    return undefined;
  if (!led && up) return undefined;
  return { lines: up ? countUp(1, from) : countUp(from, total), next: k };
}
