import type { CuttingAnswer } from '../../shared/estimate-answer.ts';
import type { EstimateSpec } from '../../shared/estimate-spec.ts';
import { cutFromCloth } from './cut-from-cloth.ts';
import { exact } from './exact.ts';
import type { Working } from './working.ts';

const SASHING_CLOTH = { usableIn: 40, why: 'a 42 to 45 in cotton, selvedges off', fabric: 'sashing' };

/**
 * Strips between the blocks: short ones beside each block, and either long ones between the rows, or short
 * ones with cornerstones where they meet.
 */
export const estimateSashing = (
  sashing: NonNullable<EstimateSpec['sashing']>,
  working: Working,
): CuttingAnswer => {
  const seam = working.length('seam', sashing.seam, '1/4', 'common practice, no source');
  const cornerstones = working.choice(
    'cornerstones',
    sashing.cornerstones,
    true,
    'short strips, no long joins',
  );
  const outer = working.choice('outer', sashing.outer, false, 'between the blocks only');
  const { rows, blocks, block } = sashing;
  if (rows === undefined || blocks === undefined)
    working.ask('How many rows of blocks has the quilt, and how many blocks in a row?');
  if (!block) working.ask('How wide and how long is one block, finished?');
  if (sashing.width === undefined) working.ask('How wide is the sashing, finished?');
  if (rows === undefined || blocks === undefined || !block || sashing.width === undefined)
    return cutFromCloth(sashing, [], SASHING_CLOTH, working);
  const width = exact(sashing.width);
  const seams = seam.mul(2);
  const blockWidth = exact(block.width);
  const blockLength = exact(block.length);
  const upright = outer ? blocks + 1 : blocks - 1;
  const level = outer ? rows + 1 : rows - 1;
  const strip = width.add(seams);
  const pieces: { width: typeof width; length: typeof width; count: number; name: string }[] = [];
  pieces.push({ width: strip, length: blockLength.add(seams), count: upright * rows, name: 'upright strip' });
  working.line(`Upright strips: ${upright} beside the blocks of each of ${rows} rows = ${upright * rows}`);
  if (cornerstones) {
    pieces.push({ width: strip, length: blockWidth.add(seams), count: level * blocks, name: 'level strip' });
    pieces.push({ width: strip, length: strip, count: upright * level, name: 'cornerstone' });
    working.line(
      `Level strips: ${level} x ${blocks} = ${level * blocks}; cornerstones: ${upright} x ${level} = ${upright * level}`,
    );
  } else {
    const run = blockWidth.mul(blocks).add(width.mul(upright));
    pieces.push({ width: strip, length: run.add(seams), count: level, name: 'long strip' });
    working.line(
      `Long strips: ${level} of ${blocks} x ${working.show(blockWidth)} + ${upright} x ${working.show(width)} = ${working.show(run)}`,
    );
  }
  const cut = pieces
    .map((piece, i) => ({ ...piece, turnable: true, piece: i }))
    .filter(({ count }) => count > 0);
  return cutFromCloth(sashing, cut, SASHING_CLOTH, working);
};
