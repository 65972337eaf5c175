import { wallMinutes, wallTime } from '../../times/local-time.ts';

const WEEKDAYS = ['sun', 'mon', 'tue', 'wed', 'thu', 'fri', 'sat'];
const ORDINALS =
  'first second third fourth fifth sixth seventh eighth ninth tenth eleventh twelfth thirteenth fourteenth fifteenth sixteenth seventeenth eighteenth nineteenth twentieth'.split(
    ' ',
  );

/** Days as questions name them and notes do not: "yest", "fri", "the fifth". */
export function shortDay(words: string, local: string): string | undefined {
  const now = wallMinutes(local);
  const dayAt = (back: number): string => wallTime(now - back * 1440).slice(0, 10);
  if (/\bthis day\b/.test(words)) return dayAt(0);
  if (/\b(?:yest|yday|yesty|ystdy|yesterdays)\b/.test(words)) return dayAt(1);
  if (/\btoday\b/.test(words)) return dayAt(0);
  const weekday =
    /\b(?:for|on|last|this|from|of|hrs|hours|do|did|done|in) (mon|tue|wed|thu|fri|sat|sun)(?:s|rs|r|nes|ur)?\b/.exec(
      words,
    )?.[1] ??
    // "mon hrs", "fri total"
    /^ ?(mon|tue|wed|thu|fri|sat|sun)(?:s|rs|r|nes|ur)?(?: 's)? (?:hrs|hours|total|time|tally)\b/.exec(
      words,
    )?.[1];
  if (weekday) {
    const today = Math.floor(now / 1440);
    // 1 January 1970 was a Thursday
    const back = (((today + 4) % 7) - WEEKDAYS.indexOf(weekday) + 7) % 7 || 7;
    return dayAt(back);
  }
  const ordinal =
    /\b(?:on|for|from|of|since) the (?:(\d{1,2}) ?(?:st|nd|rd|th)|(\w+(?:first|second|third|th|st|nd|rd)|first|second|third))\b(?! (?:row|block|column|one|square))/.exec(
      words,
    );
  if (!ordinal) return undefined;
  const nth = ordinal[1] ? Number(ordinal[1]) : ORDINALS.indexOf(ordinal[2]!) + 1;
  if (nth < 1 || nth > 31) return undefined;
  for (let back = 0; back < 62; back++) if (Number(dayAt(back).slice(8)) === nth) return dayAt(back);
  return undefined;
}
