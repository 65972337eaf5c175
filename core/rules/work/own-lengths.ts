import { isStop } from '../clause/joints.ts';
import { REMOVE_VERBS } from '../clause/removal-at.ts';
import type { Item } from '../item.ts';
import { itemWord as w } from '../item-word.ts';

const JOINT = /^(?:,|;|and|&|\+|then)$/;
const LEADS_LENGTH = /^(?:,|\(|in|for|took|was|about|around|only|just|another|nearly|:|-)$/;
const SUBJECT = /^(?:i|we|'ve|'d|have|just|also|then|so|um|uh|right|ok)$/;

const isVerb = (x: Item): boolean =>
  x.action?.form === 'past' || x.action?.form === 'ing' || REMOVE_VERBS[x.w]?.form === 'past';

/** The length told at `k`, behind the words that lead to it: its index, and that it stands in brackets or alone. */
function lengthAt(items: Item[], k: number, sewn = false): number | undefined {
  let at = k;
  while (LEADS_LENGTH.test(w(items, at)) && at < k + 4) at++;
  const x = items[at];
  if (!x || x.duration) return x && at;
  // "3-3 by machine ten"
  if (at === k && !sewn) return undefined;
  const minutes = x.quantity?.unit === undefined ? x.quantity?.value : undefined;
  const end = w(items, at + 1);
  const alone = /^(?:|[.;!\n)])$/.test(end) || (/^(?:,|and|&|\+)$/.test(end) && !/\d/.test(w(items, at + 2)));
  return minutes !== undefined && minutes >= 5 && minutes < 100 && alone ? at : undefined;
}

/** The number as minutes, as the other length told them. */
const asMinutes = (x: Item): Item =>
  x.duration
    ? x
    : {
        ...x,
        duration: { next: x.quantity!.next, minutes: x.quantity!.value!, rule: 'time.minutes' },
        quantity: undefined,
      };

/** The places that begin at `k`: the index after them, or `k`. */
function placesEnd(items: Item[], k: number): number {
  let at = k;
  while (
    items[at]?.place?.places.length ||
    (at > k && /^(?:and|&|,)$/.test(w(items, at)) && items[at + 1]?.place)
  )
    at++;
  return at;
}

const LEADS_PLACE = /^(?:the|one|ones|that|on|in|at|another|i|we|same|ditto|for)$/;

/** "(the) tear in 3-3" */
const namesDamage = (items: Item[], k: number): boolean =>
  Boolean(items[k] && (items[k]!.finding || items[k]!.seam) && !items[k]!.place) &&
  /^(?:on|in|at)$/.test(w(items, k + 1)) &&
  Boolean(items[k + 2]?.place?.places.length);

/** Behind "by machine", "with a ladder stitch", "in backstitch" at `k`; `k` where no stitch is told. */
function stitchEnd(items: Item[], k: number): number {
  let at = k;
  while (/^(?:,|with|in|using|by|a|an)$/.test(w(items, at)) && at < k + 3) at++;
  const x = items[at];
  return x?.stitch && x.action?.form !== 'past' ? at + 1 : k;
}

/** "whipped" where another stitch is told: sewn all the same */
const withoutStitch = (x: Item): Item => ({ ...x, stitch: undefined });

/** The words of the deed that tell nothing of where: "darned", "took the ties out of". */
function deedAround(items: Item[], length: number): Item[] | undefined {
  let from = length;
  while (from > 0 && !isStop(items[from - 1]!)) from--;
  let place = length - 1;
  while (place >= from && !items[place]!.place?.places.length) place--;
  if (place < from || length - place > 7) return undefined;
  // "at 4-2/4-3", "2-1 and 2-2"
  for (let k = place - 1; k >= from && (items[k]!.place || /^(?:,|and|&|\/)$/.test(items[k]!.w)); k--)
    if (items[k]!.place?.places.length) place = k;
  let start = place;
  while (
    start > from &&
    !(JOINT.test(w(items, start - 1)) && !items[start - 2]?.place) &&
    w(items, start - 1) !== ')'
  )
    start--;
  while (start < place && SUBJECT.test(w(items, start))) start++;
  const before = items.slice(start, place);
  if (before.some(isVerb))
    return before.some((x) => x.duration || x.clock || x.quantity) ? undefined : before;
  const behind = items.slice(place + 1, length).filter((x) => !LEADS_LENGTH.test(x.w));
  return behind.length === 1 && behind[0]!.action?.form === 'past' ? behind : undefined;
}

/**
 * "patched 4-4 in forty minutes and 4-5 in twenty-five", "darned 2-1 (15) and 2-3 (10 min)", "… pressed it, five": a deed told once,
 * with a second place and a length of its own. The deed is said again at the second place, and a bare number behind the first
 * length counts as it does.
 */
export function withOwnLengths(items: Item[]): Item[] {
  if (!items.some((x) => x.duration)) return items;
  const out = [...items];
  for (let k = 1; k < out.length; k++) {
    if (!out[k]!.duration && !(out[k]!.quantity && w(out, k - 1) === '(' && w(out, k + 1) === ')')) continue;
    let next = k + 1;
    if (w(out, next) === ')') next++;
    const joint = next;
    while (JOINT.test(w(out, next)) && next < joint + 2) next++;
    if (next === joint) continue;
    const first = next;
    while (LEADS_PLACE.test(w(out, next)) && next < first + 4) next++;
    // "…, and pressed it, five"
    const again = out[next]?.action?.form === 'past';
    // "… and the tear in 3-3, ten": what it was done to there
    const damage = !again && namesDamage(out, next);
    const from = again ? next + 1 : damage ? next + 2 : next;
    const end = again && /^(?:it|them)$/.test(w(out, from)) ? from + 1 : placesEnd(out, from);
    if (end === from) continue;
    // "& 5-4 the same, 10": how it was sewn goes with it
    let tail = end;
    while (/^(?:the|same|ditto|likewise|too|as well|also)$/.test(w(out, tail))) tail++;
    // "… and the one on 1-5 by machine, ten": sewn another way
    const how = tail === end ? stitchEnd(out, end) : end;
    if (how > end) tail = how;
    const length = lengthAt(out, tail, how > end);
    if (length === undefined || !(out[k]!.duration || out[length]!.duration)) continue;
    // "… and the same on 5-4, ten": what was done is said
    const same = out.slice(first, next).some((x) => /^(?:same|ditto)$/.test(x.w));
    const told = again || same ? [] : deedAround(out, k);
    if (!told) continue;
    const deed = damage ? told.slice(0, told.findIndex(isVerb) + 1) : told;
    if (damage && !deed.length) continue;
    out[k] = asMinutes(out[k]!);
    out[length] = asMinutes(out[length]!);
    if (tail > end && how === end && deed.length)
      out.splice(end, tail - end, ...out.slice(Math.max(0, k - 8), k).filter((x) => x.stitch && !x.action));
    const anew = how > end ? deed.map(withoutStitch) : deed.map((x) => ({ ...x }));
    out.splice(first, deed.length && !damage ? next - first : 0, ...anew);
  }
  return out;
}
