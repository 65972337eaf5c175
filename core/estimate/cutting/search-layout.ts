import { type Block, stackBlocks, wasteOf } from './block.ts';
import { type Effort, fillExactly } from './exact-fill.ts';
import { fillWithoutWaste } from './fill-without-waste.ts';
import { gridBlocks } from './grid-blocks.ts';
import { leastLength } from './least-length.ts';
import { mergeDown } from './merge-down.ts';
import { seededSequence } from './seeded-sequence.ts';
import { shelve } from './shelves.ts';

/** Up to this many pieces, every layout is tried. */
const FEW = 9;
/** Above this many pieces, equal ones are first set out in rows. */
const SINGLE = 90;
/** Steps of the whole search, and for each piece of a small one: half a second to a second. */
const EFFORT = 5_000_000;
const EFFORT_PER_PIECE = 250_000;
/** Of these, the most that go into finding a layout without waste. */
const WASTELESS = 300_000;
/** Share of the effort after which, without gain, the search begins from another start. */
const PATIENCE = 0.2;
const SEED = 20260314;

/**
 * A short layout of the pieces on cloth of this width, cuttable edge to edge.
 *
 * Pieces are joined into larger and larger blocks, waste-free where edges match, until a handful is left,
 * which is set out in the best of all ways. Then, over and over, part of the layout is taken apart,
 * joined anew by lot and set out again, and kept where it came no longer. Ends when the area allows
 * nothing shorter or the effort is spent; the lots are a fixed sequence, so the answer is always the same.
 */
export const searchLayout = (
  pieces: readonly Block[],
  width: number,
  limit = Math.min(EFFORT, EFFORT_PER_PIECE * pieces.length),
): Block => {
  const draw = seededSequence(SEED);
  const effort: Effort = { spent: 0 };
  const least = leastLength(pieces, width);
  const area = pieces.reduce((sum, piece) => sum + piece.area, 0);
  let best = startOf(pieces, width);
  if (best.length <= least) return best;
  if (pieces.length <= FEW) {
    return fillExactly(pieces, width, best.length - 1, Number.POSITIVE_INFINITY, effort) ?? best;
  }
  const many = pieces.length > SINGLE;
  if (!many && least * width === area) {
    // As the pieces are given first: far fewer edges meet by chance than when each may lie both ways.
    const given = pieces.every((piece) => piece.width <= width)
      ? fillWithoutWaste(
          pieces.map((piece) => ({ ...piece, turnable: false })),
          width,
          least,
          WASTELESS,
          effort,
        )
      : null;
    const whole = given ?? fillWithoutWaste(pieces, width, least, WASTELESS, effort);
    if (whole) return whole;
  }
  const starts = many
    ? (['closest', 'given', 'turned'] as const).map((lie) => gridBlocks(pieces, width, lie))
    : [pieces];
  /** The best of some layouts joined by lot. */
  const startByLot = (rounds: number): Block | null => {
    let shortest: Block | null = null;
    for (let i = 0; i < rounds; i++) {
      for (const start of starts) {
        if (start.length > 2 * SINGLE) continue;
        const blocks = mergeDown(start, 8, width, Number.POSITIVE_INFINITY, draw, effort);
        const longest: number = shortest ? shortest.length - 1 : stackBlocks(blocks, width).length;
        if (blocks.length <= 9) shortest = fillExactly(blocks, width, longest, 1_000_000, effort) ?? shortest;
      }
    }
    return shortest;
  };
  let current = startByLot(many ? 2 : 12) ?? best;
  if (current.length < best.length) best = current;
  else if (many) current = best;
  let gainedAt = effort.spent;
  while (effort.spent < limit && best.length > least) {
    effort.spent += 500;
    if (!many && effort.spent - gainedAt > limit * PATIENCE) {
      current = startByLot(3) ?? current;
      gainedAt = effort.spent;
    }
    const gap = (current.length * width) / area - 1;
    const handful = gap > 0.08 ? 8 : gap > 0.04 ? 10 : 11;
    const target = draw() < 0.2 ? handful : handful + 2 + Math.floor(draw() * 8);
    let blocks = takeApart(current, target, draw);
    if (blocks.length > handful) {
      const slack = Math.max(0, (current.length - 1) * width - area);
      blocks = mergeDown(blocks, handful, width, draw() < 0.3 ? 0 : slack * draw(), draw, effort);
      if (blocks.length > handful + 1) continue;
    }
    const next = fillExactly(
      blocks,
      width,
      draw() < 0.15 ? current.length : current.length - 1,
      1_500_000,
      effort,
    );
    if (!next) continue;
    current = next;
    if (next.length < best.length) {
      best = next;
      gainedAt = effort.spent;
    }
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
