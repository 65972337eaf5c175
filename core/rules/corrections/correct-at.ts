import type { QuiltGrid } from '../../../shared/quilt.ts';
import type { Item } from '../item.ts';
import { earlierOf, otherReading, rightBefore, STOP } from './earlier-of.ts';
import { restOfEarlier } from './rest-of-earlier.ts';
import { type Sort, sortsOf } from './sorts-of.ts';

const LIGHT = new Set([
  'it',
  'was',
  "'s",
  'is',
  'that',
  'the',
  'at',
  'in',
  'on',
  ',',
  'a',
  'an',
  'make',
  'not',
  'of',
  'to',
  'i',
  'mean',
  'meant',
  'sorry',
  'wait',
  'no',
  'about',
  'by',
  'with',
  'more',
  'like',
  '-',
  '--',
  'for',
  'and',
  'actually',
  'just',
  '.',
  ':',
  'between',
  'from',
  'them',
  'were',
  'till',
  'said',
  'did',
  'used',
  'over',
  'behind',
]);

/** Leads on to how something was sewn. */
const HOW = /^(?:in|with|by|using)$/;

const WEAK = new Set(['no', 'not', 'wait', 'well', 'rather', 'actually', 'sorry', 'nope', 'oops']);

/** Puts right what stands before the marker at `k`, in place; the index to go on from, or undefined where nothing was put right. */
export function correctAt(out: Item[], k: number, marker: string[], grid: QuiltGrid): number | undefined {
  const alone = marker.length === 1 ? marker[0]! : '';
  const weak = WEAK.has(alone);
  let m = k + marker.length;
  while (m < out.length && m < k + marker.length + 5 && LIGHT.has(out[m]!.w) && !sortsOf(out[m]!).length) m++;
  // "35 minutes I mean, not 25": what was right is told before
  if (!marker.includes('not') && out.slice(k + marker.length, m).some((x) => x.w === 'not')) return undefined;
  restOfEarlier(out, k, m, grid);
  const next = out[m];
  const sorts = next ? sortsOf(next) : [];
  // "not 3-3, 3-2" names the wrong one first and is read as an amendment.
  if (!next || !sorts.length || alone === 'not') return undefined;
  // "but no, I darned it" calls a plan off
  const paused =
    out[k - 1]?.w !== 'but' &&
    (out.slice(k + marker.length, m).some((x) => /^(,|a|an|more|of|it|that|i)$/.test(x.w)) ||
      next.action?.form === 'past');
  const found =
    rightBefore(out, k, next) ??
    earlierOf(out, k, sorts, weak, paused, /^(till|until|to)$/.test(out[m - 1]?.w ?? '')) ??
    otherReading(out, k, next, weak);
  if (!found) return undefined;
  const { from, hit } = found;
  // "re-sewed the seams, I mean, in backstitch": how the deed was done, and no other deed
  if (
    hit === 'action' &&
    next.stitch &&
    marker.at(-1) === 'mean' &&
    HOW.test(out[m - 1]!.w) &&
    !sortsOf(out[from]!).includes('stitch')
  ) {
    const pause = out[k + marker.length]?.w === ',' ? 1 : 0;
    out.splice(k, marker.length + pause);
    return k;
  }
  // "the edge is worn and the corner top right i mean that's missing": of another place, of which nothing was told yet
  if (hit === 'finding' && tellsOfNext(out.slice(from + 1, k), out.slice(k + marker.length, m)))
    return undefined;
  // "2-4, sorry, for the batting": what the place is right for, and no other place
  if (
    hit === 'place' &&
    next.place?.kind === 'part' &&
    out[from]!.place?.kind === 'blocks' &&
    out.slice(k + marker.length, m).some((x) => x.w === 'for')
  )
    return undefined;
  // "not muslin, I mean the gingham": the earlier is denied already, and the later stands beside it
  const denial = /^(the|a|an|any)$/.test(out[from - 1]?.w ?? '') ? from - 2 : from - 1;
  if (out[denial]?.w === 'not' && denial < 3) return undefined;
  // plain "no" directly before a finding or an action denies it: "backing sound, no holes"
  if (
    alone === 'no' &&
    (hit === 'finding' || hit === 'action' || hit === 'material' || hit === 'task') &&
    !paused
  )
    return undefined;
  if (
    alone === 'no' &&
    next.stitch &&
    ![out[k - 1], out[k - 2]].some((x) => x?.stitch) &&
    out[m - 1]?.w !== ','
  )
    return undefined;
  // "whipstitched, no machine", "ladder stitch, no zigzag": how it was not sewn
  if (alone === 'no' && isPlainlyNone(out, k, m)) return undefined;
  const earlier = out[from]!;
  if (hit === 'place' && earlier.place?.kind === 'part' && next.place?.kind !== 'part' && weak)
    return undefined;
  // "a by b, no, c by b": both go
  if (hit === 'quantity' && out[m + 1]?.w === 'by' && out[m + 2]?.quantity) {
    const by = out[from - 1]?.w === 'by' ? from - 2 : from;
    const unit = out[by + 2]?.quantity?.unit ?? earlier.quantity?.unit;
    const last = out[m + 2]!;
    if (by >= 0 && out[by]?.quantity) {
      if (unit && !last.quantity!.unit) out[m + 2] = { ...last, quantity: { ...last.quantity!, unit } };
      out.splice(by, m - by);
      return by;
    }
  }
  // "between 2-1 and 2-2, no, between 2-2 and 2-3": both go
  if (
    hit === 'place' &&
    out[from - 1]?.w === 'and' &&
    out[from - 2]?.place &&
    out[m + 1]?.w === 'and' &&
    out[m + 2]?.place
  ) {
    out.splice(from - 2, m - from + 2);
    return from - 2;
  }
  const put = ranOn(out, m, keepRest(earlier, next, hit));
  const between = out.slice(from + 1, k);
  // "three inches of overhang all round, no, four, and basted it": the number alone
  const bare = hit === 'quantity' && !next.quantity?.unit && !/^(of|in|for)$/.test(out[m + 1]?.w ?? '');
  // "two yards of backing, no sorry, three yards and a roll of batting": the list goes on, and the stuff stands
  const listed =
    hit === 'quantity' &&
    /^(?:and|&|\+|,|plus)$/.test(out[m + 1]?.w ?? '') &&
    between.some((x) => x.material || x.fabric);
  const restated = !listed && saysMore(out, m + 1) && !(bare && between.some((x) => x.measure));
  const aside = between.at(-1)?.w === ',' && out[m + 1]?.w === ',';
  // "darned 5-1, sorry, patched": where it was done stands, unless another place is told
  const placed = hit !== 'place' && between.some(namesBlock) && !out.slice(m + 1).some(namesBlock);
  // "an hour off for dinner, no, an hour and fifteen minutes": still what was taken off
  // "forty minutes for the pair of them, no, thirty": still for the pair
  const rest =
    hit === 'duration' &&
    between.some((x) =>
      /^(off|out|away|break|lunch|dinner|tea|supper|both|pair|lot|two|three|told|total|altogether)$/.test(
        x.w,
      ),
    );
  if (placed || rest || (between.some((x) => tells(x)) && !restated)) {
    // "3-2 has a hole, no, 3-3": only the word itself changes
    out.splice(k, m + 1 - k);
    out[from] = put;
    return from + 1;
  }
  out[m] = put;
  // "2 skeins, make that 3 skeins, of floss": the pause after belongs to the correction
  if (aside && /^(of|for|at|with|in|on|from|to)$/.test(out[m + 2]?.w ?? '')) out.splice(m + 1, 1);
  out.splice(from, m - from);
  return from;
}

