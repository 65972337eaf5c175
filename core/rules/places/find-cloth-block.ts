import type { QuiltGrid } from '../../../shared/quilt.ts';
import { readCount, readOrdinal } from '../../text/read-number.ts';
import type { Token } from '../../text/tokenise.ts';
import { wordAt as w } from '../../text/word-at.ts';
import { type FabricIndex, findFabric } from '../fabrics/find-fabric.ts';
import type { FabricFound } from '../item.ts';
import { clothOfLine } from './cloth-of-line.ts';
import { cornerBlocks, liesInLines, splitBlock, unique } from './grid.ts';
import { lineAt } from './line/line-at.ts';
import { outermostOf } from './outermost.ts';
import type { PlaceFound } from './place-found.ts';

type End = 'top' | 'bottom' | 'left' | 'right' | 'middle' | 'first' | 'last';

const ENDS = new Map<string, End>(
  Object.entries({
    top: 'top',
    topmost: 'top',
    upper: 'top',
    uppermost: 'top',
    higher: 'top',
    highest: 'top',
    bottom: 'bottom',
    lower: 'bottom',
    lowest: 'bottom',
    btm: 'bottom',
    left: 'left',
    leftmost: 'left',
    right: 'right',
    rightmost: 'right',
    middle: 'middle',
    centre: 'middle',
    center: 'middle',
    first: 'first',
    last: 'last',
  } satisfies Record<string, End>),
);
const NOUNS = /^(one|ones|block|blocks|square|squares|piece|pieces)$/;
/** After these the side belongs to another thing: "the stripe at the top edge", "in the bottom row". */
const OTHER_NOUNS = /^(row|rows|column|columns|edge|border|corner|half|of|third|seam|layer)$/;

/**
 * One of several blocks of a named cloth, told by where it lies: "the lower grey velvet", "the left-hand check",
 * "the stripe at the bottom", "the first of the three checks". Rows count before columns for first, last and middle.
 *
 * @param cloth the cloth that is named at `i`, where there is one
 */
export function findClothBlock(
  tokens: Token[],
  i: number,
  index: FabricIndex,
  cloth: ReturnType<typeof findFabric>,
  grid?: QuiltGrid,
): { place: PlaceFound; fabric: FabricFound } | undefined {
  if (!index.names.size) return undefined;
  return (
    (grid && clothOfLine(tokens, i, index, grid)) ??
    (grid && cornerOfCloth(tokens, i, index, cloth, grid)) ??
    sideFirst(tokens, i, index, grid) ??
    (cloth && clothFirst(tokens, cloth, index, grid))
  );
}

