import { estimate } from '../../../../core/estimate/estimate.ts';
import { SpecError } from '../../../../core/estimate/spec-error.ts';
import type { EstimateAnswer } from '../../../../shared/estimate-answer.ts';
import type { EstimateSpec } from '../../../../shared/estimate-spec.ts';

/** What comes of a spec: its answer, or the field that makes no sense. */
export type Reckoned = { answer: EstimateAnswer } | { fault: { field: string; message: string } };
export type Asked = { id: number; spec: EstimateSpec };
export type Told = { id: number; reckoned: Reckoned };

// A cutting layout may be searched for seconds; the page stays awake meanwhile.
self.onmessage = ({ data: { id, spec } }: MessageEvent<Asked>) => {
  let reckoned: Reckoned;
  try {
    reckoned = { answer: estimate(spec) };
  } catch (why) {
    reckoned =
      why instanceof SpecError
        ? { fault: { field: why.field, message: why.message } }
        : { fault: { field: '', message: `The estimate could not be worked out: ${String(why)}` } };
  }
  self.postMessage({ id, reckoned } satisfies Told);
};
