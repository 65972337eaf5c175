const EIGHTHS = ['', '⅛', '¼', '⅜', '½', '⅝', '¾', '⅞'];

/** A length or amount as makers write it: eighths as fractions, anything finer as decimals. */
export function lengthWords(value: number): string {
  const eighths = value * 8;
  if (Math.abs(eighths - Math.round(eighths)) > 1e-9) return String(Math.round(value * 1000) / 1000);
  const whole = Math.floor(Math.round(eighths) / 8);
  const part = EIGHTHS[Math.round(eighths) % 8]!;
  return part ? `${whole || ''}${part}` : String(whole);
}

/** Minutes as "1 h 15 min", "40 min", "2 h". */
export function spanWords(minutes: number): string {
  const whole = Math.round(minutes);
  const hours = Math.floor(whole / 60);
  const rest = whole % 60;
  if (!hours) return `${rest} min`;
  return rest ? `${hours} h ${rest} min` : `${hours} h`;
}

/** An amount in the currency's own form; plain figures where the browser does not know the code. */
export function moneyWords(amount: number, currency: string, locale?: string): string {
  try {
    return new Intl.NumberFormat(locale ?? pageLocale(), { style: 'currency', currency }).format(amount);
  } catch {
    return `${amount.toFixed(2)} ${currency}`;
  }
}

let locale = 'en-GB';
/** British or American forms of dates, numbers and money in everything shown after. */
export function setPageLocale(spelling: 'british' | 'american'): void {
  locale = spelling === 'american' ? 'en-US' : 'en-GB';
}
export function pageLocale(): string {
  return locale;
}

/** `2026-03-14` as "Saturday 14 March 2026" in the page's spelling. */
export function dateWords(date: string, style: 'full' | 'short' | 'day' = 'full'): string {
  const noon = new Date(`${date}T12:00:00Z`);
  if (Number.isNaN(noon.getTime())) return date;
  return new Intl.DateTimeFormat(
    pageLocale(),
    style === 'full'
      ? { weekday: 'long', day: 'numeric', month: 'long', year: 'numeric', timeZone: 'UTC' }
      : style === 'short'
        ? { weekday: 'short', day: 'numeric', month: 'short', timeZone: 'UTC' }
        : { day: 'numeric', month: 'short', timeZone: 'UTC' },
  ).format(noon);
}
