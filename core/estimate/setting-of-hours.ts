import { billedMinutes } from '../hours/billed-minutes.ts';
import type { Hours } from '../hours/hours.ts';
import type { QuiltState } from '../log/state.ts';
import type { SpecSetting } from './spec-from-log.ts';

/** So many past weeks tell how much she works in one. */
const WEEKS = 8;

/** What the hours tell the estimate: how much she works in a week, and what of it is charged. `today`: a local date. */
export const settingOfHours = (
  { quilt }: QuiltState,
  hours: Pick<Hours, 'byWeek' | 'byTask'>,
  today: string,
): SpecSetting => ({
  weeklyHours: hours.byWeek.slice(-WEEKS).map((week) => week.minutes / 60),
  today,
  billedMin: billedMinutes(hours, quilt.notBilled),
});
