import type { QuiltGrid } from '../../shared/quilt.ts';
import { lengthOfRow } from './lay-out-blocks.ts';
import { shapeOf } from './shape-of.ts';

/** What is wrong with a described shape or with the names of its places, in words, and the field it is about. */
export type ShapeFault = { field: 'shape' | 'placeNames'; message: string };

/** Whether the shape can be laid out and every named place is there; undefined where all is well. */
export function faultOfShape(grid: QuiltGrid): ShapeFault | undefined {
  const { rows, blocks, shape } = grid;
  const shapeFault = (message: string): ShapeFault => ({ field: 'shape', message });
  const lengths = shape?.rowLengths ?? [];
  if (lengths.length > rows) {
    return shapeFault(
      `Blocks are given for ${lengths.length} rows and the quilt has ${rows}. Give one number for each row.`,
    );
  }
  const long = lengths.findIndex((length) => length > blocks);
  if (long >= 0) {
    return shapeFault(
      `Row ${long + 1} has ${lengths[long]} blocks and the longest row ${blocks}. Raise the blocks in a row, or give row ${long + 1} fewer.`,
    );
  }
  const wide = Object.entries(shape?.wide ?? {});
  if (wide.length && shape?.outline === 'hexagon')
    return shapeFault('A hexagon takes one place only. Leave out the larger blocks, or choose squares.');
  const taken = new Map<string, string>();
  for (const [place, { across, down }] of wide) {
    const [row, block] = place.split('-').map(Number) as [number, number];
    for (let r = row; r < row + down; r++) {
      if (r > rows || block + across - 1 > lengthOfRow(grid, r)) {
        return shapeFault(
          `The block from ${place} to ${row + down - 1}-${block + across - 1} is larger than the quilt. Give places that are there.`,
        );
      }
      // Blocks that don't lie under each other can't be one block.
      if (shape?.shortRows !== 'left' && lengthOfRow(grid, r) !== lengthOfRow(grid, row)) {
        return shapeFault(
          `The block at ${place} lies over rows that are not alike. Let shorter rows lie to the left, or give those rows the same blocks.`,
        );
      }
      for (let b = block; b < block + across; b++) {
        const other = taken.get(`${r}-${b}`);
        if (other)
          return shapeFault(
            `The blocks at ${other} and ${place} both take ${r}-${b}. Give each its own places.`,
          );
        taken.set(`${r}-${b}`, place);
      }
    }
  }
  const there = new Set(shapeOf(grid).blocks);
  for (const [name, places] of Object.entries(grid.placeNames ?? {})) {
    const missing = places.find((place) => /^\d/.test(place) && !there.has(place));
    if (missing) {
      return {
        field: 'placeNames',
        message: `“${name}” is said to be at ${missing}, and the quilt has no such block now. Change the name's blocks first, or leave it out.`,
      };
    }
  }
  return undefined;
}
