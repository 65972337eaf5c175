import type { QuiltGrid } from '../../../shared/quilt.ts';
import { BLOCK_WORDS, COLUMN_WORDS, ROW_SLIPS, ROW_WORDS } from '../../lexicon/place-words.ts';
import { readCount, readOrdinal } from '../../text/read-number.ts';
import type { Token } from '../../text/tokenise.ts';
import {
  allBlocks,
  blockAt,
  columnOf,
  cornerBlock,
  countUp,
  gridOfRow,
  rowOf,
  splitBlock,
  thatAre,
  unique,
} from './grid.ts';
import { readIndex, readIndexList } from './read-index.ts';

/** A place found in the words. `outside` tells that a block was named which this quilt has not got. */
export type PlaceFound = {
  next: number;
  places: string[];
  how: 'said' | 'implied';
  rule: string;
  kind: 'blocks' | 'part' | 'pointer';
  outside?: boolean;
  /** A corner that may be a block or the quilt's own corner. */
  soft?: boolean;
};

/** What a place may lean on: the grid, and the places spoken of before, newest last. */
export type PlaceContext = {
  grid: QuiltGrid;
  focus: string[];
  earlier: string[][];
  /** Blocks of the cloth spoken of since a place was last named: what "those" and "all three of them" are. */
  cloth?: string[];
};

const ROWS = new Set(ROW_WORDS);
const ROWS_HEARD = new Set(ROW_SLIPS);
const COLUMNS = new Set(COLUMN_WORDS);
const BLOCKS = new Set(BLOCK_WORDS);
const w = (tokens: Token[], i: number): string => tokens[i]?.w ?? '';
const isGluedNumber = (t: Token | undefined): boolean => t?.kind === 'number' && t.glued;

/** After these a number counts something, and is no block. */
const UNIT_AFTER = new Set(
  "inch inches in cm mm m ml metre metres meter meters yard yards yd yds minutes minute min mins hour hours hr hrs h o'clock oclock am pm percent dollars dollar pounds pound quid pence euros euro spools spool reels reel skeins skein packs pack g grams oz fat each quarter quarters past point hundred dozen ply millimetres millimeters centimetres centimeters ft foot feet mil bits of ties stitches pins".split(
    ' ',
  ),
);

/** "row three block two", "r2 b2 & b4", "rows 1-3", "row four": rows first. */
export function rowFirst(tokens: Token[], i: number, ctx: PlaceContext): PlaceFound | undefined {
  const t = tokens[i]!;
  const plain = ROWS.has(t.w);
  const slip = !plain && ROWS_HEARD.has(t.w);
  if (!plain && !slip) return undefined;
  if (t.w === 'r' && !isGluedNumber(tokens[i + 1]) && !readCount(tokens, i + 1)) return undefined;
  const { grid } = ctx;
  const single = t.w !== 'rows' && t.w !== 'rose' && t.w !== 'roads' && t.w !== 'rolls';
  const rows = readIndexList(tokens, i + 1, {
    prefix: ROWS,
    homophones: true,
    max: grid.rows,
    plural: !single,
  });
  if (!rows) return undefined;
  const rule = slip ? 'place.row-heard' : 'place.row';
  const numbers = single && rows.values.length === 1 ? numbersOfRow(tokens, rows, grid) : undefined;
  if (numbers)
    return {
      next: numbers.next,
      places: [numbers.place],
      how: 'said',
      rule: 'place.row-block',
      kind: 'blocks',
    };
  // "row two block three": a block list may follow at once or after a comma.
  const seam = betweenBlocks(tokens, rows.next, grid);
  if (seam)
    return {
      next: seam.next,
      places: rows.values
        .flatMap((r) => seam.values.map((b) => blockAt(grid, r, b)))
        .filter((p) => p !== undefined),
      how: 'said',
      rule: 'place.row-between',
      kind: 'blocks',
    };
  const blockList =
    rows.values.length === 1 || single ? blocksAfterRow(tokens, rows.next, ctx, rows.values[0]!) : undefined;
  if (blockList && rows.values.length === 1) {
    const row = rows.values[0]!;
    const named =
      blockList.values === 'all' ? rowOf(grid, row) : blockList.values.map((b) => blockAt(grid, row, b));
    const inside = named.filter((p): p is string => p !== undefined);
    return {
      next: blockList.next,
      places: unique(inside),
      how: 'said',
      rule: 'place.row-block',
      kind: 'blocks',
      ...(inside.length < named.length || !named.length ? { outside: true } : {}),
    };
  }
  if (slip && rows.values.length === 1 && !['row', 'rose', 'road', 'roads', 'roe', 'ro'].includes(t.w))
    return undefined;
  // "rose one and two", "road three": a slip only counts with a number the quilt has got.
  if (slip && rows.values.some((r) => r > grid.rows)) return undefined;
  const places = rows.values.flatMap((r) => rowOf(grid, r));
  const outside = rows.values.some((r) => r > grid.rows);
  return {
    next: rows.next,
    places: outside ? [] : places,
    how: 'said',
    rule,
    kind: 'blocks',
    ...(outside ? { outside: true } : {}),
  };
}

/** "row 3-2", "row three-two": row and block in one. */
function numbersOfRow(
  tokens: Token[],
  rows: { values: number[]; next: number },
  grid: QuiltGrid,
): { place: string; next: number } | undefined {
  const row = rows.values[0]!;
  if (w(tokens, rows.next) !== '-') return undefined;
  const block = readCount(tokens, rows.next + 1);
  const place = block && block.value <= row ? blockAt(grid, row, block.value) : undefined;
  return place && !UNIT_AFTER.has(w(tokens, block!.next)) ? { place, next: block!.next } : undefined;
}

/** "row two between blocks 3 and 4", "rows three and four between five and six": the blocks on both sides of the seam. */
function betweenBlocks(
  tokens: Token[],
  at: number,
  grid: QuiltGrid,
): { values: number[]; next: number } | undefined {
  let j = w(tokens, at) === ',' ? at + 1 : at;
  if (w(tokens, j) === 'the' && /^seams?$/.test(w(tokens, j + 1))) j += 2;
  if (!/^(between|betw)$/.test(w(tokens, j))) return undefined;
  j++;
  if (BLOCKS.has(w(tokens, j))) j++;
  const a = readIndex(tokens, j, true);
  if (!a || !/^(and|&)$/.test(w(tokens, a.next))) return undefined;
  const k = BLOCKS.has(w(tokens, a.next + 1)) ? a.next + 2 : a.next + 1;
  const b = readIndex(tokens, k, true);
  if (!b || a.value === b.value || a.value > grid.blocks || b.value > grid.blocks) return undefined;
  if (UNIT_AFTER.has(w(tokens, b.next)) || ROWS.has(w(tokens, a.next + 1))) return undefined;
  return { values: [a.value, b.value], next: b.next };
}

