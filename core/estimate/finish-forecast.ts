import type { Estimated } from '../../shared/estimate-answer.ts';

const Z80 = 1.2815515655446004;
/** Spread of the weekly hours where only one week is known. */
const WEEKLY_SPREAD = 0.4;

/** `days` after a date written 2026-03-14, in the same writing. */
const dayAfter = (date: string, days: number): string => {
  const [year, month, day] = date.split('-').map(Number) as [number, number, number];
  return new Date(Date.UTC(year, month - 1, day + days)).toISOString().slice(0, 10);
};

/**
 * The day of finishing as a range: what is left over the hours of a week, both log-normal, so that the
 * variances of their logs add. Weeks that were missed altogether count in the mean.
 */
export const forecastFinish = (
  left: Estimated,
  weeklyHours: readonly number[],
  today: string,
): { weekly: number; early: string; likely: string; late: string } => {
  const weekly = weeklyHours.reduce((sum, hours) => sum + hours, 0) / weeklyHours.length;
  if (left.likely <= 0) return { weekly, early: today, likely: today, late: today };
  const variance =
    weeklyHours.length > 1
      ? weeklyHours.reduce((sum, hours) => sum + (hours - weekly) ** 2, 0) / (weeklyHours.length - 1)
      : (WEEKLY_SPREAD * weekly) ** 2;
  const weeks = left.likely / 60 / weekly;
  // The mean is uncertain by the weeks seen; the weeks to come vary too.
  const relative = (variance / weekly ** 2) * (1 / weeklyHours.length + 1 / Math.max(1, weeks));
  const workSpread = Math.log(left.high / left.low) / (2 * Z80);
  const spread = Math.sqrt(workSpread ** 2 + Math.log1p(relative));
  const at = (z: number): string =>
    dayAfter(today, Math.min(400_000, Math.ceil(weeks * Math.exp(z * spread) * 7)));
  return { weekly, early: at(-Z80), likely: at(0), late: at(Z80) };
};
