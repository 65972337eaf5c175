import type { FabricIndex } from '../../fabrics/find-fabric.ts';
import type { Item } from '../../item.ts';
import { splitBlock, unique } from '../grid.ts';
import { outermostCorner } from '../outermost.ts';
import { endOnSide, endsOf, UPPER } from './ends-of.ts';
import { endsOfLines } from './ends-of-lines.ts';
import { isBareNumber } from './except-at.ts';

const LIGHT =
  /^(for|the|its|it|in|of|on|along|down|across|round|very|only|from|both|a|at|that|those|just|maybe|possibly|perhaps|one|ones|blocks?|squares?)$/;
const JOINT = /^(,|and|&|\+|or)$/;

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

/** "bar the top left", of the corners or of a few blocks. */
function cornerIn(items: Item[], m: number, base: string[]): { place: string; next: number } | undefined {
  const said = items[m]!.w.split(' ').length > 1 ? items[m]!.w : `${items[m]!.w} ${items[m + 1]?.w}`;
  const at = /^(top|upper|bottom|lower) (left|right)\b/.exec(said);
  if (!at) return undefined;
  const blocks = base[0] !== undefined && splitBlock(base[0]) !== undefined;
  const place = blocks
    ? (outermostCorner(base, at[1]!, at[2]!) ?? '')
    : `corner-${/top|upper/.test(at[1]!) ? 'top' : 'bottom'}-${at[2]}`;
  let next = said === items[m]!.w ? m + 1 : m + 2;
  while (/^(hand|corners?|ones?)$/.test(items[next]?.w ?? '')) next++;
  return base.includes(place) ? { place, next } : undefined;
}

/** What may stand behind the last number of a list of blocks. */
const BEHIND_NUMBERS = /^(,|and|&|\+|or|is|'s|are|has|have|which|[.;:()!])$/;

/** "but two and five", of a row or a column: the block of that number. */
function numberIn(items: Item[], m: number, base: string[]): string | undefined {
  const next = items[m + 1];
  if (!isBareNumber(items[m])) return undefined;
  if (next && !BEHIND_NUMBERS.test(next.w) && !next.finding && !next.fail) return undefined;
  const at = base.map((p) => splitBlock(p));
  const row = at.every((b) => b && b.row === at[0]!.row);
  if (!row && !at.every((b) => b && b.block === at[0]!.block)) return undefined;
  return base.find((_p, k) => (row ? at[k]!.block : at[k]!.row) === items[m]!.quantity!.value);
}

/** The places told after "except", and where they end. */
export function readExcepted(
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
    const corner = joined ? cornerIn(items, m, base) : undefined;
    if (corner) {
      joined = false;
      places.push(corner.place);
      next = corner.next;
      m = next - 1;
      continue;
    }
    if (x.place?.places.length && x.place.kind !== 'part') {
      // "the one in the top row": of those meant, the ones there
      if (!joined) break;
      // "apart from 5-1, column one is faded": what it is excepted from
      if (
        !base.length &&
        places.length &&
        x.place.places.length > places.length &&
        places.every((p) => x.place!.places.includes(p))
      )
        break;
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
    const both = endsOfLines(items, m, base);
    if (both) {
      places.push(...both.places);
      next = both.next;
      m = next - 1;
      continue;
    }
    const side =
      base[0] && !splitBlock(base[0]) && !base[0].startsWith('corner-') ? sideAt(x, base) : undefined;
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
    // "row one: all but two and five"
    const nth = joined ? numberIn(items, m, base) : undefined;
    if (nth) {
      joined = false;
      places.push(nth);
      next = m + 1;
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
