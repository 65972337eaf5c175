// Its English alone: the whole of it is three hundred milliseconds of other languages at every start.
import * as chrono from 'chrono-node/en';
import { DATE_WORDS } from './date-words.ts';
import { findImpossibleDay } from './find-impossible-day.ts';
import { dayStart, wallMinutes, wallTime } from './local-time.ts';

export type DayFound = {
  start: number;
  part?: 'morning' | 'afternoon' | 'evening' | 'night';
  words: string;
  index: number;
  length: number;
  vague?: boolean;
};

const { month: MONTH, day: DATE_NUMBER } = DATE_WORDS;
/** Short names of days only count where a time follows, or "on" or "last" stands before: "sat down", "the sun" are no days. */
const TRIGGER = new RegExp(
  [
    "\\b(?:the day before yesterday|yesterday|y['’]?day|today|tonight|last (?:night|evening)|this (?:morning|afternoon|arvo|evening)|this arvo)\\b",
    '\\b(?:earlier (?:in the|this) week|(?:this|last) week|(?:over|at|on) the weekend|last weekend|the other (?:day|night|evening|morning))\\b',
    '\\b(?:(?:a|two|three|four|five|six|\\d) (?:days?|nights?) ago)\\b',
    '\\b(?:last |this |on )?(?:mon|tues|wednes|thurs|fri|satur|sun)day\\b',
    '(?:\\b(?:last|on) |^|[.;\\n] ?)(?:mon|tues?|wed|thur?s?|fri|sat|sun)\\b(?=\\.? (?:\\d|morning|afternoon|evening|night|am\\b|pm\\b))',
    `\\b(?:the )?${DATE_NUMBER}(?: of)? ${MONTH}\\b`,
    `\\b${MONTH} (?:the )?${DATE_NUMBER}\\b`,
    '\\bon the \\d{1,2}(?:st|nd|rd|th)\\b(?! (?:row|block|one|column|col|from|down))',
    '\\b\\d{4}-\\d\\d-\\d\\d\\b',
  ].join('|'),
  'gi',
);

/** Letters of which every such phrase has some: asked first, since the whole pattern takes ten times as long. */
const OF_DAYS =
  /day|night|week|morning|noon|arvo|evening|mon|tue|wed|thu|fri|sat|sun|jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec|on the \d|\d{4}-/i;

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
 * The days that the words name, in the order said, as minutes of their midnights. Weekdays and dates are read by chrono-node
 * in the note's own wall time; what part of the day is said is kept for clock readings without am or pm.
 */
export function findDays(text: string, local: string): DayFound[] {
  const out: DayFound[] = [];
  if (!OF_DAYS.test(text)) return out;
  for (const match of text.slice(0, 8000).matchAll(TRIGGER)) {
    const found = readDay(text, match[0].replace(/^[.;\n ]+/, ''), match.index + match[0].length, local);
    if (found) out.push(found);
    if (out.length >= 8) break;
  }
  return out;
}

/** The first day that the words name; undefined where they name none. */
export const findDay = (text: string, local: string): DayFound | undefined => findDays(text, local)[0];

const PART_AFTER = /^[ ,]*(?:in the |at )?(morning|afternoon|arvo|evening|night)\b/i;

function readDay(text: string, words: string, end: number, local: string): DayFound | undefined {
  const now = wallMinutes(local);
  const today = dayStart(now);
  const word = words.toLowerCase().replace(/^on /, '');
  const index = end - words.length;
  const said = PART_AFTER.exec(text.slice(end, end + 20))?.[1]?.toLowerCase();
  const after: DayFound['part'] =
    said === 'arvo' ? 'afternoon' : said === 'night' ? 'evening' : (said as DayFound['part']);
  const at = (start: number, part = after): DayFound => ({
    start,
    ...(part ? { part } : {}),
    words,
    index,
    length: words.length,
  });
  if (word === 'last night') return at(today - 1440, 'night');
  if (word === 'last evening') return at(today - 1440, 'evening');
  if (word === 'tonight' || word === 'this evening') return at(today, 'evening');
  if (word === 'this morning') return at(today, 'morning');
  if (word === 'this afternoon' || word === 'this arvo') return at(today, 'afternoon');
  if (word === 'today') return at(today);
  // "hrs on it y'day?"
  if (word === 'yesterday' || /^y['’]?day$/.test(word)) return at(today - 1440);
  if (word === 'the day before yesterday') return at(today - 2880);
  const ofMonth = /^the (\d{1,2})(?:st|nd|rd|th)$/.exec(word);
  if (ofMonth) {
    // the latest such day that is not after today
    for (let day = today; day > today - 62 * 1440; day -= 1440)
      if (new Date(day * 60000).getUTCDate() === Number(ofMonth[1])) return at(day);
    return undefined;
  }
  if (/week|other/.test(word)) return { ...at(today), vague: true };
  // The wall clock is handed to chrono as if it were local time of the machine, so that no zone of the machine can shift it.
  const reference = new Date(
    +local.slice(0, 4),
    +local.slice(5, 7) - 1,
    +local.slice(8, 10),
    +local.slice(11, 13),
    +local.slice(14, 16),
  );
  const result = calendar.parse(word, reference, { forwardDate: false })[0];
  if (!result || !(result.start.isCertain('weekday') || result.start.isCertain('day')))
    // a day that there is not is asked about; until then it is the note's own
    return findImpossibleDay(word, local) ? at(today) : undefined;
  return at(
    Math.floor(
      Date.UTC(result.start.get('year')!, result.start.get('month')! - 1, result.start.get('day')!) / 60000,
    ),
  );
}

/** Date of such a day, `2026-03-14`. */
export const dateOf = (day: DayFound): string => wallTime(day.start).slice(0, 10);
