import type { Item } from '../item.ts';
import { itemWord as w } from '../item-word.ts';
import type { ClockFound } from '../times/find-clock.ts';
import { latestClock } from '../times/local-time.ts';
import { wordsBetween } from '../words-between.ts';
import type { Mark } from './marks-of.ts';

const MEALS = new Set(
  'lunch tea dinner supper breakfast break coffee smoko elevenses brew cuppa nap rest'.split(' '),
);

/** "lunch at 12", "half three for tea": at a clock told of it, a meal stops the work; and "on at nine, off at four". */
export function mealMarks(items: Item[]): Mark[] {
  const out: Mark[] = [];
  items.forEach((x, k) => {
    // "on at nine, off at twelve"
    if (
      /^(on|off)$/.test(x.w) &&
      /^(at|again)$/.test(w(items, k + 1)) &&
      items.slice(k + 2, k + 4).some((y) => y.clock) &&
      (/^(|,|and|then|--|:)$/.test(w(items, k - 1)) || items[k - 1]?.clock || (k === 1 && items[0]!.task))
    )
      out.push({ at: k, end: k + 1, mark: x.w === 'on' ? 'start' : 'stop', word: x.w });
    else if (isClockedOn(items, k))
      out.push({ at: k, end: k + 1, mark: /^(on|in)$/.test(x.w) ? 'start' : 'stop', word: x.w });
    // "okay back again, it's twenty-five to nine"
    if (
      x.w === 'back' &&
      /^(again|now|,)$/.test(w(items, k + 1)) &&
      /^ (?:(?:so|okay|ok|right|and|then|there|now|,|i|'m|am|we|'re|oh|um|well) )*$/.test(
        wordsBetween(items, 0, k).replace(/^ {2}$/, ' '),
      ) &&
      items.slice(k + 2, k + 6).some((y) => y.clock)
    )
      out.push({ at: k, end: k + 1, mark: 'start', word: 'back' });
    if (!MEALS.has(x.w)) return;
    // "after lunch at two", "the children have their tea at five" stop nothing
    const lead = wordsBetween(items, k - 4, k).trimStart();
    if (
      !/(?:^|(?:,|and|then|--|:) )(?:(?:i|we|had|took|stopped|broke|off|out|for|a|my|quick|short|bit|of) )*(?:[\d:.]+ )?$/.test(
        lead,
      ) &&
      !items[k - 1]?.clock
    )
      return;
    const end = w(items, k + 1) === 'break' ? k + 2 : k + 1;
    let clock = end;
    while (clock < end + 3 && /^(at|from|about|around|was|:|,)$/.test(w(items, clock))) clock++;
    const before = items[k - (/^(for|-|,|:|=)$/.test(w(items, k - 1)) ? 2 : 1)];
    if (items[clock]?.clock) out.push({ at: k, end: clock, mark: 'stop', word: 'lunch' });
    else if (before?.clock && !/^(since|from)$/.test(w(items, items.indexOf(before) - 1)))
      out.push({ at: k, end, mark: 'stop', word: 'lunch' });
  });
  return out;
}

/** "on 9.05", "0905 on, mending", "in at 8, out at 12", "8:00 in", "2110h off": nothing beside the word but its clock. */
function isClockedOn(items: Item[], k: number): boolean {
  if (!/^(on|off|in|out)$/.test(items[k]!.w)) return false;
  const ends = (word: string): boolean => /^(|,|;|and|then|--|-|:|\(|for|again)$/.test(word);
  const at = /^(at|@)$/.test(w(items, k + 1)) ? k + 2 : k + 1;
  // "on at 0915 off at 1130"
  if (items[at]?.clock && (ends(w(items, k - 1)) || items[k - 1]?.clock)) return true;
  return Boolean(items[k - 1]?.clock) && ends(w(items, k - 2)) && ends(w(items, k + 1));
}

export type Timed = { k: number; mark: 'start' | 'stop'; word: Mark; clock: ClockFound };
/** A stretch from one to another moment, less its rests, or a single start or stop. Moments in minutes of the wall. */
export type Piece<T extends Timed> =
  | { from: T; to: T; startAt: number; endAt: number; rest: number }
  | { only: T; at: number };

/** "back", "resumed", "again": the work goes on that was stopped before. */
export const resumes = (t: Timed, items: Item[]): boolean =>
  t.mark === 'start' &&
  RESUMES.test(`${t.word.word} ${wordsBetween(items, Math.min(t.word.at, t.k), t.k)} ${w(items, t.k + 1)}`);
const RESUMES = /\b(resum\w*|back|again|pick\w* .*up|carr\w* on|crack\w* on|restart\w*)\b/;

/**
 * "Stopped for lunch at 12:30 and resumed at 13:15" tells no stretch of work but a rest in one: the stretches and marks that the
 * moments of a sentence make, in order. Undefined where nothing is stopped and resumed.
 */
export function aroundRests<T extends Timed>(
  timed: T[],
  items: Item[],
  now: number,
  day: Parameters<typeof latestClock>[2],
): Piece<T>[] | undefined {
  if (!timed.some((t, n) => n > 0 && timed[n - 1]!.mark === 'stop' && resumes(t, items))) return undefined;
  const at: number[] = [];
  let latest = now;
  for (let n = timed.length - 1; n >= 0; n--) {
    at[n] = latestClock(timed[n]!.clock, latest, n === timed.length - 1 ? day : undefined);
    latest = at[n]! - 1;
  }
  const out: Piece<T>[] = [];
  for (let n = 0; n < timed.length; n++) {
    const from = timed[n]!;
    let end = n + 1;
    if (from.mark === 'stop' || timed[end]?.mark !== 'stop') {
      out.push({ only: from, at: at[n]! });
      continue;
    }
    // a rest within a stretch that goes on to its end
    let rest = 0;
    while (timed[end + 1] && resumes(timed[end + 1]!, items) && timed[end + 2]?.mark === 'stop') {
      rest += at[end + 1]! - at[end]!;
      end += 2;
    }
    out.push({ from, to: timed[end]!, startAt: at[n]!, endAt: at[end]!, rest });
    n = end;
  }
  return out;
}
