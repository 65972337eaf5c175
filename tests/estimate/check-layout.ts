import type { PlacedPiece } from '../../shared/estimate-answer.ts';

type Spot = Pick<PlacedPiece, 'x' | 'y' | 'width' | 'length'>;
const CLOSE = 1e-6;

/** Written apart from the layout's own code: what is wrong with a layout on a cloth, nothing if it is sound. */
export const faultsOfLayout = (
  layout: readonly PlacedPiece[],
  cloth: { width: number; length: number },
  pieces: readonly { width: number; length: number; count: number }[],
  mayTurn: boolean,
): string[] => {
  const faults: string[] = [];
  const counts = pieces.map(() => 0);
  layout.forEach((spot, i) => {
    const { x, y, width, length, piece } = spot;
    counts[piece]! += 1;
    const given = pieces[piece]!;
    const as = Math.abs(width - given.width) < CLOSE && Math.abs(length - given.length) < CLOSE;
    const turned = Math.abs(width - given.length) < CLOSE && Math.abs(length - given.width) < CLOSE;
    if (!(as || (mayTurn && turned))) faults.push(`piece ${piece} is laid as ${width} x ${length}`);
    if (x < -CLOSE || y < -CLOSE || x + width > cloth.width + CLOSE || y + length > cloth.length + CLOSE) {
      faults.push(`piece ${piece} leaves the cloth at ${x}, ${y}`);
    }
    layout.slice(0, i).forEach((other) => {
      const apart =
        x + width <= other.x + CLOSE ||
        other.x + other.width <= x + CLOSE ||
        y + length <= other.y + CLOSE ||
        other.y + other.length <= y + CLOSE;
      if (!apart) faults.push(`pieces overlap at ${x}, ${y} and ${other.x}, ${other.y}`);
    });
  });
  counts.forEach((count, i) => {
    if (count !== pieces[i]!.count) faults.push(`${count} of piece ${i}, ${pieces[i]!.count} wanted`);
  });
  if (!isCuttable(layout)) faults.push('not cuttable edge to edge');
  return faults;
};

/** Whether straight cuts from edge to edge part the pieces one from another. */
const isCuttable = (spots: readonly Spot[]): boolean => {
  if (spots.length <= 1) return true;
  for (const [at, size] of [
    ['x', 'width'],
    ['y', 'length'],
  ] as const) {
    const edges = [...new Set(spots.map((spot) => spot[at] + spot[size]))].sort((a, b) => a - b);
    for (const edge of edges) {
      const before = spots.filter((spot) => spot[at] + spot[size] <= edge + CLOSE);
      const after = spots.filter((spot) => spot[at] >= edge - CLOSE);
      if (before.length > 0 && after.length > 0 && before.length + after.length === spots.length) {
        return isCuttable(before) && isCuttable(after);
      }
    }
  }
  return false;
};
