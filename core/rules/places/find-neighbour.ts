import { BLOCK_WORDS } from '../../lexicon/place-words.ts';
import { readCount, readOrdinal } from '../../text/read-number.ts';
import type { Token } from '../../text/tokenise.ts';
import { wordAt as w } from '../../text/word-at.ts';
import { blockOfThing } from './find-mention.ts';
import { blockFrom, columnOf, gridOfRow, rowOf, splitBlock, unique } from './grid.ts';
import { wholeLines } from './line-spoken.ts';
import type { PlaceContext, PlaceFound } from './place-found.ts';

/**
 * Blocks told by where they lie from another: "the one below it", "two along from that", "the blocks above and below 2-2",
 * "its right-hand neighbour", "the one below and to the left".
 */

type Step = { row: number; block: number };
/** `one`: a single direction; `several`: all of these steps at once ("either side", "around"). */
type Way = { steps: Step[]; next: number; several: boolean; slack?: boolean };

const BLOCKS = new Set(BLOCK_WORDS.filter((x) => x !== 'b' && x !== 'blocked'));
const STEPS = new Map<string, Step>(
  Object.entries({
    below: { row: 1, block: 0 },
    beneath: { row: 1, block: 0 },
    under: { row: 1, block: 0 },
    underneath: { row: 1, block: 0 },
    down: { row: 1, block: 0 },
    above: { row: -1, block: 0 },
    up: { row: -1, block: 0 },
    along: { row: 0, block: 1 },
    across: { row: 0, block: 1 },
    over: { row: 0, block: 1 },
    after: { row: 0, block: 1 },
    before: { row: 0, block: -1 },
    beside: { row: 0, block: 1 },
    alongside: { row: 0, block: 1 },
    left: { row: 0, block: -1 },
    right: { row: 0, block: 1 },
    l: { row: 0, block: -1 },
    r: { row: 0, block: 1 },
  }),
);
const CROSS: Step[] = [
  { row: -1, block: 0 },
  { row: 0, block: -1 },
  { row: 0, block: 1 },
  { row: 1, block: 0 },
];
const RING: Step[] = [
  ...CROSS,
  { row: -1, block: -1 },
  { row: -1, block: 1 },
  { row: 1, block: -1 },
  { row: 1, block: 1 },
];
const SIDES: Step[] = [
  { row: 0, block: -1 },
  { row: 0, block: 1 },
];

function wayAt(tokens: Token[], i: number, count: number | undefined): Way | undefined {
  let k = i;
  while (
    /^(just|directly|immediately|straight|that|'s|is|are|lying|sitting|which|all|comes|coming|lies|sits|stands)$/.test(
      w(tokens, k),
    ) &&
    k < i + 3
  )
    k++;
  // "its neighbour over on the left"
  if (
    /^(over|across|along|round|across)$/.test(w(tokens, k)) &&
    /^(to|on|at)$/.test(w(tokens, k + 1)) &&
    /^(left|right)$/.test(w(tokens, k + 3))
  )
    k++;
  const diagonal = /^diagonal(ly)?$/.test(w(tokens, k));
  if (diagonal) k++;
  // "to the left", "on its right", "to the L", "left of"
  if (/^(to|on|at)$/.test(w(tokens, k)) && /^(the|its)$/.test(w(tokens, k + 1))) {
    const side = w(tokens, k + 2);
    const far = /^(immediate|far)$/.test(side) ? k + 3 : k + 2;
    if (!/^(left|right|l|r)$/.test(w(tokens, far)) || w(tokens, far - 1) === 'far') return undefined;
    let next = far + 1;
    while (/^(hand|side)$/.test(w(tokens, next))) next++;
    if (/^(edge|border|column|corner|end|block)$/.test(w(tokens, next))) return undefined;
    return { steps: [STEPS.get(w(tokens, far))!], next, several: false };
  }
  const word = w(tokens, k);
  if ((word === 'left' || word === 'right') && /^(and|&|of|or)$/.test(w(tokens, k + 1)) && !diagonal)
    return { steps: [STEPS.get(word)!], next: k + 1, several: false };
  if (word === 'right' && (STEPS.has(w(tokens, k + 1)) || w(tokens, k + 1) === 'next'))
    return wayAt(tokens, k + 1, count);
  if (word === 'next') {
    let next = k + 1;
    if (/^(to|too|door)$/.test(w(tokens, next))) next++;
    else return undefined;
    const side = wayAt(tokens, next, count);
    if (
      side &&
      w(tokens, next - 1) === 'door' &&
      !side.several &&
      side.steps[0]!.row === 0 &&
      /^(to|on)$/.test(w(tokens, next)) &&
      /^(left|right)$/.test(w(tokens, next + 2))
    )
      return side;
    if (w(tokens, next) === 'to') next++;
    return { steps: [{ row: 0, block: 1 }], next, several: false, slack: true };
  }
  if (/^(either|both|each)$/.test(word)) {
    const at = w(tokens, k + 1) === 'of' ? k + 2 : k + 1;
    return /^sides?$/.test(w(tokens, at)) ? { steps: SIDES, next: at + 1, several: true } : undefined;
  }
  if (
    /^(on|at|to)$/.test(word) &&
    /^(either|both|each)$/.test(w(tokens, k + 1)) &&
    /^sides?$/.test(w(tokens, k + 2))
  )
    return { steps: SIDES, next: k + 3, several: true };
  if (/^(around|round|surrounding|touching|touch|adjoining|bordering)$/.test(word)) {
    const eight = count === undefined ? /^(around|round|surrounding)$/.test(word) : count > 4;
    return { steps: eight ? RING : CROSS, next: k + 1, several: true };
  }
  // "the block over it" lies above, "two over from that" beside
  if (word === 'over' && /^(it|that|this|them|those|\d+)$/.test(w(tokens, k + 1)) && count === undefined)
    return { steps: [STEPS.get('above')!], next: k + 1, several: false };
  const step = STEPS.get(word);
  if (!step || /^(left|right|l|r)$/.test(word)) return undefined;
  // "the one beside it on the left" says on which side
  const slack = /^(beside|alongside)$/.test(word);
  return { steps: [step], next: k + 1, several: false, ...(slack ? { slack } : {}) };
}