function blocksAfterRow(
  tokens: Token[],
  at: number,
  ctx: PlaceContext,
  row: number,
): { values: number[] | 'all'; next: number } | undefined {
  const grid = gridOfRow(ctx.grid, row);
  let j = at;
  if (w(tokens, j) === ',' || w(tokens, j) === '/' || w(tokens, j) === ':') j++;
  if (w(tokens, j) === '-' && tokens[j]!.glued && BLOCKS.has(w(tokens, j + 1))) j++;
  const the = w(tokens, j) === 'the' || w(tokens, j) === 'in' ? j + 1 : j;
  if (BLOCKS.has(w(tokens, j))) {
    if (w(tokens, j) === 'b' && !readCount(tokens, j + 1)) return undefined;
    const list = readIndexList(tokens, j + 1, {
      prefix: BLOCKS,
      homophones: true,
      max: grid.blocks,
      plural: w(tokens, j) === 'blocks',
    });
    if (list) {
      // "row two, block three row ..." belongs to the next row only when this row stood without a block.
      return list;
    }
    return undefined;
  }
  // "row 2, the third block", "row two third block", "row three second and fourth blocks"
  // "row four as far as block four", "row 2 up to block 3"
  if (w(tokens, j) === 'as' && w(tokens, j + 1) === 'far' && w(tokens, j + 2) === 'as') {
    const k = BLOCKS.has(w(tokens, j + 3)) || w(tokens, j + 3) === 'the' ? j + 4 : j + 3;
    const last = readIndex(tokens, k, BLOCKS.has(w(tokens, j + 3)));
    if (last) return { values: countUp(1, last.value), next: last.next };
  }
  if (
    (w(tokens, j) === 'up' || w(tokens, j) === 'to') &&
    (w(tokens, j) === 'to' || w(tokens, j + 1) === 'to')
  ) {
    const k = w(tokens, j) === 'to' ? j + 1 : j + 2;
    const last = BLOCKS.has(w(tokens, k)) ? readIndex(tokens, k + 1, true) : undefined;
    if (last) return { values: countUp(1, last.value), next: last.next };
  }
  // "row 1, every other block from the 2nd"
  if ((w(tokens, j) === 'every' && w(tokens, j + 1) === 'other') || w(tokens, j) === 'alternate') {
    const k = w(tokens, j) === 'every' ? j + 2 : j + 1;
    if (BLOCKS.has(w(tokens, k)) || w(tokens, k) === 'one') {
      const tail = tokens.slice(k + 1, k + 6).map((t) => t.w);
      const led = /^(from|starting|beginning)$/.test(tail[0] ?? '');
      const second = led && tail.some((t) => /^(2|second|two)$/.test(t));
      const end = led
        ? k + 1 + Math.max(1, tail.findIndex((t) => /^(1|2|first|second|one|two)$/.test(t)) + 1)
        : k + 1;
      const next = led && w(tokens, end) === 'nd' ? end + 1 : end;
      return { values: countUp(1, grid.blocks).filter((b) => b % 2 === (second ? 0 : 1)), next };
    }
  }
  const first = readOrdinal(tokens, the);
  if (first) {
    const values = [first.value];
    let k = first.next;
    while (w(tokens, k) === 'and' || w(tokens, k) === ',' || w(tokens, k) === '&') {
      const more = readOrdinal(tokens, k + 1);
      if (!more) break;
      values.push(more.value);
      k = more.next;
    }
    if (BLOCKS.has(w(tokens, k)) || w(tokens, k) === 'one') return { values, next: k + 1 };
    if (w(tokens, k) === 'from' && w(tokens, k + 1) === 'the')
      return {
        values: values.map((v) => (w(tokens, k + 2) === 'right' ? grid.blocks + 1 - v : v)),
        next: k + 3,
      };
    if (w(tokens, k) === 'along' || w(tokens, k) === 'across') return { values, next: k + 1 };
    return undefined;
  }
  // "row four, the last two blocks", "row 3 end block"
  const side = w(tokens, the);
  if (
    side === 'last' ||
    side === 'first' ||
    side === 'end' ||
    side === 'middle' ||
    side === 'centre' ||
    side === 'center'
  ) {
    const n = readCount(tokens, the + 1);
    const count = n?.value ?? 1;
    const k = n ? n.next : the + 1;
    if (BLOCKS.has(w(tokens, k)) || (n && w(tokens, k) === 'of' && w(tokens, k + 1) === 'it')) {
      const next = BLOCKS.has(w(tokens, k)) ? k + 1 : k + 2;
      if (side === 'first') return { values: countUp(1, count), next };
      if (side === 'middle' || side === 'centre' || side === 'center')
        return grid.blocks % 2 ? { values: [(grid.blocks + 1) / 2], next } : undefined;
      return { values: countUp(grid.blocks - count + 1, grid.blocks), next };
    }
  }
  if (
    w(tokens, j) === 'all' ||
    (w(tokens, j) === 'the' && (w(tokens, j + 1) === 'whole' || w(tokens, j + 1) === 'lot'))
  ) {
    if (w(tokens, j) === 'all' && ['of', 'along', 'the'].includes(w(tokens, j + 1))) {
      const next =
        w(tokens, j + 1) === 'of' && w(tokens, j + 2) === 'it'
          ? j + 3
          : w(tokens, j + 1) === 'the' && w(tokens, j + 2) === 'way'
            ? j + 3
            : j + 1;
      return w(tokens, j + 1) === 'of' && w(tokens, j + 2) !== 'it' ? undefined : { values: 'all', next };
    }
    if (w(tokens, j) === 'the')
      return {
        values: 'all',
        next:
          w(tokens, j + 2) === 'row' || w(tokens, j + 2) === 'of'
            ? w(tokens, j + 2) === 'of'
              ? j + 4
              : j + 3
            : j + 2,
      };
  }
  // "row three two": a bare small number right after, with nothing that it could count.
  if (j === at && !tokens[at]?.glued) {
    const bare = readCount(tokens, at);
    if (
      bare &&
      bare.value >= 1 &&
      bare.value <= grid.blocks &&
      !UNIT_AFTER.has(w(tokens, bare.next)) &&
      !readCount(tokens, bare.next) &&
      w(tokens, bare.next) !== '-'
    )
      return { values: [bare.value], next: bare.next };
  }
  // "road two block for" is in readIndexList; "row one blog two" in BLOCKS.
  return undefined;
}

