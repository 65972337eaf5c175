import type { QuiltGrid } from '../../../shared/quilt.ts';
import type { FabricIndex } from '../fabrics/find-fabric.ts';
import { boundaryBefore, type Item } from '../item.ts';
import { allBlocks, splitBlock, unique } from './grid.ts';
import type { PlaceFound } from './place-found.ts';

/** How many items the words for "except" take at `k`; 0 where none stand there. */
function exceptAt(items: Item[], k: number): number {
  const word = items[k]?.w ?? '';
  const next = items[k + 1]?.w ?? '';
  if (
    /^(bar|barring|except|excepting|excluding|exc|excl|minus|save|sans|without|less|(but|also) not)$/.test(
      word,
    )
  )
    return 1;
  if (
    /^(other than|apart from|aside from|not counting|not including|leaving out|but not|except for|but for)$/.test(
      `${word} ${next}`,
    )
  )
    return 2;
  if (
    word === 'but' &&
    /(^| )(all|every|everything|each|one|blocks?|squares?|any|anywhere|nothing|lot)$/.test(
      items[k - 1]?.w ?? '',
    )
  )
    return 1;
  if (word.startsWith('but ') && /(^| )all$/.test(items[k - 1]?.w ?? '')) return 1;
  // "everything in row two but 2-3"
  if (
    word === 'but' &&
    items[k - 1]?.place &&
    items.slice(Math.max(0, k - 6), k).some((x) => /^(all|every|everything|each)( |$)/.test(x.w)) &&
    (items[k + 1]?.place || /^(the|for)$/.test(next))
  )
    return 1;
  // "patched all the red dot ones but the one in row five"
  if (
    word === 'but' &&
    next === 'the' &&
    /^(one|ones|block|blocks)$/.test(items[k + 2]?.w ?? '') &&
    /^(ones|blocks|squares|pieces|them)$/.test(items[k - 1]?.w ?? '') &&
    items.slice(Math.max(0, k - 6), k).some((x) => /^(all|every|both)( |$)/.test(x.w))
  )
    return 1;
  // "every block in row four is thin but the wool"
  if (
    word === 'but' &&
    (items[k + 1]?.fabric || (next === 'the' && items[k + 2]?.fabric)) &&
    items.slice(Math.max(0, k - 9), k).some((x) => /^(all|every|everything|each|whole)( |$)/.test(x.w))
  )
    return 1;
  if (word === 'not' && /^[,(]$/.test(items[k - 1]?.w ?? '') && !/^(the|that) other/.test(next)) return 1;
  // "want lining oh not the corner one that's sound", "wants net over it not 1-3 that's fine"
  // "worn out everywhere, well not in row four"
  if (word === 'not' && (/^(oh|well)$/.test(items[k - 1]?.w ?? '') || isExcused(items, k + 1))) return 1;
  return 0;
}

/** Is the place from `k` on told to be sound: "(not) 1-3 that's fine"? */
function isExcused(items: Item[], k: number): boolean {
  const at = items[k]?.w === 'the' ? k + 1 : k;
  if (!items[at]?.place) return false;
  const that = items.findIndex((x, m) => m > at && m < at + 3 && /^(that|it|which|that one)$/.test(x.w));
  return (
    that > 0 &&
    /^('s|is)$/.test(items[that + 1]?.w ?? '') &&
    items.slice(that + 2, that + 5).some((x) => x.finding === 'sound')
  );
}

const LIGHT =
  /^(for|the|its|it|in|of|on|along|down|across|round|very|only|from|both|a|at|that|those|just|maybe|possibly|perhaps|one|ones|blocks?|squares?)$/;
const JOINT = /^(,|and|&|\+|or)$/;
const NTH = ['first', 'second', 'third', 'fourth', 'fifth', 'sixth', 'seventh', 'eighth', 'ninth', 'tenth'];
const ENDS =
  /^(first|top|left|last|bottom|end|final|right|leftmost|rightmost|lowest|highest|topmost|bottommost|lower|upper)$/;
const UPPER = /^(first|top|left|leftmost|highest|topmost|upper)$/;

/** "the third one along", "the second block across", "the fourth from the left": where these words end. */
function along(items: Item[], k: number): number {
  let m = k;
  if (/^(along|across|in|over)$/.test(items[m]?.w ?? '') && !items[m + 1]?.place) m++;
  if (items[m]?.w === 'from' && /^(the )?left$/.test(items[m + 1]?.w ?? '')) return m + 2;
  return items[m]?.w === 'from' && items[m + 1]?.w === 'the' && items[m + 2]?.w === 'left' ? m + 3 : m;
}

/** "every row but the last", "all the columns bar the first": the lines that are excepted from, where the word before is of lines. */
function linesExceptedFrom(items: Item[], k: number, base: string[]): string[][] | undefined {
  const told = items.slice(0, k).findLast((x) => x.place?.places.length === base.length);
  const noun = /\b(row|column)(?:s?$|s\b)/.exec(told?.w ?? '')?.[1];
  const at = base.map((p) => splitBlock(p));
  if (!noun || at.some((p) => !p)) return undefined;
  const lineOf = (k: number): number => (noun === 'row' ? at[k]!.row : at[k]!.block);
  const lines = [...new Set(base.map((_, k) => lineOf(k)))].sort((a, b) => a - b);
  return lines.length > 1 ? lines.map((line) => base.filter((_, k) => lineOf(k) === line)) : undefined;
}

/** The blocks of `base` that an end of it means: "the first one", "the last two", "the end blocks", "the two ends". */
function endsOf(items: Item[], k: number, base: string[]): { places: string[]; next: number } | undefined {
  let m = k;
  const count = (x: Item | undefined): number | undefined =>
    x?.quantity && !x.quantity.unit && x.quantity.value! < 7
      ? x.quantity.value
      : x?.w === 'both'
        ? 2
        : undefined;
  let n = count(items[m]);
  if (n !== undefined) m++;
  const end = items[m]?.w ?? '';
  const nth = NTH.indexOf(end);
  if (nth > 0 && base[nth]) {
    const noun = items[m + 1]?.w ?? '';
    return /^(row|column|col)s?$/.test(noun)
      ? undefined
      : { places: [base[nth]!], next: along(items, /^(one|block|square)$/.test(noun) ? m + 2 : m + 1) };
  }
  if (/^(middle|centre|center)$/.test(end) && n === undefined)
    return base.length % 2
      ? {
          places: [base[(base.length - 1) / 2]!],
          next: m + (/^(one|block|square)$/.test(items[m + 1]?.w ?? '') ? 2 : 1),
        }
      : undefined;
  const corner = inCorner(`${end} ${items[m + 1]?.w}`, base);
  if (corner) {
    const next = /^hand$/.test(items[m + 2]?.w ?? '') ? m + 3 : m + 2;
    return {
      places: [corner],
      next: /^(one|block|square|corner)$/.test(items[next]?.w ?? '') ? next + 1 : next,
    };
  }
  if (!ENDS.test(end) && !(end === 'ends' && n === 2)) return undefined;
  m++;
  if (items[m]?.w === 'hand') m++;
  n ??= count(items[m]);
  if (n !== undefined && count(items[m]) !== undefined) m++;
  const noun = items[m]?.w ?? '';
  const named = /^(ones?|blocks?|squares?|end)$/.test(noun);
  if (named) m++;
  else if (n === undefined && !/^(|,|\.|;|\)|:|-|--|is|are|was|and|which|that|has|had)$/.test(noun))
    return undefined;
  // "the end one on the right", "the end one at the left-hand side"
  const side = end === 'end' && n === undefined ? endOnSide(items, m) : undefined;
  if (side) return { places: [UPPER.test(side.word) ? base[0]! : base.at(-1)!], next: side.next };
  if (n === 2 && /^ends?$/.test(end)) return { places: [base[0]!, base.at(-1)!], next: m };
  if (/^end$/.test(end) && /s$/.test(noun) && n === undefined)
    return { places: [base[0]!, base.at(-1)!], next: m };
  const many = n ?? 1;
  const lines = /^(block|square)/.test(noun) ? undefined : linesExceptedFrom(items, k, base);
  if (lines && many < lines.length && !/left|right/.test(end))
    return { places: (UPPER.test(end) ? lines.slice(0, many) : lines.slice(-many)).flat(), next: m };
  return {
    places: UPPER.test(end) ? base.slice(0, many) : base.slice(-many),
    next: m,
  };
}

/** "on the left", "at the right-hand side", behind what is at an end: the side, and where its words end. */
function endOnSide(items: Item[], k: number): { word: string; next: number } | undefined {
  if (!/^(on|at)$/.test(items[k]?.w ?? '')) return undefined;
  let m = k + 1;
  while (/^(the|its|far)$/.test(items[m]?.w ?? '')) m++;
  const word = /^(left|right|top|bottom)(?: hand)?(?: side| end)?$/.exec(items[m]?.w ?? '')?.[1];
  if (!word) return undefined;
  m++;
  while (/^(hand|side|end)$/.test(items[m]?.w ?? '')) m++;
  return { word, next: m };
}

/** "all the rose chintz ones except bottom left": of those meant, the one that lies furthest to that corner. */
function inCorner(words: string, base: string[]): string | undefined {
  const told = /^(top|upper|bottom|lower) (left|right)$/.exec(words);
  if (!told) return undefined;
  const at = base.map((p) => splitBlock(p)!);
  if (at.some((p) => !p)) return undefined;
  const rows = at.map((p) => p.row);
  const row = /top|upper/.test(told[1]!) ? Math.min(...rows) : Math.max(...rows);
  const along = at.filter((p) => p.row === row).map((p) => p.block);
  const block = told[2] === 'left' ? Math.min(...along) : Math.max(...along);
  return base.find((p) => p === `${row}-${block}`);
}

/**
 * Takes what is excepted out of the places or the cloth that it is excepted from: "row two bar 2-3", "all the gingham except
 * the one in the top row", "apart from 2-3, row two is stained". The exception's own words are left out, so that no later
 * rule takes them for places. Where the exception is told of in turn ("…, which is only weak") that word stands for it.
 */
export function exceptPlaces(given: Item[], fabrics: FabricIndex, grid: QuiltGrid): Item[] {
  let items = given;
  for (let k = 0; k < items.length; k++) {
    const marker = exceptAt(items, k);
    if (!marker) continue;
    const from = items.slice(0, k).findLastIndex((x) => /^[.;!?\n]$/.test(x.w)) + 1;
    const isBase = (x: Item): boolean =>
      baseOf(x, fabrics).length > 1 &&
      !(sidesOf(x).length && /^(without|less|minus|sans|not)$/.test(items[k]!.w));
    let at = items.slice(0, k).findLastIndex((x, m) => m >= from && isBase(x));
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
    const said = readExcepted(items, k, marker, ahead ? [] : baseOf(items[at]!, fabrics), fabrics);
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
    const base = items[at]!;
    const all = baseOf(base, fabrics);
    const out = said.places.filter((p) => all.includes(p));
    const plainNot = items[k]!.w === 'not';
    if (plainNot && items[said.next]?.w === 'yet') continue;
    if (!out.length || out.length === all.length || (plainNot && out.length < said.places.length)) continue;
    const rest = all.filter((p) => !out.includes(p));
    const without: Partial<Item> = base.place
      ? { place: { ...base.place, places: rest } }
      : { fabric: { ...base.fabric!, bar: out } };
    let next = said.next;
    if (items[next]?.w === ')') next++;
    // "sound except the last two, torn"
    // "r1 all ok bar b4 - split seam", "r1 ok exc b4: torn"
    const marked =
      /^(:|-|--)$/.test(items[next]?.w ?? '') &&
      items.slice(next + 1, next + 3).some((x) => x.finding || x.fail);
    if (marked) next++;
    if (items[next]?.w === ',' && items[next + 1]?.finding && /^(|[.;,])$/.test(items[next + 2]?.w ?? ''))
      next++;
    let start = k;
    while (start > at + 1 && /^(\(|,|all)$/.test(items[start - 1]?.w ?? '')) start--;
    let which = /^[,(]$/.test(items[next]?.w ?? '') ? next + 1 : next;
    // "pressed row 8 except 8-5 (leaving that), and 2-5": the exception is what is left
    if (
      /^(leaving|left)$/.test(items[which]?.w ?? '') &&
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
      if (m === at) return { ...x, ...without };
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
          /^(leaving|left)$/.test(items[m - 1]?.w ?? '') ||
          (x.w === 'that' && /^('s|is|has|had|was|needs|wants|got)$/.test(items[m + 1]?.w ?? '')))
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
          (items[next]!.finding || items[next]!.fail || marked) &&
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
      ...items.slice(next),
    ];
    k = start - 1;
  }
  return items;
}

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
  if (!/^(everything|every block|every one|the lot|all)$/.test(words)) return undefined;
  const said = readExcepted(items, k, marker, allBlocks(grid), fabrics);
  if (!said || !said.places.every((p) => splitBlock(p))) return undefined;
  // "all but the bottom left corner block are sound": what is so of the rest follows at once
  if (words === 'all' && behind === k && !(items[said.next] && isVerb(items[said.next]!))) return undefined;
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
  /^(block|one|lot)$/.test(items[k - 1]?.w ?? '')
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

const baseOf = (x: Item, fabrics: FabricIndex): string[] =>
  sidesOf(x).length
    ? sidesOf(x)
    : x.place &&
        x.place.kind !== 'part' &&
        x.place.places.length > 1 &&
        x.place.places.every((p) => splitBlock(p))
      ? x.place.places
      : !x.place && x.fabric
        ? unique(x.fabric.names.flatMap((n) => fabrics.blocks[n] ?? []))
        : [];

const SIDES = ['top', 'right', 'bottom', 'left'];
/** "the border is sound apart from the top": a border, the edge or the binding as its four sides. */
const sidesOf = (x: Item): string[] => {
  const part =
    x.place?.places.length === 1 ? /^(border|edge|binding)$/.exec(x.place.places[0]!)?.[1] : undefined;
  return part ? SIDES.map((side) => `${part === 'border' ? 'border' : 'edge'}-${side}`) : [];
};

const isVerb = (x: Item): boolean => /^(is|'s|are|has|have|had|was|were|needs)$/.test(x.w);

/** A side told of a border or an edge: "the top", "the left-hand side". */
const sideAt = (x: Item, base: string[]): string[] =>
  x.place?.places.every((p) => /^(edge|border)-/.test(p))
    ? base.filter((p) => x.place!.places.some((q) => q.split('-')[1] === p.split('-')[1]))
    : base.filter((p) => p.split('-')[1]!.startsWith(x.w) && /^([lrtb]|left|right|top|bottom)$/.test(x.w));

const clothWithin = (x: Item, base: string[], fabrics: FabricIndex): string[] =>
  x.fabric!.names.flatMap((n) => fabrics.blocks[n] ?? []).filter((p) => base.includes(p));

/** Those places that each of the last two groups of blocks has. */
const sharedBefore = (items: Item[], k: number, places: string[]): string[] => {
  const groups = items.slice(0, k).filter((x) => (x.place?.places.length ?? 0) > 1);
  const [a, b] = groups.slice(-2);
  return b ? places.filter((p) => a!.place!.places.includes(p) && b.place!.places.includes(p)) : [];
};

/** The places told after "except", and where they end. */
function readExcepted(
  items: Item[],
  k: number,
  marker: number,
  base: string[],
  fabrics: FabricIndex,
): { places: string[]; next: number } | undefined {
  const places: string[] = [];
  let next = k + marker;
  // "but block three": the word stands in one item with its place
  if (items[k]!.place?.places.length && items[k]!.w.startsWith('but '))
    return { places: items[k]!.place!.places, next: k + 1 };
  let joined = true;
  for (let m = k + marker; m < items.length; m++) {
    const x = items[m]!;
    if (JOINT.test(x.w)) joined = true;
    if (x.place?.places.length && x.place.kind !== 'part') {
      // "the one in the top row": of those meant, the ones there
      if (!joined) break;
      // "…, and that one I'm leaving" tells of the exception
      if (places.length && x.place.rule === 'place.that-one') break;
      joined = false;
      // "bar the end block on the left"
      const side =
        /^end (?:one|block|square)$/.test(x.w) && base.length ? endOnSide(items, m + 1) : undefined;
      if (side) {
        places.push(UPPER.test(side.word) ? base[0]! : base.at(-1)!);
        next = side.next;
        m = next - 1;
        continue;
      }
      const inside = base.length ? x.place.places.filter((p) => base.includes(p)) : x.place.places;
      // a new place after a joint, not of these: it begins what is said next
      if (!inside.length && places.length) break;
      // "every block of the bottom row but the middle one": the middle of that row
      if (!inside.length && x.place.rule === 'place.middle' && base.length % 2) {
        places.push(base[(base.length - 1) / 2]!);
        next = m + 1;
        continue;
      }
      if (base.length && !inside.length) return undefined;
      // "the bottom row and the right hand column, not the corner one": where they cross
      const crossing = x.place.rule === 'place.the-corner' ? sharedBefore(items, k, inside) : [];
      places.push(...(crossing.length ? crossing : inside.length ? inside : x.place.places));
      next = /^(one|block|square)$/.test(items[m + 1]?.w ?? '') ? m + 2 : m + 1;
      m = next - 1;
      continue;
    }
    const side = base[0] && !splitBlock(base[0]) ? sideAt(x, base) : undefined;
    if (side?.length) {
      places.push(...side);
      next = m + 1;
      while (/^(hand|side|edge|one|border)$/.test(items[next]?.w ?? '')) next++;
      m = next - 1;
      continue;
    }
    // "except the red calico", "but the wool one": the cloth's blocks among them
    const cloth = base.length && x.fabric && !x.place ? clothWithin(x, base, fabrics) : [];
    if (cloth.length) {
      places.push(...cloth);
      next = /^(one|ones|block|blocks|bit|bits|piece|pieces|square|squares)$/.test(items[m + 1]?.w ?? '')
        ? m + 2
        : m + 1;
      m = next - 1;
      continue;
    }
    const ends = base.length ? endsOf(items, m, base) : undefined;
    if (ends) {
      places.push(...ends.places);
      next = ends.next;
      m = next - 1;
      continue;
    }
    if (LIGHT.test(x.w) || (JOINT.test(x.w) && places.length)) continue;
    break;
  }
  return places.length ? { places: unique(places), next } : undefined;
}
