import type { Item } from '../item.ts';
import { splitBlock, unique } from './grid.ts';

const GENERAL = new Set(['quilt', 'top', 'backing', 'batting', 'binding', 'sashing', 'border', 'edge']);
const isPronoun = (item: Item): boolean =>
  ['place.it', 'place.them', 'place.both', 'place.those', 'place.that-one'].includes(item.place?.rule ?? '');

export type ClausePlaces = {
  places: string[];
  items: Item[];
  kind: 'specific' | 'general' | 'pronoun' | 'none';
  outside: boolean;
  /** "one of the others": a place is meant that can't be known. */
  unknown: boolean;
  /** Places excepted from a cloth's or a group's ("all bar 5-1"). */
  except?: string[];
};

/**
 * The places that a clause is about. Blocks, sides and corners win over a part named as a whole ("the batting is lumpy in
 * the last two blocks"), a part over a pronoun; "the whole quilt" only counts alone.
 */
export function placesOfClause(given: Item[]): ClausePlaces {
  const items = sidesOfBorder(given);
  const ends = exceptedEnd(items);
  if (ends) {
    const rest = placesOfClause(items.slice(0, ends.at));
    return { ...rest, places: rest.places.filter((p) => !ends.places.includes(p)) };
  }
  const placed = items.filter((x, k) => x.place && !isEdgeOfBlock(items, k));
  const outside = placed.some((x) => x.place!.outside && !x.place!.places.length);
  const shut = excluded(items);
  if (shut.size) {
    const rest = placesOfClause(items.filter((x) => !shut.has(x)));
    const out = new Set([...shut].flatMap((x) => x.place!.places));
    const cloth = items.some((x) => x.fabric) && (rest.kind === 'none' || rest.kind === 'pronoun');
    if (cloth) return { places: [], items: [], kind: 'none', outside, unknown: false, except: [...out] };
    if (rest.places.length) return { ...rest, places: rest.places.filter((p) => !out.has(p)) };
  }
  const specific = placed.filter((x) => !isPronoun(x) && x.place!.places.some((p) => !GENERAL.has(p)));
  if (specific.length) {
    const blocks = specific.filter((x) => x.place!.places.some((p) => splitBlock(p)));
    const softCorner = specific.filter((x) => x.place!.soft);
    // "the corner of 3-2": the corner is the block's
    const chosen = blocks.length && softCorner.length ? specific.filter((x) => !x.place!.soft) : specific;
    // "the face, the back and all four corners": parts named in one list with them belong to it
    const listed = placed.filter(
      (x) =>
        !chosen.includes(x) &&
        !isPronoun(x) &&
        x.place!.places.some((p) => p === 'top' || p === 'backing' || p === 'binding' || p === 'border') &&
        joined(items, x, chosen),
    );
    const kept = narrower(chosen);
    const crossed = listed.length ? undefined : crossing(items, kept);
    if (crossed) return { places: crossed, items: chosen, kind: 'specific', outside, unknown: false };
    return {
      places: unique([...listed, ...kept].flatMap((x) => x.place!.places)),
      items: chosen,
      kind: 'specific',
      outside,
      unknown: false,
    };
  }
  const general = placed.filter((x) => !isPronoun(x) && x.place!.places.length);
  if (general.length) {
    const parts = general.filter((x) => x.place!.places[0] !== 'quilt');
    const chosen = parts.length ? parts : general;
    return {
      places: unique(chosen.flatMap((x) => x.place!.places)),
      items: chosen,
      kind: 'general',
      outside,
      unknown: false,
    };
  }
  const pronouns = placed.filter(isPronoun);
  if (pronouns.length) {
    const places = unique(pronouns.at(-1)!.place!.places);
    return { places, items: pronouns, kind: places.length ? 'pronoun' : 'none', outside, unknown: false };
  }
  return {
    places: [],
    items: [],
    kind: 'none',
    outside,
    unknown: placed.some((x) => x.place!.rule === 'place.one-of'),
  };
}

/** "column six, except for its last block", "the right-hand column's tied except the bottom one": one end of what was named. */
function exceptedEnd(items: Item[]): { at: number; places: string[] } | undefined {
  for (let k = 1; k < items.length; k++) {
    if (
      !EXCEPT.has(items[k]!.w) &&
      !(items[k]!.w === 'but' && /^(all|not)$/.test(items[k - 1]!.w + items[k + 1]?.w))
    )
      continue;
    let m = k + 1;
    while (/^(for|the|its|from|of|very|not|only)$/.test(items[m]?.w ?? '')) m++;
    const end = items[m]?.w ?? '';
    const noun = items[m + 1]?.w ?? '';
    if (!/^(last|first|bottom|top|end|final|left|right)$/.test(end) || !/^(one|block|square)$/.test(noun))
      continue;
    const line = items
      .slice(0, k)
      .findLast((x) => x.place && x.place.kind !== 'part' && x.place.places.length > 1);
    if (!line) return undefined;
    const places = line.place!.places;
    return { at: k, places: [/^(first|top|left)$/.test(end) ? places[0]! : places.at(-1)!] };
  }
  return undefined;
}
const EXCEPT = new Set(['except', 'bar', 'barring', 'excepting', 'excluding', 'minus', 'save']);