/** "column 4", "cols 1-2", "the third column". */
export function columnFirst(tokens: Token[], i: number, ctx: PlaceContext): PlaceFound | undefined {
  const t = tokens[i]!;
  if (!COLUMNS.has(t.w)) return undefined;
  if (t.w === 'c' && !isGluedNumber(tokens[i + 1])) return undefined;
  const columns = readIndexList(tokens, i + 1, {
    prefix: COLUMNS,
    homophones: t.w !== 'c',
    max: ctx.grid.blocks,
  });
  if (!columns) return undefined;
  const outside = columns.values.some((c) => c > ctx.grid.blocks);
  return {
    next: columns.next,
    places: outside ? [] : columns.values.flatMap((c) => columnOf(ctx.grid, c)),
    how: 'said',
    rule: 'place.column',
    kind: 'blocks',
    ...(outside ? { outside: true } : {}),
  };
}

/** The row that "block three" belongs to when none is said: the row last spoken of. */
function focusRow(ctx: PlaceContext): number | undefined {
  for (const places of [ctx.focus, ...ctx.earlier.slice(-3).reverse()]) {
    const rows = unique(places.map((p) => splitBlock(p)?.row).filter((r): r is number => r !== undefined));
    if (rows.length === 1) return rows[0];
    if (rows.length > 1) return undefined;
  }
  return undefined;
}

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
  if (pair && !row && w(tokens, i + 2) === '-' && pair.place) return undefined;
  if (row) return fromRowAndBlocks(ctx.grid, row.value, blocks.values, row.next, row.how, 'place.block-row');
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

