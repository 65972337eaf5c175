import type { QuiltGrid } from '../../../shared/quilt.ts';
import { readCount, readOrdinal } from '../../text/read-number.ts';
import type { Token } from '../../text/tokenise.ts';
import { wordAt as w } from '../../text/word-at.ts';
import { numbersTold } from './along-row.ts';
import { endOnSide } from './block-first.ts';
import { blockAt, columnOf, countUp, gridOfRow, rowOf, unique } from './grid.ts';
import { lineAt } from './line/line-at.ts';
import { blocksSaid, type PlaceContext, type PlaceFound } from './place-found.ts';
import { BLOCKS, COLUMNS, isGluedNumber, ROWS, ROWS_HEARD, UNIT_AFTER } from './place-tokens.ts';
import { readIndex, readIndexList } from './read-index.ts';

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
  if (numbers) return blocksSaid(numbers.next, [numbers.place], 'place.row-block');
  // "row two block three": a block list may follow at once or after a comma.
  const seam = betweenBlocks(tokens, rows.next, grid);
  if (seam)
    return blocksSaid(
      seam.next,
      rows.values.flatMap((r) => seam.values.map((b) => blockAt(grid, r, b))).filter((p) => p !== undefined),
      'place.row-between',
    );
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

/** The blocks told right behind a row; not "row three, blocks 2 to 4 of row one", which are of the row behind them. */
export function blocksAfterRow(
  tokens: Token[],
  at: number,
  ctx: PlaceContext,
  row: number,
): { values: number[] | 'all'; next: number } | undefined {
  const list = blocksBehind(tokens, at, ctx, row);
  const of = list && list.next > at && /^(of|in|on|along)$/.test(w(tokens, list.next));
  if (!of || lineAt(tokens, list.next + 1, ctx)?.how !== 'said') return list;
  // "row two block two and block four in row one": the first of them is of the row before it
  const joint = tokens.findLastIndex(
    (t, k) =>
      k > at && k < list.next && /^(and|&|\+|,)$/.test(t.w) && /^(block|blk|b)$/.test(w(tokens, k + 1)),
  );
  return joint > at + 1 ? blocksBehind(tokens.slice(0, joint), at, ctx, row) : undefined;
}

function blocksBehind(
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
    return readIndexList(tokens, j + 1, {
      prefix: BLOCKS,
      homophones: true,
      max: grid.blocks,
      plural: w(tokens, j) === 'blocks',
    });
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
    // "row four, the end one on the right"
    const onSide = endOnSide(tokens, side, the + 1);
    if (onSide) return { values: [onSide.right ? grid.blocks : 1], next: onSide.next };
    if (BLOCKS.has(w(tokens, k)) || (n && w(tokens, k) === 'of' && w(tokens, k + 1) === 'it')) {
      const next = BLOCKS.has(w(tokens, k)) ? k + 1 : k + 2;
      if (side === 'first') return { values: countUp(1, count), next };
      if (side === 'middle' || side === 'centre' || side === 'center')
        return (grid.blocks - count) % 2 === 0 && count <= grid.blocks
          ? { values: countUp((grid.blocks - count) / 2 + 1, (grid.blocks + count) / 2), next }
          : undefined;
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
  // "r2/4-6 thin"
  const slash =
    w(tokens, at) === '/' && tokens[at]!.glued ? numbersTold(tokens, at + 1, grid.blocks) : undefined;
  if (slash) return slash;
  if (j === at && !tokens[at]?.glued) {
    const bare = readCount(tokens, at);
    const told = bare ? numbersTold(tokens, at, grid.blocks) : undefined;
    if (told && told.values.length > 1) return told;
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
    plural: t.w.length > 1 && t.w.endsWith('s'),
  });
  if (!columns) return undefined;
  const outside = columns.values.some((c) => c > ctx.grid.blocks);
  // "R4: ties gone C2-C5": of the row that heads the sentence
  // "r2 c3 torn, c4 ok": of the row that the block before was of
  const { walk } = ctx;
  const begun =
    walk &&
    (walk.reached === 0
      ? walk.heads
      : tokens.slice(Math.max(0, walk.end - 3), walk.end).some((x) => x.w === 'c'));
  const row = begun ? walk : undefined;
  if (t.w === 'c' && row && !outside && !tokens.slice(row.end, i).some((x) => /^[.;!?\n]$/.test(x.w)))
    return blocksSaid(
      columns.next,
      columns.values.flatMap((c) => blockAt(ctx.grid, row.row, c) ?? []),
      'place.row-block',
    );
  return {
    next: columns.next,
    places: outside ? [] : columns.values.flatMap((c) => columnOf(ctx.grid, c)),
    how: 'said',
    rule: 'place.column',
    kind: 'blocks',
    ...(outside ? { outside: true } : {}),
  };
}
