import type { QuiltGrid } from '../../../shared/quilt.ts';
import { readCount, readOrdinal } from '../../text/read-number.ts';
import type { Token } from '../../text/tokenise.ts';
import { wordAt as w } from '../../text/word-at.ts';
import { blockAt, unique } from './grid.ts';
import { readPair } from './pair.ts';
import type { PlaceContext, PlaceFound } from './place-found.ts';
import { BLOCKS, COLUMNS, focusRow, ROWS, ROWS_HEARD, UNIT_AFTER } from './place-tokens.ts';
import { readIndex, readIndexList } from './read-index.ts';

/** "block three of row two", "blocks 1 and 3 in row 5", "block three, same row", "block three". */
export function blockFirst(tokens: Token[], i: number, ctx: PlaceContext): PlaceFound | undefined {
  const t = tokens[i]!;
  if (!BLOCKS.has(t.w) || (t.w === 'b' && !readCount(tokens, i + 1))) return undefined;
  const blocks = readIndexList(tokens, i + 1, { prefix: BLOCKS, homophones: true, max: ctx.grid.blocks });
  if (!blocks) {
    // "block 3-2", "blocks 1-1, 2-2": the pair reader takes it from there.
    return undefined;
  }
  // "the block four down from the top and two in"
  if (/^(down|up)$/.test(w(tokens, blocks.next)) && w(tokens, blocks.next + 1) === 'from') return undefined;
  const pair = readPair(tokens, i + 1, ctx.grid);
  const row = rowAfterBlock(tokens, blocks.next, ctx);
  // "row 6: ties gone, b2-4": from the one to the other along the row that was named
  const along =
    (t.w === 'b' ? tokens[i + 1]!.glued : t.w === 'blocks') &&
    ctx.walk?.reached === 0 &&
    blocks.values.length > 1;
  if (pair && !row && !along && w(tokens, i + 2) === '-' && pair.place) return undefined;
  if (row) return alsoInRow(tokens, blocks.values, row, ctx);
  // "block three two": row three, block two.
  if (blocks.values.length === 1) {
    const second = readCount(tokens, blocks.next);
    if (
      second &&
      !UNIT_AFTER.has(w(tokens, second.next)) &&
      second.value <= ctx.grid.blocks &&
      blocks.values[0]! <= ctx.grid.rows &&
      w(tokens, second.next) !== '-'
    )
      return fromRowAndBlocks(
        ctx.grid,
        blocks.values[0]!,
        [second.value],
        second.next,
        'said',
        'place.block-pair',
      );
  }
  const implied = focusRow(ctx);
  if (implied === undefined) {
    if (t.w === 'b') return undefined;
    return { next: blocks.next, places: [], how: 'implied', rule: 'place.block-alone', kind: 'blocks' };
  }
  return fromRowAndBlocks(ctx.grid, implied, blocks.values, blocks.next, 'implied', 'place.block-same-row');
}

/** "block two in row one and in row three": the same block of the next row too, where the preposition is said again. */
function alsoInRow(
  tokens: Token[],
  blocks: number[],
  row: { value: number; next: number; how: 'said' | 'implied' },
  ctx: PlaceContext,
): PlaceFound {
  const first = fromRowAndBlocks(ctx.grid, row.value, blocks, row.next, row.how, 'place.block-row');
  const k = row.next;
  const more = listInRow(tokens, k, ctx);
  if (more) return { ...first, next: more.next, places: unique([...first.places, ...more.places]) };
  const joined = /^(and|&|,)$/.test(w(tokens, k)) && /^(of|in)$/.test(w(tokens, k + 1));
  const other = joined && ROWS.has(w(tokens, k + 2)) ? readIndex(tokens, k + 3, false) : undefined;
  if (!other || BLOCKS.has(w(tokens, other.next))) return first;
  const second = alsoInRow(tokens, blocks, { value: other.value, next: other.next, how: 'said' }, ctx);
  return { ...first, next: second.next, places: unique([...first.places, ...second.places]) };
}

/** "(blocks two and four in row five,) and one and three in row two": of the row named behind them. */
function listInRow(tokens: Token[], k: number, ctx: PlaceContext): PlaceFound | undefined {
  let at = k;
  while (/^(,|and|&|\+|plus)$/.test(w(tokens, at)) && at < k + 2) at++;
  if (at === k) return undefined;
  const list = readIndexList(tokens, at, { prefix: BLOCKS, homophones: false, max: ctx.grid.blocks });
  if (!list || !/^(in|of)$/.test(w(tokens, list.next)) || !/^rows?$/.test(w(tokens, list.next + 1)))
    return undefined;
  const row = readIndex(tokens, list.next + 2, true);
  return row
    ? alsoInRow(tokens, list.values, { value: row.value, next: row.next, how: 'said' }, ctx)
    : undefined;
}

export function fromRowAndBlocks(
  grid: QuiltGrid,
  row: number,
  blocks: number[],
  next: number,
  how: 'said' | 'implied',
  rule: string,
): PlaceFound {
  const named = blocks.map((b) => blockAt(grid, row, b));
  const inside = named.filter((p): p is string => p !== undefined);
  return {
    next,
    places: unique(inside),
    how,
    rule,
    kind: 'blocks',
    ...(inside.length < named.length ? { outside: true } : {}),
  };
}

