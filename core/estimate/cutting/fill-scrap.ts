import { type Block, joinBlocks, turnBlock } from './block.ts';
import { seededSequence } from './seeded-sequence.ts';

const TRIES = 60;
const SEED = 7;

/**
 * The pieces that use most of an odd piece of cloth: each goes into the near corner of a free rectangle,
 * which is then parted by a cut along or across; the best of a fixed number of tries.
 */
export const fillScrap = (pieces: readonly Block[], width: number, length: number): Block | null => {
  const draw = seededSequence(SEED);
  let best: Block | null = null;
  for (let i = 0; i < TRIES; i++) {
    const used = new Set<Block>();
    const fill = fillRectangle(pieces, used, width, length, draw, i === 0 ? 0 : 0.8);
    if (fill && (!best || fill.area > best.area)) best = fill;
    if (best && used.size === pieces.length) break;
  }
  return best;
};

const fillRectangle = (
  pieces: readonly Block[],
  used: Set<Block>,
  width: number,
  length: number,
  draw: () => number,
  luck: number,
): Block | null => {
  let best: Block | null = null;
  let source: Block | null = null;
  let most = -1;
  for (const piece of pieces) {
    if (used.has(piece)) continue;
    for (const laid of piece.turnable && piece.width !== piece.length ? [piece, turnBlock(piece)] : [piece]) {
      if (laid.width > width || laid.length > length) continue;
      const exactness = (laid.width === width ? 1 : 0) + (laid.length === length ? 1 : 0);
      const worth = (laid.area / (width * length)) * (1 + exactness) * (1 - luck * draw());
      if (worth > most) {
        most = worth;
        best = laid;
        source = piece;
      }
    }
  }
  if (!best || !source) return null;
  used.add(source);
  const besideFirst = luck === 0 ? width - best.width >= length - best.length : draw() < 0.5;
  if (besideFirst) {
    const behind = fillRectangle(pieces, used, best.width, length - best.length, draw, luck);
    const column = behind ? joinBlocks(best, behind, 'across') : best;
    const beside = fillRectangle(pieces, used, width - best.width, length, draw, luck);
    return beside ? joinBlocks(column, beside, 'along') : column;
  }
  const beside = fillRectangle(pieces, used, width - best.width, best.length, draw, luck);
  const row = beside ? joinBlocks(best, beside, 'along') : best;
  const behind = fillRectangle(pieces, used, width, length - best.length, draw, luck);
  return behind ? joinBlocks(row, behind, 'across') : row;
};
