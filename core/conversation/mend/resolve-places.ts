import type { QuiltGrid } from '../../../shared/quilt.ts';
import type { Item } from '../../rules/item.ts';
import { blockAt, cornerBlock, rowOf, splitBlock } from '../../rules/places/grid.ts';
import type { ReaderState } from '../../rules/reader-state.ts';
import { readNumber } from '../../text/read-number.ts';
import { placesOf, type Standing } from '../standing.ts';
import { asPlace, POINTERS, STOPS } from './items.ts';

const HOMOPHONES: Record<string, number> = {
  for: 4,
  fore: 4,
  to: 2,
  too: 2,
  won: 1,
  ate: 8,
  tree: 3,
  sex: 6,
};

const NTH: Record<string, number> = { first: 0, second: 1, third: 2, fourth: 3, fifth: 4 };

/** "bottom right", of the corner or the corner block that stands. */
function cornerTold(upright: Item, side: Item, entries: Standing[], grid: QuiltGrid): string | undefined {
  if (!/^(top|upper|bottom|lower)$/.test(upright.w) || !/^(left|right)$/.test(side.w)) return undefined;
  const top = /^(top|upper)$/.test(upright.w);
  const told = entries.flatMap(({ was }) => placesOf(was));
  if (told.length && told.every((p) => p.startsWith('corner-')))
    return `corner-${top ? 'top' : 'bottom'}-${side.w}`;
  const corners = [true, false].flatMap((t) => [true, false].map((l) => cornerBlock(grid, t, l)));
  return told.length === 1 && corners.includes(told[0]!)
    ? cornerBlock(grid, top, side.w === 'left')
    : undefined;
}

/** Places that only make sense beside what stands: "block three" in the row spoken of, "the first one", "the row was the third". */
export function resolvePlaces(state: ReaderState, standing: Standing[], items: Item[]): Item[] {
  const { grid } = state;
  const out: Item[] = [];
  const entries = standing.filter(({ was }) => was.kind === 'treatment' || was.kind === 'condition');
  const several = entries.findLast(({ was }) => placesOf(was).filter((p) => splitBlock(p)).length > 1);
  const list = several ? placesOf(several.was) : [];
  const row = entries
    .flatMap(({ was }) => placesOf(was))
    .map((p) => splitBlock(p)?.row)
    .findLast((r) => r !== undefined);
  let picked: string | undefined;
  for (let k = 0; k < items.length; k++) {
    const x = items[k]!;
    const before = items[k - 1];
    const next = items[k + 1];
    if (
      x.place &&
      !x.place.places.length &&
      !x.place.outside &&
      /^(block|square|patch)/.test(x.w) &&
      row !== undefined
    ) {
      const n = readNumber(state.tokens, x.i + 1)?.value;
      const block = n === undefined ? undefined : blockAt(grid, row, n);
      if (block) {
        out.push(asPlace(items, k, k, [block]));
        continue;
      }
    }
    // "not the top left, the bottom right", where a corner was told
    const corner =
      next && !x.place?.places.some((p) => splitBlock(p)) ? cornerTold(x, next, entries, grid) : undefined;
    if (corner) {
      out.push(asPlace(items, k, k + 1, [corner], 'amend.corner'));
      k++;
      continue;
    }
    // "it was seven for", where places are spoken of
    if (
      next &&
      Object.hasOwn(HOMOPHONES, next.w) &&
      !next.place &&
      !x.place &&
      (k + 2 >= items.length || STOPS.has(items[k + 2]!.w) || items[k + 2]!.w === ',') &&
      items.some((y) => y.place?.places.length && !POINTERS.has(y.place.rule))
    ) {
      const n = readNumber(state.tokens, x.i)?.value;
      const block = n === undefined ? undefined : blockAt(grid, n, HOMOPHONES[next.w]!);
      if (block) {
        out.push(asPlace(items, k, k + 1, [block]));
        k++;
        continue;
      }
    }
    // "third, I mean", where one whole row stands
    if (Object.hasOwn(NTH, x.w) && k <= 1 && items.length <= 5 && NTH[x.w]! < grid.rows) {
      const told = entries.flatMap(({ was }) => placesOf(was));
      const whole = splitBlock(told[0] ?? '')?.row;
      if (
        whole !== undefined &&
        told.join() === rowOf(grid, whole).join() &&
        !/^(block|one)/.test(next?.w ?? '')
      ) {
        out.push(asPlace(items, k, k, rowOf(grid, NTH[x.w]! + 1), 'amend.row'));
        continue;
      }
    }
    // "the row i vacuumed was the third"
    if (
      Object.hasOwn(NTH, x.w) &&
      before?.w === 'the' &&
      (next === undefined || STOPS.has(next.w) || next.w === ',')
    ) {
      const head = items.slice(Math.max(0, k - 8), k).map((y) => y.w);
      if (head.includes('row') && NTH[x.w]! < grid.rows) {
        out.push(asPlace(items, k, k, rowOf(grid, NTH[x.w]! + 1), 'amend.row'));
        continue;
      }
    }
    if (x.place?.rule === 'place.one-of-them' && x.place.places.length === 1) picked = x.place.places[0];
    // "only the first one", "the other": of the blocks that stand
    if (list.length > 1 && before?.w === 'the' && !x.place) {
      const one = next && (/^ones?$/.test(next.w) || next.quantity?.value === 1) ? 1 : 0;
      const n = x.w === 'last' ? list.length - 1 : NTH[x.w];
      if (
        n !== undefined &&
        (one || next === undefined || /^('s|is|was|of|only|,|\.)$/.test(next.w)) &&
        list[n] !== undefined
      ) {
        picked = list[n]!;
        out.push(asPlace(items, k, k + one, [picked], 'amend.pick'));
        k += one;
        continue;
      }
      if (/^(other|others)$/.test(x.w) && (picked !== undefined || list.length === 2)) {
        const rest = list.filter((p) => p !== picked);
        if (picked !== undefined) {
          out.push(asPlace(items, k, k + one, rest, 'amend.pick'));
          k += one;
          continue;
        }
      }
    }
    out.push(x);
  }
  return out;
}
