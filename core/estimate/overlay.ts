import type { CuttingAnswer } from '../../shared/estimate-answer.ts';
import type { EstimateSpec } from '../../shared/estimate-spec.ts';
import { cutFromCloth } from './cut-from-cloth.ts';
import { piecesToCut } from './pieces-to-cut.ts';
import type { Working } from './working.ts';

/** Net or crepeline over the face, cut larger than the damage on every side. */
export const estimateOverlay = (
  overlay: NonNullable<EstimateSpec['overlay']>,
  working: Working,
): CuttingAnswer => {
  const allowance = working.length(
    'allowance',
    overlay.allowance,
    1,
    'each side; cut oversize (museum workshop, as excerpted), how much is our own guess',
  );
  const turn = working.choice(
    'turn',
    overlay.turn,
    true,
    'a quarter turn is allowed unless the grain must be kept',
  );
  working.line(`Cut size = damage + 2 x ${working.show(allowance)}`);
  const pieces = piecesToCut(overlay.pieces, allowance.mul(2), turn, working);
  return cutFromCloth(
    overlay,
    pieces,
    { usableIn: 54, why: 'a usual width of net, from memory', fabric: 'net' },
    working,
  );
};
