import { boundaryBefore, type Item, makeItem } from '../item.ts';
import { isNet } from '../treatments/is-cloth.ts';
import { isStop } from './joints.ts';

/** When it is to be, as it is typed behind a plan. */
const DAY =
  /^(?:tomorrow|tmrw|tmw|tom|tonight|later|next|mon|tue|tues|wed|weds|thu|thur|thurs|fri|sat|sun|(?:mon|tues|wednes|thurs|fri|satur|sun)day)$/;

/**
 * Deeds of a typed list that are told by a bare word: "3-4 net, hand, 25m" (net as a deed beside a block), "3-4: tear, net tmrw", "3-4
 * torn, patch Mon" (what is found, and behind the comma what is to be done about it). Behind a block "net" is given the form of a verb,
 * and before a plan the comma becomes a stop, so that they are read as they would be written out.
 */
export function withShortDeeds(items: Item[]): Item[] {
  if (!items.some((_x, k) => isShortDeed(items, k))) return items;
  const done = /^(?:done|did)$/.test(items[0]?.w ?? '') && /^(?::|-)$/.test(items[1]?.w ?? '');
  if (done && items.some((_x, k) => k > 1 && isShortDeed(items, k))) return underDone(items);
  const out: Item[] = [];
  items.forEach((x, k) => {
    const before = items[k - 1];
    const plan = isPlanBehindFinding(items, k) && before !== undefined;
    if (plan) {
      out.pop();
      out.push(boundaryBefore(x));
    }
    if (!isNetAsDeed(items, k) && !(plan && isNet(x))) {
      out.push(plan && x.action ? { ...x, deed: true, object: undefined, material: undefined } : x);
      return;
    }
    const timed = lengthAhead(items, k);
    out.push(
      timed
        ? { ...x, material: 'net', action: undefined, deed: undefined }
        : { ...x, deed: true, action: { v: 'overlay', form: 'base' } },
    );
    if (timed)
      out.push(
        makeItem(x.j, x.j, 'over', { ...x.token, w: 'over', kind: 'word', from: x.token.to, glued: false }),
      );
  });
  return out;
}

/** "done: net 3-1, patch 3-2": what the list has is done, up to the end of its sentence. */
function underDone(items: Item[]): Item[] {
  const stop = items.findIndex(isStop);
  const end = stop < 0 ? items.length : stop;
  return items.slice(2).map((x, m): Item => {
    const k = m + 2;
    if (k >= end || !isShortDeed(items, k)) return x;
    return { ...x, deed: true, action: { v: x.action?.v ?? 'overlay', form: 'past' } };
  });
}

/** A deed by its plain verb, or by the stuff for it. */
const isShortDeed = (items: Item[], k: number): boolean =>
  isNet(items[k]) || (items[k]!.action?.form === 'base' && items[k]!.action.v !== 'leave' && !items[k]!.part);

/** "tear, net tmrw", "torn, patch Mon". */
function isPlanBehindFinding(items: Item[], k: number): boolean {
  if (!isShortDeed(items, k) || !/^(?:,|>|->|=>|→)$/.test(items[k - 1]?.w ?? '')) return false;
  // "2-2: hole, net", "hole, net, hand, 20m": for net no day is needed
  const bare = isNet(items[k]) && (ends(items, k + 1) || items[k + 1]!.stitch !== undefined);
  if (!bare && !(DAY.test(items[k + 1]?.w ?? '') && ends(items, k + 2))) return false;
  let from = k - 1;
  while (from > 0 && !isStop(items[from - 1]!) && k - from < 7) from--;
  const told = items.slice(from, k - 1);
  return (
    told.some((x) => x.finding || x.fail) &&
    told.some((x) => x.place) &&
    !told.some((x) => x.action?.form === 'past' && !x.finding)
  );
}

/** Net behind a block or behind its colon, with nothing beside it that makes it goods. */
function isNetAsDeed(items: Item[], k: number): boolean {
  const x = items[k]!;
  if (!isNet(x) && !(x.deed && /^(?:net|tulle|netting)$/.test(x.w))) return false;
  // "net: 3-1, 3-2"
  if (items[k + 1]?.w === ':' && items[k + 2]?.place?.kind === 'blocks' && (k === 0 || isStop(items[k - 1]!)))
    return true;
  // "replace the first, net the second"
  if (
    /^place\.(?:one-of-them|the-other)$/.test(items[k + 1]?.place?.rule ?? '') &&
    (k === 0 || /^(?:,|;|and|then)$/.test(items[k - 1]!.w))
  )
    return true;
  const lead = /^(?::|-|--|,)$/.test(items[k - 1]?.w ?? '') ? k - 2 : k - 1;
  const place = items[lead];
  if (place?.place?.kind !== 'blocks') return false;
  // "row 2 and 3-4, net": behind a comma only where more is told of how
  if (items[k - 1]!.w === ',' && !lengthAhead(items, k)) return false;
  if (lead > 0 && !opens(items, lead)) return false;
  return (
    ends(items, k + 1) ||
    items[k + 1]!.stitch !== undefined ||
    items[k + 1]!.duration !== undefined ||
    DAY.test(items[k + 1]!.w)
  );
}

/** Does a piece of the list begin with the places that end at `k`? */
function opens(items: Item[], k: number): boolean {
  let from = k;
  while (
    from > 0 &&
    (items[from - 1]!.place?.kind === 'blocks' || /^(?:and|&|\+|,)$/.test(items[from - 1]!.w))
  )
    from--;
  return (
    from === 0 ||
    items[from - 1]!.token.kind === 'mark' ||
    /^(?:then|also|now|so|ok)$/.test(items[from - 1]!.w) ||
    items[from] !== items[k]
  );
}

const ends = (items: Item[], k: number): boolean =>
  k >= items.length || (items[k]!.token.kind === 'mark' && items[k]!.w !== '?');

/** A length of time before the next block or the end of the sentence. */
function lengthAhead(items: Item[], k: number): boolean {
  for (let m = k + 1; m < items.length && m < k + 8; m++) {
    const x = items[m]!;
    if (isStop(x) || x.place?.kind === 'blocks') return false;
    if (x.duration) return true;
    if (DAY.test(x.w)) return false;
  }
  return false;
}
