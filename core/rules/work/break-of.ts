import type { Item } from '../item.ts';
import { itemWord as w } from '../item-word.ts';
import { wordsBetween } from '../words-between.ts';
import { isBreak } from './find-work.ts';

export const lengthOf = (x: Item): number =>
  x.duration
    ? x.duration.minutes
    : (x.quantity?.value ?? 0) < 1
      ? (x.quantity?.value ?? 0) * 60
      : (x.quantity?.value ?? 0);

const BREAK_LEAD =
  / (?:(?:broke|break|gap|pause|interval|interruption|breaking|stopped|stopping|paused|away|out|off|except|bar|less|minus|without|apart from|not counting)(?: off)?(?: for(?: my| a| some)? [a-z]+)?|(?<!\b(?:after|since|before|until|till|by|past) (?:my |the |our )?)(?:lunch|tea|dinner|supper|breakfast|coffee|smoko|cuppa|nap|bite to eat|bite|sandwich|snack)(?: break)?(?: was| :| ,| -)?)(?: from| between)? $/;

/** Is the stretch at `k` a break in the work: "broke from seven to quarter to eight", "tea 8.15–8.40"? */
export const isBreakSpan = (items: Item[], k: number): boolean =>
  // "worked on the taking apart from one to four"
  !(w(items, k - 1) === 'from' && items[k - 2]?.task) &&
  BREAK_LEAD.test(wordsBetween(items, k - 6, k)) &&
  !tookOff(items, k);

/** "took the backing off 13:30–14:20": a thing was off, and not she. */
const tookOff = (items: Item[], k: number): boolean =>
  /^(off|out)$/.test(w(items, k - 1)) &&
  // "quilting, off 12 to 1 for lunch"
  w(items, k - 2) !== ',' &&
  items.slice(Math.max(0, k - 5), k - 1).some((x) => x.object !== undefined || x.part !== undefined);

/** "two breaks ten minutes each", "two ten-minute breaks", "2 x 10 min": how many of that length. */
function timesTaken(items: Item[], m: number, used: Set<number>): number {
  const said = ` ${wordsBetween(items, m - 4, m)} / ${wordsBetween(items, m + 1, m + 3)}`;
  // "stopping twice for ten minutes each"
  if (/ twice (?:for )?(?:about )?[/ ]/.test(said)) return 2;
  if (!/ breaks|[ /]each | x /.test(said)) return 1;
  for (let k = m - 1; k >= Math.max(0, m - 4); k--) {
    const count =
      w(items, k) === 'couple' ? 2 : items[k]!.quantity?.unit ? undefined : items[k]!.quantity?.value;
    if (count !== undefined && Number.isInteger(count) && count >= 2 && count <= 6) {
      for (let q = k; q < m; q++) used.add(q);
      for (let q = m + 1; q <= m + 2; q++) if (/^(breaks|each)$/.test(w(items, q))) used.add(q);
      return count;
    }
  }
  return 1;
}

/** The breaks told beside the stretch at `k`: all lengths that are taken off it. */
export function breakOf(
  items: Item[],
  k: number,
  used: Set<number>,
  broken: number,
): { minutes: number } | undefined {
  let minutes = broken;
  for (let m = 0; m < items.length; m++) {
    if (m === k || used.has(m) || !isBreak(items, m)) continue;
    // a break that another stretch stands nearer to is that one's
    if (items.some((x, q) => x.span && q !== k && Math.abs(q - m) < Math.abs(k - m) && q < m && q > k))
      continue;
    minutes += lengthOf(items[m]!) * timesTaken(items, m, used);
    used.add(m);
    const phrase = wordsBetween(items, m + 1, m + 6);
    const tail =
      /^ (off|out|away|break|lost|wasted|on|for|of|at|phone|lunch|tea|smoko|supper|dinner|coffee|cuppa|walk|pause|rest|nap)( (for|on|at|of))?( (my|the|a|an|some))?( [a-z]+)?/.exec(
        phrase,
      );
    if (tail) {
      const n = Math.min(tail[0].trim().split(' ').length, 4);
      for (let q = m + 1; q <= m + n; q++)
        if (items[q] && !items[q]!.place && !items[q]!.action && !items[q]!.duration) used.add(q);
    }
    for (let q = m - 1; q >= Math.max(0, m - 3); q--) {
      if (
        !/^(less|minus|without|with|a|an|about|the|apart|except|from|for|and|bar|,|plus|took|off|not|counting|take|taking|out|away|knock|knocking|leave|leaving|subtract|subtracting|deduct|deducting)$/.test(
          w(items, q),
        )
      )
        break;
      used.add(q);
    }
  }
  return minutes ? { minutes } : undefined;
}
