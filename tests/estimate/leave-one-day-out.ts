import { specFromLog } from '../../core/estimate/spec-from-log.ts';
import { estimateWork } from '../../core/estimate/work.ts';
import { Working } from '../../core/estimate/working.ts';
import type { Estimated } from '../../shared/estimate-answer.ts';
import type { EstimateSpec } from '../../shared/estimate-spec.ts';
import { demoLog } from '../record/demo-log.ts';

type Work = NonNullable<EstimateSpec['work']>;
type Logged = NonNullable<Work['log']>[number];
type Done = { action: string; damage?: string | undefined; count?: number | undefined };

interface ForetoldDay extends Estimated {
  date: string;
  /** Minutes that the day's treatments took, by the log. */
  took: number;
  /** The same foretold from the starting sheet alone. */
  bySheet: number;
}

const itemsOf = (entry: Logged): Done[] => ('items' in entry ? entry.items : [entry]);
const planOf = (entries: readonly Logged[]): Done[] =>
  entries.flatMap(itemsOf).map(({ action, damage, count }) => ({
    action,
    ...(damage === undefined ? {} : { damage }),
    count: count ?? 1,
  }));
/** What `all` has over `some`, each entry as often as it is over. */
const over = (all: readonly Logged[], some: readonly Logged[]): Logged[] => {
  const left = some.map((entry) => JSON.stringify(entry));
  return all.filter((entry) => {
    const at = left.indexOf(JSON.stringify(entry));
    if (at >= 0) left.splice(at, 1);
    return at < 0;
  });
};

/**
 * Each day of the demo log foretold from the other days: the treatments whose times it tells are taken out of
 * the log, planned instead, and what the estimate says of them is set beside what they took.
 */
export const leaveOneDayOut = (): ForetoldDay[] => {
  const logOf = (without?: string): Logged[] =>
    specFromLog(
      demoLog([], ({ at, gold }) =>
        at.slice(0, 10) === without
          ? gold.entries.filter(({ kind }) => kind !== 'treatment' && kind !== 'work')
          : gold.entries,
      ).log,
    ).spec.work?.log ?? [];
  const dates = new Set<string>();
  demoLog([], ({ at, gold }) => {
    dates.add(at.slice(0, 10));
    return gold.entries;
  });
  const whole = logOf();
  return [...dates].sort().flatMap((date) => {
    const others = logOf(date);
    const timed = over(whole, others).filter(({ minutes }) => minutes !== undefined);
    const took = timed.reduce((sum, { minutes }) => sum + (minutes ?? 0), 0);
    if (took === 0) return [];
    const foretold = estimateWork(
      { planned: [...planOf(others), ...planOf(timed)], log: others },
      new Working('work', 'in'),
    ).left;
    const bySheet = estimateWork({ planned: planOf(timed) }, new Working('work', 'in')).total.likely;
    return [{ date, took, ...foretold, bySheet }];
  });
};

/** Share of the days inside their 80 % range, and the typical factor by which the likely figure is out (exp of the mean |log|). */
export const scoreOfDays = (
  days: readonly ForetoldDay[],
): { held: number; outByFactor: number; outByFactorOfSheet: number } => {
  const mean = (values: readonly number[]): number =>
    values.reduce((sum, one) => sum + one, 0) / values.length;
  return {
    held: mean(days.map(({ took, low, high }) => (took >= low && took <= high ? 1 : 0))),
    outByFactor: Math.exp(mean(days.map(({ took, likely }) => Math.abs(Math.log(took / likely))))),
    outByFactorOfSheet: Math.exp(mean(days.map(({ took, bySheet }) => Math.abs(Math.log(took / bySheet))))),
  };
};
