import type { Entry } from '../../shared/entry.ts';
import { isRealMinute } from '../hours/is-real-minute.ts';

/** What is said of a time on a day that the calendar has not got; undefined where every day is real. */
export function noSuchDay(times: readonly (string | undefined)[]): string | undefined {
  const wrong = times.find((time) => time !== undefined && !isRealMinute(time));
  return wrong === undefined
    ? undefined
    : `There is no ${wrong.slice(0, 10)} in the calendar. Give a day that there is; nothing was changed.`;
}

/** The times of day that an entry carries. */
export const timesOf = (entry: Entry): (string | undefined)[] =>
  entry.kind === 'work' ? [entry.time, entry.start, entry.end] : [];
