import { DATE_WORDS } from './date-words.ts';

const { month: MONTH, day: DATE_NUMBER } = DATE_WORDS;

/** A month and the days it has in a year without a leap day; only those that somebody could count too long. */
const SHORT: Record<string, { name: string; days: number }> = {
  feb: { name: 'February', days: 28 },
  apr: { name: 'April', days: 30 },
  jun: { name: 'June', days: 30 },
  sep: { name: 'September', days: 30 },
  nov: { name: 'November', days: 30 },
};

const LATE_DAYS: Record<string, number> = { 'twenty ninth': 29, thirtieth: 30, 'thirty first': 31 };

const DAY_FIRST = new RegExp(`\\b(?:the )?(${DATE_NUMBER})(?: of)? (${MONTH})\\b(?:,? (\\d{4})\\b)?`, 'gi');
const MONTH_FIRST = new RegExp(`\\b(${MONTH}) (?:the )?(${DATE_NUMBER})\\b(?:,? (\\d{4})\\b)?`, 'gi');
const WRITTEN = /\b(\d{4})-(\d\d)-(\d\d)\b/g;

/**
 * A day that the words name and the calendar has not got, as it is said back: "on the thirtieth of February", "31 June",
 * "2026-02-30", "29th February" in a year that is no leap year. `local` is the note's own wall time: a day without a year
 * is the last one of that name. Undefined where every day is one.
 */
export function findImpossibleDay(text: string, local: string): string | undefined {
  const told = text.slice(0, 8000);
  for (const [, number, month, year] of told.matchAll(DAY_FIRST)) {
    const wrong = wrongDay(number!, month!, year, local);
    if (wrong) return wrong;
  }
  for (const [, month, number, year] of told.matchAll(MONTH_FIRST)) {
    const wrong = wrongDay(number!, month!, year, local);
    if (wrong) return wrong;
  }
  for (const [words, year, month, day] of told.matchAll(WRITTEN)) {
    const met = new Date(Date.UTC(Number(year), Number(month) - 1, Number(day)));
    if (met.getUTCMonth() + 1 !== Number(month) || met.getUTCDate() !== Number(day)) return words;
  }
  return undefined;
}

function wrongDay(
  number: string,
  month: string,
  told: string | undefined,
  local: string,
): string | undefined {
  const short = SHORT[month.slice(0, 3).toLowerCase()];
  if (!short) return undefined;
  const day = LATE_DAYS[number.toLowerCase().replace('-', ' ')] ?? Number.parseInt(number, 10);
  // Beyond 31 it counts something else: "block 32 may".
  if (Number.isNaN(day) || day > 31 || day <= short.days) return undefined;
  if (short.name === 'February' && day === 29) {
    const [year, now] = [Number(local.slice(0, 4)), local.slice(5, 10)];
    const meant = told ? Number(told) : now >= '02-29' ? year : year - 1;
    if (isLeap(meant)) return undefined;
    return `29 February ${meant}`;
  }
  return `${day} ${short.name}`;
}

const isLeap = (year: number): boolean => (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
