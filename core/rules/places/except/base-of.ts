import type { FabricIndex } from '../../fabrics/find-fabric.ts';
import type { Item } from '../../item.ts';
import { splitBlock, unique } from '../grid.ts';

export const baseOf = (x: Item, fabrics: FabricIndex): string[] =>
  sidesOf(x).length
    ? sidesOf(x)
    : isCorners(x) || isSides(x)
      ? x.place!.places
      : x.place &&
          x.place.kind !== 'part' &&
          x.place.places.length > 1 &&
          x.place.places.every((p) => splitBlock(p))
        ? x.place.places
        : !x.place && x.fabric
          ? unique(x.fabric.names.flatMap((n) => fabrics.blocks[n] ?? []))
          : [];

const SIDES = ['top', 'right', 'bottom', 'left'];
/** "the border is sound apart from the top": a border, the edge or the binding as its four sides. */
export const sidesOf = (x: Item): string[] => {
  const part =
    x.place?.places.length === 1 ? /^(border|edge|binding)$/.exec(x.place.places[0]!)?.[1] : undefined;
  return part ? SIDES.map((side) => `${part === 'border' ? 'border' : 'edge'}-${side}`) : [];
};

/** All four sides, each by its name. */
const isSides = (x: Item): boolean =>
  x.place?.places.length === 4 && x.place.places.every((p) => /^(edge|border)-/.test(p));

/** All of the corners, or several. */
export const isCorners = (x: Item | undefined): boolean =>
  x?.place !== undefined && x.place.places.length > 2 && x.place.places.every((p) => p.startsWith('corner-'));
