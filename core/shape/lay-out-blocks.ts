import type { QuiltGrid } from '../../shared/quilt.ts';

/** A block as it lies in the top, in fractions of the top's width (u) and height (v). */
export type LaidBlock = {
  place: string;
  row: number;
  block: number;
  /** How many places it takes. */
  across: number;
  down: number;
  /** Its corners, from the upper left, clockwise. */
  outline: [u: number, v: number][];
  /** The place it takes in its row: for a hexagon from its upper point to the notch below. */
  box: { left: number; top: number; right: number; bottom: number };
};

export type LaidTop = {
  blocks: LaidBlock[];
  /** Width over height where nothing was measured: blocks as wide as high, hexagons with equal sides. */
  ratio: number;
};

/** How many blocks the row has; a row that is not told of has as many as the grid. */
export const lengthOfRow = (grid: QuiltGrid, row: number): number =>
  Math.min(grid.shape?.rowLengths?.[row - 1] ?? grid.blocks, grid.blocks);

/** Every block of the top where it lies, row by row. A place that a larger block takes is not a block of its own. */
export function layOutBlocks(grid: QuiltGrid): LaidTop {
  return grid.shape?.outline === 'hexagon' ? layHexagons(grid) : laySquares(grid);
}

function laySquares(grid: QuiltGrid): LaidTop {
  const { rows, blocks, shape } = grid;
  const lies = shape?.shortRows ?? 'stretched';
  const taken = new Set<string>();
  const laid: LaidBlock[] = [];
  for (let row = 1; row <= rows; row++) {
    const length = lengthOfRow(grid, row);
    const width = lies === 'stretched' ? 1 / length : 1 / blocks;
    const empty = lies === 'stretched' ? 0 : (blocks - length) / blocks;
    const start = lies === 'right' ? empty : lies === 'centred' ? empty / 2 : 0;
    for (let block = 1; block <= length; block++) {
      const place = `${row}-${block}`;
      if (taken.has(place)) continue;
      const { across = 1, down = 1 } = shape?.wide?.[place] ?? {};
      for (let r = row; r < row + down; r++)
        for (let b = block; b < block + across; b++) taken.add(`${r}-${b}`);
      const box = {
        left: start + (block - 1) * width,
        top: (row - 1) / rows,
        right: start + (block - 1 + across) * width,
        bottom: (row - 1 + down) / rows,
      };
      laid.push({
        place,
        row,
        block,
        across,
        down,
        box,
        outline: [
          [box.left, box.top],
          [box.right, box.top],
          [box.right, box.bottom],
          [box.left, box.bottom],
        ],
      });
    }
  }
  return { blocks: laid, ratio: blocks / rows };
}

/** A hexagon one wide that stands on a point: its height, and how far the next row lies below. */
const HEXAGON = { height: 2 / Math.sqrt(3), pitch: Math.sqrt(3) / 2 };

function layHexagons(grid: QuiltGrid): LaidTop {
  const starts = startsOfRows(grid);
  const right = Math.max(...starts.map((start, i) => start + lengthOfRow(grid, i + 1)));
  const height = (grid.rows - 1) * HEXAGON.pitch + HEXAGON.height;
  const u = (x: number): number => x / right;
  const v = (y: number): number => y / height;
  const laid = starts.flatMap((start, i) =>
    Array.from({ length: lengthOfRow(grid, i + 1) }, (_, k): LaidBlock => {
      const x = start + k;
      const y = i * HEXAGON.pitch;
      const quarter = HEXAGON.height / 4;
      return {
        place: `${i + 1}-${k + 1}`,
        row: i + 1,
        block: k + 1,
        across: 1,
        down: 1,
        box: { left: u(x), top: v(y), right: u(x + 1), bottom: v(y + HEXAGON.pitch) },
        outline: [
          [u(x), v(y + quarter)],
          [u(x + 0.5), v(y)],
          [u(x + 1), v(y + quarter)],
          [u(x + 1), v(y + 3 * quarter)],
          [u(x + 0.5), v(y + HEXAGON.height)],
          [u(x), v(y + 3 * quarter)],
        ],
      };
    }),
  );
  return { blocks: laid, ratio: right / height };
}

/**
 * Where each row of hexagons begins. A row one longer or shorter than the one above lies half a block to either side of
 * it; one of the same length half a block to the right, and the next half a block back.
 */
function startsOfRows(grid: QuiltGrid): number[] {
  const starts = [0];
  for (let row = 2; row <= grid.rows; row++) {
    const above = starts[row - 2]!;
    const shorter = lengthOfRow(grid, row - 1) - lengthOfRow(grid, row);
    const centred = above + shorter / 2;
    // In the notches, so half a block off the row above.
    const nested = shorter % 2 === 0 ? (row % 2 === 0 ? centred + 0.5 : centred - 0.5) : centred;
    starts.push(nested);
  }
  const left = Math.min(...starts);
  return starts.map((start) => start - left);
}
