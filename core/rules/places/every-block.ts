import { readCount } from '../../text/read-number.ts';
import type { Token } from '../../text/tokenise.ts';
import { wordAt as w } from '../../text/word-at.ts';
import { countedGroup } from './counted-group.ts';
import { allBlocks, columnOf, rowOf, splitBlock } from './grid.ts';
import { ordinalFirst } from './ordinal-first.ts';
import { blocksSaid, type PlaceContext, type PlaceFound } from './place-found.ts';
import { BLOCKS, COLUMNS, focusRow, ROWS } from './place-tokens.ts';
import { readIndex } from './read-index.ts';
import { columnFirst, rowFirst } from './row-first.ts';

/** "every other block in row two", "every block in the last two rows", "all the blocks of row 3", "the whole of row 4". */
export function everyBlock(tokens: Token[], i: number, ctx: PlaceContext): PlaceFound | undefined {
  const head = w(tokens, i);
  const outer = outerBlocks(tokens, i, ctx) ?? beyondLine(tokens, i, ctx);
  if (outer) return outer;
  if (!['every', 'each', 'all', 'whole', 'alternate'].includes(head)) return undefined;
  let j = i + 1;
  let other = head === 'alternate';
  while (
    ['other', 'single', 'of', 'the', 'second', 'one', 'row', 'column', 'last'].includes(w(tokens, j)) &&
    j < i + 5
  ) {
    if (w(tokens, j) === 'other' || (w(tokens, j) === 'second' && head === 'every')) other = true;
    if (w(tokens, j) === 'row' || w(tokens, j) === 'column') break;
    // "the whole of the last column"
    if (/^(second|last)$/.test(w(tokens, j)) && (ROWS.has(w(tokens, j + 1)) || COLUMNS.has(w(tokens, j + 1))))
      break;
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
    return blocksSaid(all.next + 1, allBlocks(ctx.grid), 'place.all-blocks');
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
      return blocksSaid(bare, headingLine(tokens, i, ctx)?.places ?? allBlocks(ctx.grid), 'place.all-blocks');
    }
    return undefined;
  }
  if (head === 'every' || head === 'each') {
    if (w(tokens, i + 1) === 'other' && ROWS.has(w(tokens, i + 2))) {
      const places = Array.from({ length: ctx.grid.rows }, (_, k) => k + 1)
        .filter((r) => r % 2)
        .flatMap((r) => rowOf(ctx.grid, r));
      return blocksSaid(i + 3, places, 'place.every-other-row');
    }
    return undefined;
  }
  // "all of row 4", "whole of the last column", "all nine rows", "all four rows"
  const n = readCount(tokens, j);
  if (n && ROWS.has(w(tokens, n.next)) && n.value === ctx.grid.rows)
    return blocksSaid(n.next + 1, allBlocks(ctx.grid), 'place.all-rows');
  if (n && COLUMNS.has(w(tokens, n.next)) && n.value === ctx.grid.blocks && w(tokens, n.next).endsWith('s'))
    return blocksSaid(n.next + 1, allBlocks(ctx.grid), 'place.all-rows');
  if (head === 'all' && ROWS.has(w(tokens, j)) && w(tokens, j) === 'rows' && !readIndex(tokens, j + 1, false))
    return blocksSaid(j + 1, allBlocks(ctx.grid), 'place.all-rows');
  const area = areaAt(tokens, j, ctx);
  return area && j > i + 1
    ? { ...area, rule: 'place.whole-area' }
    : area && head === 'whole'
      ? area
      : undefined;
}

/**
 * "everything below row four", "all the blocks above the third row", "everything to the left of the middle column": the lines beyond
 * one, that line left out.
 */
function beyondLine(tokens: Token[], i: number, ctx: PlaceContext): PlaceFound | undefined {
  let j = i + 1;
  if (/^(all|every)$/.test(w(tokens, i)) || BLOCKS.has(w(tokens, i)) || w(tokens, i) === 'rows') {
    if (w(tokens, j) === 'the') j++;
    if (/^all|every$/.test(w(tokens, i)) && (BLOCKS.has(w(tokens, j)) || w(tokens, j) === 'rows')) j++;
  } else if (w(tokens, i) !== 'everything') return undefined;
  if (w(tokens, j) === 'to' && w(tokens, j + 1) === 'the') j += 2;
  const way = w(tokens, j);
  if (!/^(below|beneath|under|underneath|above|over|left|right|past|beyond)$/.test(way)) return undefined;
  if (/^(left|right)$/.test(way) && w(tokens, j + 1) === 'of') j++;
  const line = areaAt(tokens, j + 1, ctx);
  const at = line?.places.map((p) => splitBlock(p)!);
  const { row, block } = at?.[0] ?? {};
  if (!line || !at || at.length < 2) return undefined;
  const inRow = at.every((p) => p.row === row);
  if (!inRow && !at.every((p) => p.block === block)) return undefined;
  const back = /^(above|over|left)$/.test(way);
  if (inRow === /^(left|right)$/.test(way)) return undefined;
  const places = allBlocks(ctx.grid).filter((p) => {
    const { row: r, block: b } = splitBlock(p)!;
    return inRow ? (back ? r < row! : r > row!) : back ? b < block! : b > block!;
  });
  return places.length ? blocksSaid(line.next, places, 'place.beyond-line') : undefined;
}

