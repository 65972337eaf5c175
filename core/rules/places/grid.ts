import type { QuiltGrid } from '../../../shared/quilt.ts';
import { blocksBeside } from '../../shape/blocks-beside.ts';
import { lengthOfRow } from '../../shape/lay-out-blocks.ts';
import { shapeOf } from '../../shape/shape-of.ts';

/**
 * The block in row `row`, `block` across from the left, both from 1, or undefined where the quilt has none. A place that a
 * larger block takes is that block.
 */
export function blockAt(grid: QuiltGrid, row: number, block: number): string | undefined {
  if (grid.shape) return shapeOf(grid).at(row, block);
  return Number.isInteger(row) &&
    Number.isInteger(block) &&
    row >= 1 &&
    block >= 1 &&
    row <= grid.rows &&
    block <= grid.blocks
    ? `${row}-${block}`
    : undefined;
}

/** Row and block of `3-2`, or undefined for a named part. */
export function splitBlock(place: string): { row: number; block: number } | undefined {
  // a part begins with a letter
  if (place.charCodeAt(0) > 57) return undefined;
  const dash = place.indexOf('-');
  const row = Number(place.slice(0, dash));
  const block = Number(place.slice(dash + 1));
  return dash > 0 && Number.isInteger(row) && Number.isInteger(block) ? { row, block } : undefined;
}

export function rowOf(grid: QuiltGrid, row: number): string[] {
  if (grid.shape) return shapeOf(grid).row(row);
  const places: string[] = [];
  if (row >= 1 && row <= grid.rows) for (let k = 1; k <= grid.blocks; k++) places.push(`${row}-${k}`);
  return places;
}

export function columnOf(grid: QuiltGrid, block: number): string[] {
  if (grid.shape) return shapeOf(grid).column(block);
  const places: string[] = [];
  if (block >= 1 && block <= grid.blocks) for (let k = 1; k <= grid.rows; k++) places.push(`${k}-${block}`);
  return places;
}

export const allBlocks = (grid: QuiltGrid): string[] =>
  grid.shape ? shapeOf(grid).blocks : Array.from({ length: grid.rows }, (_, k) => rowOf(grid, k + 1)).flat();

/** The blocks of a row or a column. */
export const blocksOfLine = (grid: QuiltGrid, axis: 'row' | 'column', n: number): string[] =>
  axis === 'row' ? rowOf(grid, n) : columnOf(grid, n);

/** The blocks that lie between two of one row or column, where they do. */
export function blocksBetween(grid: QuiltGrid, first: string, last: string): string[] {
  const [a, b] = [splitBlock(first), splitBlock(last)];
  if (!a || !b || (a.row !== b.row && a.block !== b.block)) return [];
  const line = a.row === b.row ? rowOf(grid, a.row) : columnOf(grid, a.block);
  const [from, to] = [line.indexOf(first), line.indexOf(last)].sort((x, y) => x - y);
  return line.slice(from! + 1, to);
}

/** As many places as the row of the first of them has blocks. */
export const isWholeRow = (grid: QuiltGrid, places: string[]): boolean => {
  const row = splitBlock(places[0] ?? '')?.row;
  return row !== undefined && places.length === rowOf(grid, row).length;
};

/** The grid as one of its rows has it: `blocks` is then what that row has ("the last block of row two"). */
export const gridOfRow = (grid: QuiltGrid, row: number): QuiltGrid =>
  grid.shape ? { ...grid, blocks: lengthOfRow(grid, row) } : grid;

/**
 * The block `down` rows below and `across` to the right of another (negative: above, to the left). In a shape that is no
 * plain grid it goes from block to block, and where two lie on that side it is undefined: she has to say which.
 */
export function blockFrom(grid: QuiltGrid, place: string, down: number, across: number): string | undefined {
  const at = splitBlock(place);
  if (!at) return undefined;
  if (!grid.shape) return blockAt(grid, at.row + down, at.block + across);
  let here: string | undefined = blockAt(grid, at.row, at.block);
  for (let k = 0; k < Math.abs(down) + Math.abs(across) && here; k++) {
    const upright = k < Math.abs(down);
    const side = upright ? (down < 0 ? 'above' : 'below') : across < 0 ? 'left' : 'right';
    const beside: string[] = blocksBeside(grid, here, side);
    here = beside.length === 1 ? beside[0] : undefined;
  }
  return here;
}

/** The block in a corner of the top. */
export function cornerBlock(grid: QuiltGrid, top: boolean, left: boolean): string {
  const row = top ? 1 : grid.rows;
  const block = left ? 1 : gridOfRow(grid, row).blocks;
  return blockAt(grid, row, block) ?? `${row}-${block}`;
}

/** The blocks in the corners of the top: all four, or those at one `end` (top, bottom, left, right). */
export const cornerBlocks = (grid: QuiltGrid, end?: string): string[] =>
  unique(
    [true, false].flatMap((top) =>
      [true, false]
        .filter((left) => !end || end === (top ? 'top' : 'bottom') || end === (left ? 'left' : 'right'))
        .map((left) => cornerBlock(grid, top, left)),
    ),
  );

/** Is it a block of one of these rows or columns? */
export function liesInLines(place: string, axis: 'row' | 'column', lines: number[]): boolean {
  const at = splitBlock(place);
  return at !== undefined && lines.includes(axis === 'row' ? at.row : at.block);
}

/** Of places between two blocks, the blocks that the quilt has there. */
export const thatAre = (grid: QuiltGrid, places: string[]): string[] =>
  unique(
    places.flatMap((place) => {
      const at = grid.shape ? splitBlock(place) : undefined;
      return at ? (blockAt(grid, at.row, at.block) ?? []) : place;
    }),
  );

/** Whole numbers from `a` to `b`, whichever way round. */
export function countUp(a: number, b: number): number[] {
  const low = Math.min(a, b);
  return Array.from({ length: Math.min(Math.abs(b - a) + 1, 200) }, (_, k) => low + k);
}

export const unique = <T>(list: T[]): T[] => [...new Set(list)];

/** Do two blocks lie side by side, or one above the other? */
export function areNeighbours(one: string, other: string): boolean {
  const [a, b] = [splitBlock(one), splitBlock(other)];
  return a !== undefined && b !== undefined && Math.abs(a.row - b.row) + Math.abs(a.block - b.block) === 1;
}

/** "the middle one" of an odd number of blocks told together: the quilt's own middle block where it is among them, else the one between the others. */
export function middleOf(group: string[], grid: QuiltGrid): string | undefined {
  const own = blockAt(grid, (grid.rows + 1) / 2, (gridOfRow(grid, (grid.rows + 1) / 2).blocks + 1) / 2);
  if (own && group.includes(own)) return own;
  if (group.length % 2 === 0) return undefined;
  const order = (p: string): number => {
    const at = splitBlock(p);
    return at ? at.row * 1000 + at.block : 0;
  };
  return [...group].sort((a, b) => order(a) - order(b))[(group.length - 1) / 2];
}
