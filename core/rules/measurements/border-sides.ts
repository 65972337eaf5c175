import type { Item } from '../item.ts';
import { itemWord as w } from '../item-word.ts';

export type BorderWidth = { at: number; places: string[]; side: Item };

const SIDE: Record<string, string[]> = {
  top: ['top'],
  bottom: ['bottom'],
  btm: ['bottom'],
  left: ['left'],
  right: ['right'],
  l: ['left'],
  r: ['right'],
  sides: ['left', 'right'],
};
const ALL = ['top', 'right', 'bottom', 'left'];
/** A border is wider than this in no unit. */
const WIDEST: Record<string, number> = { in: 24, cm: 60, mm: 600 };

/**
 * "five and three quarters at the top and four and a half down either side", "border L 9.5 cm, R 9", "10 cm all round except
 * the bottom at 12": the widths of a border whose sides are told apart. Gives where each figure stands; nothing where the
 * figures are those of the quilt's own sides. `figure` says whether an item may be a length, `unitOf` in which unit.
 */
export function borderSides(
  items: Item[],
  figure: (x: Item | undefined) => boolean,
  unitOf: (x: Item | undefined) => string | undefined,
): BorderWidth[] {
  const from = items.findIndex((x) => x.part === 'border' || x.place?.places[0]?.startsWith('border'));
  if (from < 0) return [];
  const found: BorderWidth[] = [];
  for (let k = from; k < Math.min(items.length, from + 30); k++) {
    if (
      items[k]!.place?.kind === 'blocks' ||
      items[k]!.finding ||
      (items[k]!.action && k > from && !SIDE[items[k]!.w])
    )
      break;
    // "attach it to all four sides": how many they are
    const counts = !unitOf(items[k]) && /^sides?$/.test(w(items, k + 1));
    const behind = figure(items[k]) && !counts ? sidesAt(items, k + 1, found) : undefined;
    if (behind) {
      found.push({ at: k, places: behind.places, side: items[behind.next - 1]! });
      k = behind.next - 1;
      continue;
    }
    const named = sidesAt(items, k, found);
    if (!named) continue;
    let m = named.next;
    while (
      m < named.next + 5 &&
      /^(is|are|'s|was|were|at|:|=|measures?|one|ones|only|just|border|borders|about|comes|to|of|a|wide|side|hand)$/.test(
        w(items, m),
      ) &&
      !figure(items[m])
    )
      m++;
    if (figure(items[m]) && items[m + 1]?.measure !== 'seam') {
      found.push({ at: m, places: named.places, side: items[k]! });
      k = m;
    }
  }
  const unit = found.map(({ at }) => unitOf(items[at])).find(Boolean) ?? items.map(unitOf).find(Boolean);
  const most = WIDEST[unit ?? ''];
  if (!most || found.some(({ at }) => items[at]!.quantity!.value! > most)) return [];
  // one alone is a border told with its side, unless the side stands behind the figure or the border was told before
  const [only] = found;
  if (found.length === 1 && (only!.side === items[from] || (items[from]!.place?.places.length ?? 0) < 1))
    return [];
  return found.map((x) => ({ ...x, places: x.places.map((side) => `border-${side}`) }));
}

/** The sides that the words at `k` name, and the index behind them: "at the top", "down either side", "top and bottom", "the rest". */
function sidesAt(
  items: Item[],
  k: number,
  before: BorderWidth[],
): { places: string[]; next: number } | undefined {
  let m = k;
  while (
    /^(at|on|along|down|across|for|in|wide|the|both|each|either|along|inches)$/.test(w(items, m)) &&
    m < k + 4
  )
    m++;
  const x = items[m];
  if (!x) return undefined;
  const told = x.place?.places ?? [];
  if (told.length && told.length < 4 && told.every((p) => /^(border|edge)-/.test(p)))
    return { places: told.map((p) => p.split('-')[1]!), next: m + 1 };
  if (x.w === 'side' && /^(either|each|both)$/.test(w(items, m - 1)))
    return { places: ['left', 'right'], next: m + 1 };
  if (/^(rest|others|other (?:two|three|sides|one))$/.test(x.w) && before.length) {
    const rest = ALL.filter((side) => !before.some((b) => b.places.includes(side)));
    return rest.length ? { places: rest, next: m + 1 } : undefined;
  }
  if (!Object.hasOwn(SIDE, x.w)) return undefined;
  const places = [...SIDE[x.w]!];
  let next = m + 1;
  while (
    /^(and|&|\/|\+)$/.test(w(items, next)) &&
    Object.hasOwn(SIDE, w(items, next + (w(items, next + 1) === 'the' ? 2 : 1)))
  ) {
    const at = next + (w(items, next + 1) === 'the' ? 2 : 1);
    // "five at the top and left four and a half" begins the next side
    if (items[at + 1]?.quantity && !items[m - 1]?.quantity) break;
    places.push(...SIDE[w(items, at)]!);
    next = at + 1;
  }
  if (/^(side|edge|hand|one|ones|border)$/.test(w(items, next)) && !items[next]!.quantity) next++;
  return { places, next };
}
