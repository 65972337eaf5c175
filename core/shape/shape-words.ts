import type { QuiltGrid } from '../../shared/quilt.ts';
import { lengthOfRow } from './lay-out-blocks.ts';

/** The grid in words: "5 rows of 4 blocks"; "5 rows, of 5, 4, 5, 4 and 5 blocks". */
export function shapeWords(grid: QuiltGrid): string {
  const lengths = Array.from({ length: grid.rows }, (_, i) => lengthOfRow(grid, i + 1));
  const rows = `${grid.rows} ${grid.rows === 1 ? 'row' : 'rows'}`;
  const noun = grid.shape?.outline === 'hexagon' ? 'hexagon' : 'block';
  const said = (n: number): string => `${n} ${noun}${n === 1 ? '' : 's'}`;
  const wide = Object.keys(grid.shape?.wide ?? {}).length;
  const larger = wide ? `, ${wide === 1 ? 'one' : wide} of them larger than one place` : '';
  if (lengths.every((length) => length === grid.blocks)) return `${rows} of ${said(grid.blocks)}${larger}`;
  return `${rows}, of ${lengths.slice(0, -1).join(', ')} and ${said(lengths.at(-1)!)}${larger}`;
}
