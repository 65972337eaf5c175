import * as chrono from 'chrono-node';
import { dayStart, wallMinutes, wallTime } from './local-time.ts';

export type DayFound = {
  start: number;
  part?: 'morning' | 'afternoon' | 'evening' | 'night';
  words: string;
  index: number;
  length: number;
  vague?: boolean;
};

const TRIGGER =
  /\b(yesterday|today|tonight|last (night|mon|tue|wed|thu|fri|sat|sun)|this (morning|afternoon|evening)|mon(day)?|tues?(day)?|wed(nesday|s)?|thurs?(day)?|fri(day)?|sat(urday)?|sun(day)?|the day before|days? ago|(jan|feb|mar|apr|may|jun|jul|aug|sep|sept|oct|nov|dec)[a-z]*|\d{1,2}(st|nd|rd|th)|earlier in the week|this week|over the weekend)\b/i;

/** chrono as the log needs it: days only lie in the past, "last night" is the evening before. */
const calendar = chrono.casual.clone();
calendar.refiners.push({
  refine: (context, results) => {
    for (const result of results) {
      // A weekday without more is the last one of that name, never the next.
      if (
        result.start.isCertain('weekday') &&
        !result.start.isCertain('day') &&
        result.start.date() > context.refDate
      ) {
        const earlier = new Date(result.start.date().getTime() - 7 * 86400000);
        result.start.imply('day', earlier.getDate());
        result.start.imply('month', earlier.getMonth() + 1);
        result.start.imply('year', earlier.getFullYear());
      }
    }
    return results;
  },
});

/**
 * The day that the words name, as minutes of its midnight; undefined where they name none. Days are read by chrono-node in
 * the note's own wall time; what part of the day is said is kept for clock readings without am or pm.
 */
export function findDay(text: string, local: string): DayFound | undefined {
  const trigger = TRIGGER.exec(text);
  if (!trigger) return undefined;
  const now = wallMinutes(local);
  const today = dayStart(now);
  const word = trigger[0].toLowerCase();
  const at = (start: number, part?: DayFound['part']): DayFound => ({
    start,
    ...(part ? { part } : {}),
    words: trigger[0],
    index: trigger.index,
    length: trigger[0].length,
  });
  if (word === 'last night') return at(now - today < 300 ? today - 1440 : today - 1440, 'night');
  if (word === 'tonight') return at(today, 'evening');
  if (word === 'this morning') return at(today, 'morning');
  if (word === 'this afternoon') return at(today, 'afternoon');
  if (word === 'this evening') return at(today, 'evening');
  if (word === 'today') return at(today);
  if (word === 'yesterday') {
    const rest = text.slice(trigger.index + 9, trigger.index + 22).toLowerCase();
    if (/\bday before $/.test(text.slice(0, trigger.index).toLowerCase())) return at(today - 2880);
    return at(
      today - 1440,
      /^ (evening|night)/.test(rest)
        ? 'evening'
        : /^ afternoon/.test(rest)
          ? 'afternoon'
          : /^ morning/.test(rest)
            ? 'morning'
            : undefined,
    );
  }
  if (word === 'earlier in the week' || word === 'this week' || word === 'over the weekend')
    return { ...at(today), vague: true };
  // The wall clock is handed to chrono as if it were local time of the machine, so that no zone of the machine can shift it.
  const reference = new Date(
    +local.slice(0, 4),
    +local.slice(5, 7) - 1,
    +local.slice(8, 10),
    +local.slice(11, 13),
    +local.slice(14, 16),
  );
  const result = calendar
    .parse(text.slice(0, 2000), reference, { forwardDate: false })
    .find((r) => r.start.isCertain('weekday') || r.start.isCertain('day'));
  if (!result) return undefined;
  const start = Math.floor(
    Date.UTC(result.start.get('year')!, result.start.get('month')! - 1, result.start.get('day')!) / 60000,
  );
  const tail = text.slice(result.index, result.index + 40).toLowerCase();
  const part = /\b(night|evening)\b/.test(tail)
    ? 'evening'
    : /\bafternoon\b/.test(tail)
      ? 'afternoon'
      : /\bmorning\b/.test(tail)
        ? 'morning'
        : undefined;
  return {
    start,
    ...(part ? { part } : {}),
    words: result.text,
    index: result.index,
    length: result.text.length,
  };
}

/** Date of such a day, `2026-03-14`. */
export const dateOf = (day: DayFound): string => wallTime(day.start).slice(0, 10);
