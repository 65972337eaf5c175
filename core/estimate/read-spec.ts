import { complaintOf, EstimateSpec } from '../../shared/estimate-spec.ts';
import { SpecError } from './spec-error.ts';

/** A spec from anything that came in as JSON; throws SpecError naming the first field that is wrong. */
export const readSpec = (input: unknown): EstimateSpec => {
  const read = EstimateSpec.safeParse(input);
  if (read.success) return read.data;
  const { field, expected, got } = complaintOf(read.error, input);
  throw new SpecError(field, expected, got);
};