/** "all the blocks round the edge", "the outside blocks": those of the first and last row and column. */
function outerBlocks(tokens: Token[], i: number, ctx: PlaceContext): PlaceFound | undefined {
  let next: number | undefined;
  if (/^(outside|outer|outermost)$/.test(w(tokens, i)) && /^(blocks|squares)$/.test(w(tokens, i + 1)))
    next = i + 2;
  // "the outer ring of blocks"
  else if (/^(outside|outer|outermost)$/.test(w(tokens, i)) && /^(ring|round|circle)$/.test(w(tokens, i + 1)))
    next = w(tokens, i + 2) === 'of' && BLOCKS.has(w(tokens, i + 3)) ? i + 4 : i + 2;
  else if (/^(all|every|each)$/.test(w(tokens, i))) {
    const noun = w(tokens, i + 1) === 'the' ? i + 2 : i + 1;
    const at = noun + 2;
    if (
      BLOCKS.has(w(tokens, noun)) &&
      /^(round|around|along|at|on)$/.test(w(tokens, noun + 1)) &&
      w(tokens, at) === 'the' &&
      /^(edge|edges|outside|outer)$/.test(w(tokens, at + 1))
    )
      next = /^edges?$/.test(w(tokens, at + 2)) ? at + 3 : at + 2;
    // "every block along the bottom edge", "all the blocks down the left-hand side"
    const side = BLOCKS.has(w(tokens, noun)) && /^(along|down|at|on)$/.test(w(tokens, noun + 1)) ? at + 1 : 0;
    const hand = w(tokens, side + 1) === 'hand' ? side + 2 : side + 1;
    if (side && w(tokens, at) === 'the' && /^(edge|side)$/.test(w(tokens, hand))) {
      const { rows, blocks } = ctx.grid;
      const lines: Record<string, () => string[]> = {
        top: () => rowOf(ctx.grid, 1),
        bottom: () => rowOf(ctx.grid, rows),
        left: () => columnOf(ctx.grid, 1),
        right: () => columnOf(ctx.grid, blocks),
      };
      const line = Object.hasOwn(lines, w(tokens, side)) ? lines[w(tokens, side)]!() : undefined;
      if (line && !/^(of|in)$/.test(w(tokens, hand + 1)))
        return blocksSaid(hand + 1, line, 'place.outer-blocks');
    }
  }
  if (next === undefined || /^(of|in|on|along)$/.test(w(tokens, next))) return undefined;
  const { rows, blocks } = ctx.grid;
  const places = allBlocks(ctx.grid).filter((p) => {
    const at = splitBlock(p)!;
    return at.row === 1 || at.row === rows || at.block === 1 || at.block === blocks;
  });
  return { next, places, how: 'said', rule: 'place.outer-blocks', kind: 'blocks' };
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

/** "row three: a support behind each block", "in the third row there's a hole in every block": the line with which the statement begins. */
function headingLine(tokens: Token[], i: number, ctx: PlaceContext): PlaceFound | undefined {
  let start = tokens.findLastIndex((t, k) => k < i && BEGINS.test(t.w)) + 1;
  while (start < i && LEADS_TO_LINE.test(w(tokens, start))) start++;
  const line = areaAt(tokens, start, ctx);
  if (!line || line.places.length < 2 || line.next > i) return undefined;
  const marked = /^(:|,|-|--)$/.test(w(tokens, line.next));
  return marked || /^(?:in|on|of|behind|under|over|across|through|down)$/.test(w(tokens, i - 1))
    ? line
    : undefined;
}
const BEGINS = /^(?:[.;!?\n]|and|but|then)$/;
const LEADS_TO_LINE = /^(?:in|on|along|down|across|so|now|well|right|okay|oh|the|all|of|also|whole|,)$/;

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
  return blocksSaid(j + 1, columnOf(ctx.grid, right ? ctx.grid.blocks : 1), 'place.side-column');
}
