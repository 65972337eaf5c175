import type { LengthUnit } from '../../../shared/vocabulary.ts';
import { INCHES_PER } from './inches-per.ts';

export type Spelling = 'british' | 'american';
export const localeOf = (spelling: Spelling): 'en-GB' | 'en-US' =>
  spelling === 'american' ? 'en-US' : 'en-GB';

const EIGHTHS = ['', '⅛', '¼', '⅜', '½', '⅝', '¾', '⅞'];
const made = new Map<string, Intl.DateTimeFormat | Intl.NumberFormat>();

function keep<T extends Intl.DateTimeFormat | Intl.NumberFormat>(key: string, make: () => T): T {
  let found = made.get(key);
  if (!found) {
    found = make();
    made.set(key, found);
  }
  return found as T;
}

/** `62.5` as "62½"; what is no eighth as a decimal of two places. */
export function eighths(value: number): string {
  const parts = value * 8;
  const nearest = Math.round(parts);
  if (Math.abs(parts - nearest) > 0.02) return String(Math.round(value * 100) / 100);
  const whole = Math.floor(nearest / 8);
  return `${whole || (nearest % 8 ? '' : '0')}${EIGHTHS[nearest % 8]}`;
}

/** A length as measured, told in the quilt's own unit: "62½ in", "158.8 cm". */
export function lengthPhrase(value: number, from: LengthUnit, to: 'in' | 'cm'): string {
  const inches = value * INCHES_PER[from];
  if (to === 'in') return `${eighths(Math.round(inches * 1000) / 1000)} in`;
  return `${Math.round(inches * 25.4) / 10} cm`;
}

/** Minutes as "3 hours 20 minutes", "45 minutes", "1 hour". */
export function durationPhrase(minutes: number): string {
  const whole = Math.max(0, Math.round(minutes));
  const hours = Math.floor(whole / 60);
  const rest = whole % 60;
  const h = hours ? `${hours} hour${hours === 1 ? '' : 's'}` : '';
  const m = rest ? `${rest} minute${rest === 1 ? '' : 's'}` : '';
  return [h, m].filter(Boolean).join(' ') || 'no time';
}

/** Minutes as "3 h 20" for tables. */
export function durationFigure(minutes: number): string {
  const whole = Math.max(0, Math.round(minutes));
  return `${Math.floor(whole / 60)} h ${String(whole % 60).padStart(2, '0')}`;
}

/** An amount in minor units ("2450" pence) in the currency's own form. */
export function moneyPhrase(minor: number, digits: number, currency: string, spelling: Spelling): string {
  const amount = minor / 10 ** digits;
  const format = keep(
    `money ${spelling} ${currency}`,
    () => new Intl.NumberFormat(localeOf(spelling), { style: 'currency', currency }),
  );
  return format.format(amount);
}

const dates = new Map<string, string>();

/** `2026-03-14` as "14 March 2026" or "March 14, 2026"; with the weekday where asked. */
export function datePhrase(date: string, spelling: Spelling, weekday = false): string {
  const key = `${date} ${spelling} ${weekday}`;
  let said = dates.get(key);
  if (said === undefined) {
    const noon = new Date(`${date}T12:00:00Z`);
    if (Number.isNaN(noon.getTime())) return date;
    said = keep(
      `date ${spelling} ${weekday}`,
      () =>
        new Intl.DateTimeFormat(localeOf(spelling), {
          ...(weekday ? { weekday: 'long' as const } : {}),
          day: 'numeric',
          month: 'long',
          year: 'numeric',
          timeZone: 'UTC',
        }),
    ).format(noon);
    // A job has some hundred days; a record names each many times.
    if (dates.size > 5_000) dates.clear();
    dates.set(key, said);
  }
  return said;
}

/** "from 14 to 28 March 2026", as Intl joins a range; one date where both are the same. */
export function dateRangePhrase(from: string, to: string, spelling: Spelling): string {
  if (from === to) return datePhrase(from, spelling);
  const format = keep(
    `range ${spelling}`,
    () =>
      new Intl.DateTimeFormat(localeOf(spelling), {
        day: 'numeric',
        month: 'long',
        year: 'numeric',
        timeZone: 'UTC',
      }),
  ) as Intl.DateTimeFormat;
  return format
    .formatRange(new Date(`${from}T12:00:00Z`), new Date(`${to}T12:00:00Z`))
    .replace(/\s*[–—-]\s*/g, ' to ')
    .replace(/[\u2009\u202f]/g, ' ');
}

const NUMBERS = [
  'no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve',
]; // biome-ignore format: a row of words

/** Small counts in words, as in running prose; larger ones in figures. */
export function countPhrase(count: number): string {
  return NUMBERS[count] ?? String(count);
}
