import type { QuiltGrid } from '../../../shared/quilt.ts';
import { readCount, readOrdinal } from '../../text/read-number.ts';
import type { Token } from '../../text/tokenise.ts';
import { wordAt as w } from '../../text/word-at.ts';
import type { Item } from '../item.ts';
import { type EndFound, endAt, pickOfCloth } from './find-cloth-block.ts';
import { cornerBlock, splitBlock } from './grid.ts';
import type { PlaceFound } from './place-found.ts';

/**
 * A cloth of which a sentence tells: "the black sateen is weak in the second row and torn in the fifth", "claret velvet, top row:
 * thin. Third row: stained". A line, a side or an end named after it is that of the cloth's own blocks.
 */
export type ClothInHand = {
  blocks: string[];
  /** It stands before a mark ("velvet: row 1 torn"), so that lines need no "in" before them. */
  heads: boolean;
  /** Its blocks told so far, for "the other one". */
  told: string[];
  /** What it was last told by, for "torn in the fifth". */
  axis?: 'row' | 'block';
  /** Its blocks in the line last told, for "in row four, at the right". */
  line?: string[];
  /** Its sentence has ended: one more line right behind ("Third row: stained") is still of it. */
  ended: boolean;
};

/** After these the cloth is what was told of, and the line is where. */
const LEADS = /^(in|on|at|along|from|inside|for|over)$/;
const MARKS = /^(,|:|;|-|--)$/;
const JOINTS = /^(and|but|or|while|whereas|though)$/;
const ROWS = /^(row|rows|r)$/;
const BLOCK = /^(block|blk)$/;
const COLUMNS = /^(column|columns|col|cols)$/;
const ONES = /^(one|ones|block|blocks|square|squares|piece|pieces|patch)$/;
/** What a side or an end may stand before and still be an end of the cloth's blocks. */
const ENDS_THERE =
  /^(|[,.;:)]|\n|and|but|or|is|'s|are|'re|was|has|have|looks?|got|gone|only|too|as|so|because|since|i|where|which|with|while|though|needs?|wants?|still|just)$/;
const NOT_ITS_OWN = /^(border|borders|edge|edges|hem|binding|seam|seams|half|third|strip|layer|layers)$/;

