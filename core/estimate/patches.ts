import type { CuttingAnswer } from '../../shared/estimate-answer.ts';
import type { EstimateSpec } from '../../shared/estimate-spec.ts';
import { cutFromCloth } from './cut-from-cloth.ts';
import type { CutPiece } from './cutting/lay-out.ts';
import { exact, roundUpTo } from './exact.ts';
import { piecesToCut } from './pieces-to-cut.ts';
import type { Working } from './working.ts';

/** Patches of finished size: each is cut with a seam on every side. */
export const estimatePatches = (
  patches: NonNullable<EstimateSpec['patches']>,
  working: Working,
): CuttingAnswer => {
  const seam = working.length('seam', patches.seam, '1/4', 'common practice, no source');
  const turn = working.choice(
    'turn',
    patches.turn,
    true,
    'a quarter turn is allowed unless the grain must be kept',
  );
  const seams = seam.mul(2);
  working.line(`Cut size = finished size + 2 x ${working.show(seam)}`);
  const cut = piecesToCut(patches.pieces, seams, turn, working);
  const pieces = patches.repeat === undefined ? cut : onRepeat(cut, patches.repeat, working);
  return cutFromCloth(
    patches,
    pieces,
    { usableIn: 40, why: 'a 42 to 45 in cotton, selvedges off', fabric: 'patches' },
    working,
  );
};

/**
 * Pieces that all show the same of a print: each takes whole repeats both ways, for its place on the cloth can
 * only move by repeats, and none is turned. What is cut off beside them is not reckoned as usable (common
 * practice, no source).
 */
const onRepeat = (
  pieces: readonly CutPiece[],
  repeat: { length: number; width?: number | undefined },
  working: Working,
): CutPiece[] => {
  const along = exact(repeat.length);
  const across = exact(repeat.width ?? repeat.length);
  return pieces.map((piece) => {
    const width = roundUpTo(piece.width, across);
    const length = roundUpTo(piece.length, along);
    working.line(
      `Matched to the repeat of ${working.show(across)} x ${working.show(along)}, not turned: ${working.show(piece.width)} x ${working.show(piece.length)} takes ${working.show(width)} x ${working.show(length)}`,
    );
    return { ...piece, width, length, turnable: false };
  });
};
