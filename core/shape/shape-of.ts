import type { QuiltGrid } from '../../shared/quilt.ts';
import { type LaidTop, layOutBlocks, lengthOfRow } from './lay-out-blocks.ts';

/** Which blocks a quilt has, whatever its shape. */
export type Shape = {
  /** The block that lies at a place: a larger block under its upper left place; undefined where there is none. */
  at: (row: number, block: number) => string | undefined;
  /** Places in a row. */
  lengthOf: (row: number) => number;
  /** Blocks that lie in a row, from the left; none for a row that is not there. */
  row: (row: number) => string[];
  /** The blocks that stand at this number in their rows. */
  column: (block: number) => string[];
  /** Every block, row by row. */
  blocks: string[];
  laid: LaidTop;
};

type Kept = { rows: number; blocks: number; shape: Shape };
const known = new WeakMap<object, Kept>();

/** The shape of a quilt, worked out once for each quilt or described shape. */
export function shapeOf(grid: QuiltGrid): Shape {
  const key = grid.shape ?? grid;
  const kept = known.get(key);
  if (kept && kept.rows === grid.rows && kept.blocks === grid.blocks) return kept.shape;
  const shape = makeShape(grid);
  known.set(key, { rows: grid.rows, blocks: grid.blocks, shape });
  return shape;
}

function makeShape(grid: QuiltGrid): Shape {
  const laid = layOutBlocks(grid);
  const owners = new Map<string, string>();
  for (const { place, row, block, across, down } of laid.blocks)
    for (let r = row; r < row + down; r++)
      for (let b = block; b < block + across; b++) owners.set(`${r}-${b}`, place);
  const at = (row: number, block: number): string | undefined => owners.get(`${row}-${block}`);
  const lengthOf = (row: number): number => lengthOfRow(grid, row);
  const found = (places: (string | undefined)[]): string[] => [
    ...new Set(places.filter((place) => place !== undefined)),
  ];
  const lines = (count: number, places: number, find: (line: number, k: number) => string | undefined) =>
    Array.from({ length: count }, (_, line) =>
      found(Array.from({ length: places }, (_, k) => find(line + 1, k + 1))),
    );
  const rows = lines(grid.rows, grid.blocks, at);
  const columns = lines(grid.blocks, grid.rows, (block, row) => at(row, block));
  return {
    at,
    lengthOf,
    row: (row) => rows[row - 1] ?? [],
    column: (block) => columns[block - 1] ?? [],
    blocks: laid.blocks.map((block) => block.place),
    laid,
  };
}