function fromRowAndBlocks(
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
function rowAfterBlock(
  tokens: Token[],
  at: number,
  ctx: PlaceContext,
): { value: number; next: number; how: 'said' | 'implied' } | undefined {
  let j = at;
  let joined = false;
  while (
    ['of', 'in', 'on', 'the', ',', 'along', 'from', 'down', 'that', 'this', 'same', 'at'].includes(
      w(tokens, j),
    ) &&
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
function rowOrdinal(
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

/** "last but one", "second to last", "next to last", "second last", "penultimate", with or without "block". */
function lastButOne(tokens: Token[], i: number): { back: number; next: number; noun: boolean } | undefined {
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

/** "the third row", "third row second block", "second block of the third row", "third from the left in row two". */
export function ordinalFirst(tokens: Token[], i: number, ctx: PlaceContext): PlaceFound | undefined {
  const { grid } = ctx;
  const row = rowOrdinal(tokens, i, grid);
  if (row) {
    const blocks = blocksAfterRow(tokens, row.next, ctx, row.value);
    if (blocks)
      return fromRowAndBlocks(
        grid,
        row.value,
        blocks.values === 'all' ? countUp(1, gridOfRow(grid, row.value).blocks) : blocks.values,
        blocks.next,
        'said',
        'place.ordinal-row-block',
      );
    const places = rowOf(grid, row.value);
    return {
      next: row.next,
      places,
      how: 'said',
      rule: 'place.ordinal-row',
      kind: 'blocks',
      ...(places.length ? {} : { outside: true }),
    };
  }
  const fromEnd = lastButOne(tokens, i);
  if (fromEnd) {
    const inRow = rowAfterBlock(tokens, fromEnd.next, ctx);
    const at = inRow?.value ?? (fromEnd.noun ? focusRow(ctx) : undefined);
    if (at !== undefined)
      return fromRowAndBlocks(
        grid,
        at,
        [gridOfRow(grid, at).blocks - fromEnd.back],
        inRow?.next ?? fromEnd.next,
        inRow?.how ?? 'implied',
        'place.last-but-one',
      );
  }
  const first = readOrdinal(tokens, i);
  if (!first) return undefined;
  const values = [first.value];
  let j = first.next;
  while (w(tokens, j) === 'and' || w(tokens, j) === ',' || w(tokens, j) === '&') {
    const k = w(tokens, j + 1) === 'the' ? j + 2 : j + 1;
    const more = readOrdinal(tokens, k);
    if (!more) break;
    values.push(more.value);
    j = more.next;
  }
  const noun = w(tokens, j);
  if (COLUMNS.has(noun) && noun !== 'c') {
    const places = values.flatMap((v) => columnOf(grid, v));
    return {
      next: j + 1,
      places,
      how: 'said',
      rule: 'place.ordinal-column',
      kind: 'blocks',
      ...(places.length ? {} : { outside: true }),
    };
  }
  if (ROWS.has(noun)) {
    return {
      next: j + 1,
      places: values.flatMap((v) => rowOf(grid, v)),
      how: 'said',
      rule: 'place.ordinal-row',
      kind: 'blocks',
    };
  }
  const counted = (row: number): number[] =>
    fromRight ? values.map((v) => gridOfRow(grid, row).blocks + 1 - v) : values;
  let fromRight = false;
  if (BLOCKS.has(noun) || noun === 'one' || noun === 'ones' || noun === 'piece') {
    j++;
    if (w(tokens, j) === 'along' || w(tokens, j) === 'across' || w(tokens, j) === 'in') j++;
  } else if (noun === 'along' || noun === 'across') j++;
  else if (!(noun === 'from' || noun === 'in' || noun === 'of')) return undefined;
  if (
    w(tokens, j) === 'from' &&
    w(tokens, j + 1) === 'the' &&
    (w(tokens, j + 2) === 'left' || w(tokens, j + 2) === 'right' || w(tokens, j + 2) === 'end')
  ) {
    fromRight = w(tokens, j + 2) !== 'left';
    j += 3;
  }
  const inRow = rowAfterBlock(tokens, w(tokens, j - 1) === 'in' ? j - 1 : j, ctx);
  if (inRow)
    return fromRowAndBlocks(
      grid,
      inRow.value,
      counted(inRow.value),
      inRow.next,
      inRow.how,
      'place.ordinal-block-row',
    );
  if (BLOCKS.has(noun)) {
    const implied = focusRow(ctx);
    if (implied !== undefined)
      return fromRowAndBlocks(grid, implied, counted(implied), j, 'implied', 'place.ordinal-block');
  }
  return undefined;
}

/** "the first two blocks of row 4", "last two rows", "left two columns", "both end blocks". */
export function countedGroup(tokens: Token[], i: number, ctx: PlaceContext): PlaceFound | undefined {
  const { grid } = ctx;
  // "the two right-hand columns", "three top rows", "both end blocks": the number first
  const led = w(tokens, i) === 'both' ? { value: 2, next: i + 1 } : readCount(tokens, i);
  const moved =
    led &&
    led.value > 1 &&
    led.value < 13 &&
    /^(top|bottom|left|right|outer|end|upper|lower|middle|centre|center|last|first)$/.test(
      w(tokens, led.next),
    );
  const side = moved ? w(tokens, led.next) : w(tokens, i);
  if (
    ![
      'first',
      'last',
      'top',
      'bottom',
      'left',
      'right',
      'outer',
      'end',
      'upper',
      'lower',
      'final',
      'leftmost',
      'rightmost',
      'middle',
      'centre',
      'center',
    ].includes(side)
  )
    return undefined;
  let j = moved ? led.next + 1 : i + 1;
  if (w(tokens, j) === 'hand') j++;
  const heard = /^(to|too)$/.test(w(tokens, j)) && /^(rows|columns|cols|blocks)$/.test(w(tokens, j + 1));
  const n = moved ? led : heard ? { value: 2, next: j + 1 } : readCount(tokens, j);
  const count = n?.value ?? 1;
  if (n && !moved) j = n.next;
  if (w(tokens, j) === 'left' || w(tokens, j) === 'right' || w(tokens, j) === 'whole') return undefined;
  const noun = w(tokens, j);
  const fromEnd = ['last', 'bottom', 'right', 'lower', 'final', 'end', 'rightmost'].includes(side);
  const middle = ['middle', 'centre', 'center'].includes(side);
  const pick = (total: number): number[] => {
    if (middle) {
      if ((total - count) % 2) return [];
      const start = (total - count) / 2 + 1;
      return countUp(start, start + count - 1);
    }
    if (side === 'outer' || (side === 'end' && (count === 2 || (!n && noun.endsWith('s')))))
      return [1, total];
    return fromEnd ? countUp(Math.max(1, total - count + 1), total) : countUp(1, Math.min(count, total));
  };
  if (ROWS.has(noun) && (n || noun === 'row')) {
    if (['left', 'right'].includes(side)) return undefined;
    const rows = pick(grid.rows);
    if (rows.length === 1) {
      const blocks = blocksAfterRow(tokens, j + 1, ctx, rows[0]!);
      if (blocks)
        return fromRowAndBlocks(
          grid,
          rows[0]!,
          blocks.values === 'all' ? countUp(1, gridOfRow(grid, rows[0]!).blocks) : blocks.values,
          blocks.next,
          'said',
          'place.side-row-block',
        );
    }
    return {
      next: j + 1,
      places: rows.flatMap((r) => rowOf(grid, r)),
      how: 'said',
      rule: 'place.counted-rows',
      kind: 'blocks',
    };
  }
  if (COLUMNS.has(noun) && noun !== 'c') {
    const columns = pick(grid.blocks);
    return {
      next: j + 1,
      places: columns.flatMap((c) => columnOf(grid, c)),
      how: 'said',
      rule: 'place.counted-columns',
      kind: 'blocks',
    };
  }
  if (
    BLOCKS.has(noun) ||
    (noun === 'one' && ['last', 'end', 'first'].includes(side)) ||
    // "the last three in row two"
    (n && n.value > 1 && /^(in|of|along)$/.test(noun) && rowAfterBlock(tokens, j, ctx)?.how === 'said')
  ) {
    if (['top', 'bottom', 'upper', 'lower'].includes(side)) return undefined;
    const inRow = rowAfterBlock(tokens, BLOCKS.has(noun) || noun === 'one' ? j + 1 : j, ctx);
    const row =
      inRow?.value ??
      (n || side === 'last' || side === 'end' || side === 'first' || middle ? focusRow(ctx) : undefined);
    if (middle && !inRow && !n) return undefined;
    if (row === undefined) return undefined;
    if (noun === 'one' && !inRow) return undefined;
    return fromRowAndBlocks(
      grid,
      row,
      pick(gridOfRow(grid, row).blocks),
      inRow ? inRow.next : j + 1,
      inRow ? inRow.how : 'implied',
      'place.counted-blocks',
    );
  }
  return undefined;
}

/** "every other block in row two", "every block in the last two rows", "all the blocks of row 3", "the whole of row 4". */
export function everyBlock(tokens: Token[], i: number, ctx: PlaceContext): PlaceFound | undefined {
  const head = w(tokens, i);
  if (!['every', 'each', 'all', 'whole', 'alternate'].includes(head)) return undefined;
  let j = i + 1;
  let other = head === 'alternate';
  while (
    ['other', 'single', 'of', 'the', 'second', 'one', 'row', 'column', 'last'].includes(w(tokens, j)) &&
    j < i + 5
  ) {
    if (w(tokens, j) === 'other' || (w(tokens, j) === 'second' && head === 'every')) other = true;
    if (w(tokens, j) === 'row' || w(tokens, j) === 'column') break;
    j++;
  }
  // "whole row", "the whole left column" lean on what follows.
  if (
    head === 'whole' &&
    (w(tokens, i + 1) === 'row' || w(tokens, i + 1) === 'column') &&
    !readIndex(tokens, i + 2, false)
  )
    return wholeFocusLine(tokens, i + 1, ctx, i + 2);
  // "all six blocks" of a small quilt
  const all = head === 'all' ? readCount(tokens, j) : undefined;
  if (all && all.value === allBlocks(ctx.grid).length && BLOCKS.has(w(tokens, all.next)))
    return {
      next: all.next + 1,
      places: allBlocks(ctx.grid),
      how: 'said',
      rule: 'place.all-blocks',
      kind: 'blocks',
    };
  if (BLOCKS.has(w(tokens, j)) || (other && isPatternPiece(tokens, j))) {
    j++;
    const bare = j;
    while (
      ['in', 'of', 'on', 'along', 'from', 'across', 'down', 'that', 'the'].includes(w(tokens, j)) &&
      j < bare + 3
    )
      j++;
    const group = areaAt(tokens, j, ctx);
    if (group) {
      let places = group.places;
      if (other) {
        const sides = w(tokens, group.next) === ',' ? group.next + 1 : group.next;
        const begins = ['starting', 'beginning', 'from'].includes(w(tokens, sides));
        const second =
          begins && tokens.slice(sides, sides + 5).some((t) => t.w === 'second' || t.w === 'two');
        // "starting with the second (one)"
        const nth =
          begins && w(tokens, sides + 1) === 'with' && w(tokens, sides + 2) === 'the' ? sides + 3 : 0;
        if (nth && /^(first|second)$/.test(w(tokens, nth)))
          group.next = /^(one|block)$/.test(w(tokens, nth + 1)) ? nth + 2 : nth + 1;
        places = places.filter((_, k) => k % 2 === (second ? 1 : 0));
      }
      return { ...group, places, rule: other ? 'place.every-other' : 'place.every-block' };
    }
    if (head === 'whole') return undefined;
    if (!other && j === bare) {
      return {
        next: bare,
        places: allBlocks(ctx.grid),
        how: 'said',
        rule: 'place.all-blocks',
        kind: 'blocks',
      };
    }
    return undefined;
  }
  if (head === 'every' || head === 'each') {
    if (w(tokens, i + 1) === 'other' && ROWS.has(w(tokens, i + 2))) {
      const places = Array.from({ length: ctx.grid.rows }, (_, k) => k + 1)
        .filter((r) => r % 2)
        .flatMap((r) => rowOf(ctx.grid, r));
      return { next: i + 3, places, how: 'said', rule: 'place.every-other-row', kind: 'blocks' };
    }
    return undefined;
  }
  // "all of row 4", "whole of the last column", "all nine rows", "all four rows"
  const n = readCount(tokens, j);
  if (n && ROWS.has(w(tokens, n.next)) && n.value === ctx.grid.rows)
    return {
      next: n.next + 1,
      places: allBlocks(ctx.grid),
      how: 'said',
      rule: 'place.all-rows',
      kind: 'blocks',
    };
  if (head === 'all' && ROWS.has(w(tokens, j)) && w(tokens, j) === 'rows' && !readIndex(tokens, j + 1, false))
    return {
      next: j + 1,
      places: allBlocks(ctx.grid),
      how: 'said',
      rule: 'place.all-rows',
      kind: 'blocks',
    };
  const area = areaAt(tokens, j, ctx);
  return area && j > i + 1
    ? { ...area, rule: 'place.whole-area' }
    : area && head === 'whole'
      ? area
      : undefined;
}

/** "every other star in the top row", "alternate baskets along row two": blocks by the name of their pattern. */
const isPatternPiece = (tokens: Token[], j: number): boolean =>
  /^[a-z]{3,}$/.test(w(tokens, j)) &&
  !/^(row|rows|column|columns|day|week|night|evening|morning|stitch|stitches|tie|ties|time|one|way|side|inch|line|seam)$/.test(
    w(tokens, j),
  ) &&
  /^(in|of|along|across|down)$/.test(w(tokens, j + 1));

/** "that whole row", "the rest of the row", "same row", "along the row". */
function wholeFocusLine(
  _tokens: Token[],
  _noun: number,
  ctx: PlaceContext,
  next: number,
): PlaceFound | undefined {
  const column = w(_tokens, _noun) === 'column';
  if (column) {
    const c = splitBlock(ctx.focus.at(-1) ?? '')?.block;
    return c === undefined
      ? undefined
      : { next, places: columnOf(ctx.grid, c), how: 'implied', rule: 'place.that-column', kind: 'pointer' };
  }
  const row = focusRow(ctx);
  return row === undefined
    ? undefined
    : { next, places: rowOf(ctx.grid, row), how: 'implied', rule: 'place.that-row', kind: 'pointer' };
}

/** A row, column or group of them at token `i`, for the phrases that lean on one. */
function areaAt(tokens: Token[], i: number, ctx: PlaceContext): PlaceFound | undefined {
  const j = w(tokens, i) === 'the' ? i + 1 : i;
  if (!tokens[j]) return undefined;
  if ((w(tokens, j) === 'row' || w(tokens, j) === 'column') && !readIndex(tokens, j + 1, true))
    return wholeFocusLine(tokens, j, ctx, j + 1);
  return (
    rowFirst(tokens, j, ctx) ??
    columnFirst(tokens, j, ctx) ??
    countedGroup(tokens, j, ctx) ??
    ordinalFirst(tokens, j, ctx) ??
    sideColumn(tokens, j, ctx)
  );
}

/** "the left hand column", "right-hand column", "left column", "the last column". */
export function sideColumn(tokens: Token[], i: number, ctx: PlaceContext): PlaceFound | undefined {
  const side = w(tokens, i);
  if (!['left', 'right', 'leftmost', 'rightmost', 'far', 'l', 'lh', 'rh'].includes(side)) return undefined;
  let j = i + 1;
  let right = side === 'right' || side === 'rightmost' || side === 'rh';
  if (side === 'far') {
    if (w(tokens, j) !== 'left' && w(tokens, j) !== 'right') return undefined;
    right = w(tokens, j) === 'right';
    j++;
  }
  while (w(tokens, j) === 'hand' || w(tokens, j) === 'most') j++;
  if (!COLUMNS.has(w(tokens, j)) || w(tokens, j) === 'c') return undefined;
  return {
    next: j + 1,
    places: columnOf(ctx.grid, right ? ctx.grid.blocks : 1),
    how: 'said',
    rule: 'place.side-column',
    kind: 'blocks',
  };
}

/** Row and block written or said as two numbers: "3-2", "3.2", "three two", "3 2", "3/2" between blocks. */
function readPair(
  tokens: Token[],
  i: number,
  grid: QuiltGrid,
): { place?: string; next: number; outside: boolean; loose: boolean } | undefined {
  const a = tokens[i];
  if (!a) return undefined;
  // "3.1" as a recogniser writes it
  if (a.kind === 'number' && /^\d{1,2}\.\d{1,2}$/.test(a.w)) {
    const [row, block] = a.w.split('.').map(Number);
    const after = w(tokens, i + 1);
    if (UNIT_AFTER.has(after) || after === '"' || after === "'" || after === '-' || after === '/')
      return undefined;
    const place = blockAt(grid, row!, block!);
    return place ? { place, next: i + 1, outside: false, loose: true } : undefined;
  }
  const first =
    a.kind === 'number'
      ? /^\d{1,3}$/.test(a.w)
        ? { value: a.value!, next: i + 1 }
        : undefined
      : readSmallWord(tokens, i);
  if (!first) return undefined;
  let j = first.next;
  const dash = tokens[j];
  let glued = false;
  if (dash?.w === '-' && (dash.glued || a.kind === 'word') && (tokens[j + 1]?.glued || a.kind === 'word')) {
    glued = dash.glued;
    j++;
  } else if (
    dash?.w === 'dash' ||
    (dash?.w === 'x' && dash.glued && tokens[j + 1]?.glued && !isMeasured(tokens, j + 2))
  ) {
    glued = true;
    j++;
  } else if (dash?.w === ',' && dash.glued && tokens[j + 1]?.glued && tokens[j + 1]?.kind === 'number') {
    j++;
  }
  const b = tokens[j];
  if (!b) return undefined;
  const second =
    b.kind === 'number'
      ? /^\d{1,3}$/.test(b.w)
        ? { value: b.value!, next: j + 1 }
        : undefined
      : (readSmallWord(tokens, j) ?? (glued ? undefined : heardTwo(tokens, j)));
  if (!second) return undefined;
  if (a.kind !== b.kind && !glued && j === first.next) return undefined;
  const after = w(tokens, second.next);
  if (UNIT_AFTER.has(after) && !(after === 'in' && glued) && after !== 'of') return undefined;
  if (
    after === '/' &&
    tokens[second.next]?.glued &&
    tokens[second.next + 1]?.kind === 'number' &&
    !(tokens[second.next + 2]?.w === '-')
  )
    return undefined;
  const place = blockAt(grid, first.value, second.value);
  return place
    ? { place, next: second.next, outside: false, loose: !glued }
    : { next: second.next, outside: true, loose: !glued };
}

/** "5x3 in" and "60x72" are lengths. */
const isMeasured = (tokens: Token[], next: number): boolean =>
  UNIT_AFTER.has(w(tokens, next)) ||
  /^["']$/.test(w(tokens, next)) ||
  tokens.some((t) => /^(measured|measures?|wide|long|size|cut|strips?)$/.test(t.w));

const SMALL: Record<string, number> = {
  one: 1,
  two: 2,
  three: 3,
  four: 4,
  five: 5,
  six: 6,
  seven: 7,
  eight: 8,
  nine: 9,
  ten: 10,
  eleven: 11,
  twelve: 12,
};
function readSmallWord(tokens: Token[], i: number): { value: number; next: number } | undefined {
  const t = tokens[i];
  return t && Object.hasOwn(SMALL, t.w) ? { value: SMALL[t.w]!, next: i + 1 } : undefined;
}
/** "one to" and "three for", where nothing that could be counted or reached follows. */
function heardTwo(tokens: Token[], i: number): { value: number; next: number } | undefined {
  const t = tokens[i];
  // "three four had one too": one of what was told, and no block
  if (t?.w === 'too')
    return /^(had|has|have|got|'s|needs|wants)$/.test(w(tokens, i - 2)) && w(tokens, i - 1) === 'one'
      ? undefined
      : { value: 2, next: i + 1 };
  // "patched nine for with …", "three to is torn": a number, by what follows
  if (
    (t?.w === 'for' || t?.w === 'to') &&
    /^(|with|is|was|has|'s|and|by|,|\.|just|are|got|had|needs|wants|gets)$/.test(w(tokens, i + 1)) &&
    !/^(from|row|rows|block|blocks|rose)$/.test(w(tokens, i - 2))
  )
    return { value: t.w === 'for' ? 4 : 2, next: i + 1 };
  return undefined;
}

const HEARD_FIRST = new Map(Object.entries({ for: 4, fore: 4, too: 2, to: 2, won: 1, tree: 3, free: 3 }));
const HEARD_SECOND = new Map(
  Object.entries({ for: 4, fore: 4, too: 2, to: 2, won: 1, tree: 3, free: 3, ate: 8, sex: 6 }),
);

/**
 * "hole in for three", "and for two", "in too for", "six won": numbers heard as other words, only where a block is awaited
 * and the word could not mean itself.
 */
function heardPair(
  tokens: Token[],
  i: number,
  grid: QuiltGrid,
): { place?: string; next: number; outside: boolean; loose: boolean } | undefined {
  const heard = HEARD_FIRST.get(w(tokens, i));
  const first = heard ?? readSmallWord(tokens, i)?.value;
  if (first === undefined) return undefined;
  const second = readSmallWord(tokens, i + 1)?.value ?? HEARD_SECOND.get(w(tokens, i + 1));
  if (second === undefined) return undefined;
  const after = w(tokens, i + 2);
  const before = w(tokens, i - 1);
  if (UNIT_AFTER.has(after) || after === '-' || readCount(tokens, i + 2)) return undefined;
  if (heard !== undefined) {
    const joined =
      /^(and|&|,)$/.test(before) &&
      tokens.slice(Math.max(0, i - 4), i).some((t) => /^[2-9]$/.test(t.w) || Object.hasOwn(SMALL, t.w));
    const awaited = /^(in|on|at|of|from|under|behind|over)$/.test(before) || joined;
    const begins = before === '' && /^(is|'s|has|had|needs|got|wants)$/.test(after);
    if (!awaited && !begins) return undefined;
    if (/^(the|them|those|a|of|more|other|rows|blocks|columns)$/.test(after)) return undefined;
    // "cut in to two pieces"
    if (w(tokens, i) === 'to' && !/^(|,|\.|;|is|'s|has|and|by|with)$/.test(after)) return undefined;
  } else if (!/^(won|tree)$/.test(w(tokens, i + 1)) || /^(the|a|by)$/.test(after)) return undefined;
  const place = blockAt(grid, first, second);
  return place ? { place, next: i + 2, outside: false, loose: true } : undefined;
}

/** "4 6 somebody fixed it": two figures that a note opens with, before words that tell of a block. */
const namesBlockAlone = (tokens: Token[], next: number): boolean =>
  tokens[0]?.kind === 'number' &&
  tokens[1]?.kind === 'number' &&
  next === 2 &&
  tokens[0].value! < 20 &&
  tokens[1].value! < 20 &&
  /^(is|'s|has|had|somebody|someone|there|got|needs|wants|looks|it|that|i|with|was)$/.test(w(tokens, next));

/** "four down and two across", "2 across 3 down", "three rows down, third along": a block told by its two counts. */
export function downAndAcross(tokens: Token[], i: number, ctx: PlaceContext): PlaceFound | undefined {
  const first = countedWay(tokens, i);
  if (!first) return undefined;
  let j = first.next;
  while (/^(,|and|then|&)$/.test(w(tokens, j)) && j < first.next + 2) j++;
  const second = countedWay(tokens, j);
  if (!second || second.axis === first.axis) return undefined;
  // "two down and one across from 3-2" is counted from there
  if (w(tokens, second.next) === 'from' || w(tokens, i - 1) === 'from') return undefined;
  const [down, across] = first.axis === 'row' ? [first, second] : [second, first];
  const row = down.back ? ctx.grid.rows + 1 - down.value : down.value;
  const block = across.back ? gridOfRow(ctx.grid, row).blocks + 1 - across.value : across.value;
  const place = blockAt(ctx.grid, row, block);
  return {
    next: second.next,
    places: place ? [place] : [],
    how: 'said',
    rule: 'place.down-and-across',
    kind: 'blocks',
    ...(place ? {} : { outside: true }),
  };
}

/** "four down from the top", "three rows down", "third along", "second from the left". */
function countedWay(
  tokens: Token[],
  i: number,
): { axis: 'row' | 'block'; value: number; back: boolean; next: number } | undefined {
  const count = readCount(tokens, i);
  const n = count ?? readOrdinal(tokens, i);
  if (!n || n.value > 40) return undefined;
  let j = n.next;
  if (count && (ROWS.has(w(tokens, j)) || BLOCKS.has(w(tokens, j)) || COLUMNS.has(w(tokens, j)))) j++;
  const way = w(tokens, j);
  const end =
    w(tokens, j + 1) === 'from' && w(tokens, j + 2) === 'the'
      ? w(tokens, j + 3)
      : way === 'from'
        ? w(tokens, j + 2)
        : '';
  if (/^(down|up)$/.test(way)) {
    const told = /^(top|bottom)$/.test(end);
    if (way === 'up' && end !== 'bottom') return undefined;
    return { axis: 'row', value: n.value, back: way === 'up', next: told ? j + 4 : j + 1 };
  }
  if (/^(across|along|over|in)$/.test(way)) {
    const told = /^(left|right)$/.test(end);
    if (way === 'in' && !told) return undefined;
    return { axis: 'block', value: n.value, back: end === 'right', next: told ? j + 4 : j + 1 };
  }
  if (way === 'from' && w(tokens, j + 1) === 'the' && /^(left|right)$/.test(end))
    return { axis: 'block', value: n.value, back: end === 'right', next: j + 3 };
  return undefined;
}

/** "3-2", "three two", "3-1 to 3-4", "three one, three two and three four". */
export function pair(tokens: Token[], i: number, ctx: PlaceContext): PlaceFound | undefined {
  const { grid } = ctx;
  const before = w(tokens, i - 1);
  if (before === '$' || before === '£' || before === '€') return undefined;
  const first = readPair(tokens, i, grid) ?? heardPair(tokens, i, grid);
  if (!first) return undefined;
  if (first.outside) {
    if (first.loose)
      return i === 0 && namesBlockAlone(tokens, first.next)
        ? { next: first.next, places: [], how: 'said', rule: 'place.pair', kind: 'blocks', outside: true }
        : undefined;
    // "10-12" and "9-12" may be hours; only a small dash pair names a block that is not there.
    const big = tokens[i]!.value! > 12 || (tokens[i + 2]?.value ?? 0) > 12;
    return big
      ? undefined
      : { next: first.next, places: [], how: 'said', rule: 'place.pair', kind: 'blocks', outside: true };
  }
  const places = [first.place!];
  let next = first.next;
  const across =
    /^(down|across|along|over|up|right)$/.test(w(tokens, next)) &&
    /^(to|through|till|until)$/.test(w(tokens, next + 1));
  if (across || ['to', 'through', 'thru', '-', 'till'].includes(w(tokens, next))) {
    if (across) next++;
    const last = readPair(tokens, next + 1, grid);
    if (last?.place) {
      const a = splitBlock(first.place!)!;
      const b = splitBlock(last.place)!;
      const range =
        a.row === b.row
          ? countUp(a.block, b.block).map((k) => `${a.row}-${k}`)
          : a.block === b.block
            ? countUp(a.row, b.row).map((k) => `${k}-${a.block}`)
            : countUp(a.row, b.row).flatMap((r) => countUp(a.block, b.block).map((k) => `${r}-${k}`));
      return {
        next: last.next,
        places: thatAre(grid, range),
        how: 'said',
        rule: 'place.pair-range',
        kind: 'blocks',
      };
    }
    // "3-1 to 4", "3-1 through 5": to block 4 of the same row
    const short = readCount(tokens, next + 1);
    const a = splitBlock(first.place!)!;
    if (
      short &&
      !first.loose &&
      short.value > a.block &&
      short.value <= gridOfRow(grid, a.row).blocks &&
      !UNIT_AFTER.has(w(tokens, short.next)) &&
      w(tokens, next) !== '-'
    ) {
      places.push(...countUp(a.block + 1, short.value).map((k) => `${a.row}-${k}`));
      next = short.next;
    }
  }
  return { next, places: thatAre(grid, places), how: 'said', rule: 'place.pair', kind: 'blocks' };
}

/** "the middle block", "the block in the centre", "dead centre". */
export function middleBlock(tokens: Token[], i: number, ctx: PlaceContext): PlaceFound | undefined {
  const head = w(tokens, i);
  if (!['middle', 'centre', 'center', 'central', 'mid'].includes(head)) return undefined;
  const { grid } = ctx;
  const noun = w(tokens, i + 1);
  // "middle of row three", "the middle one in row two"
  let j = i + 1;
  if (noun === 'one' || BLOCKS.has(noun)) j++;
  if (['of', 'in'].includes(w(tokens, j))) {
    const row = rowAfterBlock(tokens, j, ctx);
    const length = row ? gridOfRow(grid, row.value).blocks : 0;
    if (row && length % 2)
      return fromRowAndBlocks(grid, row.value, [(length + 1) / 2], row.next, row.how, 'place.middle-of-row');
  }
  const across = gridOfRow(grid, (grid.rows + 1) / 2).blocks;
  const block =
    grid.rows % 2 && across % 2 ? blockAt(grid, (grid.rows + 1) / 2, (across + 1) / 2) : undefined;
  if (!block)
    return BLOCKS.has(noun)
      ? { next: i + 2, places: [], how: 'said', rule: 'place.middle', kind: 'blocks' }
      : undefined;
  const before = w(tokens, i - 1);
  if (BLOCKS.has(noun) || noun === 'one')
    return { next: i + 2, places: [block], how: 'said', rule: 'place.middle', kind: 'blocks' };
  if (/^(dead|exact|very)$/.test(before) && !BLOCKS.has(noun))
    return { next: i + 1, places: [block], how: 'said', rule: 'place.middle', kind: 'blocks' };
  if (before === 'the' && !['of', 'third', 'three', 'two', 'seam', 'row', 'column', 'out'].includes(noun))
    return { next: i + 1, places: [block], how: 'said', rule: 'place.middle', kind: 'blocks' };
  return undefined;
}

export const CORNER_RULES = { corners, cornerOrSide };

const VERTICAL = new Map<string, 'top' | 'bottom'>(
  Object.entries({
    top: 'top',
    upper: 'top',
    bottom: 'bottom',
    lower: 'bottom',
    btm: 'bottom',
  }),
);
const ACROSS = new Map<string, 'left' | 'right'>(
  Object.entries({
    left: 'left',
    right: 'right',
    l: 'left',
    r: 'right',
    lh: 'left',
    rh: 'right',
  }),
);

/** "the four corner blocks", "all corners", "corner blocks". */
function corners(tokens: Token[], i: number, ctx: PlaceContext): PlaceFound | undefined {
  const { grid } = ctx;
  let j = i;
  if (w(tokens, j) === 'all') j++;
  if (w(tokens, j) === 'the') j++;
  if (w(tokens, j) === 'four' || w(tokens, j) === '4') j++;
  const blocks = unique([
    cornerBlock(grid, true, true),
    cornerBlock(grid, true, false),
    cornerBlock(grid, false, true),
    cornerBlock(grid, false, false),
  ]);
  if (w(tokens, j) === 'corner' && BLOCKS.has(w(tokens, j + 1)) && w(tokens, j + 1).endsWith('s'))
    return { next: j + 2, places: blocks, how: 'said', rule: 'place.corner-blocks', kind: 'blocks' };
  if (w(tokens, j) === 'corners' && (j > i || /^(|,|\.|;|and|at|on|&)$/.test(w(tokens, i - 1))))
    return {
      next: j + 1,
      places: ['corner-top-left', 'corner-top-right', 'corner-bottom-right', 'corner-bottom-left'],
      how: 'said',
      rule: 'place.corners',
      kind: 'part',
      soft: true,
    };
  return undefined;
}

/** "top left block", "bottom right-hand corner block", "top right corner", "upper left". */
function cornerOrSide(tokens: Token[], i: number, ctx: PlaceContext): PlaceFound | undefined {
  const { grid } = ctx;
  let j = i;
  // "TL corner", "BR block"
  const short = /^([tb])([lr])$/.exec(w(tokens, i));
  if (short && /^(corner|block|blk)$/.test(w(tokens, i + 1))) {
    const up = short[1] === 't';
    const toLeft = short[2] === 'l';
    if (w(tokens, i + 1) === 'corner' && !BLOCKS.has(w(tokens, i + 2)))
      return {
        next: i + 2,
        places: [`corner-${up ? 'top' : 'bottom'}-${toLeft ? 'left' : 'right'}`],
        how: 'said',
        rule: 'place.corner',
        kind: 'part',
        soft: true,
      };
    return {
      next: w(tokens, i + 1) === 'corner' ? i + 3 : i + 2,
      places: [cornerBlock(grid, up, toLeft)],
      how: 'said',
      rule: 'place.corner-block',
      kind: 'blocks',
    };
  }
  let vertical = VERTICAL.get(w(tokens, j));
  let across: 'left' | 'right' | undefined;
  if (vertical) {
    j++;
    if (w(tokens, j) === ',') return undefined;
    across = ACROSS.get(w(tokens, j));
    if (!across) return undefined;
    j++;
  } else {
    across = ACROSS.get(w(tokens, j));
    if (!across) return undefined;
    j++;
    if (w(tokens, j) === 'hand') j++;
    vertical = VERTICAL.get(w(tokens, j));
    if (!vertical) return undefined;
    j++;
  }
  if (w(tokens, j) === 'hand' || w(tokens, j) === 'most') j++;
  if (w(tokens, j) === 'side') j++;
  const asBlock: PlaceFound = {
    next: j + 1,
    places: [cornerBlock(grid, vertical === 'top', across === 'left')],
    how: 'said',
    rule: 'place.corner-block',
    kind: 'blocks',
  };
  if (w(tokens, j) === 'corner') {
    if (BLOCKS.has(w(tokens, j + 1))) return { ...asBlock, next: j + 2 };
    // "the block in the top right-hand corner"
    if (BLOCKS.has(w(tokens, i - 3)) && /^(in|at)$/.test(w(tokens, i - 2)) && w(tokens, i - 1) === 'the')
      return { ...asBlock, next: j + 1 };
    return {
      next: j + 1,
      places: [`corner-${vertical}-${across}`],
      how: 'said',
      rule: 'place.corner',
      kind: 'part',
      soft: true,
    };
  }
  if (BLOCKS.has(w(tokens, j)) || w(tokens, j) === 'one') return asBlock;
  // "bottom right's ripped", "the dotted one top left is faded"
  if (
    /^('s|is|has|was|got|needs|wants|looks|gets)$/.test(w(tokens, j)) &&
    !/^(on|in|at|to|from|along)$/.test(w(tokens, i - 1) === 'the' ? w(tokens, i - 2) : w(tokens, i - 1))
  )
    return { ...asBlock, next: j };
  // "top right and bottom left corners"
  for (let k = j; k < Math.min(j + 8, tokens.length); k++) {
    if (tokens[k]!.w === 'blocks' || tokens[k]!.w === 'squares') return { ...asBlock, next: j };
    if (tokens[k]!.w === 'corners' || tokens[k]!.w === 'corner')
      return {
        next: j,
        places: [`corner-${vertical}-${across}`],
        how: 'said',
        rule: 'place.corner',
        kind: 'part',
        soft: true,
      };
    if (
      !VERTICAL.has(tokens[k]!.w) &&
      !ACROSS.has(tokens[k]!.w) &&
      !['and', '&', ',', 'the', 'hand'].includes(tokens[k]!.w)
    )
      break;
  }
  return undefined;
}