/** After a block or ordinal: "of row two", "in the third row", ", row 4", "same row", "of that row". */
export function rowAfterBlock(
  tokens: Token[],
  at: number,
  ctx: PlaceContext,
): { value: number; next: number; how: 'said' | 'implied' } | undefined {
  let j = at;
  let joined = false;
  while (
    [
      'of',
      'in',
      'on',
      'the',
      ',',
      'along',
      'from',
      'down',
      'there',
      'over',
      'that',
      'this',
      'same',
      'at',
    ].includes(w(tokens, j)) &&
    j < at + 5
  ) {
    if (w(tokens, j) !== ',' && w(tokens, j) !== 'the') joined = true;
    j++;
  }
  const word = w(tokens, j);
  if (ROWS.has(word) || (ROWS_HEARD.has(word) && (joined || j === at))) {
    const index = readIndex(tokens, j + 1, true);
    if (index && word !== 'rows') return { value: index.value, next: index.next, how: 'said' };
    if (['that', 'same', 'this'].includes(w(tokens, j - 1)) || (joined && !index)) {
      const row = focusRow(ctx);
      if (row !== undefined) return { value: row, next: j + 1, how: 'implied' };
    }
    return undefined;
  }
  const ordinal = rowOrdinal(tokens, j, ctx.grid);
  if (ordinal) return { value: ordinal.value, next: ordinal.next, how: 'said' };
  if (joined && word === 'it' && (w(tokens, at) === 'of' || w(tokens, at) === 'in')) {
    const row = focusRow(ctx);
    if (row !== undefined) return { value: row, next: j + 1, how: 'implied' };
  }
  return undefined;
}

/** "third row", "top row", "last row", "middle row", "bottom row". */
export function rowOrdinal(
  tokens: Token[],
  i: number,
  grid: QuiltGrid,
): { value: number; next: number } | undefined {
  const ordinal = readOrdinal(tokens, i);
  if (ordinal && ROWS.has(w(tokens, ordinal.next))) return { value: ordinal.value, next: ordinal.next + 1 };
  const side = w(tokens, i);
  // "the bottom row but one", "last row but two"
  if (
    (side === 'bottom' || side === 'last' || side === 'top') &&
    w(tokens, i + 1) === 'row' &&
    w(tokens, i + 2) === 'but' &&
    /^(one|two|1|2)$/.test(w(tokens, i + 3))
  ) {
    const back = /two|2/.test(w(tokens, i + 3)) ? 2 : 1;
    return { value: side === 'top' ? 1 + back : grid.rows - back, next: i + 4 };
  }
  if (ROWS.has(w(tokens, i + 1)) && w(tokens, i + 1) !== 'rows') {
    if (side === 'top') return { value: 1, next: i + 2 };
    if (side === 'bottom' || side === 'last' || side === 'end') return { value: grid.rows, next: i + 2 };
    if ((side === 'middle' || side === 'centre' || side === 'center') && grid.rows % 2)
      return { value: (grid.rows + 1) / 2, next: i + 2 };
  }
  if (side === 'second' && w(tokens, i + 1) === 'last' && ROWS.has(w(tokens, i + 2)))
    return { value: grid.rows - 1, next: i + 3 };
  if (
    side === 'last' &&
    w(tokens, i + 1) === 'but' &&
    w(tokens, i + 2) === 'one' &&
    ROWS.has(w(tokens, i + 3))
  )
    return { value: grid.rows - 1, next: i + 4 };
  return undefined;
}

/** "the end | one on the right", "the last | block at the left-hand end": which end of the row is meant. */
export function endOnSide(
  tokens: Token[],
  end: string,
  k: number,
): { right: boolean; next: number } | undefined {
  const one = w(tokens, k) === 'one' || (BLOCKS.has(w(tokens, k)) && !w(tokens, k).endsWith('s'));
  if (!one || !/^(end|last|first|outer)$/.test(end) || !/^(on|at)$/.test(w(tokens, k + 1))) return undefined;
  let m = k + 2;
  while (/^(the|its|far)$/.test(w(tokens, m))) m++;
  const right = w(tokens, m) === 'right';
  if (!right && w(tokens, m) !== 'left') return undefined;
  m++;
  while (/^(hand|side|end)$/.test(w(tokens, m))) m++;
  return /^(edge|border|corner)$/.test(w(tokens, m)) ? undefined : { right, next: m };
}

/** "last but one", "second to last", "next to last", "second last", "penultimate", with or without "block". */
export function lastButOne(
  tokens: Token[],
  i: number,
): { back: number; next: number; noun: boolean } | undefined {
  const words = [0, 1, 2].map((k) => w(tokens, i + k));
  let next: number | undefined;
  let back = 1;
  if (words[0] === 'last' && words[1] === 'but' && /^(one|two|1|2)$/.test(words[2]!)) {
    next = i + 3;
    back = /two|2/.test(words[2]!) ? 2 : 1;
  } else if (/^(second|next|2nd)$/.test(words[0]!) && /^(to|from)$/.test(words[1]!) && words[2] === 'last')
    next = i + 3;
  else if (words[0] === 'second' && words[1] === 'last') next = i + 2;
  else if (words[0] === 'penultimate') next = i + 1;
  if (next === undefined) return undefined;
  const noun = BLOCKS.has(w(tokens, next)) || w(tokens, next) === 'one';
  if (noun) next++;
  if (ROWS.has(w(tokens, next)) || COLUMNS.has(w(tokens, next))) return undefined;
  return { back, next, noun };
}