/** Places after "bar", "except", "all but": not meant. */
function excluded(items: Item[]): Set<Item> {
  const out = new Set<Item>();
  let open = false;
  for (let k = 0; k < items.length; k++) {
    const w = items[k]!.w;
    if (
      w === 'bar' ||
      (w === 'but' && items[k + 1]?.w === 'not' && items[k + 2]?.place) ||
      w === 'except' ||
      w === 'excepting' ||
      w === 'excluding' ||
      (w === 'apart' && items[k + 1]?.w === 'from') ||
      (w === 'but' && items[k - 1]?.w === 'all')
    )
      open = true;
    else if (open && items[k]!.place) out.add(items[k]!);
    else if (open && !/^(for|from|the|and|in|,|&|of|not)$/.test(w)) open = false;
  }
  return out.size && items.some((x) => (x.place && !out.has(x)) || x.fabric) ? out : new Set();
}

/** Is `x` joined by a comma or "and" to one of the others, or to another part that is? */
function joined(items: Item[], x: Item, others: Item[]): boolean {
  let k = items.indexOf(x) + 1;
  for (let steps = 0; steps < 6 && k < items.length; steps++, k++) {
    if (others.includes(items[k]!)) return true;
    if (!/^(,|and|&|the|all|both)$/.test(items[k]!.w) && !items[k]!.place) return false;
  }
  return false;
}

const isRows = (x: Item): boolean =>
  /^place\.(row|ordinal-row|counted-rows|that-row|row-heard)$/.test(x.place!.rule);
const isColumns = (x: Item): boolean =>
  /^place\.(column|ordinal-column|counted-columns|side-column|that-column)$/.test(x.place!.rule);

/**
 * Rows and columns of one clause cross: "mildew in the last two columns, just the bottom three rows of them", "column five
 * down to row four". Joined by "and" they are both meant.
 */
function crossing(items: Item[], kept: Item[]): string[] | undefined {
  if (kept.length !== 2) return undefined;
  const [first, second] = kept as [Item, Item];
  // "the seam between rows two and three has split in block four"
  if (
    items.some((x) => x.seam) &&
    isRows(first) &&
    /^place\.(block-same-row|block-alone)$/.test(second.place!.rule) &&
    /^(in|at|by)$/.test(items[items.indexOf(second) - 1]?.w ?? '')
  ) {
    const blocks = second.place!.places.map((p) => splitBlock(p)?.block);
    return first.place!.places.filter((p) => blocks.includes(splitBlock(p)?.block));
  }
  if (!((isRows(first) && isColumns(second)) || (isColumns(first) && isRows(second)))) return undefined;
  const between = ` ${items
    .slice(items.indexOf(first) + 1, items.indexOf(second))
    .map((x) => x.w)
    .join(' ')} `;
  const line = splitBlock(second.place!.places.at(-1) ?? '');
  const lines = (p: string): number => (isRows(second) ? splitBlock(p)!.row : splitBlock(p)!.block);
  const at = line && (isRows(second) ? line.row : line.block);
  if (at !== undefined && / (down|up|out|over|along|across) to | as far as | until | till /.test(between)) {
    const up = / up to /.test(between) && isRows(second);
    return first.place!.places.filter((p) => splitBlock(p) && (up ? lines(p) >= at : lines(p) <= at));
  }
  const after = items[items.indexOf(second) + 1]?.w;
  if (/ (just|only|in|of|but only) /.test(between) || after === 'of')
    return first.place!.places.filter((p) => second.place!.places.includes(p));
  return undefined;
}

/** A row named and then some of its blocks ("the bottom row, from blocks one and seven"): the blocks are meant. */
function narrower(list: Item[]): Item[] {
  return list.filter(
    (x) =>
      !list.some(
        (y) =>
          y !== x &&
          y.place!.places.length < x.place!.places.length &&
          y.place!.places.every((p) => x.place!.places.includes(p)) &&
          list.indexOf(y) > list.indexOf(x),
      ),
  );
}

/** "the border's gone tender across the top": the side is the border's. */
function sidesOfBorder(items: Item[]): Item[] {
  if (!items.some((x) => x.part === 'border') || !items.some((x) => x.place?.rule === 'place.side-alone'))
    return items;
  return items.map((x) =>
    x.place?.rule === 'place.side-alone'
      ? { ...x, place: { ...x.place, places: x.place.places.map((p) => p.replace('edge-', 'border-')) } }
      : x,
  );
}

/** "along the left edge of 3-1": the block is meant, and the edge is its own. */
function isEdgeOfBlock(items: Item[], k: number): boolean {
  const place = items[k]!.place!;
  if (place.kind !== 'part' || !place.places.every((p) => /^(edge|corner)/.test(p))) return false;
  let m = k + 1;
  if (items[m]?.w !== 'of' && items[m]?.w !== 'in') return false;
  m++;
  if (items[m]?.w === 'the') m++;
  return items[m]?.place?.kind === 'blocks' && items[m]!.place!.places.length === 1;
}
