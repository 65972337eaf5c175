import { readCount } from '../../text/read-number.ts';
import type { Token } from '../../text/tokenise.ts';
import { wordAt as w } from '../../text/word-at.ts';
import { endOnSide, fromRowAndBlocks, rowAfterBlock } from './block-first.ts';
import { columnOf, countUp, gridOfRow, rowOf, splitBlock } from './grid.ts';
import { blocksSaid, type PlaceContext, type PlaceFound } from './place-found.ts';
import { BLOCKS, COLUMNS, focusRow, ROWS } from './place-tokens.ts';
import { blocksAfterRow } from './row-first.ts';

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
    return blocksSaid(
      j + 1,
      rows.flatMap((r) => rowOf(grid, r)),
      'place.counted-rows',
    );
  }
  if (COLUMNS.has(noun) && noun !== 'c') {
    const columns = pick(grid.blocks);
    return blocksSaid(
      j + 1,
      columns.flatMap((c) => columnOf(grid, c)),
      'place.counted-columns',
    );
  }
  const onSide = moved ? undefined : endOnSide(tokens, side, i + 1);
  // "(column two smells musty,) the batting is lumpy in the top two blocks of it"
  const column = BLOCKS.has(noun) && n ? columnSpokenOf(ctx) : undefined;
  if (column && !middle && !/^(left|right|outer)/.test(side)) {
    const of = /^(of|in|along)$/.test(w(tokens, j + 1));
    const next =
      of && /^(it|that|them)$/.test(w(tokens, j + 2))
        ? COLUMNS.has(w(tokens, j + 3))
          ? j + 4
          : j + 3
        : j + 1;
    if (!of || next > j + 1)
      return blocksSaid(
        next,
        pick(column.length).map((row) => column[row - 1]!),
        'place.counted-blocks',
      );
  }
  if (
    onSide ||
    BLOCKS.has(noun) ||
    (noun === 'one' && ['last', 'end', 'first'].includes(side)) ||
    // "the last three in row two"
    (n && n.value > 1 && /^(in|of|along)$/.test(noun) && rowAfterBlock(tokens, j, ctx)?.how === 'said')
  ) {
    if (['top', 'bottom', 'upper', 'lower'].includes(side)) return undefined;
    const after = onSide?.next ?? (BLOCKS.has(noun) || noun === 'one' ? j + 1 : j);
    const inRow = rowAfterBlock(tokens, after, ctx);
    const row =
      inRow?.value ??
      (n || side === 'last' || side === 'end' || side === 'first' || middle ? focusRow(ctx) : undefined);
    if (middle && !inRow && !n) return undefined;
    // "the centre four blocks" of the whole top
    if (middle && !inRow && count === 4 && grid.rows % 2 === 0 && grid.blocks % 2 === 0) return undefined;
    if (row === undefined) return undefined;
    if (noun === 'one' && !inRow && !onSide) return undefined;
    const { blocks } = gridOfRow(grid, row);
    return fromRowAndBlocks(
      grid,
      row,
      onSide ? [onSide.right ? blocks : 1] : pick(blocks),
      inRow ? inRow.next : onSide ? after : j + 1,
      inRow ? inRow.how : 'implied',
      'place.counted-blocks',
    );
  }
  return undefined;
}

/** The blocks of the whole column that is spoken of. */
function columnSpokenOf({ focus, grid }: PlaceContext): string[] | undefined {
  const block = splitBlock(focus[0] ?? '')?.block;
  const column = block === undefined || focus.length < 3 ? undefined : columnOf(grid, block);
  return column && column.length === focus.length && column.every((p) => focus.includes(p))
    ? column
    : undefined;
}
