import type { Item } from '../item.ts';
import { type Sort, sortsOf } from './sorts-of.ts';

/** A sentence ends here: nothing before it is put right. */
export const STOP = /^[.;!?\n]$/;

type Hit = { from: number; hit: Sort };

/** A number without a unit. */
export const bareNumber = (x: Item | undefined): number | undefined =>
  x?.quantity?.unit || x?.place || x?.clock ? undefined : x?.quantity?.value;

/** Behind a length of time: for how much it was. */
const FOR_BOTH =
  /^(?:for|the|of|them|those|these|it|that|both|pair|lot|two|three|all|told|in|total|altogether|together|jobs?|things?|whole)$/;

/** "six yards for the backing, thirty six pounds, correction, thirty nine": a bare number puts right the price or the length of time right before it. */
export function rightBefore(out: Item[], k: number, next: Item): Hit | undefined {
  let from = /^[,-]$/.test(out[k - 1]?.w ?? '') ? k - 2 : k - 1;
  // "forty minutes for the pair of them, no, thirty"
  const end = isEndOf(out, next) || /^(?:and|but|so|then)$/.test(out[out.indexOf(next) + 1]?.w ?? '');
  if (end) while (from > 0 && from > k - 8 && FOR_BOTH.test(out[from]!.w)) from--;
  const before = out[from];
  if (!before) return undefined;
  if (next.duration && before.duration && !before.quantity && from < k - 2) return { from, hit: 'duration' };
  if (bareNumber(next) === undefined) return undefined;
  if (before.cost && !before.quantity) return { from, hit: 'cost' };
  return before.duration && !before.quantity ? { from, hit: 'duration' } : undefined;
}

/** The nearest word before the marker of a sort that the later word has too. */
export function earlierOf(
  out: Item[],
  k: number,
  sorts: Sort[],
  weak: boolean,
  paused: boolean,
  until: boolean,
): Hit | undefined {
  // "three inches of overhang all the way round, no, four": the measure tells which figure
  const measured = sorts.includes('quantity') && out.slice(Math.max(0, k - 8), k).some((x) => x.measure);
  let reach = weak && !measured ? 5 : 9;
  for (let b = k - 1; b >= Math.max(0, k - reach); b--) {
    // "the bottom right corner of the quilt, no, the bottom left"
    if (out[b]!.place?.places[0] === 'quilt' && /^(of|on)$/.test(out[b - 2]?.w ?? '') && out[b - 3]?.place)
      continue;
    const own = sortsOf(out[b]!);
    // "from one till ten to three on the label, no, till three"
    if (out[b]!.span && sorts.includes('clock') && until) return { from: b, hit: 'span' };
    const firm = own.find(
      (s) => sorts.includes(s) && s !== 'action' && s !== 'material' && s !== 'finding' && s !== 'task',
    );
    // "whipstitched the seam in 5-1, I mean ladder stitched": the seam is no deed
    const loose = (weak && !paused) || out[b]!.seam ? undefined : own.find((s) => sorts.includes(s));
    const hit = firm ?? (weak && b < k - 4 ? undefined : loose);
    if (hit) return { from: b, hit };
    if (STOP.test(out[b]!.w)) {
      // a sentence of its own, "No, 3-3.", may mend the one before
      if (b !== k - 1) return undefined;
      reach += 4;
    }
  }
  return undefined;
}

/** A bare number that the later word shows to have been a clock, a price or a length of time; a stretch whose end is put right. */
export function otherReading(out: Item[], k: number, next: Item, weak: boolean): Hit | undefined {
  // "Forty minutes. No, fifty."
  const alone = out[k]!.w === 'no' && STOP.test(out[k - 1]?.w ?? '') && isEndOf(out, next);
  const b = out[k - 1]?.w === ',' || alone ? k - 2 : k - 1;
  const before = out[b];
  if (!before) return undefined;
  if (before.span && next.clock) return { from: b, hit: 'span' };
  if (before.clock && next.span) return { from: b, hit: 'clock' };
  const bare = next.quantity?.value !== undefined && !next.quantity.unit;
  if (bare && before.duration) return { from: b, hit: 'duration' };
  if (bare && before.cost) return { from: b, hit: 'cost' };
  const number = before.quantity && !before.quantity.unit;
  // "twenty nine fifty, no, thirty one fifty all up": the sum before it was read as two numbers
  if (next.cost && number && bareNumber(out[b - 1]) !== undefined) return { from: b - 1, hit: 'cost' };
  if (
    (number || (!weak && (before.place || before.clock))) &&
    (next.clock || next.span || next.duration || next.cost || next.quantity?.unit)
  )
    return { from: b, hit: 'quantity' };
  return undefined;
}

/** Does nothing more follow in its sentence? */
const isEndOf = (out: Item[], item: Item): boolean =>
  /^(|[.;!?,\n])$/.test(out[out.indexOf(item) + 1]?.w ?? '');
