import { faultOfShape } from '../../../../core/shape/fault-of-shape.ts';
import type { QuiltGrid, QuiltShape } from '../../../../shared/quilt.ts';
import { readPlaces } from './read-places.ts';

/** A shape as typed into its form. `names`: what a place is called, and the blocks it is. */
export type ShapeDraft = {
  /** Blocks in each row from the top, "5, 4, 5"; empty where the rows are alike. */
  rowLengths: string;
  shortRows: NonNullable<QuiltShape['shortRows']>;
  outline: NonNullable<QuiltShape['outline']>;
  /** "2-2 to 4-4; 1-1 to 1-2" */
  wide: string;
  names: { id: number; name: string; places: string }[];
};

export type ShapeFaults = Partial<Record<'rowLengths' | 'wide' | 'shape' | `name-${number}`, string>>;

/** The form that shows a quilt's shape and names. */
export function draftOfShape(grid: QuiltGrid): ShapeDraft {
  const { shape, placeNames } = grid;
  return {
    rowLengths: (shape?.rowLengths ?? []).join(', '),
    shortRows: shape?.shortRows ?? 'stretched',
    outline: shape?.outline ?? 'square',
    wide: Object.entries(shape?.wide ?? {})
      .map(([place, { across, down }]) => {
        const [row, block] = place.split('-').map(Number) as [number, number];
        return `${place} to ${row + down - 1}-${block + across - 1}`;
      })
      .join('; '),
    names: Object.entries(placeNames ?? {}).map(([name, places], id) => ({
      id,
      name,
      places: places.join(', '),
    })),
  };
}

/**
 * The shape and names that the form says, or what is wrong with which field. `rows` and `blocks` are those of the form
 * beside it; where the lengths of the rows are given, they say how many rows there are and which is the longest.
 */
export function readShape(
  draft: ShapeDraft,
  { rows, blocks }: Pick<QuiltGrid, 'rows' | 'blocks'>,
): { grid: QuiltGrid } | { faults: ShapeFaults } {
  const faults: ShapeFaults = {};
  const lengths = draft.rowLengths.split(/[\s,;]+/).filter(Boolean);
  const bad = lengths.find((length) => !/^[1-9]\d?$/.test(length) || Number(length) > 60);
  if (bad !== undefined)
    faults.rowLengths = `“${bad}” is no number of blocks. Write one for each row, from the top: 5, 4, 5.`;
  const rowLengths = lengths.map(Number);
  const alike = rowLengths.every((length) => length === rowLengths[0]);
  const size = {
    rows: lengths.length && !bad ? lengths.length : rows,
    blocks: lengths.length && !bad ? Math.max(...rowLengths) : blocks,
  };
  const wide: NonNullable<QuiltShape['wide']> = {};
  for (const piece of draft.wide
    .split(/[;,]+/)
    .map((text) => text.trim())
    .filter(Boolean)) {
    const match = /^(\d+)-(\d+)\s*(?:to|–|…|through)\s*(\d+)-(\d+)$/.exec(piece);
    if (!match) {
      faults.wide = `“${piece}” can’t be read. Write its upper left and lower right place: 2-2 to 4-4.`;
      continue;
    }
    const [top, left, bottom, right] = match.slice(1).map(Number) as [number, number, number, number];
    if (bottom < top || right < left)
      faults.wide = `“${piece}” ends before it begins. Write the upper left place first: 2-2 to 4-4.`;
    else wide[`${top}-${left}`] = { across: right - left + 1, down: bottom - top + 1 };
  }
  const shape: QuiltShape = {
    ...(rowLengths.length && !bad && !alike ? { rowLengths } : {}),
    ...(draft.shortRows === 'stretched' ? {} : { shortRows: draft.shortRows }),
    ...(Object.keys(wide).length ? { wide } : {}),
    ...(draft.outline === 'square' ? {} : { outline: draft.outline }),
  };
  const grid: QuiltGrid = { ...size, shape };
  const shapeFault = Object.keys(faults).length ? undefined : faultOfShape(grid);
  if (shapeFault) faults.shape = shapeFault.message;
  const placeNames: Record<string, string[]> = {};
  for (const { id, name, places } of draft.names) {
    const called = name.trim().toLowerCase().replace(/^the /, '');
    if (!called && !places.trim()) continue;
    const read = shapeFault ? [] : readPlaces(places, grid);
    if (!called) faults[`name-${id}`] = 'Give the place a name, such as medallion.';
    else if (!Array.isArray(read)) faults[`name-${id}`] = read.fault;
    else if (!read.length && !shapeFault) faults[`name-${id}`] = `Say which block ${called} is, such as 2-2.`;
    else placeNames[called] = read;
  }
  if (Object.keys(faults).length) return { faults };
  return { grid: { ...grid, placeNames } };
}
