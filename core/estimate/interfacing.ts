import type { CuttingAnswer } from '../../shared/estimate-answer.ts';
import type { EstimateSpec } from '../../shared/estimate-spec.ts';
import { cutFromCloth } from './cut-from-cloth.ts';
import { exact } from './exact.ts';
import { piecesToCut } from './pieces-to-cut.ts';
import type { Working } from './working.ts';

/** Interfacing or support cloth for weak blocks, by cut sizes. */
export const estimateInterfacing = (
  interfacing: NonNullable<EstimateSpec['interfacing']>,
  working: Working,
): CuttingAnswer => {
  const turn = working.choice(
    'turn',
    interfacing.turn,
    true,
    'a quarter turn is allowed unless the grain must be kept',
  );
  const pieces = piecesToCut(interfacing.pieces, exact(0), turn, working);
  return cutFromCloth(
    interfacing,
    pieces,
    { usableIn: 20, why: 'a usual width, from memory', fabric: 'interfacing' },
    working,
  );
};
