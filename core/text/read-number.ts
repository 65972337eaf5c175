import { countsOf, TEN_WORDS } from './number-words.ts';
import type { Token } from './tokenise.ts';

const UNITS = countsOf(0, 19);
const TENS: Record<string, number> = {
  ...Object.fromEntries(TEN_WORDS.map((word, k) => [word, (k + 2) * 10])),
  fourty: 40,
};
const ORDINALS: Record<string, number> = {
  first: 1,
  second: 2,
  third: 3,
  fourth: 4,
  fifth: 5,
  sixth: 6,
  seventh: 7,
  eighth: 8,
  ninth: 9,
  tenth: 10,
  eleventh: 11,
  twelfth: 12,
};
const PARTS_OF_ONE: Record<string, number> = {
  half: 1 / 2,
  halves: 1 / 2,
  quarter: 1 / 4,
  quarters: 1 / 4,
  third: 1 / 3,
  thirds: 1 / 3,
  eighth: 1 / 8,
  eighths: 1 / 8,
  eights: 1 / 8,
  sixteenth: 1 / 16,
  sixteenths: 1 / 16,
  fifth: 1 / 5,
  fifths: 1 / 5,
  tenth: 1 / 10,
  tenths: 1 / 10,
};
/** As Maps for the two that are asked at nearly every token: a Map needs no look-up in the engine's table of names. */
const SMALL_COUNTS = new Map(Object.entries(UNITS));
const TEN_COUNTS = new Map(Object.entries(TENS));
const NTHS = new Map(Object.entries(ORDINALS));
const has = (table: Record<string, number>, w: string): boolean => Object.hasOwn(table, w);

export type NumberRead = { value: number; next: number; inWords: boolean; fraction: boolean };

/** Value of "third", "3rd" (as the two tokens "3", "rd") or undefined, with the index after it. */
export function readOrdinal(tokens: Token[], i: number): { value: number; next: number } | undefined {
  const t = tokens[i];
  if (!t) return undefined;
  if (t.kind === 'number') {
    const suffix = tokens[i + 1];
    return suffix?.glued && /^(st|nd|rd|th)$/.test(suffix.w) && /^\d+$/.test(t.w)
      ? { value: t.value!, next: i + 2 }
      : undefined;
  }
  const value = NTHS.get(t.w);
  return value === undefined ? undefined : { value, next: i + 1 };
}

/** A bare whole number in digits or words below a hundred: "3", "three", "twenty two". */
export function readCount(tokens: Token[], i: number): NumberRead | undefined {
  const t = tokens[i];
  if (!t) return undefined;
  if (t.kind === 'number') {
    if (!/^\d+$/.test(t.w)) return undefined;
    return { value: t.value!, next: i + 1, inWords: false, fraction: false };
  }
  const plain = SMALL_COUNTS.get(t.w);
  if (plain !== undefined) return { value: plain, next: i + 1, inWords: true, fraction: false };
  const tens = TEN_COUNTS.get(t.w);
  if (tens === undefined) return undefined;
  const j = tokens[i + 1]?.w === '-' ? i + 2 : i + 1;
  const unit = SMALL_COUNTS.get(tokens[j]?.w ?? '') ?? 0;
  return unit > 0 && unit < 10
    ? { value: tens + unit, next: j + 1, inWords: true, fraction: false }
    : { value: tens, next: i + 1, inWords: true, fraction: false };
}

/** A written fraction, "3/8" as three glued tokens or one vulgar character. */
function readSlashFraction(tokens: Token[], i: number): { value: number; next: number } | undefined {
  const n = tokens[i];
  if (n?.kind !== 'number') return undefined;
  if (n.w.includes('/')) return { value: n.value!, next: i + 1 };
  const slash = tokens[i + 1];
  const d = tokens[i + 2];
  if (slash?.w !== '/' || !slash.glued || d?.kind !== 'number' || !d.glued) return undefined;
  // 2-1/2-2 is a seam between two blocks, no fraction.
  if (tokens[i + 3]?.w === '-' && tokens[i + 3]?.glued && tokens[i + 4]?.kind === 'number') return undefined;
  if (![2, 3, 4, 5, 8, 10, 16, 32].includes(d.value!) || n.value! >= d.value! || n.value! < 1)
    return undefined;
  return { value: n.value! / d.value!, next: i + 3 };
}

