import type { EstimateSpec } from '../../shared/estimate-spec.ts';

/** The parts of a spec that a paper tells of: work and price. Cutting plans above all are left out, for no paper shows them. */
export const specForPapers = ({ unit, work, price }: EstimateSpec): EstimateSpec => ({
  ...(unit ? { unit } : {}),
  ...(work ? { work } : {}),
  ...(price ? { price } : {}),
});
