import { LINE_SLIPS } from '../../../lexicon/place-words.ts';
import { gridOfRow } from '../grid.ts';
import type { PlaceContext } from '../place-found.ts';
import { COLUMN_NOUNS } from '../place-tokens.ts';

export type Axis = 'row' | 'column';

/** Which way is counted: the blocks of a row across, rows and the blocks of a column down. */
export type Counting = 'down' | 'across';

/** Which way the blocks along a line are counted. */
export const countingAlong = (axis: Axis): Counting => (axis === 'row' ? 'across' : 'down');

/** Which way lines of a kind are counted themselves. */
export const countingLines = (axis: Axis): Counting => (axis === 'row' ? 'down' : 'across');

/** `named`: the lines were told by number, not by "top", "last" and the like. */
export type Line = {
  axis: Axis;
  lines: number[];
  next: number;
  how: 'said' | 'implied';
  named: boolean;
  /** Half of the quilt, or of what was spoken of. */
  half?: boolean;
};

const ROW_NOUNS = new Set(['row', 'rows', ...LINE_SLIPS]);

export const ROW_PREFIX = new Set(['row', 'rows']);

export const axisOf = (noun: string): Axis | undefined =>
  ROW_NOUNS.has(noun) ? 'row' : COLUMN_NOUNS.has(noun) ? 'column' : undefined;

export const totalOf = (ctx: PlaceContext, axis: Axis): number =>
  axis === 'row' ? ctx.grid.rows : ctx.grid.blocks;

/** How many blocks can be counted along a line. */
export const lengthOf = (ctx: PlaceContext, { axis, lines }: Line): number =>
  axis === 'column' ? ctx.grid.rows : Math.max(0, ...lines.map((row) => gridOfRow(ctx.grid, row).blocks));
