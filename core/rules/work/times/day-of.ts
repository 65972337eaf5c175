import type { Item } from '../../item.ts';
import type { DayFound } from '../../times/find-day.ts';
import { wordsBetween } from '../../words-between.ts';
import { isLight, onlyLight } from '../work-items.ts';
import type { TimesTold } from './times-told.ts';

/** The day that the time at item `k` was on, where one is told. */
export function dayOf(told: TimesTold, k: number): { start: number; part?: DayFound['part'] } | undefined {
  const { items, days, now } = told;
  const at = items[k]!.token.from;
  const first = items[0]!.token.from;
  const last = items.at(-1)!.end ?? items.at(-1)!.token.to;
  const here = days.filter((d) => !d.vague && d.start <= now);
  const within = here
    // "this arvo i'm going to …" after the time is another matter; "at eleven last night" is not
    .filter(
      (d) =>
        d.index >= first &&
        d.index <= last &&
        // "from ten last night till one": told of the start, inside the stretch
        (d.index < Math.max(at, items[k]!.end ?? at) ||
          onlyLight(items, k, d.index) ||
          isToldFirst(items, k, d.index) ||
          isAtTheEnd(items, k, d)),
    )
    .sort((a, b) => Math.abs(a.index - at) - Math.abs(b.index - at))[0];
  const found =
    within ?? here.filter((d) => d.index < first && d.part === undefined && d.start < now - 1440).at(-1);
  return found ? { start: found.start, ...(found.part ? { part: found.part } : {}) } : undefined;
}

/** "from half seven till ten to five with an hour out for dinner yesterday": the day last of all, behind nothing but a break. */
function isAtTheEnd(items: Item[], k: number, day: { index: number; length: number }): boolean {
  const said = items.filter((x, m) => m > k && x.token.from < day.index);
  return (
    items.every((x) => x.token.from < day.index + day.length || /^[.!]$/.test(x.w)) &&
    said.some((x) => x.duration) &&
    said.every((x) => x.duration || isLight(x))
  );
}

/** "half past ten I stopped at last night", "half four it was when I finished yesterday": the clock, what it was of, and the day. */
const isToldFirst = (items: Item[], k: number, day: number): boolean =>
  TOLD_FIRST.test(
    wordsBetween(
      items,
      k + 1,
      items.findIndex((x, m) => m > k && x.token.from >= day),
    ),
  );
const TOLD_FIRST =
  /^ (?:(?:it|that) (?:was|is) )?(?:when |that )?(?:i|we) (?:'d )?(?:stopped|finished|started|began|quit|left|knocked|packed|gave)(?: (?:it|off|up|in|at|on|work|working|the|\S+ing))* $/;