/** "lower grey velvet", "left-hand check one", "second of the two velvets". */
function sideFirst(tokens: Token[], i: number, index: FabricIndex, grid: QuiltGrid | undefined) {
  const end = endAt(tokens, i);
  if (!end) return undefined;
  // "every last one of the plaid blocks"
  if (end.at === 'last' && /^(every|each)$/.test(w(tokens, i - 1))) return undefined;
  let j = end.next;
  if (NOUNS.test(w(tokens, j)) && w(tokens, j + 1) === 'of') j++;
  const isOf = w(tokens, j) === 'of';
  // "what was left of the gingham", "used the last of the blue": how much of it, not which
  // "every last one of the blue ticking": all of it
  if (end.at === 'last' && /^(every|each)$/.test(w(tokens, i - 1))) return undefined;
  if (isOf && end.at === 'left' && w(tokens, i - 1) !== 'the') return undefined;
  if (isOf && end.at === 'last' && /^(with|used|using|from|of|was|is|'s|took)$/.test(w(tokens, i - 2)))
    return undefined;
  if (isOf) {
    j++;
    while (/^(the|those|these|my)$/.test(w(tokens, j))) j++;
    j = readCount(tokens, j)?.next ?? j;
  } else if (typeof end.at === 'number') return undefined;
  // "a second piece of the peach" is cloth, not a block
  if (/^(a|another)$/.test(w(tokens, i - 1))) return undefined;
  const cloth = findFabric(tokens, j, index);
  if (!cloth) return undefined;
  const next = NOUNS.test(w(tokens, cloth.next)) ? cloth.next + 1 : cloth.next;
  // "the right-hand gingham in the top row": of those in that row
  return (
    (grid && pickInLine(tokens, next, cloth.found, index, end, grid)) ??
    pick(tokens, i, cloth.found, index, end, next)
  );
}

/** "madder stripe at the bottom", "check one furthest right". */
function clothFirst(
  tokens: Token[],
  cloth: { found: FabricFound; next: number },
  index: FabricIndex,
  grid: QuiltGrid | undefined,
) {
  let j = NOUNS.test(w(tokens, cloth.next)) ? cloth.next + 1 : cloth.next;
  const near = /^(furthest|farthest|nearest|closest|nearer)$/.test(w(tokens, j));
  if (near) {
    j++;
    if (/^(to|on)$/.test(w(tokens, j))) j++;
  } else if (
    /^(at|on|to|up|down)$/.test(w(tokens, j)) ||
    // "the flannel in the middle has gone thin"
    (w(tokens, j) === 'in' && /^(middle|centre|center)$/.test(w(tokens, j + 2)))
  ) {
    if (/^(up|down)$/.test(w(tokens, j)) && /^(at|on|to)$/.test(w(tokens, j + 1))) j++;
    j++;
  } else if (w(tokens, j) === ',' && w(tokens, j + 1) === 'the') {
    // "the blue ticking, the upper one, has a tear"
    const told = endAt(tokens, j + 2);
    if (!told || typeof told.at === 'number' || w(tokens, told.next) !== 'one') return undefined;
    const next = told.next + (w(tokens, told.next + 1) === ',' ? 2 : 1);
    return /^(is|'s|has|was|wants|needs|got|looks|gets)$/.test(w(tokens, next))
      ? pick(tokens, -1, cloth.found, index, told, next)
      : undefined;
  } else return undefined;
  if (w(tokens, j) === 'the') j++;
  const end = endAt(tokens, j);
  if (!end || typeof end.at === 'number' || end.at === 'first' || end.at === 'last') return undefined;
  // "the check at the left end of row two"
  const inLine =
    grid && w(tokens, end.next) === 'end'
      ? pickInLine(tokens, end.next + 1, cloth.found, index, end, grid)
      : undefined;
  if (inLine) return inLine;
  const next = (near ? /^(side|edge|end|border)$/ : /^side$/).test(w(tokens, end.next))
    ? end.next + 1
    : end.next;
  if (OTHER_NOUNS.test(w(tokens, next)) || ENDS.has(w(tokens, next))) return undefined;
  return pick(tokens, -1, cloth.found, index, end, next);
}

/** An end, or a corner as two ends: "bottom", "left-hand", "bottom left", "top right-hand". */
export type EndFound = { at: End | number; across?: 'left' | 'right'; next: number };

export function endAt(tokens: Token[], i: number): EndFound | undefined {
  const named = ENDS.get(w(tokens, i));
  if (named) {
    let next = i + 1;
    let across: EndFound['across'];
    if (named === 'top' || named === 'bottom') {
      const k = w(tokens, next) === '-' ? next + 1 : next;
      const side = ENDS.get(w(tokens, k));
      if (side === 'left' || side === 'right') {
        across = side;
        next = k + 1;
      }
    }
    if (w(tokens, next) === '-' && w(tokens, next + 1) === 'hand') next++;
    if (w(tokens, next) === 'hand' || w(tokens, next) === 'most') next++;
    return { at: named, ...(across ? { across } : {}), next };
  }
  const nth = readOrdinal(tokens, i);
  return nth ? { at: nth.value, next: nth.next } : undefined;
}

/** "the two right-hand army drabs": so many of them from that side. */
function several(tokens: Token[], i: number, blocks: string[], { at }: EndFound): string[] | undefined {
  const n = /^(the|those|these|both|)$/.test(w(tokens, i - 2)) ? readCount(tokens, i - 1) : undefined;
  if (!n || n.value < 2 || n.next !== i || typeof at === 'number') return undefined;
  const places = outermostOf(blocks, at, n.value);
  return places?.length === n.value ? places : undefined;
}

function pick(
  tokens: Token[],
  i: number,
  cloth: FabricFound,
  index: FabricIndex,
  end: EndFound,
  next: number,
) {
  const blocks = unique(cloth.names.flatMap((name) => index.blocks[name] ?? []));
  const places = several(tokens, i, blocks, end) ?? pickOfCloth(blocks, end);
  if (!places.length || places.length === blocks.length) return undefined;
  const place: PlaceFound = { next, places, how: 'said', rule: 'place.cloth-block', kind: 'blocks' };
  return { place, fabric: cloth };
}

/** Those of a cloth's blocks that lie at an end of it. */
export function pickOfCloth(of: string[], { at, across }: Omit<EndFound, 'next'>): string[] {
  const blocks = of
    .map((place) => ({ place, ...splitBlock(place)! }))
    .sort((a, b) => a.row - b.row || a.block - b.block);
  if (blocks.length < 2) return [];
  const row = (k: number) => blocks.filter((b) => b.row === blocks.at(k)!.row);
  const columns = blocks.map((b) => b.block);
  const inColumn = (block: number) => blocks.filter((b) => b.block === block);
  const ways: Record<End, () => typeof blocks> = {
    top: () => row(0),
    bottom: () => row(-1),
    left: () => inColumn(Math.min(...columns)),
    right: () => inColumn(Math.max(...columns)),
    middle: () => (blocks.length % 2 ? [blocks[(blocks.length - 1) / 2]!] : []),
    first: () => blocks.slice(0, 1),
    last: () => blocks.slice(-1),
  };
  const line = typeof at === 'number' ? blocks.slice(at - 1, at) : ways[at]();
  const chosen = across ? line.slice(...(across === 'left' ? [0, 1] : [-1])) : line;
  return chosen.map((b) => b.place);
}

/** The blocks of a cloth that lie in a line told at `k` ("in the top row"), at an end of it. */
function pickInLine(
  tokens: Token[],
  k: number,
  cloth: FabricFound,
  index: FabricIndex,
  end: EndFound,
  grid: QuiltGrid,
): ReturnType<typeof pick> {
  if (!/^(in|on|of|along)$/.test(w(tokens, k))) return undefined;
  const line = lineAt(tokens, w(tokens, k + 1) === 'the' ? k + 2 : k + 1, { grid, focus: [], earlier: [] });
  if (line?.how !== 'said') return undefined;
  const inside = unique(cloth.names.flatMap((name) => index.blocks[name] ?? [])).filter((p) =>
    liesInLines(p, line.axis, line.lines),
  );
  const places = inside.length === 1 ? inside : pickOfCloth(inside, end);
  return places.length
    ? {
        place: { next: line.next, places, how: 'said', rule: 'place.cloth-block', kind: 'blocks' },
        fabric: cloth,
      }
    : undefined;
}

/** "the corner check", "the gingham corners", "the corner ones of the gingham", "the check in the (bottom) corner": its blocks in corners of the quilt. */
function cornerOfCloth(
  tokens: Token[],
  i: number,
  index: FabricIndex,
  cloth: ReturnType<typeof findFabric>,
  grid: QuiltGrid,
): ReturnType<typeof pick> {
  const told: ClothToldByCorner | undefined =
    cornerFirst(tokens, i, index) ?? (cloth && cornerBehind(tokens, cloth));
  if (!told) return undefined;
  const corners = cornerBlocks(grid, told.end);
  const places = unique(told.found.names.flatMap((name) => index.blocks[name] ?? [])).filter((p) =>
    corners.includes(p),
  );
  return places.length
    ? {
        place: { next: told.next, places, how: 'said', rule: 'place.cloth-block', kind: 'blocks' },
        fabric: told.found,
      }
    : undefined;
}

/** "corner check", "corner ginghams", "corner ones of the gingham". */
function cornerFirst(tokens: Token[], i: number, index: FabricIndex): ReturnType<typeof findFabric> {
  if (!/^corners?$/.test(w(tokens, i)) || /^(left|right|bottom|top)$/.test(w(tokens, i - 1)))
    return undefined;
  let k = i + 1;
  if (NOUNS.test(w(tokens, k)) && w(tokens, k + 1) === 'of') k += w(tokens, k + 2) === 'the' ? 3 : 2;
  else if (w(tokens, i) === 'corners') return undefined;
  const cloth = findFabric(tokens, k, index);
  return cloth && { ...cloth, next: NOUNS.test(w(tokens, cloth.next)) ? cloth.next + 1 : cloth.next };
}

/** "gingham corners", "gingham corner ones", "check in the corner", "the gingham ones at the corners". */
function cornerBehind(
  tokens: Token[],
  cloth: NonNullable<ReturnType<typeof findFabric>>,
): ClothToldByCorner | undefined {
  let k = NOUNS.test(w(tokens, cloth.next)) ? cloth.next + 1 : cloth.next;
  const led = /^(in|at)$/.test(w(tokens, k)) && w(tokens, k + 1) === 'the';
  if (led) k += 2;
  else if (k > cloth.next) return undefined;
  // "in the bottom corner"
  const end = led && /^(?:top|bottom|left|right)$/.test(w(tokens, k)) ? (w(tokens, k++) as End) : undefined;
  if (w(tokens, k) === 'hand' && end) k++;
  if (!/^corners?$/.test(w(tokens, k))) return undefined;
  k++;
  if (!led && w(tokens, k - 1) === 'corner') {
    if (!NOUNS.test(w(tokens, k))) return undefined;
    k++;
  }
  return w(tokens, k) === 'of' ? undefined : { ...cloth, next: k, end };
}

type ClothToldByCorner = NonNullable<ReturnType<typeof findFabric>> & { end?: End | undefined };
