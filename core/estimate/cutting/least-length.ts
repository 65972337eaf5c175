import type { Block } from './block.ts';

/** Above this many units the sums are not listed; the plain bound by area stands. */
const MOST_UNITS = 400_000;

/** Marks every sum up to `limit` that some of the sizes can add up to, each used once. */
const reachableSums = (sizes: readonly number[], limit: number): Uint8Array => {
  const reachable = new Uint8Array(limit + 1);
  reachable[0] = 1;
  let most = 0;
  for (const size of sizes) {
    most = Math.min(limit, most + size);
    for (let sum = most; sum >= size; sum--) if (reachable[sum - size]) reachable[sum] = 1;
  }
  return reachable;
};

/**
 * No layout of the pieces on this width can be shorter: the area over the most of the width that pieces
 * side by side can fill, no less than the piece that must lie longest, up to a length that pieces one
 * behind the other can add up to.
 */
export const leastLength = (pieces: readonly Block[], width: number): number => {
  const area = pieces.reduce((sum, piece) => sum + piece.area, 0);
  const longest = pieces.reduce((most, piece) => {
    const mayLieOver = piece.turnable && piece.length <= width;
    return Math.max(
      most,
      piece.width > width ? piece.width : mayLieOver ? Math.min(piece.width, piece.length) : piece.length,
    );
  }, 0);
  if (width > MOST_UNITS || pieces.length * width > 20_000_000)
    return Math.max(longest, Math.ceil(area / width));
  // A turnable piece counts with both its sides: more sums than there are, so the bound still holds.
  const across = reachableSums(
    pieces
      .flatMap(({ width: w, length: l, turnable }) => (turnable && w !== l ? [w, l] : [w]))
      .filter((size) => size <= width),
    width,
  );
  const filled = across.lastIndexOf(1);
  const least = Math.max(longest, Math.ceil(area / filled));
  const limit = least + Math.ceil(least / 4);
  if (limit > MOST_UNITS || pieces.length * limit > 20_000_000) return least;
  const along = reachableSums(
    pieces
      .flatMap(({ width: w, length: l, turnable }) => (turnable && w !== l ? [w, l] : [l]))
      .filter((size) => size <= limit),
    limit,
  );
  const next = along.indexOf(1, least);
  return next < 0 ? least : next;
};
