import { type Hours, hoursFromLog } from '../../../../core/hours/hours.ts';
import type { QuiltState } from '../../../../core/log/state.ts';

const known = new WeakMap<QuiltState, { idleMin: number; minute: number; hours: Hours }>();

/** The hours of a log, counted once for each state of it, setting, and minute (work may be running). */
export function hoursOf(state: QuiltState, idleMin: number): Hours {
  const minute = Math.floor(Date.now() / 60_000);
  const before = known.get(state);
  if (before?.idleMin === idleMin && (before.minute === minute || !before.hours.running)) return before.hours;
  const hours = hoursFromLog(state, { idleMin, now: new Date(minute * 60_000).toISOString() });
  known.set(state, { idleMin, minute, hours });
  return hours;
}
