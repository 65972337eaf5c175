import type { CuttingAnswer } from '../../shared/estimate-answer.ts';
import type { EstimateSpec } from '../../shared/estimate-spec.ts';
import { cutFromCloth } from './cut-from-cloth.ts';
import type { Working } from './working.ts';

/** The cloth of a label, its edges turned in by the seam on every side. */
export const estimateLabel = (label: NonNullable<EstimateSpec['label']>, working: Working): CuttingAnswer => {
  const seam = working.length('seam', label.seam, '1/4', 'turned in; common practice, no source');
  const seams = seam.mul(2);
  const piece = {
    width: working.length('width', label.width, 5, 'finished; a guess').add(seams),
    length: working.length('length', label.length, 4, 'finished; a guess').add(seams),
    count: label.count ?? 1,
    turnable: true,
    piece: 0,
  };
  return cutFromCloth(
    label,
    [piece],
    { usableIn: 40, why: 'a 42 to 45 in cotton, selvedges off', fabric: 'label' },
    working,
  );
};
