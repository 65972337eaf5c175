import type { Block } from './block.ts';

export interface Placed {
  x: number;
  y: number;
  width: number;
  length: number;
  piece: number;
  turned: boolean;
}
export interface PlannedCut {
  direction: 'across' | 'along';
  x1: number;
  y1: number;
  x2: number;
  y2: number;
  measure: number;
  depth: number;
}
export interface Plan {
  placed: Placed[];
  cuts: PlannedCut[];
  waste: { x: number; y: number; width: number; length: number }[];
}

/** Blocks that lie in one run, so that strips are cut off one after the other from the near edge. */
const runOf = (block: Block, cut: 'along' | 'across'): Block[] =>
  block.cut === cut && block.first && block.second
    ? [...runOf(block.first, cut), ...runOf(block.second, cut)]
    : [block];

/** Pieces, cuts in their order and what is left over, of a layout on a sheet of the given size. */
export const planCutting = (layout: Block, width: number, length: number): Plan => {
  const plan: Plan = { placed: [], cuts: [], waste: [] };
  const lay = (
    block: Block,
    x: number,
    y: number,
    sheetWidth: number,
    sheetLength: number,
    depth: number,
  ): void => {
    let w = sheetWidth;
    let l = sheetLength;
    let d = depth;
    if (l > block.length) {
      plan.cuts.push({
        direction: 'across',
        x1: x,
        y1: y + block.length,
        x2: x + w,
        y2: y + block.length,
        measure: block.length,
        depth: d,
      });
      plan.waste.push({ x, y: y + block.length, width: w, length: l - block.length });
      l = block.length;
      d += 1;
    }
    if (w > block.width) {
      plan.cuts.push({
        direction: 'along',
        x1: x + block.width,
        y1: y,
        x2: x + block.width,
        y2: y + l,
        measure: block.width,
        depth: d,
      });
      plan.waste.push({ x: x + block.width, y, width: w - block.width, length: l });
      w = block.width;
      d += 1;
    }
    if (!block.cut) {
      plan.placed.push({
        x,
        y,
        width: block.width,
        length: block.length,
        piece: block.piece,
        turned: block.turned,
      });
      return;
    }
    const run = runOf(block, block.cut);
    let at = 0;
    const spots: { block: Block; at: number; size: number }[] = [];
    run.forEach((part, i) => {
      const size = block.cut === 'along' ? part.width : part.length;
      if (i < run.length - 1) {
        const edge = at + size;
        plan.cuts.push(
          block.cut === 'along'
            ? { direction: 'along', x1: x + edge, y1: y, x2: x + edge, y2: y + l, measure: size, depth: d }
            : { direction: 'across', x1: x, y1: y + edge, x2: x + w, y2: y + edge, measure: size, depth: d },
        );
      }
      spots.push({ block: part, at, size });
      at += size;
    });
    for (const spot of spots) {
      if (block.cut === 'along') lay(spot.block, x + spot.at, y, spot.size, l, d + 1);
      else lay(spot.block, x, y + spot.at, w, spot.size, d + 1);
    }
  };
  lay(layout, 0, 0, width, length, 0);
  return plan;
};
