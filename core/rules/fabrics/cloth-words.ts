import type { QuiltGrid } from '../../../shared/quilt.ts';

/** The words that this quilt's cloths are named by: "blue", "gingham". */
export const clothWords = ({ fabrics = {} }: QuiltGrid): Set<string> =>
  new Set(Object.keys(fabrics).flatMap((name) => name.toLowerCase().split(/\s+/)));
