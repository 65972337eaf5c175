import { estimate } from '../../core/estimate/estimate.ts';
import { specAsWorked } from '../../core/estimate/spec-as-worked.ts';
import { SpecError } from '../../core/estimate/spec-error.ts';
import { specForPapers } from '../../core/estimate/spec-for-papers.ts';
import { specFromLog } from '../../core/estimate/spec-from-log.ts';
import { billedMinutes } from '../../core/hours/billed-minutes.ts';
import type { Hours } from '../../core/hours/hours.ts';
import type { QuiltState } from '../../core/log/state.ts';
import type { RecordEstimate } from '../../core/record/record-figures.ts';

const WEEKS = 8;

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
    const weeklyHours = hours.byWeek.slice(-WEEKS).map((week) => week.minutes / 60);
    const billedMin = billedMinutes(hours, state.quilt.notBilled);
    const { spec } = specFromLog(state, { weeklyHours, today, billedMin });
    const worked = specAsWorked(spec);
    const cameOut = worked && estimate(worked).price;
    return { ...estimate(specForPapers(spec)), ...(cameOut ? { cameOut } : {}) };
  } catch (error) {
    if (error instanceof SpecError) return undefined;
    throw error;
  }
}
