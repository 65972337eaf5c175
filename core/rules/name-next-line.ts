import type { QuiltGrid } from '../../shared/quilt.ts';
import { readCount } from '../text/read-number.ts';
import type { Token } from '../text/tokenise.ts';

const LINES = /^(?:rows|columns|cols)$/;
const JOINT = /^(?:and|&|,|to|through|-|\+)$/;
/** What is said of a line that is named by its number alone. */
const TELLS = /^(?:'s|is|has|are|have|was|were|looks?|smells?|shows?|needs?)$/;
const BEFORE = /^(?:,|;|and|but|though|while|only|[a-z]+)$/;
const LEANS =
  /^(?:row|rows|block|blocks|column|columns|the|a|in|on|at|of|for|to|by|from|than|about|with|another|all|square|squares|number|or|between)$/;

/**
 * "rows one and two are fine three's got mildew in it", "columns 1 to 3 sound, 4 is faded": where several lines were named and a number
 * beyond them is told of in the same sentence, it is the next line. The word is put in before it.
 */
export function nameNextLine(tokens: Token[], grid: QuiltGrid): Token[] {
  const head = tokens.findIndex((t) => LINES.test(t.w));
  if (head < 0) return tokens;
  const row = tokens[head]!.w === 'rows';
  let last: number | undefined;
  let i = head + 1;
  for (let n = readCount(tokens, i); n; n = readCount(tokens, i)) {
    last = n.value;
    i = n.next;
    while (JOINT.test(tokens[i]?.w ?? '') && readCount(tokens, i + 1)) i++;
    if (!JOINT.test(tokens[i - 1]?.w ?? '')) break;
  }
  if (last === undefined || !TELLS.test(tokens[i]?.w ?? '')) return tokens;
  const out = tokens.slice(0, i);
  for (; i < tokens.length; i++) {
    const t = tokens[i]!;
    if (/^[.!?\n]$/.test(t.w)) return [...out, ...tokens.slice(i)];
    const n = readCount(tokens, i);
    const before = tokens[i - 1]!.w;
    if (
      n &&
      Number.isInteger(n.value) &&
      n.value > last &&
      n.value <= (row ? grid.rows : grid.blocks) &&
      TELLS.test(tokens[n.next]?.w ?? '') &&
      BEFORE.test(before) &&
      !LEANS.test(before) &&
      !readCount(tokens, i - 1)
    ) {
      out.push({ ...t, w: row ? 'row' : 'column', kind: 'word' });
      last = n.value;
    }
    out.push(t);
  }
  return out;
}
