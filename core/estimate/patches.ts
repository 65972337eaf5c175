import type { CuttingAnswer } from '../../shared/estimate-answer.ts';
import type { EstimateSpec } from '../../shared/estimate-spec.ts';
import { cutFromCloth } from './cut-from-cloth.ts';
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
  const pieces = piecesToCut(patches.pieces, seams, turn, working);
  return cutFromCloth(
    patches,
    pieces,
    { usableIn: 40, why: 'a 42 to 45 in cotton, selvedges off', fabric: 'patches' },
    working,
  );
};