/** Does a place stand open behind the last joint, and is it told of in what comes after the marker? */
function tellsOfNext(between: Item[], lead: Item[]): boolean {
  const joint = between.findLastIndex((x) => /^(?:and|but|&)$/.test(x.w));
  const open = between.slice(joint + 1);
  return (
    joint >= 0 &&
    open.some((x) => x.place) &&
    !open.some((x) => x.finding || x.fail || x.action) &&
    lead.some((x) => /^(?:is|'s|are|was|were)$/.test(x.w))
  );
}

/** A bare stitch right behind a "no" that follows a pause and is followed by none; "no, zigzag" and "no by machine" put right. */
const isPlainlyNone = (out: Item[], k: number, m: number): boolean =>
  m === k + 1 &&
  out[m]!.stitch !== undefined &&
  (out[k - 1]?.token.kind === 'mark' || out[m]!.w === 'machine') &&
  (out[m + 1] === undefined ||
    STOP.test(out[m + 1]!.w) ||
    /^(?:,|and|but|on|at all|this time)$/.test(out[m + 1]!.w));

const namesBlock = (x: Item): boolean => x.place?.kind === 'blocks' && x.place.places.length > 0;

/** "10:30, correction 10:40, to 12:05": what runs on from the clock that is right is a stretch. */
function ranOn(out: Item[], m: number, put: Item): Item {
  const to = out[m + 1]?.w === ',' ? m + 2 : m + 1;
  const end = out[to + 1]?.clock;
  if (!put.clock || !end || !/^(to|till|until|-)$/.test(out[to]?.w ?? '')) return put;
  out.splice(m + 1, to + 1 - m);
  return {
    ...put,
    clock: undefined,
    span: { next: end.next, start: put.clock, end, sure: true, rule: 'time.span' },
  };
}

/** The later word, with what the earlier one said beside it: the unit of a number, the start of a stretch. */
function keepRest(earlier: Item, next: Item, hit: Sort): Item {
  const unit = earlier.quantity?.unit;
  if (hit === 'quantity' && unit && next.quantity && !next.quantity.unit)
    return { ...next, quantity: { ...next.quantity, unit } };
  if (hit === 'span' && earlier.span && next.clock && !next.span) {
    return { ...next, clock: undefined, span: { ...earlier.span, end: next.clock } };
  }
  const value = next.quantity?.unit ? undefined : next.quantity?.value;
  if (hit === 'duration' && earlier.duration && value !== undefined) {
    const minutes = /\bh(?:ou)?rs?\b/.test(earlier.w) ? value * 60 : value;
    return { ...next, quantity: undefined, duration: { ...earlier.duration, minutes } };
  }
  if (hit === 'cost' && earlier.cost && value !== undefined) {
    return { ...next, quantity: undefined, cost: { ...earlier.cost, amount: value } };
  }
  if (hit === 'cost' && earlier.cost?.each && next.cost && !next.cost.each)
    return { ...next, cost: { ...next.cost, each: true } };
  // "whipstitched 5-1, no, ladder stitch": the stitch alone is put right
  if (hit === 'stitch' && earlier.action && !next.action)
    return { ...earlier, stitch: next.stitch, w: next.w };
  return next;
}

const tells = (x: Item): boolean =>
  Boolean(x.finding || x.action || x.stitch || x.object || x.fabric || x.material || x.measure);

/** Does what follows, up to the next pause, say what was found or done? Then the whole statement was begun anew. */
function saysMore(out: Item[], m: number): boolean {
  for (let n = m; n < Math.min(out.length, m + 12); n++) {
    const x = out[n]!;
    if (STOP.test(x.w) || x.w === 'but' || (x.w === 'and' && n > m && !out[n - 1]?.place)) return false;
    if (x.finding || x.action || x.measure || x.material || /^(is|was|are|were|has|had|'s)$/.test(x.w))
      return true;
  }
  return false;
}
