import type { QuiltGrid } from '../../../shared/quilt.ts';

/** The block in row `row`, `block` across from the left, both from 1, or undefined outside the grid. */
export function blockAt(grid: QuiltGrid, row: number, block: number): string | undefined {
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
  const dash = place.indexOf('-');
  const row = Number(place.slice(0, dash));
  const block = Number(place.slice(dash + 1));
  return dash > 0 && Number.isInteger(row) && Number.isInteger(block) ? { row, block } : undefined;
}

export const rowOf = (grid: QuiltGrid, row: number): string[] =>
  row >= 1 && row <= grid.rows ? Array.from({ length: grid.blocks }, (_, k) => `${row}-${k + 1}`) : [];

export const columnOf = (grid: QuiltGrid, block: number): string[] =>
  block >= 1 && block <= grid.blocks ? Array.from({ length: grid.rows }, (_, k) => `${k + 1}-${block}`) : [];

export const allBlocks = (grid: QuiltGrid): string[] =>
  Array.from({ length: grid.rows }, (_, k) => rowOf(grid, k + 1)).flat();

/** Whole numbers from `a` to `b`, whichever way round. */
export function countUp(a: number, b: number): number[] {
  const low = Math.min(a, b);
  return Array.from({ length: Math.min(Math.abs(b - a) + 1, 200) }, (_, k) => low + k);
}

export const unique = <T>(list: T[]): T[] => [...new Set(list)];
