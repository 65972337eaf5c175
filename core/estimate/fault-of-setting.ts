import type { EstimateSpec } from '../../shared/estimate-spec.ts';
import type { QuiltState } from '../log/state.ts';
import { estimate } from './estimate.ts';
import { readSpec } from './read-spec.ts';
import { SpecError } from './spec-error.ts';
import { specFromLog } from './spec-from-log.ts';

export interface SettingFault {
  /** JSON path in the spec, such as "backing.seam". */
  field: string;
  message: string;
}

/** Parts whose layout may be searched for seconds; of these only the figures themselves are looked at. */
const SEARCHED = ['patches', 'interfacing', 'overlay', 'sashing', 'label'] as const;

const faultOf = (spec: EstimateSpec): SettingFault | undefined => {
  try {
    const quick = readSpec(spec);
    for (const part of SEARCHED) delete quick[part];
    estimate(quick);
    return undefined;
  } catch (error) {
    if (error instanceof SpecError) return { field: error.field, message: error.message };
    throw error;
  }
};

/**
 * What is wrong with a figure set by hand: no field of the estimate, a value that makes no sense, or one that
 * contradicts the others. Nothing where it can be taken, or where it only meets a fault that was there
 * before.
 */
export const faultOfSetting = (state: QuiltState, path: string, value: unknown): SettingFault | undefined => {
  if (value === null || value === undefined) return undefined;
  const after = faultOf(specFromLog(state, { trying: { path, value } }).spec);
  if (!after) return undefined;
  const before = faultOf(specFromLog(state).spec);
  const isOwn =
    after.field === path || after.field.startsWith(`${path}.`) || after.field.startsWith(`${path}[`);
  return !isOwn && before?.field === after.field ? undefined : after;
};
