import { type Block, stackBlocks, wasteOf } from './block.ts';
import { type Effort, fillExactly } from './exact-fill.ts';
import { gridBlocks } from './grid-blocks.ts';
import { mergeDown } from './merge-down.ts';
import { seededSequence } from './seeded-sequence.ts';
import { shelve } from './shelves.ts';

/** Above this many pieces, equal ones are first set out in rows. */
const SINGLE = 90;
/** Steps of the whole search; about half a second on a slow machine. */
const EFFORT = 12_000_000;
const SEED = 20260314;

/** No layout can be shorter: by area, and by the longest piece as it must lie. */
export const leastLength = (pieces: readonly Block[], width: number): number => {
  const area = pieces.reduce((sum, piece) => sum + piece.area, 0);
  return pieces.reduce(
    (longest, piece) => {
      const least =
        piece.turnable && piece.length <= width ? Math.min(piece.width, piece.length) : piece.length;
      return Math.max(longest, piece.turnable && piece.width > width ? piece.width : least);
    },
    Math.ceil(area / width),
  );
};

/**
 * A short layout of the pieces on cloth of this width, cuttable edge to edge.
 *
 * Pieces are joined into larger and larger blocks, waste-free where edges match, until a handful is left,
 * which is set out in the best of all ways. Then, over and over, part of the layout is taken apart,
 * joined anew by lot and set out again, and kept where it came no longer. Ends when the area allows
 * nothing shorter or the effort is spent; the lots are a fixed sequence, so the answer is always the same.
 */
export const searchLayout = (pieces: readonly Block[], width: number): Block => {
  const draw = seededSequence(SEED);
  const effort: Effort = { spent: 0 };
  const least = leastLength(pieces, width);
  const area = pieces.reduce((sum, piece) => sum + piece.area, 0);
  let best = startOf(pieces, width);
  const shorter = (block: Block | null): void => {
    if (block && block.width <= width && block.length < best.length) best = block;
  };
  const many = pieces.length > SINGLE;
  const starts = many
    ? (['closest', 'given', 'turned'] as const).map((lie) => gridBlocks(pieces, width, lie))
    : [pieces];
  const rounds = many ? 2 : 12;
  for (let i = 0; i < rounds && best.length > least; i++) {
    for (const start of starts) {
      if (start.length > 2 * SINGLE) continue;
      const blocks = mergeDown(start, 8, width, Number.POSITIVE_INFINITY, draw, effort);
      if (blocks.length <= 9) shorter(fillExactly(blocks, width, best.length - 1, 2_000_000, effort));
    }
  }
  let current = best;
  while (effort.spent < EFFORT && best.length > least) {
    effort.spent += 500;
    const gap = (current.length * width) / area - 1;
    const handful = gap > 0.08 ? 8 : gap > 0.04 ? 10 : 11;
    const target = draw() < 0.5 ? handful : handful + 2 + Math.floor(draw() * 8);
    let blocks = takeApart(current, target, draw);
    if (blocks.length > handful) {
      const slack = Math.max(0, (current.length - 1) * width - area);
      blocks = mergeDown(blocks, handful, width, draw() < 0.5 ? 0 : slack * draw(), draw, effort);
      if (blocks.length > handful + 1) continue;
    }
    const next = fillExactly(
      blocks,
      width,
      draw() < 0.15 ? current.length : current.length - 1,
      1_500_000,
      effort,
    );
    if (next) current = next;
    shorter(next);
  }
  return best;
};

const startOf = (pieces: readonly Block[], width: number): Block =>
  [
    stackBlocks(pieces, width),
    ...(['given', 'long', 'wide'] as const).map((lie) => shelve(pieces, width, lie)),
    ...(['closest', 'given', 'turned'] as const).map((lie) =>
      shelve(gridBlocks(pieces, width, lie), width, 'given'),
    ),
  ].reduce((best, block) => (block.length < best.length ? block : best));

/** Undoes joins by lot, wasteful ones sooner, until there are `target` blocks. */
const takeApart = (layout: Block, target: number, draw: () => number): Block[] => {
  const blocks = [layout];
  while (blocks.length < target) {
    let lots = 0;
    let pick = -1;
    for (let i = 0; i < blocks.length; i++) {
      const block = blocks[i]!;
      if (!block.first) continue;
      const lot = wasteOf(block) > 0 ? 3 : 0.6;
      lots += lot;
      if (draw() * lots < lot) pick = i;
    }
    if (pick < 0) break;
    const { first, second } = blocks[pick]!;
    blocks.splice(pick, 1);
    blocks.push(first!, second!);
  }
  return blocks;
};
