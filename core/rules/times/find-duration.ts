import { HOUR_WORDS, MINUTE_WORDS } from '../../lexicon/units.ts';
import { readCount, readNumber } from '../../text/read-number.ts';
import type { Token } from '../../text/tokenise.ts';
import { wordAt as w } from '../../text/word-at.ts';
import { KIND_OF_WORK } from './hours-of-work.ts';

export type DurationFound = { next: number; minutes: number; rule: string };

/**
 * "forty minutes", "an hour and a quarter", "1 hr 20", "1h50", "three quarters of an hour", "two and a half hours",
 * "half an hour", "an hour and twenty", "hour and a half".
 */
export function findDuration(tokens: Token[], i: number): DurationFound | undefined {
  const told = lengthTold(tokens, i) ?? tookBare(tokens, i);
  // "an hour's mending, then an hour's tying"
  return told && w(tokens, told.next) === "'s" && KIND_OF_WORK.test(w(tokens, told.next + 1))
    ? { ...told, next: told.next + 1 }
    : told;
}

/** "whipped it closed, took me ten", "darned 3-2 took about fifteen": minutes, of which she says only the number. */
function tookBare(tokens: Token[], i: number): DurationFound | undefined {
  let j = i - 1;
  while (
    j > i - 4 &&
    /^(about|around|only|just|nearly|roughly|maybe|another|all|of|me|us)$/.test(w(tokens, j))
  )
    j--;
  if (w(tokens, j) !== 'took' || /^(i|we|she|he|they|who)$/.test(w(tokens, j - 1))) return undefined;
  const count = readCount(tokens, i);
  if (!count || count.value < 5 || count.value > 240 || !TOOK_ENDS.test(w(tokens, count.next)))
    return undefined;
  // "five yards it took ten": goods are counted
  const counted = tokens
    .slice(Math.max(0, j - 8), j)
    .some((t) => /^(pins?|yards?|metres?|skeins?|spools?|balls?|reels?)$/.test(t.w));
  return counted ? undefined : { next: count.next, minutes: count.value, rule: 'time.took-bare' };
}
const TOOK_ENDS =
  /^(|,|\.|;|!|\n|and|but|so|then|for|this|tonight|today|last|--|-|all|altogether|flat|tops)$/;

function lengthTold(tokens: Token[], i: number): DurationFound | undefined {
  const t = tokens[i]!;
  let value: number | undefined;
  let next = i;
  // "1:45 hrs"
  const figures = /^(\d{1,2}):([0-5]\d)$/.exec(t.w);
  if (figures && HOUR_WORDS.has(w(tokens, i + 1)))
    return { next: i + 2, minutes: Number(figures[1]) * 60 + Number(figures[2]), rule: 'time.hours' };
  const unitAt = (j: number): 'h' | 'm' | undefined => {
    const word = w(tokens, j) === '-' ? w(tokens, j + 1) : w(tokens, j);
    return HOUR_WORDS.has(word) ? 'h' : MINUTE_WORDS.has(word) ? 'm' : undefined;
  };
  if ((t.w === 'a' || t.w === 'an' || t.w === 'another') && unitAt(i + 1)) {
    value = 1;
    next = i + 1;
  } else if (
    (t.w === 'a' || t.w === 'an' || t.w === 'one') &&
    /^(?:full|whole|solid|clear|good|long|straight|cool|bare|short|scant|entire)$/.test(w(tokens, i + 1)) &&
    unitAt(i + 2) === 'h'
  ) {
    // "a full hour", "a good hour"
    value = 1;
    next = i + 2;
  } else if (
    (t.w === 'hour' || t.w === 'hr') &&
    (w(tokens, i + 1) === 'and' ||
      // "hour of shopping"
      (/^(of|on)$/.test(w(tokens, i + 1)) && /^(|[.;,\n]|another|good|solid)$/.test(w(tokens, i - 1))))
  ) {
    value = 1;
    next = i;
  } else if (
    (t.w === 'a' || t.w === 'an') &&
    w(tokens, i + 1) === 'good' &&
    (unitAt(i + 2) || w(tokens, i + 2) === 'half')
  ) {
    return findDuration(tokens, i + 2);
  } else {
    const number = readNumber(tokens, i);
    if (!number) return undefined;
    value = number.value;
    next = number.next;
    while (
      ['odd', 'or', 'so', 'good', 'solid', 'full', 'more'].includes(w(tokens, next)) &&
      next < number.next + 2
    )
      next++;
    if (w(tokens, next) === 'an' && number.fraction) next++;
    if (w(tokens, next) === 'of' && w(tokens, next + 1) === 'an') next += 2;
  }
  const unit = unitAt(next);
  if (!unit) return undefined;
  if (w(tokens, next) === '-') next++;
  next++;
  if (unit === 'm') return { next, minutes: value, rule: 'time.minutes' };
  // "1400 hrs" is a time of day
  if (value > 99) return undefined;
  let minutes = value * 60;
  // "1 hr 20", "an hour and twenty", "an hour and a half", "2 hours and 15 minutes"
  let k = next;
  if (w(tokens, k) === 'and' || w(tokens, k) === '&') k++;
  if (k > next) {
    const part = readNumber(tokens, k);
    if (part) {
      const after = unitAt(part.next);
      if (after === 'm') {
        minutes += part.value;
        next = part.next + (w(tokens, part.next) === '-' ? 2 : 1);
      } else if (part.fraction && part.value < 1 && !after) {
        minutes += part.value * 60;
        next = part.next;
        if (unitAt(next) === 'h') next++;
      } else if (!after && part.value >= 5 && part.value < 60 && Number.isInteger(part.value)) {
        minutes += part.value;
        next = part.next;
      }
    }
  } else {
    const part = readNumber(tokens, next);
    if (part && !part.fraction && part.value < 60 && Number.isInteger(part.value)) {
      // "1h 20m"
      const after = w(tokens, part.next) === 'm' && tokens[part.next]!.glued ? 'm' : unitAt(part.next);
      if (after === 'm') {
        minutes += part.value;
        next = part.next + 1;
      } else if (
        after !== 'h' &&
        part.value >= 5 &&
        (inAll(tokens, part.next) ||
          !['skeins', 'yards', 'packs', 'spools', 'in', 'inch', 'cm', 'blocks', '-', 'm', 'past'].includes(
            w(tokens, part.next),
          )) &&
        // "an hour ten to tie", but "an hour, ten to four"
        (w(tokens, part.next) !== 'to' ||
          !(readNumber(tokens, part.next + 1) || /^(noon|midday|midnight)$/.test(w(tokens, part.next + 1))))
      ) {
        minutes += part.value;
        next = part.next;
      }
    }
  }
  // "an hour and ten, less a quarter for tea" is left to the work rule.
  return { next, minutes: Math.round(minutes * 100) / 100, rule: 'time.hours' };
}

/** "1 h 10 in all", "2h 15 in total", "1 hr 20 in the end": no inches. */
const inAll = (tokens: Token[], k: number): boolean =>
  w(tokens, k) === 'in' &&
  (/^(?:all|total|toto|one|sum)$/.test(w(tokens, k + 1)) ||
    (w(tokens, k + 1) === 'the' && /^(?:end|morning|afternoon|evening)$/.test(w(tokens, k + 2))));

export const HALF_WORDS = new Set(['half', 'haf']);
