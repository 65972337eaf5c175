import { type Block, joinBlocks, turnBlock } from './block.ts';
import type { Effort } from './exact-fill.ts';

interface Pair {
  i: number;
  j: number;
  turnFirst: boolean;
  turnSecond: boolean;
  cut: 'along' | 'across';
}

const count = (counts: Map<number, number>, edge: number): void => {
  counts.set(edge, (counts.get(edge) ?? 0) + 1);
};

/**
 * Joins blocks two by two until at most `target` remain. Two that share an edge exactly come first, drawn by
 * lot, an edge that few blocks have before one that many have: where a cloth was cut up without waste,
 * such pairs lay together. Where no edges match, the pair that wastes least for its size, with some luck.
 */
export const mergeDown = (
  given: readonly Block[],
  target: number,
  width: number,
  mostWaste: number,
  draw: () => number,
  effort: Effort,
): Block[] => {
  const blocks = [...given];
  while (blocks.length > target) {
    const pair = choosePair(blocks, width, mostWaste, draw);
    effort.spent += blocks.length * blocks.length;
    if (!pair) break;
    const first = pair.turnFirst ? turnBlock(blocks[pair.i]!) : blocks[pair.i]!;
    const second = pair.turnSecond ? turnBlock(blocks[pair.j]!) : blocks[pair.j]!;
    blocks.splice(pair.j, 1);
    blocks.splice(pair.i, 1);
    blocks.push(joinBlocks(first, second, pair.cut));
  }
  return blocks;
};

const choosePair = (
  blocks: readonly Block[],
  width: number,
  mostWaste: number,
  draw: () => number,
): Pair | null => {
  // How many blocks have an edge of this measure; a turnable block offers its edges both ways.
  const widths = new Map<number, number>();
  const lengths = new Map<number, number>();
  for (const block of blocks) {
    count(widths, block.width);
    count(lengths, block.length);
    if (block.turnable) {
      count(widths, block.length);
      count(lengths, block.width);
    }
  }
  let pair: Pair | null = null;
  let least = Number.POSITIVE_INFINITY;
  let lots = 0;
  const offer = (i: number, j: number, ways: number): void => {
    const a = blocks[i]!;
    const b = blocks[j]!;
    const turnFirst = ways === 2;
    const turnSecond = ways === 3;
    const across = ways === 1;
    // Edges that meet, and the measures that add up.
    const edgeA = across !== turnFirst ? a.width : a.length;
    const edgeB = across !== turnSecond ? b.width : b.length;
    const sideA = across !== turnFirst ? a.length : a.width;
    const sideB = across !== turnSecond ? b.length : b.width;
    const edge = Math.max(edgeA, edgeB);
    const side = sideA + sideB;
    const turnable = a.turnable && b.turnable;
    if (turnable ? Math.min(edge, side) > width : (across ? edge : side) > width) return;
    const waste = edgeA > edgeB ? (edgeA - edgeB) * sideB : (edgeB - edgeA) * sideA;
    if (waste > mostWaste) return;
    if (waste === 0) {
      if (least > 0) {
        least = 0;
        lots = 0;
      }
      const lot = 1 / Math.max(1, ((across ? widths : lengths).get(edge) ?? 2) - 1);
      lots += lot;
      if (draw() * lots < lot) pair = { i, j, turnFirst, turnSecond, cut: across ? 'across' : 'along' };
    } else if (least > 0) {
      const cost = (waste / (a.area + b.area)) * (0.5 + draw());
      if (cost < least) {
        least = cost;
        pair = { i, j, turnFirst, turnSecond, cut: across ? 'across' : 'along' };
      }
    }
  };
  for (let i = 0; i < blocks.length; i++) {
    for (let j = i + 1; j < blocks.length; j++) {
      offer(i, j, 0);
      offer(i, j, 1);
      if (blocks[i]!.turnable) offer(i, j, 2);
      if (blocks[j]!.turnable) offer(i, j, 3);
    }
  }
  return pair;
};