/** One way or several: "above and below", "below and to the left", "left and right of". */
function waysAt(
  tokens: Token[],
  i: number,
  count: number | undefined,
): { list: Way[]; next: number } | undefined {
  const first = wayAt(tokens, i, count);
  if (!first) return undefined;
  const list = [first];
  let next = first.next;
  const joint = /^(and|&|or|,)$/.test(w(tokens, next));
  const second = wayAt(tokens, joint ? next + 1 : next, count);
  const sideways = second && !second.several && second.steps[0]!.row === 0;
  if (second && !first.several && !second.several) {
    const turned = (first.steps[0]!.row === 0) !== (second.steps[0]!.row === 0);
    const opposite =
      first.steps[0]!.row + second.steps[0]!.row === 0 &&
      first.steps[0]!.block + second.steps[0]!.block === 0;
    const plain = /^(to|on|left|right|above|below|beneath|under)$/.test(w(tokens, joint ? next + 1 : next));
    if (plain && (joint ? turned || opposite : turned && sideways && w(tokens, next) !== 'under')) {
      list.push(second);
      next = second.next;
    }
  }
  // "above and below it" told with the second left bare: "left and right of it"
  if (
    joint &&
    list.length === 1 &&
    /^(left|right)$/.test(w(tokens, next + 1)) &&
    /^(left|right)$/.test(w(tokens, next - 1))
  ) {
    list.push({ steps: [STEPS.get(w(tokens, next + 1))!], next: next + 2, several: false });
    next += 2;
  }
  return { list, next };
}

export const lastBlock = (ctx: PlaceContext): string | undefined => {
  for (const group of [ctx.focus, ...[...ctx.earlier].reverse()]) {
    const block = group.findLast((p) => splitBlock(p));
    if (block) return block;
  }
  return undefined;
};

const lastCorner = (ctx: PlaceContext): string | undefined => {
  const { rows, blocks } = ctx.grid;
  for (const group of [ctx.focus, ...[...ctx.earlier].reverse()]) {
    const block = group.findLast((p) => {
      const at = splitBlock(p);
      return at && (at.row === 1 || at.row === rows) && (at.block === 1 || at.block === blocks);
    });
    if (block) return block;
  }
  return undefined;
};

const isCorner = ({ grid }: PlaceContext, place: string): boolean => {
  const at = splitBlock(place);
  return (
    at !== undefined && (at.row === 1 || at.row === grid.rows) && (at.block === 1 || at.block === grid.blocks)
  );
};

