import { readOrdinal } from '../../text/read-number.ts';
import type { Token } from '../../text/tokenise.ts';
import { wordAt as w } from '../../text/word-at.ts';
import { fromRowAndBlocks, lastButOne, rowAfterBlock, rowOrdinal } from './block-first.ts';
import { columnOf, countUp, gridOfRow, rowOf } from './grid.ts';
import { blocksSaid, type PlaceContext, type PlaceFound } from './place-found.ts';
import { BLOCKS, COLUMNS, focusRow, ROWS } from './place-tokens.ts';
import { blocksAfterRow } from './row-first.ts';

/** "the third row", "third row second block", "second block of the third row", "third from the left in row two". */
export function ordinalFirst(tokens: Token[], i: number, ctx: PlaceContext): PlaceFound | undefined {
  const { grid } = ctx;
  // "a third of row six's had gone": how much of it
  if (
    /^(?:third|quarter|fifth)$/.test(w(tokens, i)) &&
    /^(?:a|good|full|fair|one|nearly|about)$/.test(w(tokens, i - 1)) &&
    w(tokens, i + 1) === 'of'
  )
    return undefined;
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
  const ofRow = values.length === 1 ? blocksInNth(tokens, i, j, values[0]!, ctx) : undefined;
  if (ofRow) return ofRow;
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
    return blocksSaid(
      j + 1,
      values.flatMap((v) => rowOf(grid, v)),
      'place.ordinal-row',
    );
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

/** "the first two rows and, in the third, blocks 1 to 3", "row one, and in the second the last two blocks": of the rows spoken of. */
function blocksInNth(
  tokens: Token[],
  i: number,
  next: number,
  row: number,
  ctx: PlaceContext,
): PlaceFound | undefined {
  if (w(tokens, i - 1) !== 'the' || !/^(in|of|on|from|along)$/.test(w(tokens, i - 2))) return undefined;
  const at = /^(,|just)$/.test(w(tokens, next)) ? next + 1 : next;
  const head = w(tokens, at) === 'the' ? at + 1 : at;
  if (!BLOCKS.has(w(tokens, head)) && !/^(first|last)$/.test(w(tokens, head))) return undefined;
  if (!tokens.slice(Math.max(0, i - 14), i).some((t) => ROWS.has(t.w))) return undefined;
  const blocks = blocksAfterRow(tokens, at, ctx, row);
  if (!blocks || blocks.values === 'all') return undefined;
  return fromRowAndBlocks(ctx.grid, row, blocks.values, blocks.next, 'said', 'place.ordinal-row-block');
}
