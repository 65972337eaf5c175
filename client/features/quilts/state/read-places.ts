import { shapeOf } from '../../../../core/shape/shape-of.ts';
import { shapeWords } from '../../../../core/shape/shape-words.ts';
import type { QuiltGrid } from '../../../../shared/quilt.ts';

/**
 * Blocks as typed into a form: `1-2, 4-4`, also `3-*` for a whole row and `*-2` for a column. Gives
 * the blocks, or in words what could not be read.
 */
export function readPlaces(text: string, grid: QuiltGrid): string[] | { fault: string } {
  const places: string[] = [];
  const shape = shapeOf(grid);
  for (const piece of text.split(/[\s,;]+/).filter(Boolean)) {
    const match = /^(\d+|\*)[-–.:/](\d+|\*)$/.exec(piece);
    if (!match)
      return { fault: `“${piece}” is no block. Write row and block, such as 3-2; 3-* is all of row 3.` };
    const rows = match[1] === '*' ? range(grid.rows) : [Number(match[1])];
    const blocks = match[2] === '*' ? range(grid.blocks) : [Number(match[2])];
    for (const row of rows) {
      for (const block of blocks) {
        const place = shape.at(row, block);
        // "3-*" in a row that is shorter than the others
        if (!place && (match[1] === '*' || match[2] === '*') && row <= grid.rows && block <= grid.blocks)
          continue;
        if (!place) return { fault: `There is no ${row}-${block}: the quilt has ${shapeWords(grid)}.` };
        if (!places.includes(place)) places.push(place);
      }
    }
  }
  return places;
}

const range = (n: number): number[] => Array.from({ length: n }, (_, i) => i + 1);
