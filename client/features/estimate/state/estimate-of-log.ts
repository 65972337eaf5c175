import { estimate } from '../../../../core/estimate/estimate.ts';
import { SpecError } from '../../../../core/estimate/spec-error.ts';
import type { QuiltState } from '../../../../core/log/state.ts';
import type { EstimateAnswer } from '../../../../shared/estimate-answer.ts';
import type { EstimateSpec } from '../../../../shared/estimate-spec.ts';

export type Estimated =
  | { spec: EstimateSpec; answer: EstimateAnswer }
  | { spec: unknown; fault: { field: string; message: string } };

export function estimateOf(_state: QuiltState, _idleMin: number): Estimated {
  try {
    const spec = { price: { currency: 'GBP' } } as EstimateSpec;
    return { spec, answer: estimate(spec) };
  } catch (why) {
    if (why instanceof SpecError) return { spec: {}, fault: { field: why.field, message: why.message } };
    throw why;
  }
}