/** "a half", "three quarters", "three-eighths", "a quarter", "half" as words; "three quarter yards" before a unit. */
function readWordFraction(tokens: Token[], i: number): { value: number; next: number } | undefined {
  const t = tokens[i];
  if (!t) return undefined;
  const dash = tokens[i + 1]?.w === '-' && tokens[i + 1]!.glued ? 1 : 0;
  const next = tokens[i + 1 + dash];
  if (
    (t.w === 'a' || t.w === 'an' || t.w === 'one') &&
    next &&
    has(PARTS_OF_ONE, next.w) &&
    !(ORDINAL_ONLY.has(next.w) && t.w !== 'one')
  )
    return { value: PARTS_OF_ONE[next.w]!, next: i + 2 + dash };
  // "a scant quarter inch", "a mean eighth of an inch"
  const part = tokens[i + 2]?.w ?? '';
  if (t.w === 'a' && next && SCANT.test(next.w) && has(PARTS_OF_ONE, part) && !part.endsWith('s'))
    return { value: PARTS_OF_ONE[part]!, next: i + 3 };
  const count = has(UNITS, t.w)
    ? UNITS[t.w]!
    : t.kind === 'number' && /^\d$/.test(t.w)
      ? t.value!
      : undefined;
  if (count !== undefined && count > 0 && next && has(PARTS_OF_ONE, next.w) && next.w !== 'halves') {
    const part = PARTS_OF_ONE[next.w]!;
    if ((next.w.endsWith('s') && count * part < 1.0001) || count === 1)
      return { value: count * part, next: i + 2 + dash };
    const unit = tokens[i + 2 + dash]?.w ?? '';
    if ((next.w === 'quarter' || next.w === 'eighth') && count * part < 1 && AFTER_FRACTION.test(unit))
      return { value: count * part, next: i + 2 + dash };
  }
  if (t.w === 'half' || t.w === 'quarter') return { value: PARTS_OF_ONE[t.w]!, next: i + 1 };
  return undefined;
}
const SCANT = /^(scant|skimpy|mean|bare|fat|generous|good|full|mere|tight|shy|short|neat|narrow|plain)$/;
const AFTER_FRACTION =
  /^(yards?|yds?|inch|inches|metres?|meters?|hours?|of|each|apiece|wide|long|apart|by|inch|in)$/;
const ORDINAL_ONLY = new Set(['third', 'fifth', 'tenth']);

/** Words that `readNumber` may begin at. */
const NUMBER_HEADS = new Set([
  ...Object.keys(UNITS),
  ...Object.keys(TENS),
  ...['a', 'an', 'couple', 'half', 'dozen', 'quarter', 'hundred'],
]);
/** May a quantity begin with this token? Where not, neither `readNumber` nor `readCount` finds one. */
export const beginsNumber = (t: Token): boolean => t.kind === 'number' || NUMBER_HEADS.has(t.w);

/**
 * Reads a quantity at token `i`: "62 1/2", "2½", "two and a half", "a hundred and ten", "half a dozen",
 * "a couple of", "three quarters", "1.375". "a" and "an" alone are left to the caller, who knows whether
 * a unit follows. Never joins two counts that stand side by side ("three one" stays two numbers).
 */