/** The cloth named by the last item, where it begins what a sentence tells. */
export function clothTaken(
  items: Item[],
  blocks: string[],
  next: Token | undefined,
): ClothInHand | undefined {
  if (blocks.length < 2) return undefined;
  // "Of the olive twill blocks, the two in the second row have shattered"
  const of =
    items.slice(-4, -1).some((x) => x.w === 'of') && /^(blocks|ones|squares|pieces|,)$/.test(next?.w ?? '');
  const heads = of || (next !== undefined && (MARKS.test(next.w) || next.w === '\n'));
  if (!heads && !TELLS.test(next?.w ?? '')) return undefined;
  // "patched 2-3 with it, the velvet is …": stuff to work with is told with other words before it in the same breath
  return items.slice(-8).some((x) => x.action && x.action.form !== 'base')
    ? undefined
    : { blocks, heads, told: [], ended: false };
}
const TELLS =
  /^(is|'s|are|'re|was|were|has|have|'ve|had|looks?|i|sits?|lies|goes|shows?|seems?|bled|ran|faded|rotted|shattered|split|gave|needs?|wants?|gets?|will|ones|blocks|one|block|in|torn|thin|worn|frayed|stained)$/;

/** Does the cloth stay in hand behind this item? */
export function staysInHand(hand: ClothInHand, item: Item): ClothInHand | undefined {
  if (/^[.!?\n]$/.test(item.w) && item.token.kind === 'mark')
    return hand.ended ? undefined : { ...hand, ended: true };
  if (item.part || item.seam || item.fabric || item.cost || item.duration || item.clock || item.span)
    return undefined;
  // "there's a stain in row two": of something else
  if (item.w === 'there' || item.w === 'my' || (item.w === 'i' && hand.told.length)) return undefined;
  if (item.place && !item.place.rule.startsWith('place.cloth-') && item.place.kind !== 'pointer')
    return undefined;
  return hand;
}

/** The blocks of the cloth in hand that the words at `i` tell. */
export function ofClothInHand(
  tokens: Token[],
  i: number,
  hand: ClothInHand,
  grid: QuiltGrid,
): PlaceFound | undefined {
  let k = i;
  while (/^(the|its|all|both)$/.test(w(tokens, k))) k++;
  let b = i - 1;
  while (/^(the|its|just|only|down|up|over|and|but|um|uh|er)$/.test(w(tokens, b))) b--;
  const before = w(tokens, b);
  const led = LEADS.test(before);
  const opens = before === '' || /^[.;\n]$/.test(before);
  if (hand.ended && !opens) return undefined;
  const listed = led || opens || MARKS.test(before);
  const found =
    (hand.heads && listed ? countedIn(tokens, k, hand) : undefined) ??
    (listed || JOINTS.test(w(tokens, i - 1)) ? allCorners(tokens, k, hand, grid) : undefined) ??
    (led || ((opens || hand.heads) && listed) ? lineOf(tokens, k, hand) : undefined) ??
    endOf(tokens, i, k, hand, led, listed) ??
    (led || opens || hand.heads ? bareNth(tokens, i, k, hand, led) : undefined) ??
    others(tokens, i, hand);
  if (
    !found?.places.length ||
    (found.places.length === hand.blocks.length && found.rule !== 'place.cloth-corners')
  )
    return undefined;
  // "in the bottom row the gold brocade's faded": where another thing is
  if (ROWS.test(w(tokens, found.next - 1)) && /^(the|every|all|a|an)$/.test(w(tokens, found.next)))
    return undefined;
  // behind the full stop only a line with its finding goes on with the cloth
  if (
    hand.ended &&
    !/^(:|,|-|--|gone|torn|thin|worn|stained|faded|sound|fine|ok|okay)$/.test(w(tokens, found.next))
  )
    return undefined;
  return { ...found, how: 'said', kind: 'blocks' };
}

type Found = Pick<PlaceFound, 'next' | 'places' | 'rule'>;

const within = (hand: ClothInHand, axis: 'row' | 'block', n: number): string[] =>
  hand.blocks.filter((p) => splitBlock(p)?.[axis] === n);

/** "row 2", "the second row", "col 4", "the top row". */
function lineOf(tokens: Token[], k: number, hand: ClothInHand): Found | undefined {
  const noun = w(tokens, k);
  // "the velvet in block six": of the row just spoken of, or its only one there
  const one = BLOCK.test(noun) ? readCount(tokens, k + 1) : undefined;
  if (one && within(hand, 'block', one.value).length === 1)
    return alongLine(hand, 'block', one.value, one.next);
  if (ROWS.test(noun) || COLUMNS.test(noun)) {
    const n = readCount(tokens, k + 1);
    // "row 2 block 3" is a block, and "rows 2 and 3" lines of their own
    if (!n) return undefined;
    const after = /^(and|,)$/.test(w(tokens, n.next)) ? n.next + 1 : n.next;
    if (/^(block|b|-|to|through)$/.test(w(tokens, n.next)) || readCount(tokens, after)) return undefined;
    return alongLine(hand, ROWS.test(noun) ? 'row' : 'block', n.value, n.next);
  }
  const nth = readOrdinal(tokens, k);
  if (!nth) return undefined;
  const line = w(tokens, nth.next);
  if (ROWS.test(line)) return alongLine(hand, 'row', nth.value, nth.next + 1);
  return COLUMNS.test(line) ? alongLine(hand, 'block', nth.value, nth.next + 1) : undefined;
}

/** "(of the olive twill,) the two in the second row". */
function countedIn(tokens: Token[], k: number, hand: ClothInHand): Found | undefined {
  const n = readCount(tokens, k);
  const at = ONES.test(w(tokens, n?.next ?? k)) ? (n?.next ?? k) + 1 : (n?.next ?? k);
  if (at === k || !LEADS.test(w(tokens, at))) return undefined;
  const line = lineOf(tokens, w(tokens, at + 1) === 'the' ? at + 2 : at + 1, hand);
  return line && (!n || line.places.length === n.value) ? line : undefined;
}

/** Its blocks in one row or column, where it has any there. */
function alongLine(hand: ClothInHand, axis: 'row' | 'block', n: number, next: number): Found | undefined {
  const places = within(hand, axis, n);
  if (!places.length) return undefined;
  hand.axis = axis;
  hand.line = places;
  return { next, places, rule: 'place.cloth-line' };
}

/** "(weak in the second row and torn) in the fifth", "(second row: stain.) fifth: sound". */
function bareNth(tokens: Token[], i: number, k: number, hand: ClothInHand, led: boolean): Found | undefined {
  const nth = hand.axis ? readOrdinal(tokens, k) : undefined;
  if (!nth) return undefined;
  const fits =
    led && w(tokens, i) === 'the' ? ENDS_THERE.test(w(tokens, nth.next)) : w(tokens, nth.next) === ':';
  return fits ? alongLine(hand, hand.axis!, nth.value, nth.next) : undefined;
}

/** "in the upper one", "thin in the lower", "on the right", "top left: stained", "at the bottom". */
function endOf(
  tokens: Token[],
  i: number,
  k: number,
  hand: ClothInHand,
  led: boolean,
  listed: boolean,
): Found | undefined {
  const end = endAt(tokens, k);
  if (!end || typeof end.at === 'number') return undefined;
  let next = end.next;
  const noun = w(tokens, next);
  if (NOT_ITS_OWN.test(noun)) return undefined;
  // "the velvet is torn, and the top left block is musty": a block of the quilt
  if (
    BLOCK.test(noun) &&
    end.across !== undefined &&
    (!led || !/^(in|on|at)$/.test(w(tokens, i - 1))) &&
    !hand.heads
  )
    return undefined;
  // "both velvets need pressing; the bottom row is restitched"
  if (ROWS.test(noun) && !led && !hand.heads) return undefined;
  const one = ONES.test(noun) || (ROWS.test(noun) && (end.at === 'top' || end.at === 'bottom'));
  const corner = noun === 'corner' && end.across !== undefined;
  const side = noun === 'side' && (end.at === 'left' || end.at === 'right');
  if (one || corner || side) next++;
  const n = one ? undefined : readCount(tokens, next);
  if (n && (led || (hand.heads && listed))) {
    const places = severalAt(hand.blocks, end.at, n.value);
    const after = ONES.test(w(tokens, n.next)) ? n.next + 1 : n.next;
    return places ? { next: after, places, rule: 'place.cloth-end' } : undefined;
  }
  if (end.at === 'first' || end.at === 'last' || (end.at === 'middle' && !one)) return undefined;
  const firm =
    one ||
    corner ||
    (end.across !== undefined && (led || ENDS_THERE.test(w(tokens, next)))) ||
    (hand.heads && listed);
  if (!firm && !(led && w(tokens, i) === 'the')) return undefined;
  if (!ENDS_THERE.test(w(tokens, next)) && !one && !hand.heads) return undefined;
  if (corner && !listed) return undefined;
  // "in row four, at the right"
  const line = hand.line && MARKS.test(w(tokens, i - 2)) && hand.line.length > 1 ? hand.line : hand.blocks;
  const picked = pickOfCloth(line, end);
  return picked.length ? { next, places: picked, rule: 'place.cloth-end' } : undefined;
}

/** "in the top two": so many of its blocks from that end, where it is clear which they are. */
function severalAt(blocks: string[], at: EndFound['at'], n: number): string[] | undefined {
  if (n < 2 || n >= blocks.length) return undefined;
  const axis = at === 'left' || at === 'right' ? 'block' : 'row';
  const far = at === 'bottom' || at === 'right' || at === 'last' ? -1 : 1;
  const line = (p: string): number => splitBlock(p)![axis] * far;
  const sorted = [...blocks].sort((a, b) => line(a) - line(b));
  return line(sorted[n - 1]!) === line(sorted[n]!) ? undefined : sorted.slice(0, n);
}

/** "it sits in all four corners": the corner blocks, where the cloth is in them all. */
function allCorners(tokens: Token[], k: number, hand: ClothInHand, grid: QuiltGrid): Found | undefined {
  const n = readCount(tokens, k);
  const at = n?.value === 4 ? n.next : k;
  if (w(tokens, at) !== 'corners') return undefined;
  const corners = [true, false].flatMap((top) => [
    cornerBlock(grid, top, true),
    cornerBlock(grid, top, false),
  ]);
  return corners.every((p) => p !== undefined && hand.blocks.includes(p))
    ? { next: at + 1, places: corners as string[], rule: 'place.cloth-corners' }
    : undefined;
}

/** "the other one", "the others", "the other two": what was not told yet. */
function others(tokens: Token[], i: number, hand: ClothInHand): Found | undefined {
  if (!hand.told.length) return undefined;
  // "the two in row two have shattered; the third is weak": the one that is left
  const nth = w(tokens, i) === 'the' ? readOrdinal(tokens, i + 1) : undefined;
  const rest = hand.blocks.filter((p) => !hand.told.includes(p));
  if (
    nth &&
    nth.value === hand.blocks.length &&
    rest.length === 1 &&
    (ENDS_THERE.test(w(tokens, nth.next)) || ONES.test(w(tokens, nth.next)))
  )
    return {
      next: nth.next + (ONES.test(w(tokens, nth.next)) ? 1 : 0),
      places: rest,
      rule: 'place.cloth-other',
    };
  const k = w(tokens, i) === 'the' || w(tokens, i) === 'its' ? i + 1 : i;
  if (k === i || !/^(other|others)$/.test(w(tokens, k))) return undefined;
  if (w(tokens, k) === 'others') return { next: k + 1, places: rest, rule: 'place.cloth-other' };
  const n = readCount(tokens, k + 1);
  const counted = n && w(tokens, k + 1) !== 'one' ? n : undefined;
  if (counted && counted.value !== rest.length) return undefined;
  const noun = w(tokens, counted?.next ?? k + 1);
  if (!counted && !(ONES.test(noun) || ENDS_THERE.test(noun))) return undefined;
  return {
    next: (counted?.next ?? k + 1) + (ONES.test(noun) ? 1 : 0),
    places: rest,
    rule: 'place.cloth-other',
  };
}
