import type { QuiltGrid } from '../../shared/quilt.ts';
import { shapeOf } from '../shape/shape-of.ts';
import { PACE_SHEET } from './pace-sheet.ts';

const WHOLE = new Set(['quilt', 'top', 'backing', 'batting']);
const BLOCK = /^\d+-\d+$/;

/**
 * How many of the pace sheet's unit a treatment of these places is: tying the whole quilt is a tie for each block,
 * binding two of its edges is half a binding. No place is the whole quilt, where the unit is no place.
 */
export const unitsOfWork = (action: string, places: readonly string[], grid: QuiltGrid): number => {
  const blocks = grid.shape ? shapeOf(grid).blocks.length : grid.rows * grid.blocks;
  switch (PACE_SHEET[action]?.unit) {
    case 'tie':
    case 'block':
      return places.length === 0 || places.some((place) => WHOLE.has(place)) ? blocks : places.length;
    case 'quilt': {
      const share = (place: string): number =>
        BLOCK.test(place) ? 1 / blocks : /^(edge|border|corner)-/.test(place) ? 1 / 4 : 1;
      const sum = places.reduce((all, place) => all + share(place), 0);
      return places.length === 0 ? 1 : Math.min(1, sum);
    }
    case 'side':
      return places.some((place) => /^(edge|border)-/.test(place)) ? places.length : 4;
    default:
      return Math.max(1, places.length);
  }
};

/** Whether the unit of an action is one place, so that the damage found there tells of its pace. */
export const isByPlace = (action: string): boolean => PACE_SHEET[action]?.unit !== 'quilt';
