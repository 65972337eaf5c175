import { readCount } from '../../../text/read-number.ts';
import type { Token } from '../../../text/tokenise.ts';
import { wordAt as w } from '../../../text/word-at.ts';
import { blockAt, blockFrom, blocksOfLine, countUp, splitBlock, unique } from '../grid.ts';
import { wholeLines } from '../line-spoken.ts';
import type { PlaceContext, PlaceFound } from '../place-found.ts';
import { groupsBack, pointingTo } from './pointing-to.ts';

/** "pressed the top row", "and the bottom one", "then the ones in between": rows or columns told by where they lie, after one was. */
export function lineAfterLine(tokens: Token[], i: number, ctx: PlaceContext): PlaceFound | undefined {
  const k = w(tokens, i) === 'the' ? i + 1 : i;
  const word = w(tokens, k);
  if (!/^(top|bottom|first|last|left|right|ones|middle)$/.test(word)) return undefined;
  const here = wholeLines(ctx.grid, ctx.focus);
  if (!here) return undefined;
  const { grid } = ctx;
  const rows = here.axis === 'row';
  const total = rows ? grid.rows : grid.blocks;
  const placesOf = (lines: number[]): string[] => lines.flatMap((n) => blocksOfLine(grid, here.axis, n));
  if (word === 'ones' && w(tokens, k + 1) === 'in' && w(tokens, k + 2) === 'between') {
    const [a, b] = twoLines(ctx);
    return b - a > 1 ? pointingTo(k + 3, placesOf(countUp(a + 1, b - 1)), 'place.lines-between') : undefined;
  }
  const hand = w(tokens, k + 1) === 'hand' ? k + 2 : k + 1;
  const one = w(tokens, hand) === 'one';
  const next = one ? hand + 1 : hand;
  // "and the last", with nothing behind it
  const bare = k > i && tokens[next] === undefined && /^(and|then|now|plus|also)$/.test(w(tokens, i - 1));
  if (!one && !(bare && /^(first|last)$/.test(word))) return undefined;
  // "rows one to four except the last one"
  if (EXCEPTS.test(w(tokens, i - 1))) return undefined;
  if (/^(in|of|on|along)$/.test(w(tokens, next))) return undefined;
  if (rows ? /^(left|right)$/.test(word) : /^(top|bottom)$/.test(word)) return undefined;
  const line = /^(top|first|left)$/.test(word) ? 1 : word === 'middle' ? (total + 1) / 2 : total;
  if (!Number.isInteger(line) || here.lines.includes(line)) return undefined;
  return pointingTo(next, placesOf([line]), 'place.line-after-line');
}

const EXCEPTS = /^(except|excepting|excluding|bar|barring|but|not|save|minus|without|for|from|than)$/;

/** The lowest and the highest of the whole lines told one after the other. */
function twoLines(ctx: PlaceContext): [number, number] {
  const told: number[] = [];
  for (const group of groupsBack(ctx)) {
    const lines = wholeLines(ctx.grid, group)?.lines;
    if (!lines) break;
    told.push(...lines);
  }
  return [Math.min(...told), Math.max(...told)];
}

const SPOT = /^(place|spot|block|position|square|one|ones|two|three|blocks)$/;

/**
 * "row three, same place", "the same block in row four", "same thing two rows down": the blocks spoken of last, in the same columns of
 * another row.
 */
export function inOtherRow(tokens: Token[], i: number, ctx: PlaceContext): PlaceFound | undefined {
  const blocks = ctx.focus.map((p) => splitBlock(p));
  if (!blocks.length || blocks.length > 4 || blocks.some((b) => !b)) return undefined;
  // "not eight, row five, same block": a mend keeps the block of what it mends
  const at = tokens.slice(0, i).some((t) => /^(not|no|nope|sorry|meant|mean)$/.test(t.w))
    ? undefined
    : rowAndPlace(tokens, i);
  if (at) {
    const columns = unique(blocks.map((b) => String(b!.block)));
    const places = columns.map((c) => blockAt(ctx.grid, at.row, Number(c)));
    return places.every((p) => p !== undefined)
      ? pointingTo(at.next, places, 'place.in-other-row')
      : undefined;
  }
  // "same thing two rows down"
  const n = readCount(tokens, i) ?? (w(tokens, i) === 'a' ? { value: 1, next: i + 1 } : undefined);
  if (!n || !/^rows?$/.test(w(tokens, n.next))) return undefined;
  const way = w(tokens, n.next + 1);
  const down = /^(down|below|lower|under|further)$/.test(way);
  if (!down && !/^(up|above|higher)$/.test(way)) return undefined;
  if (!/^(same|thing|again|one|another|too|also|ditto|is|'s)$/.test(w(tokens, i - 1))) return undefined;
  const next = way === 'further' ? n.next + 3 : n.next + 2;
  if (tokens[next] && !/^([.,;]|and|too|as|is|'s|has|by)$/.test(w(tokens, next))) return undefined;
  const moved = ctx.focus.map((p) => blockFrom(ctx.grid, p, down ? n.value : -n.value, 0));
  return moved.every((p) => p !== undefined) ? pointingTo(next, moved, 'place.in-other-row') : undefined;
}

/** "row three , same place", "same block in row four": the row, and where the words end. */
function rowAndPlace(tokens: Token[], i: number): { row: number; next: number } | undefined {
  if (w(tokens, i) === 'row') {
    const n = readCount(tokens, i + 1);
    if (!n) return undefined;
    let k = n.next;
    while (/^(,|in|the)$/.test(w(tokens, k)) && k < n.next + 3) k++;
    return w(tokens, k) === 'same' && SPOT.test(w(tokens, k + 1)) && !/^(in|on|of)$/.test(w(tokens, k + 2))
      ? { row: n.value, next: k + 2 }
      : undefined;
  }
  const k = w(tokens, i) === 'the' ? i + 1 : i;
  if (w(tokens, k) !== 'same' || !SPOT.test(w(tokens, k + 1))) return undefined;
  const row = /^(in|on|of)$/.test(w(tokens, k + 2)) && w(tokens, k + 3) === 'row' ? k + 3 : 0;
  const n = row ? readCount(tokens, row + 1) : undefined;
  return n ? { row: n.value, next: n.next } : undefined;
}