export function readNumber(tokens: Token[], i: number): NumberRead | undefined {
  const t = tokens[i];
  if (!t || !beginsNumber(t)) return undefined;
  const after = tokens[i + 1]?.w;
  if (t.w === 'a' || t.w === 'an') {
    if (after === 'couple' || after === 'pair')
      return byTheDozen(tokens, {
        value: 2,
        next: i + (tokens[i + 2]?.w === 'of' ? 3 : 2),
        inWords: true,
        fraction: false,
      });
    if (after === 'dozen') return { value: 12, next: i + 2, inWords: true, fraction: false };
    if (after === 'hundred') return readHundreds(tokens, i + 1, 1);
  }
  // "measured it hundred and sixty eight by two hundred"
  if (t.w === 'hundred') return readHundreds(tokens, i, 1);
  if (t.w === 'couple' && after === 'of') return { value: 2, next: i + 2, inWords: true, fraction: false };
  if (t.w === 'half' && (after === 'a' || after === 'dozen')) {
    if (after === 'dozen') return { value: 6, next: i + 2, inWords: true, fraction: false };
    if (tokens[i + 2]?.w === 'dozen') return { value: 6, next: i + 3, inWords: true, fraction: false };
    return { value: 0.5, next: i + 2, inWords: true, fraction: true };
  }
  if (t.w === 'dozen') return { value: 12, next: i + 1, inWords: true, fraction: false };
  const slash = readSlashFraction(tokens, i);
  if (slash) return byTheDozen(tokens, { ...slash, inWords: false, fraction: true });
  const word = readWordFraction(tokens, i);
  if (word) {
    // "a quarter of a yard", "three quarters of an inch"
    let next = word.next;
    if (tokens[next]?.w === 'of' && (tokens[next + 1]?.w === 'a' || tokens[next + 1]?.w === 'an')) next += 2;
    else if (tokens[next]?.w === 'a' || tokens[next]?.w === 'an') next += 1;
    return { value: word.value, next, inWords: true, fraction: true };
  }
  let whole: NumberRead | undefined;
  if (t.kind === 'number') {
    if (t.w.includes(':') || (t.w.match(/\./g)?.length ?? 0) > 1) return undefined;
    whole = { value: t.value!, next: i + 1, inWords: false, fraction: t.w.includes('.') };
    if (after === 'dozen') return { value: whole.value * 12, next: i + 2, inWords: true, fraction: false };
  } else {
    const count = readCount(tokens, i);
    if (!count) return undefined;
    if (tokens[count.next]?.w === 'hundred') return readHundreds(tokens, count.next, count.value);
    if (tokens[count.next]?.w === 'dozen') return { ...count, value: count.value * 12, next: count.next + 1 };
    // "two point five", "one point two five"
    if (tokens[count.next]?.w === 'point') {
      let digits = '';
      let j = count.next + 1;
      // "one point twenty five", as some say it
      const whole = readCount(tokens, j);
      if (whole?.inWords && whole.value >= 10)
        return {
          value: Number(`${count.value}.${whole.value}`),
          next: whole.next,
          inWords: true,
          fraction: true,
        };
      for (let d = readCount(tokens, j); d && d.value < 10 && digits.length < 4; d = readCount(tokens, j)) {
        digits += String(d.value);
        j = d.next;
      }
      if (digits)
        return { value: Number(`${count.value}.${digits}`), next: j, inWords: true, fraction: true };
    }
    whole = count;
  }
  return byTheDozen(tokens, withFraction(tokens, whole));
}

/** "½ dozen", "1½ dozen", "a couple of dozen" */
const byTheDozen = (tokens: Token[], count: NumberRead): NumberRead =>
  tokens[count.next]?.w === 'dozen'
    ? { ...count, value: count.value * 12, next: count.next + 1, fraction: false }
    : count;

/** Adds "1/2", "½" or "and a half" to a whole number. */
export function withFraction(tokens: Token[], whole: NumberRead): NumberRead {
  const j = whole.next;
  if (!whole.fraction) {
    const slash = readSlashFraction(tokens, j);
    if (slash)
      return { value: whole.value + slash.value, next: slash.next, inWords: whole.inWords, fraction: true };
  }
  if (tokens[j]?.w === 'and' || tokens[j]?.w === '&') {
    const part = readWordFraction(tokens, j + 1) ?? readSlashFraction(tokens, j + 1);
    if (part && !followsClock(tokens, part.next))
      return { value: whole.value + part.value, next: part.next, inWords: true, fraction: true };
  }
  return whole;
}

/** "two and quarter to five": the quarter belongs to the clock. */
const followsClock = (tokens: Token[], i: number): boolean => {
  const w = tokens[i]?.w;
  // "two and three eighths to be exact"
  return w === 'past' || (w === 'to' && tokens[i + 1]?.w !== 'be') || w === 'til' || w === 'till';
};

function readHundreds(tokens: Token[], at: number, count: number): NumberRead {
  let value = count * 100;
  let j = at + 1;
  const skip = tokens[j]?.w === 'and' ? j + 1 : j;
  const rest = readCount(tokens, skip);
  if (rest && rest.value < 100 && (rest.inWords || skip > j)) {
    value += rest.value;
    j = rest.next;
  }
  return withFraction(tokens, { value, next: j, inWords: true, fraction: false });
}
