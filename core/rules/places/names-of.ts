import type { QuiltGrid } from '../../../shared/quilt.ts';

const joined = new WeakMap<object, WeakMap<object, Record<string, string[]>>>();
const NONE = {};

/** The names that this quilt's words may be: of its fabrics and of its places. The same record for the same quilt. */
export function namesOf(grid: QuiltGrid): Record<string, string[]> | undefined {
  if (!grid.placeNames) return grid.fabrics;
  const fabrics = grid.fabrics ?? NONE;
  const byFabrics = joined.get(grid.placeNames) ?? new WeakMap<object, Record<string, string[]>>();
  joined.set(grid.placeNames, byFabrics);
  const names = byFabrics.get(fabrics) ?? { ...fabrics, ...grid.placeNames };
  byFabrics.set(fabrics, names);
  return names;
}