/** "directly beneath that one there is an old patch", "below 3-2 there's a hole": the block below, where the other is only told for its place. */
function whereItLies(
  tokens: Token[],
  i: number,
  ctx: PlaceContext,
  placeAt: (j: number) => PlaceFound | undefined,
): PlaceFound | undefined {
  const k = w(tokens, i) === 'right' ? i + 1 : i;
  const lead = /^(directly|just|immediately|straight)$/.test(w(tokens, i - 1)) ? i - 2 : i - 1;
  if (!/^(|[.,;:!?\n]|--|and|but|so|then|um|uh|er|also|well)$/.test(w(tokens, lead))) return undefined;
  if (!/^(below|beneath|underneath|under|above)$/.test(w(tokens, k))) return undefined;
  // "under it", "beneath the second of them": what a patch had hidden
  const one = /^(that|this) (one|block|square)$/.test(`${w(tokens, k + 1)} ${w(tokens, k + 2)}`);
  const named = one || thingAt(tokens, k + 1, ctx) !== undefined;
  if (!named && !/^place\.(pair|row-block|block-row)$/.test(placeAt(k + 1)?.rule ?? '')) return undefined;
  const ways = waysAt(tokens, k, undefined);
  const found = ways && from(tokens, ways, ctx, placeAt, 1, false);
  return found && found.next > k + 1 && /^(there|is|'s|lies|sits)$/.test(w(tokens, found.next))
    ? found
    : undefined;
}

const NOT_AFTER =
  /^(top|bottom|left|right|side|edge|border|corner|hand|row|column|half|middle|centre|center|batting|backing|binding|sashing|patch|net|tulle|interfacing|iron|light|lamp|paper)$/;

/**
 * "the one below 3-2"; `placeAt` reads the blocks named at a token. The seam "between that and the one below", "the one going to its
 * right-hand neighbour": with the block that it is counted from.
 */
export function neighbourPhrase(
  tokens: Token[],
  i: number,
  ctx: PlaceContext,
  placeAt: (j: number) => PlaceFound | undefined,
): PlaceFound | undefined {
  if (isOneOfLine(tokens, i)) return undefined;
  const found = neighbourAt(tokens, i, ctx, placeAt);
  if (found?.places.length !== 1 || !seamLeadsTo(tokens, i)) return found;
  const base = lastBlock(ctx);
  return base && !found.places.includes(base) ? { ...found, places: [base, ...found.places] } : found;
}

/** "the end | one on the right", "the first | one on the left": counted along a line, and from no block. */
export const isOneOfLine = (tokens: Token[], i: number): boolean =>
  w(tokens, i) === 'one' && /^(end|last|first|top|bottom|outer)$/.test(w(tokens, i - 1));

function seamLeadsTo(tokens: Token[], i: number): boolean {
  const before = `${w(tokens, i - 3)} ${w(tokens, i - 2)} ${w(tokens, i - 1)}`;
  if (/^between (that|this|it) and$/.test(before)) return true;
  // "the seam with the one below is open"
  if (/seams? (with|against|to|onto)$/.test(before)) return true;
  return (
    /(going|goes|leading|leads|running|runs|joining|joins|on|shared|shares) (to|onto|into|with)$/.test(
      before,
    ) && tokens.slice(Math.max(0, i - 10), i).some((t) => /^seams?$/.test(t.w))
  );
}

/** "directly beneath that one there is a patch", "right above it there's a hole", "below that one, a stain": the block it is at. */
function straightBelow(tokens: Token[], i: number, ctx: PlaceContext): PlaceFound | undefined {
  const led = /^(directly|immediately|right|just)$/.test(w(tokens, i));
  const j = led ? i + 1 : i;
  const way = w(tokens, j);
  const one = /^(that|this) (one|block)$/.test(`${w(tokens, j + 1)} ${w(tokens, j + 2)}`);
  // "underneath that" may be what a patch had hidden
  if (!/^(below|above)$/.test(way) && !((led || one) && /^(beneath|under|underneath)$/.test(way)))
    return undefined;
  if (!/^(|[.,;:\n]|and|then|so|but|now)$/.test(w(tokens, i - 1))) return undefined;
  // "directly below, someone's been at it before"
  const bare = led && /^[,:]$/.test(w(tokens, j + 1));
  if (!bare && !/^(it|that|this)$/.test(w(tokens, j + 1))) return undefined;
  const next = bare ? j + 1 : one ? j + 3 : j + 2;
  if (
    !/^(there|,|:|-|--|is|'s|has|had|was|looks|a|an|some|we|i|somebody|someone|they|she|he|whoever|old)$/.test(
      w(tokens, next),
    )
  )
    return undefined;
  const base = lastBlock(ctx);
  const place = base && blockFrom(ctx.grid, base, way === 'above' ? -1 : 1, 0);
  return {
    next,
    places: place ? [place] : [],
    how: 'implied',
    rule: 'place.neighbour',
    kind: 'pointer',
    ...(place ? {} : { outside: Boolean(base) }),
  };
}

function neighbourAt(
  tokens: Token[],
  i: number,
  ctx: PlaceContext,
  placeAt: (j: number) => PlaceFound | undefined,
): PlaceFound | undefined {
  const beyond = allBeyond(tokens, i, ctx, placeAt);
  if (beyond) return beyond;
  const counted = nthOfLine(tokens, i, ctx) ?? straightBelow(tokens, i, ctx);
  if (counted) return counted;
  let j = i;
  let the = false;
  let head: 'one' | 'many' | 'count' | 'none' = 'none';
  let count: number | undefined;
  if (/^(the|its|all|both|that|any)$/.test(w(tokens, j))) {
    the = w(tokens, j) === 'the' || w(tokens, j) === 'all';
    j++;
    if (/^(the|its)$/.test(w(tokens, j))) j++;
  }
  // "the next one to the right of that tear"
  if (
    w(tokens, j) === 'next' &&
    (w(tokens, j + 1) === 'one' || BLOCKS.has(w(tokens, j + 1))) &&
    wayAt(tokens, j + 2, undefined)
  )
    j++;
  const adjective = neighbourOf(tokens, i, j, ctx, placeAt);
  if (adjective) return adjective;
  const noun = w(tokens, j);
  if (/^(previous|preceding)$/.test(noun) && (BLOCKS.has(w(tokens, j + 1)) || w(tokens, j + 1) === 'one'))
    return from(
      tokens,
      { list: [{ steps: [{ row: 0, block: -1 }], next: j + 2, several: false }], next: j + 2 },
      ctx,
      placeAt,
      1,
      false,
    );
  // "the corner block beside it": on whichever side the corner is
  if (noun === 'corner' && (w(tokens, j + 1) === 'one' || BLOCKS.has(w(tokens, j + 1)))) {
    const ways = waysAt(tokens, j + 2, undefined);
    const found = ways && from(tokens, ways, ctx, placeAt, 1, false);
    const sides =
      ways &&
      from(
        tokens,
        { ...ways, list: [{ steps: CROSS, next: ways.next, several: true }] },
        ctx,
        placeAt,
        1,
        true,
      );
    const corner = sides?.places.filter((p) => isCorner(ctx, p)) ?? [];
    return found && corner.length === 1 ? { ...found, places: corner, outside: undefined } : undefined;
  }
  if (/^(one|ones|pair)$/.test(noun) || BLOCKS.has(noun)) {
    head = /s$/.test(noun) || noun === 'pair' ? 'many' : 'one';
    j++;
  } else {
    const n = readCount(tokens, j);
    if (n && n.value <= 8) {
      head = 'count';
      count = n.value;
      j = n.next;
      if (w(tokens, j) === 'ones' || BLOCKS.has(w(tokens, j))) j++;
    }
  }
  // "one up and over" and "two below": a bare count is told again as a number of steps
  if (noun === 'one' && !the && j === i + 1) head = 'count';
  if (noun === 'one' && head === 'count') count = 1;
  // "two rows down from there it's thin", "a couple of rows below that": the block that lies so many rows away
  const rows = head === 'count' && !the && /^rows?$/.test(w(tokens, j)) ? rowsAway(tokens, j + 1) : undefined;
  if (rows && count) return from(tokens, { list: [rows], next: rows.next }, ctx, placeAt, count, false);
  let distance = head === 'count' && !the ? (count ?? 1) : 1;
  if (head === 'one' && the) {
    const far = readCount(tokens, j);
    if (far && far.value > 1 && far.value < 7) {
      distance = far.value;
      j = far.next;
      if (/^(blocks|along|squares)$/.test(w(tokens, j)) && wayAt(tokens, j + 1, undefined)) j++;
    }
  }
  if (head === 'none') return whereItLies(tokens, i, ctx, placeAt);
  const ways = waysAt(tokens, j, head === 'count' ? count : undefined);
  if (!ways) return undefined;
  const line =
    head === 'one' && the && distance === 1 && noun === 'one' ? lineBeside(tokens, ways, ctx) : undefined;
  if (line) return line;
  const spread = the && head === 'count' ? (count ?? 1) : undefined;
  // a bare direction needs what it is counted from, or the end of what is said of it
  return from(tokens, ways, ctx, placeAt, distance, head === 'many', spread, head === 'count' && !the);
}

/** "(two rows) down from there", "above that": told from a block that was spoken of. */
function rowsAway(tokens: Token[], k: number): Way | undefined {
  const step = STEPS.get(w(tokens, k));
  if (!step?.row || w(tokens, k) === 'under') return undefined;
  const joint = w(tokens, k + 1) === 'from' ? k + 2 : k + 1;
  return /^(that|there|it)$/.test(w(tokens, joint))
    ? { steps: [step], next: k + 1, several: false }
    : undefined;
}

/** "that tear", "the big hole": the block where it was found. */
function thingAt(
  tokens: Token[],
  i: number,
  { mentions }: PlaceContext,
): { block: string; next: number } | undefined {
  if (!mentions?.length || !/^(that|the|this)$/.test(w(tokens, i))) return undefined;
  for (const k of [i + 1, i + 2]) {
    const block = blockOfThing(w(tokens, k), mentions);
    if (block) return { block, next: k + 1 };
  }
  return undefined;
}

/** "everything below it", "all the ones to the right of 2-2", "all those above that": the line from there to its end. */
function allBeyond(
  tokens: Token[],
  i: number,
  ctx: PlaceContext,
  placeAt: (j: number) => PlaceFound | undefined,
): PlaceFound | undefined {
  let j = i;
  if (w(tokens, j) === 'everything') j++;
  else if (w(tokens, j) === 'all') {
    j++;
    if (w(tokens, j) === 'of') j++;
    if (/^(the|those|them)$/.test(w(tokens, j))) j++;
    if (w(tokens, j) === 'ones' || BLOCKS.has(w(tokens, j))) j++;
    if (j === i + 1) return undefined;
  } else return undefined;
  const way = wayAt(tokens, j, undefined);
  if (!way || way.several || way.slack) return undefined;
  const { row, block } = way.steps[0]!;
  let next = way.next;
  if (w(tokens, next) === 'of' || w(tokens, next) === 'from') next++;
  const named = placeAt(next);
  let base: string | undefined;
  if (named?.kind === 'blocks' && named.places.length === 1) {
    base = named.places[0];
    next = named.next;
  } else if (/^(it|that|this|there)$/.test(w(tokens, next))) {
    base = lastBlock(ctx);
    next++;
    if (/^(one|block|square)$/.test(w(tokens, next))) next++;
  }
  const from = splitBlock(base ?? '');
  if (!from) return undefined;
  if (
    w(tokens, next) === 'in' &&
    /^(the|that|its)$/.test(w(tokens, next + 1)) &&
    /^(row|column|line)$/.test(w(tokens, next + 2))
  )
    next += 3;
  const line = row ? columnOf(ctx.grid, from.block) : rowOf(ctx.grid, from.row);
  const places = line.filter((p) => {
    const at = splitBlock(p)!;
    return row ? (at.row - from.row) * row > 0 : (at.block - from.block) * block > 0;
  });
  return places.length
    ? { next, places, how: 'implied', rule: 'place.all-beyond', kind: 'blocks' }
    : undefined;
}

/** "the last column has faded, and the one before it a bit as well": after a whole row or column the next one. */
function lineBeside(
  tokens: Token[],
  ways: { list: Way[]; next: number },
  ctx: PlaceContext,
): PlaceFound | undefined {
  const only = ways.list.length === 1 ? ways.list[0]! : undefined;
  if (!only || only.several) return undefined;
  const at = ctx.focus.map((p) => splitBlock(p));
  const first = at[0];
  if (!first || at.length < 2) return undefined;
  const inRow = at.every((p) => p?.row === first.row) && at.length === gridOfRow(ctx.grid, first.row).blocks;
  const inColumn = at.every((p) => p?.block === first.block) && at.length === ctx.grid.rows;
  if (inRow === inColumn) return undefined;
  // "2-2 is torn. Second row, yes. And the one under it": the block
  const told = ctx.earlier.at(-1);
  if (told?.length === 1 && ctx.focus.includes(told[0]!)) return undefined;
  const next = /^(it|that|this)$/.test(w(tokens, ways.next)) ? ways.next + 1 : ways.next;
  // "the one below row four", "the one after 3-2"
  if (
    next === ways.next &&
    !/^(|[,.;!?]|is|'s|has|and|too|as|a|are|was|looks|needs|wants)$/.test(w(tokens, next))
  )
    return undefined;
  const { row, block } = only.steps[0]!;
  const step = inRow ? row || block : block;
  if (!step) return undefined;
  const places = inRow ? rowOf(ctx.grid, first.row + step) : columnOf(ctx.grid, first.block + step);
  return {
    next,
    places,
    how: 'implied',
    rule: inRow ? 'place.next-row' : 'place.next-column',
    kind: 'pointer',
    ...(places.length ? {} : { outside: true }),
  };
}

/**
 * "row three is sound bar the third one along", "(column two's faded,) the second and third ones down have holes", "the bottom one's
 * missing": counted along the row or column just spoken of, and not on from its last block.
 */
function nthOfLine(tokens: Token[], i: number, ctx: PlaceContext): PlaceFound | undefined {
  const start = w(tokens, i) === 'the' ? i + 1 : i;
  const values: number[] = [];
  let j = start;
  for (;;) {
    const nth = readOrdinal(tokens, j);
    if (!nth) break;
    values.push(nth.value);
    j = nth.next;
    if (!/^(and|&|,)$/.test(w(tokens, j)) || !readOrdinal(tokens, w(tokens, j + 1) === 'the' ? j + 2 : j + 1))
      break;
    j += w(tokens, j + 1) === 'the' ? 2 : 1;
  }
  const end = values.length || j > start ? undefined : endOfLine(w(tokens, start));
  if (!values.length && !end) return undefined;
  if (end) j++;
  if (end && w(tokens, j) === 'hand') j++;
  const noun = /^(ones?|blocks?|squares?|patch|patches)$/.test(w(tokens, j));
  if (noun) j++;
  if (values.length === 1 && noun) {
    const one = oneAlong(tokens, i, j, values[0]!, ctx);
    if (one) return one;
  }
  const line = ctx.focus.filter((p) => splitBlock(p));
  const first = splitBlock(line[0] ?? '');
  if (!first || line.length < 3) return undefined;
  const inRow = line.every((p) => splitBlock(p)!.row === first.row);
  if (!inRow && !line.every((p) => splitBlock(p)!.block === first.block)) return undefined;
  if (end) {
    // "the bottom one", of a column all of which was spoken of
    if (!noun || ctx.cloth || end.down === inRow || (!inRow && line.length < ctx.grid.rows)) return undefined;
    if (/^(of|in|along|on|from|down|up|to)$/.test(w(tokens, j))) return undefined;
    return picked(j, [end.last ? line.at(-1)! : line[0]!]);
  }
  if (
    !(inRow ? /^(along|across)$/ : /^down$/).test(w(tokens, j)) ||
    /^(from|of|in|on|the|row|to)$/.test(w(tokens, j + 1))
  )
    return undefined;
  const places = values.map((n) => line[n - 1]);
  return places.every((p) => p !== undefined) ? picked(j + 1, places as string[]) : undefined;
}

/** "going along the second row", then "first one's sound, second one's torn": the blocks of the row that is gone along. */
function oneAlong(
  tokens: Token[],
  i: number,
  j: number,
  nth: number,
  ctx: PlaceContext,
): PlaceFound | undefined {
  if (!/^('s|is|has|was|looks|feels|got)$/.test(w(tokens, j))) return undefined;
  if (
    !/^(|[.,;]|and|um|uh|then|the|but|sound|fine|ok|okay)$/.test(w(tokens, i - 1)) &&
    w(tokens, i) === 'the'
  )
    return undefined;
  const { focus, earlier, grid } = ctx;
  const row = wholeLines(grid, focus)
    ? focus
    : focus.length === 1
      ? earlier.slice(-3).findLast((g) => wholeLines(grid, g)?.lines.length === 1 && g.includes(focus[0]!))
      : undefined;
  const place = row && wholeLines(grid, row)!.lines.length === 1 ? row[nth - 1] : undefined;
  return place ? picked(j, [place]) : undefined;
}

const picked = (next: number, places: string[]): PlaceFound => ({
  next,
  places,
  how: 'implied',
  rule: 'place.nth-of-line',
  kind: 'blocks',
});

const endOfLine = (word: string): { last: boolean; down: boolean } | undefined =>
  /^(top|upper|bottom|lower|btm)$/.test(word)
    ? { last: /^(bottom|lower|btm)$/.test(word), down: true }
    : /^(left|right)$/.test(word)
      ? { last: word === 'right', down: false }
      : undefined;

/** "its right-hand neighbour", "neighbour to the right", "both its neighbours", "the neighbour below". */
function neighbourOf(
  tokens: Token[],
  i: number,
  j: number,
  ctx: PlaceContext,
  placeAt: (j: number) => PlaceFound | undefined,
): PlaceFound | undefined {
  let k = j;
  const side = /^(left|right|upper|lower|lh|rh)$/.test(w(tokens, k)) ? w(tokens, k) : undefined;
  if (side) k++;
  if (w(tokens, k) === 'hand') k++;
  const n = readCount(tokens, k);
  if (n) k = n.next;
  if (!/^neighbou?rs?$/.test(w(tokens, k))) return undefined;
  const many = w(tokens, k).endsWith('s');
  if (side) {
    const step = STEPS.get(
      side === 'upper'
        ? 'above'
        : side === 'lower'
          ? 'below'
          : side === 'lh'
            ? 'left'
            : side === 'rh'
              ? 'right'
              : side,
    )!;
    return from(
      tokens,
      { list: [{ steps: [step], next: k + 1, several: false }], next: k + 1 },
      ctx,
      placeAt,
      1,
      false,
    );
  }
  const ways = waysAt(tokens, k + 1, undefined);
  if (ways) return from(tokens, ways, ctx, placeAt, 1, many);
  if (!many) return undefined;
  const four = n?.value === 4 || w(tokens, i) === 'all';
  return from(
    tokens,
    { list: [{ steps: four ? CROSS : SIDES, next: k + 1, several: true }], next: k + 1 },
    ctx,
    placeAt,
    1,
    true,
  );
}

function from(
  tokens: Token[],
  ways: { list: Way[]; next: number },
  ctx: PlaceContext,
  placeAt: (j: number) => PlaceFound | undefined,
  distance: number,
  many: boolean,
  spread?: number,
  needsEnd = false,
): PlaceFound | undefined {
  let next = ways.next;
  let based = false;
  let bases: string[] | undefined;
  let how: 'said' | 'implied' = 'implied';
  const joint = /^(of|from|to)$/.test(w(tokens, next)) ? next + 1 : next;
  const corner = /^(that|the|this)$/.test(w(tokens, joint)) && w(tokens, joint + 1) === 'corner';
  const cornered = corner && w(tokens, joint + 2) !== 'of' ? lastCorner(ctx) : undefined;
  const pick = `${w(tokens, joint)} ${w(tokens, joint + 1)} ${w(tokens, joint + 2)} ${w(tokens, joint + 3)}`;
  const end = /^the (first|last) of (?:those|them|these)$/.exec(pick)?.[1];
  const picked = end && ctx.focus.length > 1 ? ctx.focus.at(end === 'first' ? 0 : -1) : undefined;
  const one = w(tokens, joint) === 'the' ? oneOfThem(tokens, joint, ctx) : undefined;
  const thing = thingAt(tokens, joint, ctx);
  if (one?.places.length === 1 && !end) {
    // "two up from the left-hand one of those"
    based = true;
    next = one.next;
    bases = one.places;
  } else if (picked && splitBlock(picked)) {
    // "the two under the last of those"
    based = true;
    next = joint + 4;
    bases = [picked];
  } else if (cornered) {
    // "the two under that corner one"
    based = true;
    next = /^(one|block|square)$/.test(w(tokens, joint + 2)) ? joint + 3 : joint + 2;
    bases = [cornered];
  } else if (thing) {
    // "the next one to the right of that tear"
    based = true;
    next = thing.next;
    bases = [thing.block];
  } else if (
    /^(it|that|this|there|them|those|these)$/.test(w(tokens, joint)) &&
    !(w(tokens, joint) === 'there' && joint === next)
  ) {
    based = true;
    const plural = /^(them|those|these)$/.test(w(tokens, joint));
    next = joint + 1;
    if (/^(one|block|square|two|pair)$/.test(w(tokens, next)) && !/^(it|there)$/.test(w(tokens, joint)))
      next++;
    const group = ctx.focus.filter((p) => splitBlock(p));
    bases = plural && group.length > 1 && group.length < 13 ? group : undefined;
  } else {
    const named = middleOfRow(tokens, joint, ctx) ?? placeAt(w(tokens, joint) === 'the' ? joint + 1 : joint);
    if (named?.kind === 'blocks' && named.places.length === 1) {
      bases = named.places;
      next = named.next;
      based = true;
      how = 'said';
    } else if (NOT_AFTER.test(w(tokens, w(tokens, next) === 'the' ? next + 1 : next))) return undefined;
    else if (joint > next && w(tokens, next) !== 'to') return undefined;
  }
  // "the block next to it on the right"
  const side =
    ways.list[0]!.slack && /^(on|to)$/.test(w(tokens, next)) ? wayAt(tokens, next, undefined) : undefined;
  if (side && !side.several) {
    ways = { list: [side], next: side.next };
    next = side.next;
  }
  if (!bases) {
    const base = lastBlock(ctx);
    if (!base)
      return based || !needsEnd
        ? { next, places: [], how: 'implied', rule: 'place.neighbour', kind: 'pointer' }
        : undefined;
    bases = [base];
  }
  if (
    needsEnd &&
    !based &&
    !/^(is|'s|are|has|have|had|there|got|needs?|wants?|gets?|:|too|also|same)$/.test(w(tokens, next))
  )
    return undefined;
  const all = ways.list.every((x) => !x.several);
  const turned =
    all &&
    ways.list.length === 2 &&
    (ways.list[0]!.steps[0]!.row === 0) !== (ways.list[1]!.steps[0]!.row === 0);
  const steps: Step[] =
    turned && !many
      ? [
          {
            row: ways.list[0]!.steps[0]!.row + ways.list[1]!.steps[0]!.row,
            block: ways.list[0]!.steps[0]!.block + ways.list[1]!.steps[0]!.block,
          },
        ]
      : ways.list.flatMap((x) => x.steps);
  const several = steps.length > 1;
  // "the two right under those two": one under each
  const each = spread !== undefined && spread === bases.length && !several;
  const reach = several || each ? [1] : spread ? Array.from({ length: spread }, (_, k) => k + 1) : [distance];
  const named = bases.flatMap((base) => {
    return steps.flatMap((s) => reach.map((r) => blockFrom(ctx.grid, base, s.row * r, s.block * r)));
  });
  let inside = named.filter((p): p is string => p !== undefined);
  // "next to it" at the right-hand edge can only be the one on the left
  if (!inside.length && ways.list[0]!.slack) {
    inside = [blockFrom(ctx.grid, bases[0]!, 0, -1)].filter((p) => p !== undefined);
  }
  const outside = several ? !inside.length : inside.length < named.length && !ways.list[0]!.slack;
  return {
    next,
    places: unique(inside).filter((p) => bases.length === 1 || !bases.includes(p)),
    how,
    rule: several ? 'place.neighbours' : how === 'said' ? 'place.neighbour-of' : 'place.neighbour',
    kind: 'pointer',
    ...(outside ? { outside: true } : {}),
  };
}

/** "(in row four) the block to the right of | the middle one": the middle of the row that is spoken of. */
function middleOfRow(tokens: Token[], k: number, { focus, grid }: PlaceContext): PlaceFound | undefined {
  const noun = w(tokens, k + 2);
  if (w(tokens, k) !== 'the' || !/^(middle|centre|center)$/.test(w(tokens, k + 1))) return undefined;
  if (noun !== 'one' && !BLOCKS.has(noun)) return undefined;
  const row = splitBlock(focus[0] ?? '')?.row;
  if (row === undefined || !focus.every((p) => splitBlock(p)?.row === row)) return undefined;
  const line = rowOf(grid, row);
  return line.length % 2 ? picked(k + 3, [line[(line.length - 1) / 2]!]) : undefined;
}

/**
 * "the second one", "the lower of the two", "the latter", "the left-hand one", "the first two": one or some of the blocks
 * last spoken of together, in the order said or as they lie.
 */
export function oneOfThem(tokens: Token[], i: number, ctx: PlaceContext): PlaceFound | undefined {
  if (w(tokens, i) !== 'the') {
    // "lower one next", "right hand one tomorrow"
    if (!beginsBare(tokens, i, ctx.cloth !== undefined || tokens.slice(0, i).some((t) => t.w === ':')))
      return undefined;
    i--;
  }
  const word = w(tokens, i + 1);
  const group = pickedFrom(word, ctx) ?? spokenTogether(ctx);
  if (!group) return undefined;
  // "the bottom one" of borders is told by its side
  if (areSides(group) && !/^(former|latter|last)$/.test(word) && !readOrdinal(tokens, i + 1))
    return undefined;
  const found = (places: (string | undefined)[], next: number): PlaceFound | undefined =>
    places.length && places.every((p) => p !== undefined)
      ? { next, places: places as string[], how: 'implied', rule: 'place.one-of-them', kind: 'pointer' }
      : undefined;
  if (word === 'former' && group.length === 2) return found([group[0]], i + 2);
  if (word === 'latter' && group.length === 2) return found([group[1]], i + 2);
  let j = i + 2;
  while (/^(hand|most)$/.test(w(tokens, j))) j++;
  // "the one on the right", "the one at the top"
  if (word === 'one' && /^(on|at|to|in)$/.test(w(tokens, i + 2)) && w(tokens, i + 3) === 'the') {
    const far = /^(far|very)$/.test(w(tokens, i + 4)) ? i + 5 : i + 4;
    const side = w(tokens, far);
    if (side === 'end' && w(tokens, far + 1) !== 'of') return found([group.at(-1)], far + 1);
    if (/^(middle|centre|center)$/.test(side))
      return group.length % 2 && !/^(of|row|column)$/.test(w(tokens, far + 1))
        ? found([group[(group.length - 1) / 2]], far + 1)
        : undefined;
    let next = far + 1;
    while (/^(hand|side|end)$/.test(w(tokens, next))) next++;
    if (/^(of|edge|border|corner|block|row|column)$/.test(w(tokens, next))) return undefined;
    return found([outermost(group, side)], next);
  }
  // "the one higher up", "the one further down", "the one lower down"
  const further = word === 'one' ? FURTHER.exec(`${w(tokens, i + 2)} ${w(tokens, i + 3)}`) : undefined;
  if (further) {
    const way = further[1] ?? further[2]!;
    const side = /^(up|higher)$/.test(way) ? 'top' : /^(down|lower)$/.test(way) ? 'bottom' : 'right';
    return found([outermost(group, side)], further[0].includes(' ') ? i + 4 : i + 3);
  }
  const between = word === 'one' || BLOCKS.has(word) ? betweenThem(tokens, i + 2, group, ctx) : undefined;
  if (between) return between;
  const n = readCount(tokens, j);
  // "dabbed the top two", "the lower ones are for tomorrow": those that lie furthest to that side
  const sided = n ? n.next : /^ones$/.test(w(tokens, j)) ? j + 1 : undefined;
  if (
    sided &&
    !isNounOfLine(w(tokens, sided)) &&
    !/^(along|on|down|from|row|corners?|edges?|sides?|borders?|strips?|layers?|skeins?|inches|thirds|pieces|of|seams?)$/.test(
      w(tokens, sided),
    )
  ) {
    const row = /^ones$/.test(w(tokens, sided)) ? sided + 1 : sided;
    const outer = outermostOf(group, word, n?.value);
    if (outer && outer.length < group.length && (n ? outer.length === n.value : outer.length > 1))
      return found(outer, row);
  }
  const many = n && n.value > 1 && n.value < group.length ? n : undefined;
  // "the first three of row two", then "the last two by hand": of the row
  const row = many && word === 'last' ? endOfRow(group, ctx) : undefined;
  if (
    many &&
    row?.end === 'first' &&
    !isNounOfLine(w(tokens, many.next)) &&
    group.length + many.value === gridOfRow(ctx.grid, row.row).blocks
  )
    return found(rowOf(ctx.grid, row.row).slice(group.length), many.next);
  if (many && (word === 'first' || word === 'last') && !isNounOfLine(w(tokens, many.next)))
    return found(word === 'first' ? group.slice(0, many.value) : group.slice(-many.value), many.next);
  const nth = word === 'last' ? { value: group.length, next: j } : readOrdinal(tokens, i + 1);
  // "the left-hand one of those"
  const end = nth?.next ?? j;
  const at = w(tokens, end) === 'one' && w(tokens, end + 1) === 'of' ? end + 1 : end;
  let next: number | undefined;
  // "the lower block's stained as well", of two
  const named =
    w(tokens, at) === 'one' ||
    (BLOCKS.has(w(tokens, at)) && group.length === 2 && !/^(block|square)s$/.test(w(tokens, at)));
  // "sewed the first one up", "tacked the lower one down"
  const particle =
    /^(up|down|in)$/.test(w(tokens, at + 1)) &&
    /^(|[.,;!]|and|by|with|again|now|too|then|tight|last|myself|yesterday|this)$/.test(w(tokens, at + 2));
  // "darned the top one in white thread"
  const within =
    w(tokens, at + 1) === 'in' &&
    !/^(|the|row|rows|column|columns|col|that|this|its|it|a|first|last|top|bottom|second|third|fourth|fifth|middle|there)$/.test(
      w(tokens, at + 2),
    );
  if (named && (particle || within || !/^(in|of|along|from|down|up|to)$/.test(w(tokens, at + 1))))
    next = at + 1;
  else if (
    w(tokens, at) === 'of' &&
    /^(the|those|these)$/.test(w(tokens, at + 1)) &&
    /^(two|pair|three|four)$/.test(w(tokens, at + 2))
  )
    next = at + 3;
  else if (w(tokens, at) === 'of' && /^(them|those|these)$/.test(w(tokens, at + 1))) next = at + 2;
  else if (
    nth &&
    group.length <= 3 &&
    (/^(is|'s|has|had|needs|wants|gets|i|it|there|was|can|could|will|'ll|should|must|might|off|,|\.|;|)$/.test(
      w(tokens, at),
    ) ||
      // "patched the first and left the other"
      (group.length === 2 &&
        w(tokens, at) === 'and' &&
        !/^(last|second|third|fourth|the|\d+)$/.test(w(tokens, at + 1))) ||
      (group.length === 2 &&
        w(tokens, at) === 'and' &&
        w(tokens, at + 1) === 'the' &&
        w(tokens, at + 2) === 'other')) &&
    (word !== 'last' || endOfRow(group, ctx)?.end === 'first' || pickedFrom(word, ctx) !== undefined)
  )
    next = at;
  // "the upper of the two has lost a corner, the lower has a stain", "of the rosebud ones the top has a hole"
  if (
    next === undefined &&
    group.length <= 3 &&
    /^(is|'s|has|had|needs|wants|gets|was)$/.test(w(tokens, at)) &&
    (/^(upper|lower)$/.test(word) ||
      (ctx.cloth && opensWithOf(tokens, i) && /^(top|bottom|middle)$/.test(word)))
  )
    next = at;
  if (next === undefined) return undefined;
  // "the last three blocks of the row have faded, and the first is tender": of the row
  const line = nth && w(tokens, next - 2) !== 'of' ? endOfRow(group, ctx) : undefined;
  if (line && ((line.end === 'last' && word === 'first') || (line.end === 'first' && word === 'last')))
    return found([word === 'first' ? `${line.row}-1` : `${line.row}-${ctx.grid.blocks}`], next);
  if (nth) return found([group[nth.value - 1]], next);
  if (/^(middle|centre|center)$/.test(word)) return group.length === 3 ? found([group[1]], next) : undefined;
  return found([outermost(group, word)], next);
}

const FURTHER = /^(?:further (up|down|along|over)|(higher|lower)(?: (?:up|down))?\b)/;

/** "the one between them", "the block in between", after two of one row or column with one between. */
function betweenThem(
  tokens: Token[],
  k: number,
  group: string[],
  { grid }: PlaceContext,
): PlaceFound | undefined {
  let j = k;
  if (w(tokens, j) === 'in') j++;
  if (w(tokens, j) !== 'between' || group.length !== 2) return undefined;
  j++;
  if (/^(them|those|these)$/.test(w(tokens, j))) j += /^(two|2)$/.test(w(tokens, j + 1)) ? 2 : 1;
  else if (!/^(|[.,;!]|is|'s|has|needs|wants|gets|was|looks|i|too)$/.test(w(tokens, j))) return undefined;
  const [a, b] = group.map((p) => splitBlock(p));
  if (!a || !b || (a.row !== b.row && a.block !== b.block)) return undefined;
  if (Math.abs(a.row - b.row) + Math.abs(a.block - b.block) !== 2) return undefined;
  const place = blockFrom(grid, group[0]!, (b.row - a.row) / 2, (b.block - a.block) / 2);
  return place ? picked(j, [place]) : undefined;
}

/** Does the sentence begin with those that one is picked from: "of the rosebud ones …"? */
const opensWithOf = (tokens: Token[], i: number): boolean =>
  tokens[tokens.slice(0, i).findLastIndex((t) => /^[.;!?\n]$/.test(t.w)) + 1]?.w === 'of';

/** A side and "one" with no article, where something begins. */
const beginsBare = (tokens: Token[], i: number, cloth: boolean): boolean =>
  /^(upper|lower|top|bottom|left|right|first|second|third|last)$/.test(w(tokens, i)) &&
  (i === 0 ||
    /^(and|but|\.)$/.test(w(tokens, i - 1)) ||
    // "…, first one's darned now"; "…, bottom one stays on" is of sides
    (/^(first|second|third)$/.test(w(tokens, i)) && /^(then|so|ok|okay|[,;])$/.test(w(tokens, i - 1))) ||
    // "plum silk: left one shattered, right one only thin"
    (cloth && /^[,:]$/.test(w(tokens, i - 1)))) &&
  w(tokens, w(tokens, i + 1) === 'hand' ? i + 2 : i + 1) === 'one';

/** The row of which a group is the first or the last few blocks, but not all. */
function endOfRow(group: string[], ctx: PlaceContext): { row: number; end: 'first' | 'last' } | undefined {
  if (areSides(group)) return undefined;
  const at = group.map((p) => splitBlock(p)!);
  const row = at[0]!.row;
  const { blocks } = ctx.grid;
  if (
    at.length >= blocks ||
    !at.every((p, k) => p.row === row && (k === 0 || p.block === at[k - 1]!.block + 1))
  )
    return undefined;
  if (at.at(-1)!.block === blocks && at[0]!.block > 1) return { row, end: 'last' };
  return at[0]!.block === 1 && at.at(-1)!.block < blocks - 1 ? { row, end: 'first' } : undefined;
}

const isNounOfLine = (word: string): boolean =>
  /^(rows?|columns?|cols?|blocks?|squares?|minutes?|hours?|inches|yards?|metres?|of|in)$/.test(word);

/** The block of a group that lies furthest to one side, where it is but one. */
function outermost(group: string[], side: string): string | undefined {
  const best = outermostOf(group, side);
  return best?.length === 1 ? best[0] : undefined;
}

/** The blocks of a group that lie furthest to one side; of a line the first `count` from there. */
function outermostOf(group: string[], side: string, count = 1): string[] | undefined {
  if (areSides(group)) {
    const found = group.filter((p) =>
      p
        .split('-')
        .slice(1)
        .includes(SIDE_WORDS.get(side) ?? side),
    );
    return found.length ? found : undefined;
  }
  const at = group.map((p) => splitBlock(p)!);
  const by = /^(top|upper|higher|highest|uppermost)$/.test(side)
    ? at.map((p) => -p.row)
    : /^(bottom|lower|lowest|btm)$/.test(side)
      ? at.map((p) => p.row)
      : side === 'left'
        ? at.map((p) => -p.block)
        : side === 'right'
          ? at.map((p) => p.block)
          : undefined;
  if (!by) return undefined;
  // "column five has faded", then "the top two": no others lie as far to that side
  const [least, next] = [...by].sort((x, y) => y - x).slice(count - 1, count + 1);
  if (count > 1 && least !== next && least !== undefined) return group.filter((_p, k) => by[k]! >= least);
  const best = Math.max(...by);
  return group.filter((_p, k) => by[k] === best);
}

/** "left border torn, bottom one stained", then "the first one": sides and corners are told of together as blocks are. */
const areSides = (group: string[]): boolean => group.every((p) => /^(border|edge|corner)-/.test(p));
const SIDE_WORDS = new Map(Object.entries({ upper: 'top', lower: 'bottom', btm: 'bottom' }));

/** "(darned the first two and netted) the last": of the list that the ones just told were picked from. */
function pickedFrom(word: string, ctx: PlaceContext): string[] | undefined {
  const last = ctx.earlier.at(-1);
  if (!/^(second|third|fourth|last)$/.test(word) || !last || last.length < 3 || last.length > 6)
    return undefined;
  return ctx.focus.length < last.length &&
    ctx.focus.length > 0 &&
    ctx.focus.every((p) => last.includes(p) && splitBlock(p))
    ? last
    : undefined;
}

/** The last group of a few blocks spoken of: one list, or two single blocks one after the other. */
function spokenTogether(ctx: PlaceContext): string[] | undefined {
  const isFew = (g: string[]): boolean =>
    g.length > 1 && g.length <= 6 && (g.every((p) => splitBlock(p)) || areSides(g));
  // "one of the checks is torn, the left-hand one"
  if (ctx.cloth && isFew(ctx.cloth)) return ctx.cloth;
  if (isFew(ctx.focus)) return ctx.focus;
  if (ctx.list && ctx.focus.length === 1 && ctx.list.includes(ctx.focus[0]!)) return ctx.list;
  const last = ctx.earlier.at(-1);
  if (ctx.focus.length !== 1 || !last) return undefined;
  if (isFew(last) && last.includes(ctx.focus[0]!)) return last;
  // "now the upper one", where other things were spoken of between
  const before = ctx.earlier.slice(-5).findLast((g) => isFew(g) && g.includes(ctx.focus[0]!));
  if (before) return before;
  return last.length === 1 && isFew([last[0]!, ctx.focus[0]!]) && last[0] !== ctx.focus[0]
    ? [last[0]!, ctx.focus[0]!]
    : undefined;
}
