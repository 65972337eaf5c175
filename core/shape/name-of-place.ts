import type { QuiltGrid } from '../../shared/quilt.ts';

/** The name that she gave to this one place, as it stands in a sentence: "the medallion". Undefined where it has none. */
export function nameOfPlace(grid: Pick<QuiltGrid, 'placeNames'>, place: string): string | undefined {
  for (const [name, places] of Object.entries(grid.placeNames ?? {}))
    if (places.length === 1 && places[0] === place) return `the ${name.replace(/^the /i, '')}`;
  return undefined;
}
