import type { QuiltGrid } from '../../shared/quilt.ts';
import type { Token } from '../text/tokenise.ts';
import { nameAt } from './line-by-line.ts';
import { blockAt } from './places/grid.ts';
import { COLUMN_NOUNS, ROWS, UNIT_AFTER } from './places/place-tokens.ts';
import { smallValue } from './slips/small-number-said.ts';

const STOP = /^[.;!?\n]$/;
/** So far before its seam the row may be named. */
const REACH = 12;

/**
 * "row 4 seam split between 2 and 3", "the seam in column 2 is open between rows 3 and 4": two bare numbers side by side, told of a line
 * that was named, are its blocks. No length and no hour is told "between" two such numbers without a unit.
 */
export function nameBetween(tokens: Token[], grid: QuiltGrid): Token[] {
  if (!tokens.some((t) => t.w === 'between')) return tokens;
  const out: Token[] = [];
  for (let k = 0; k < tokens.length; k++) {
    const t = tokens[k]!;
    const pair = t.w === 'between' ? pairBehind(tokens, k + 1) : undefined;
    const line = pair && lineBefore(out);
    if (!pair || !line) {
      out.push(t);
      continue;
    }
    const blocks = [pair.a, pair.b].map((n) =>
      line.column ? blockAt(grid, n, line.value) : blockAt(grid, line.value, n),
    );
    if (blocks.some((b) => !b) || (line.column ? pair.noun === 'block' : pair.noun === 'row')) {
      out.push(t);
      continue;
    }
    out.splice(line.from, line.length);
    out.push(
      t,
      ...nameAt(blocks[0]!, pair.first),
      { ...tokens[pair.joint]!, w: 'and' },
      ...nameAt(blocks[1]!, pair.last),
    );
    k = pair.next - 1;
  }
  return out;
}

type Between = { a: number; b: number; first: Token; last: Token; joint: number; next: number; noun: string };

function pairBehind(tokens: Token[], from: number): Between | undefined {
  const noun = /^(?:blocks?|squares?)$/.test(tokens[from]?.w ?? '')
    ? 'block'
    : /^rows?$/.test(tokens[from]?.w ?? '')
      ? 'row'
      : '';
  const at = noun ? from + 1 : from;
  const [first, joint, last, after] = tokens.slice(at, at + 4);
  const a = smallValue(first);
  const b = smallValue(last);
  if (a === undefined || b === undefined || Math.abs(a - b) !== 1 || !/^(?:and|&)$/.test(joint!.w))
    return undefined;
  // "between 2 and 3 inches", "between 2 and 3-4"
  if (
    after &&
    (UNIT_AFTER.has(after.w) ||
      after.kind === 'number' ||
      smallValue(after) !== undefined ||
      (/^[-/.]$/.test(after.w) && after.glued && tokens[at + 4]?.glued))
  )
    return undefined;
  return { a, b, first: first!, last: last!, joint: at + 1, next: at + 3, noun };
}

/** The one row or column named before, in the same sentence, with nothing else behind it that has a place. */
function lineBefore(
  out: Token[],
): { from: number; length: number; value: number; column: boolean } | undefined {
  for (let k = out.length - 2; k >= 0 && k >= out.length - REACH; k--) {
    const t = out[k]!;
    if (STOP.test(t.w) || /^(?:between|blocks?|squares?|borders?|edges?)$/.test(t.w)) return undefined;
    const column = COLUMN_NOUNS.has(t.w);
    if (!column && !(ROWS.has(t.w) && !/s$/.test(t.w))) continue;
    const value = smallValue(out[k + 1]);
    if (value === undefined) return undefined;
    if (smallValue(out[k + 2]) !== undefined || /^(?:block|,|and|&|-|\/|to)$/.test(out[k + 2]?.w ?? ''))
      return undefined;
    const behind = out.slice(k + 2);
    if (
      !behind.some((x) => /^seams?$/.test(x.w)) &&
      !out.slice(Math.max(0, k - 4), k).some((x) => /^seams?$/.test(x.w))
    )
      return undefined;
    if (behind.some((x) => smallValue(x) !== undefined)) return undefined;
    const led = /^(?:in|of|on|from|along)$/.test(out[k - 1]?.w ?? '') ? 1 : 0;
    // "row 2: seam open between 1 and 2, 3 torn": the heading stands
    const heads = out[k + 2]?.w === ':';
    return { from: k - led, length: heads ? 0 : 2 + led, value, column };
  }
  return undefined;
}
