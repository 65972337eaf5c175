import { estimate } from '../../core/estimate/estimate.ts';
import { settingOfHours } from '../../core/estimate/setting-of-hours.ts';
import { specAsWorked } from '../../core/estimate/spec-as-worked.ts';
import { SpecError } from '../../core/estimate/spec-error.ts';
import { specForPapers } from '../../core/estimate/spec-for-papers.ts';
import { specFromLog } from '../../core/estimate/spec-from-log.ts';
import type { Hours } from '../../core/hours/hours.ts';
import type { QuiltState } from '../../core/log/state.ts';
import type { RecordEstimate } from '../../core/record/record-figures.ts';

/**
 * The work and the price that the papers tell, from the log and her own figures. Undefined where her
 * figures contradict each other; the estimate page says which.
 */
export function estimateForPapers(
  state: QuiltState,
  hours: Hours,
  today: string,
): RecordEstimate | undefined {
  try {
    const { spec } = specFromLog(state, settingOfHours(state, hours, today));
    const worked = specAsWorked(spec);
    const cameOut = worked && estimate(worked).price;
    return { ...estimate(specForPapers(spec)), ...(cameOut ? { cameOut } : {}) };
  } catch (error) {
    if (error instanceof SpecError) return undefined;
    throw error;
  }
}
