import type { QuiltGrid } from '../../../shared/quilt.ts';
import { startOfSentence } from '../clause/joints.ts';
import type { FabricIndex } from '../fabrics/find-fabric.ts';
import { boundaryBefore, type Item } from '../item.ts';
import { wordsBetween } from '../words-between.ts';
import { withBarredTold } from './except/barred-told.ts';
import { baseOf, isCorners, sidesOf } from './except/base-of.ts';
import { damageExcepted, damageExceptedAhead } from './except/damage-excepted.ts';
import { exceptAt } from './except/except-at.ts';
import { readExcepted } from './except/read-excepted.ts';
import { allBlocks, splitBlock } from './grid.ts';
import type { PlaceFound } from './place-found.ts';

/**
 * Takes what is excepted out of the places or the cloth that it is excepted from: "row two bar 2-3", "all the gingham except
 * the one in the top row", "apart from 2-3, row two is stained". The exception's own words are left out, so that no later
 * rule takes them for places. Where the exception is told of in turn ("…, which is only weak") that word stands for it.
 */
export function exceptPlaces(given: Item[], fabrics: FabricIndex, grid: QuiltGrid): Item[] {
  let items = sidesAsBase(withMarkersAhead(withBarredTold(given)));
  for (let k = 0; k < items.length; k++) {
    const marker = exceptAt(items, k);
    if (!marker) continue;
    const from = startOfSentence(items, k);
    const isBase = (x: Item): boolean =>
      baseOf(x, fabrics).length > 1 &&
      !(sidesOf(x).length && /^(without|less|minus|sans|not)$/.test(items[k]!.w));
    const apart = damageExceptedAhead(items, k, marker, isBase, fabrics);
    if (apart) {
      items = apart;
      continue;
    }
    let at = items.slice(0, k).findLastIndex((x, m) => m >= from && isBase(x));
    // "corners of the binding worn, all but the top left": what they are the corners of is no base
    if (items[at]?.w === 'binding' && isCorners(items[at - 3] ?? items[at - 2]))
      at -= isCorners(items[at - 3]) ? 3 : 2;
    // "the top row wants net over it, not 1-3": what "it" is
    if (items[at]?.place?.rule === 'place.it') {
      const places = items[at]!.place!.places.join();
      const said = items.slice(0, at).findLastIndex((x, m) => m >= from && x.place?.places.join() === places);
      if (said >= 0) at = said;
    }
    const whole =
      at < 0
        ? (wholeTop(items, k, k, marker, grid, fabrics) ??
          wholeTop(items, allBefore(items, from, k), k, marker, grid, fabrics))
        : undefined;
    if (whole) {
      at = items.findIndex((x) => x.j === whole.next);
      items = items.map((x, m) => (m === at ? { ...x, place: whole } : x));
    }
    const ahead = at < 0;
    const spot = ahead ? undefined : damageExcepted(items, k + marker, baseOf(items[at]!, fabrics));
    if (spot && at >= 0) {
      items = items.map((x, m) => (m === at ? withoutPlaces(x, spot, fabrics) : x));
      items = [...items.slice(0, k), { ...items[k]!, w: ',' }, ...items.slice(k + marker)];
      continue;
    }
    const said =
      readExcepted(items, k, marker, ahead ? [] : baseOf(items[at]!, fabrics), fabrics) ??
      (ahead ? exceptedAhead(items, k, marker, isBase, fabrics) : undefined);
    if (!said) continue;
    if (ahead) {
      const stop = items.findIndex((x, m) => m >= said.next && /^[.;!?\n]$/.test(x.w));
      const range = items.slice(said.next, stop < 0 ? undefined : stop);
      const found = range.findIndex(
        (x) => isBase(x) && said.places.every((p) => baseOf(x, fabrics).includes(p)),
      );
      if (found < 0) continue;
      at = said.next + found;
    }
    const all = baseOf(items[at]!, fabrics);
    const out = said.places.filter((p) => all.includes(p));
    const plainNot = items[k]!.w === 'not';
    if (plainNot && items[said.next]?.w === 'yet') continue;
    if (!out.length || out.length === all.length || (plainNot && out.length < said.places.length)) continue;
    const second = ahead ? undefined : secondOnly(items, at, k, said.next);
    if (second) {
      const rest: PlaceFound = {
        next: items[second]!.i,
        places: all.filter((p) => !out.includes(p)),
        how: 'said',
        rule: 'place.all-but',
        kind: 'blocks',
      };
      const told = items[said.next - 1]!;
      items = [
        ...items.slice(0, k),
        { i: told.i, j: told.j, w: told.w, token: told.token, place: rest },
        ...items.slice(second),
      ];
      continue;
    }
    let next = said.next;
    if (items[next]?.w === ')') next++;
    // "sound except the last two, torn"
    // "r1 all ok bar b4 - split seam", "r1 ok exc b4: torn"
    const marked =
      /^(:|-|--|\()$/.test(items[next]?.w ?? '') &&
      items.slice(next + 1, next + 3).some((x) => x.finding || x.fail);
    if (marked) next++;
    if (items[next]?.w === ',' && items[next + 1]?.finding && /^(|[.;,])$/.test(items[next + 2]?.w ?? ''))
      next++;
    let start = k;
    while (start > at + 1 && /^(\(|,|all)$/.test(items[start - 1]?.w ?? '')) start--;
    let which = /^[,(]$/.test(items[next]?.w ?? '') ? next + 1 : next;
    // "pressed row 8 except 8-5 (leaving that), and 2-5": the exception is what is left
    if (
      /^(leaving|left|leave)$/.test(items[which]?.w ?? '') &&
      /^(that|it|that one)$/.test(items[which + 1]?.w ?? '')
    )
      which++;
    const end = items.findIndex((x, m) => m >= next && /^[.;!?\n]$/.test(x.w));
    // "except the first block, there's a small hole in it"
    const it = ahead
      ? -1
      : items.findIndex(
          (x, m) => m >= next && (end < 0 || m < end) && /^place\.(it|that-one)$/.test(x.place?.rule ?? ''),
        );
    const excepted: PlaceFound = {
      next,
      places: out,
      how: 'implied',
      rule: 'place.excepted',
      kind: 'blocks',
    };
    items = items.map((x, m) => {
      if (m === at) return withoutPlaces(x, out, fabrics);
      // "the bottom row and the right column, not 5-6": out of the other as well
      if (m >= from && m < at && x.place && isBase(x) && x.place.rule !== 'place.it')
        return { ...x, place: { ...x.place, places: x.place.places.filter((p) => !out.includes(p)) } };
      const one = x.place?.rule === 'place.that-one' && /^(that one|that block)$/.test(x.w);
      if (m === it && !items.slice(next, m).some((y) => y.place || (!one && /^(and|i|so)$/.test(y.w))))
        return { ...x, place: { ...excepted, next: x.j } };
      // "except the one in the top row, which is merely weak"
      if (
        m === which &&
        !x.place &&
        (x.w === 'which' ||
          /^(leaving|left|leave)$/.test(items[m - 1]?.w ?? '') ||
          (x.w === 'that' && /^('s|is|has|had|was|needs|wants|got|gets)$/.test(items[m + 1]?.w ?? '')))
      )
        return { ...x, place: { ...excepted, next: x.j } };
      return x;
    });
    if (!ahead && items[which]?.place?.rule === 'place.excepted') items = tellLast(items, which);
    if (ahead && items[next]?.w === ',') next++;
    // "row four is thin but the wool is fine": the exception told of at once
    const told =
      !ahead &&
      items[next] &&
      ((items.slice(at + 1, k).some(isVerb) && isVerb(items[next]!)) ||
        // "r7 ok exc b4 thin"
        (items.slice(at + 1, k).some((x) => x.finding) &&
          (items[next]!.finding || items[next]!.fail || marked || isVerb(items[next]!)) &&
          !plainNot))
        ? items[said.next - 1]!
        : undefined;
    items = [
      ...items.slice(0, start),
      ...(told
        ? [
            { ...items[k]!, w: ',' },
            { i: told.i, j: told.j, w: told.w, token: told.token, place: { ...excepted, next: told.j } },
          ]
        : items[next]?.place?.rule === 'place.excepted'
          ? [boundaryBefore(items[next]!)]
          : []),
      // "net over all of them bar 3-3, which gets a patch"
      ...(which === next + 1 && items[which]?.w === 'which' && items[which]!.place
        ? [boundaryBefore(items[which]!), ...items.slice(which)]
        : items.slice(next)),
    ];
    k = start - 1;
  }
  return items;
}

/**
 * "row two's all been vacuumed and, except for 2-5, pressed": where the second thing said begins that alone does not hold for the
 * exception. What is said of it first holds for all.
 */
function secondOnly(items: Item[], at: number, k: number, next: number): number | undefined {
  let joint = k - 1;
  while (/^(,|\(|-|--|also|then|all|um|er|uh)$/.test(items[joint]?.w ?? '')) joint--;
  if (joint <= at || !/^(and|&|\+|but)$/.test(items[joint]!.w)) return undefined;
  const tells = (x: Item | undefined): boolean =>
    x !== undefined && !x.place && (x.finding !== undefined || x.action?.form === 'past');
  // "vacuumed row two and, bar 2-5, pressed it"
  const from = items.slice(0, at).findLastIndex((x) => /^[,.;!?\n]$/.test(x.w)) + 1;
  if (!items.slice(from, joint).some(tells)) return undefined;
  let second = next;
  while (
    /^(,|\)|-|--|it|is|'s|has|been|now|all|also|then|i|'ve|have|were|was|they|are)$/.test(
      items[second]?.w ?? '',
    )
  )
    second++;
  const verb = items[second];
  if (!tells(verb) && !(verb?.stitch && tells(items[second + 1]))) return undefined;
  // "…, pressed row three": of a place of its own
  const end = items.findIndex((x, m) => m > second && /^[,.;!?\n]$/.test(x.w));
  return items.slice(second, end < 0 ? undefined : end).some((x) => x.place?.how === 'said')
    ? undefined
    : second;
}

/** "row three is faded, 3-4 excepted", "3-4 aside, row three is sound": as if the word stood before its place. */
function withMarkersAhead(items: Item[]): Item[] {
  return items.flatMap((x, k) => {
    const next = items[k + 1];
    if (x.place && next && AFTERWARDS.test(next.w) && (k === 0 || /^([,(]|with|the)$/.test(items[k - 1]!.w)))
      return [boundaryBefore(x, 'except'), x];
    // "border ok, bottom excepted"
    if (
      SIDE.test(x.w) &&
      next &&
      AFTERWARDS.test(next.w) &&
      items.slice(0, k).some((y) => sidesOf(y).length) &&
      /^([,(]|the)$/.test(items[k - 1]?.w ?? '')
    )
      return [boundaryBefore(x, 'except'), x];
    return AFTERWARDS.test(x.w) && (items[k - 1]?.place || SIDE.test(items[k - 1]?.w ?? '')) ? [] : [x];
  });
}
const SIDE = /^(top|bottom|left|right)$/;
const AFTERWARDS = /^(excepted|excluded|aside)$/;

/** "bound all the sides but the bottom": all four are what is excepted from. */
function sidesAsBase(items: Item[]): Item[] {
  const k = items.findIndex(
    (x, m) =>
      /\b(sides|edges)$/.test(x.w) &&
      /^ (?:\S+ )*all (?:the |of the |its |four )*$/.test(wordsBetween(items, Math.max(0, m - 3), m)) &&
      exceptAt(items, m + 1) > 0,
  );
  if (k < 0) return items;
  const places = ['edge-top', 'edge-right', 'edge-bottom', 'edge-left'];
  return items.map((x, m) =>
    m === k
      ? { ...x, place: { next: x.j, places, how: 'said', rule: 'place.several-sides', kind: 'part' } }
      : x,
  );
}

/** "except for the gingham, all of row one is sound", "bar the corners, column one is frayed": told by what it is excepted from. */
function exceptedAhead(
  items: Item[],
  k: number,
  marker: number,
  isBase: (x: Item) => boolean,
  fabrics: FabricIndex,
): ReturnType<typeof readExcepted> {
  const stop = items.findIndex((x, m) => m > k && /^[.;!?\n]$/.test(x.w));
  for (let m = k + marker + 1; m < (stop < 0 ? items.length : stop); m++) {
    if (!isBase(items[m]!) || !items[m]!.place) continue;
    const said = readExcepted(items, k, marker, baseOf(items[m]!, fabrics), fabrics);
    if (said && said.next <= m) return said;
  }
  return undefined;
}

/** Places taken out of what the item names. */
const withoutPlaces = (x: Item, out: string[], fabrics: FabricIndex): Item =>
  x.place
    ? { ...x, place: { ...x.place, places: baseOf(x, fabrics).filter((p) => !out.includes(p)) } }
    : { ...x, fabric: { ...x.fabric!, bar: out } };

/** "everything's sound apart from 2-3": behind the words for all, where what is so of them stands before the exception. */
function allBefore(items: Item[], from: number, k: number): number {
  const at = items.findLastIndex(
    (x, m) => m >= from && m < k && /^(everything|all|every block|every one)$/.test(x.w),
  );
  const between = items.slice(at + 1, k);
  return at >= 0 &&
    between.length < 5 &&
    between.some((x) => x.finding || x.action) &&
    !between.some((x) => x.place || x.fabric)
    ? at + 1
    : 0;
}

/** "everything but 2-3 is sound", "darned every block but 2-3": of the whole top, where it is said what is so of the rest. */
function wholeTop(
  items: Item[],
  behind: number,
  k: number,
  marker: number,
  grid: QuiltGrid,
  fabrics: FabricIndex,
): PlaceFound | undefined {
  const words = wholeBefore(items, behind);
  if (!/^(everything|every block|every one|the lot|all|all over|it all)$/.test(words)) return undefined;
  const said = readExcepted(items, k, marker, allBlocks(grid), fabrics);
  if (!said?.places.every((p) => splitBlock(p))) return undefined;
  // "all but the bottom left corner block are sound": what is so of the rest follows at once
  const next = items[said.next];
  // "brushed all but the bottom one": of the few that were told, and not of the quilt
  const named = items
    .slice(k + marker, said.next)
    .some(
      (x) => x.fabric || x.place?.how === 'said' || /^(corners?|corner (blocks|ones|squares))$/.test(x.w),
    );
  const doneAll =
    named &&
    // "tied all but 2-2, every eight inches", "tied all but the middle block with red floss"
    (next === undefined || /^([,.;!?\n(]|every|with|in|by|took|at)$/.test(next.w)) &&
    items.slice(0, k).some((x) => x.action?.form === 'past');
  const deed = next?.action?.form === 'past' || (next?.finding && next.place === undefined);
  if (words === 'all' && behind === k && !(next && isVerb(next)) && !doneAll && !deed) return undefined;
  const told =
    items.slice(said.next, said.next + 2).some((x) => isVerb(x) || x.finding || x.action) ||
    items.slice(0, k).some((x) => x.finding || x.action);
  return told
    ? {
        next: items[behind - 1]!.j,
        places: allBlocks(grid),
        how: 'implied',
        rule: 'place.all-but',
        kind: 'blocks',
      }
    : undefined;
}

const wholeBefore = (items: Item[], k: number): string =>
  /^(block|one|lot|over)$/.test(items[k - 1]?.w ?? '')
    ? `${items[k - 2]?.w ?? ''} ${items[k - 1]!.w}`
    : (items[k - 1]?.w ?? '');

/** "row two but the third one, which has a tear, is sound": what is told of the exception is put behind what the rest is. */
function tellLast(items: Item[], which: number): Item[] {
  const close = items.findIndex((x, m) => m > which && x.w === ',');
  if (close < 0 || close > which + 9 || !items[close + 1] || !isVerb(items[close + 1]!)) return items;
  const stop = items.findIndex((x, m) => m > close && /^[,.;!?\n]$/.test(x.w));
  const end = stop < 0 ? items.length : stop;
  return [
    ...items.slice(0, which),
    ...items.slice(close + 1, end),
    items[close]!,
    ...items.slice(which, close),
    ...items.slice(end),
  ];
}

const isVerb = (x: Item): boolean => /^(is|'s|are|has|have|had|was|were|needs)$/.test(x.w);
