import type { QuiltGrid } from '../../../shared/quilt.ts';
import { CURRENCY_WORDS, SMALL_MONEY_WORDS } from '../../lexicon/units.ts';
import { readCount, readOrdinal } from '../../text/read-number.ts';
import type { Token } from '../../text/tokenise.ts';
import { wordAt as w } from '../../text/word-at.ts';
import { cornerPhrase } from './find-corner.ts';
import { allBlocks, blockAt, blockFrom, columnOf, cornerBlock, rowOf, splitBlock, unique } from './grid.ts';
import { lastBlock } from './last-block.ts';
import { isOneOfLine } from './neighbour/nth-of-line.ts';
import type { PlaceContext, PlaceFound } from './place-found.ts';

const isUnit = (word: string): boolean =>
  Object.hasOwn(CURRENCY_WORDS, word) ||
  Object.hasOwn(SMALL_MONEY_WORDS, word) ||
  /^(yards?|metres?|meters?|cm|inches|feet|skeins?|spools?|reels?|balls?|packs?|rolls?)$/.test(word);

const DIRECTIONS = new Map<string, [row: number, block: number]>(
  Object.entries({
    below: [1, 0],
    beneath: [1, 0],
    under: [1, 0],
    underneath: [1, 0],
    above: [-1, 0],
    over: [-1, 0],
    left: [0, -1],
    right: [0, 1],
  }),
);

function shift(grid: QuiltGrid, place: string, dr: number, db: number): string | undefined {
  return blockFrom(grid, place, dr, db);
}

const pointer = (next: number, places: (string | undefined)[], rule: string): PlaceFound => {
  const inside = places.filter((p): p is string => p !== undefined);
  return {
    next,
    places: unique(inside),
    how: 'implied',
    rule,
    kind: 'pointer',
    ...(inside.length < places.length || !inside.length ? { outside: true } : {}),
  };
};

/**
 * "the one below", "the one to the left of it", "the block above that", "the one next to it", "the next one", "next two",
 * "the two below", "two up from it", "the one beside 3-2" (read against the place that follows).
 */
export function neighbour(
  tokens: Token[],
  i: number,
  ctx: PlaceContext,
  placeAt: (j: number) => PlaceFound | undefined,
): PlaceFound | undefined {
  const head = w(tokens, i);
  if (isOneOfLine(tokens, i)) return undefined;
  const { grid } = ctx;
  const base = lastBlock(ctx);
  // "the corner diagonally opposite", "the opposite corner"
  if (
    base &&
    ((head === 'diagonally' && w(tokens, i + 1) === 'opposite') ||
      (head === 'opposite' && w(tokens, i + 1) === 'corner'))
  ) {
    const at = splitBlock(base)!;
    return pointer(
      i + 2,
      [blockAt(grid, grid.rows + 1 - at.row, grid.blocks + 1 - at.block)],
      'place.opposite-corner',
    );
  }
  const facing = oppositeSide(tokens, i, ctx);
  if (facing) return facing;
  let j = i;
  if (head === 'the' || head === 'its') j++;
  const farEnd = otherEnd(tokens, j, ctx, base);
  if (farEnd) return farEnd;
  const very = w(tokens, j);
  const slant =
    diagonal(tokens, j, ctx, base) ?? around(tokens, j, ctx, base) ?? seamBeside(tokens, j, ctx, placeAt);
  if (slant) return slant;
  // "the next one", "next two", "next block along", "the next row"
  if (very === 'next' || very === 'following') {
    const n = readCount(tokens, j + 1);
    const k = n ? n.next : j + 1;
    const noun = w(tokens, k);
    if (noun === 'row' || noun === 'rows') {
      const row = splitBlock(ctx.focus.at(-1) ?? base ?? '')?.row;
      if (row === undefined) return undefined;
      return pointer(
        k + 1,
        Array.from({ length: n?.value ?? 1 }, (_, q) => rowOf(grid, row + q + 1)).flat(),
        'place.next-row',
      );
    }
    if (noun === 'column' || noun === 'col' || noun === 'columns') {
      const column = splitBlock(ctx.focus.at(-1) ?? base ?? '')?.block;
      if (column === undefined) return undefined;
      return pointer(
        k + 1,
        Array.from({ length: n?.value ?? 1 }, (_, q) => columnOf(grid, column + q + 1)).flat(),
        'place.next-column',
      );
    }
    const counts =
      noun === 'one' ||
      noun === 'block' ||
      noun === 'blocks' ||
      (n && n.value < 9 && !/^(inch|inches|yards?|minutes?|hours?|days?|weeks?)$/.test(noun)) ||
      (noun === 'along' && !n);
    const bare =
      very === 'next' && w(tokens, k - 1) === 'next' && (w(tokens, k) === 'to' || w(tokens, k) === 'door');
    if (bare) {
      // "next to it" is read by `besideIt`; "next to 3-2" leaves the place alone.
      return undefined;
    }
    // "and the next", and no more
    const alone = !n && noun === '' && head === 'the' && i <= 2 && /^(and|then|now)$/.test(w(tokens, i - 1));
    if (!(counts || alone) || !base) return undefined;
    if (/^(time|week|day|weekend|month|job|thing|step|evening|session|morning)$/.test(noun)) return undefined;
    const count = noun === 'one' && !n ? 1 : (n?.value ?? 1);
    let next = noun === 'one' || noun === 'block' || noun === 'blocks' ? k + 1 : k;
    if (w(tokens, next) === 'along' || w(tokens, next) === 'over' || w(tokens, next) === 'across') next++;
    if (w(tokens, next) === 'down')
      return pointer(
        next + 1,
        Array.from({ length: count }, (_, q) => shift(grid, base, q + 1, 0)),
        'place.next-down',
      );
    return pointer(
      next,
      Array.from({ length: count }, (_, q) => shift(grid, base, 0, q + 1)),
      'place.next',
    );
  }
  // "the one below", "the block above it", "the two below", "the ones either side"
  let count = 1;
  let both = false;
  // "stained on either side of it", "both sides of 3-2"
  if (/^(either|both)$/.test(head) && /^(side|sides)$/.test(w(tokens, i + 1)) && w(tokens, i + 2) === 'of') {
    const named = /^(it|that|this)$/.test(w(tokens, i + 3))
      ? undefined
      : placeAt(w(tokens, i + 3) === 'the' ? i + 4 : i + 3);
    const from =
      named?.kind === 'blocks' && named.places.length === 1
        ? named.places[0]
        : /^(it|that|this)$/.test(w(tokens, i + 3))
          ? base
          : undefined;
    if (from)
      return {
        ...pointer(
          named?.next ?? i + 4,
          [
            shift(grid, from, 0, -1),
            // "the seams either side of 3-3 are open": they are its own as well
            ...(/^seams?$/.test(w(tokens, w(tokens, i - 1) === 'on' ? i - 2 : i - 1)) ? [from] : []),
            shift(grid, from, 0, 1),
          ],
          'place.either-side',
        ),
        outside: false,
      };
  }
  if (['one', 'block', 'piece', 'ones', 'blocks', 'neighbour', 'neighbor', 'square', 'pair'].includes(very))
    j++;
  else {
    const n = readCount(tokens, j);
    if (head === 'the' && n && n.value <= 4) {
      count = n.value;
      j = n.next;
      if (['blocks', 'ones'].includes(w(tokens, j))) j++;
      else if (
        !DIRECTIONS.has(w(tokens, j)) &&
        !['next', 'either', 'to', 'beside', 'up', 'down'].includes(w(tokens, j))
      )
        return undefined;
    } else if (
      (very === 'two' || very === 'three' || very === 'one') &&
      (w(tokens, j + 1) === 'up' || w(tokens, j + 1) === 'down')
    ) {
      count = 1;
    } else return undefined;
  }
  // "one up and over", "two down from it"
  const steps = readCount(tokens, i);
  if (steps && (w(tokens, steps.next) === 'up' || w(tokens, steps.next) === 'down') && base) {
    const from = w(tokens, steps.next + 1);
    if (['from', 'and', ','].includes(from) || from === '') {
      const sign = w(tokens, steps.next) === 'up' ? -1 : 1;
      return pointer(
        steps.next + (from === 'from' ? 3 : 1),
        [shift(grid, base, sign * steps.value, 0)],
        'place.steps',
      );
    }
  }
  let k = j;
  while (
    ['just', 'right', 'directly', 'immediately', 'straight', 'to', 'on', 'the', 'its', 'that', "'s"].includes(
      w(tokens, k),
    ) &&
    k < j + 4
  ) {
    // "to its right", "on the left", but not "the one on the left edge"
    if (
      w(tokens, k) === 'right' &&
      !DIRECTIONS.has(w(tokens, k + 1)) &&
      w(tokens, k + 1) !== 'next' &&
      w(tokens, k + 1) !== 'beside' &&
      w(tokens, k + 1) !== 'to'
    )
      break;
    k++;
  }
  const word = w(tokens, k);
  let places: ((p: string) => (string | undefined)[]) | undefined;
  let next = k + 1;
  if (DIRECTIONS.has(word)) {
    const [dr, db] = DIRECTIONS.get(word)!;
    if ((word === 'left' || word === 'right') && k === j) return undefined;
    if (
      ['row', 'edge', 'border', 'side', 'block', 'corner', 'hand'].includes(w(tokens, next)) &&
      word !== 'above' &&
      word !== 'below'
    )
      return undefined;
    places = (p) => Array.from({ length: count }, (_, q) => shift(grid, p, dr * (q + 1), db * (q + 1)));
  } else if (word === 'next' || word === 'beside' || word === 'after' || word === 'along') {
    if (word === 'next' && w(tokens, next) === 'to') next++;
    if (word === 'next' && w(tokens, next) === 'door') next++;
    places = (p) => Array.from({ length: count }, (_, q) => shift(grid, p, 0, q + 1));
  } else if (word === 'before') {
    places = (p) => [shift(grid, p, 0, -1)];
  } else if (word === 'either' && w(tokens, next) === 'side') {
    next++;
    both = true;
    places = (p) => [shift(grid, p, 0, -1), shift(grid, p, 0, 1)];
  } else if (word === 'up' || word === 'down') {
    places = (p) => [shift(grid, p, word === 'up' ? -1 : 1, 0)];
  } else return undefined;
  if (w(tokens, next) === 'of') next++;
  if (['it', 'that', 'this', 'them', 'one'].includes(w(tokens, next))) {
    next++;
    if (['one', 'block'].includes(w(tokens, next))) next++;
  } else {
    // "the one below 3-2": measured from the place named next
    const named = placeAt(w(tokens, next) === 'the' ? next + 1 : next);
    if (named && named.kind === 'blocks' && named.places.length === 1)
      return { ...pointer(named.next, places(named.places[0]!), 'place.neighbour-of'), how: 'said' };
  }
  if (!base) return { next, places: [], how: 'implied', rule: 'place.neighbour', kind: 'pointer' };
  const found = pointer(next, places(base), both ? 'place.either-side' : 'place.neighbour');
  return both ? { ...found, outside: false } : found;
}

const FACING: Record<string, string> = {
  top: 'bottom',
  bottom: 'top',
  left: 'right',
  right: 'left',
  'top-left': 'bottom-right',
  'bottom-right': 'top-left',
  'top-right': 'bottom-left',
  'bottom-left': 'top-right',
};

/** "took that border off and the one opposite too", "the opposite side", "the one across from it": the side that lies over against it. */
function oppositeSide(tokens: Token[], i: number, ctx: PlaceContext): PlaceFound | undefined {
  let j = i;
  if (/^(the|its)$/.test(w(tokens, j))) j++;
  if (w(tokens, j) === 'opposite' && /^(one|side|edge|border|corner|number)$/.test(w(tokens, j + 1))) j += 2;
  else if (w(tokens, j) === 'one' && w(tokens, j + 1) === 'opposite') j += 2;
  else if (w(tokens, j) === 'one' && w(tokens, j + 1) === 'across' && w(tokens, j + 2) === 'from') j += 3;
  else return undefined;
  const [side] = ctx.focus;
  const told = ctx.focus.length === 1 ? /^(border|edge|corner)-(.+)$/.exec(side!) : undefined;
  if (!told) return undefined;
  if (/^(to|it|that)$/.test(w(tokens, j))) j++;
  return pointer(j, [`${told[1]}-${FACING[told[2]!]}`], 'place.opposite-side');
}

/** "the bottom border and the one on the left": a side like the one just told, and no block. */
export function sideLike(tokens: Token[], i: number, { focus }: PlaceContext): PlaceFound | undefined {
  const j = w(tokens, i) === 'the' ? i + 1 : i;
  if (w(tokens, j) !== 'one') return undefined;
  const told = tokens
    .slice(Math.max(0, j - 9), j)
    .findLast(
      (t, n, all) =>
        /^(border|edge)$/.test(t.w) && /^(left|right|top|bottom|hand)$/.test(all[n - 1]?.w ?? ''),
    )?.w;
  const kind = told ?? /^(border|edge)-/.exec(focus.at(-1) ?? '')?.[1];
  if (!kind || !/^(on|at|along|down|across|to)$/.test(w(tokens, j + 1))) return undefined;
  let k = j + 2;
  if (/^(the|its)$/.test(w(tokens, k))) k++;
  const side = { left: 'left', right: 'right', top: 'top', bottom: 'bottom', upper: 'top', lower: 'bottom' }[
    w(tokens, k)
  ];
  if (!side) return undefined;
  k++;
  while (/^(hand|side|edge)$/.test(w(tokens, k))) k++;
  if (w(tokens, k) === 'of') return undefined;
  return { next: k, places: [`${kind}-${side}`], how: 'implied', rule: 'place.side-like', kind: 'pointer' };
}

/** "the other end of the row", "opposite end of that column", "the far end of its row": seen from the block last spoken of. */
function otherEnd(
  tokens: Token[],
  j: number,
  { grid }: PlaceContext,
  base: string | undefined,
): PlaceFound | undefined {
  const at = base && splitBlock(base);
  if (
    !at ||
    !/^(other|opposite|far)$/.test(w(tokens, j)) ||
    w(tokens, j + 1) !== 'end' ||
    w(tokens, j + 2) !== 'of'
  )
    return undefined;
  let k = j + 3;
  while (/^(the|that|this|its|same)$/.test(w(tokens, k))) k++;
  if (k === j + 3) return undefined;
  const line = w(tokens, k);
  if (line === 'row' && !readCount(tokens, k + 1))
    return pointer(
      k + 1,
      [blockAt(grid, at.row, at.block * 2 > grid.blocks ? 1 : grid.blocks)],
      'place.other-end',
    );
  if (/^(column|col)$/.test(line) && !readCount(tokens, k + 1))
    return pointer(
      k + 1,
      [blockAt(grid, at.row * 2 > grid.rows ? 1 : grid.rows, at.block)],
      'place.other-end',
    );
  return undefined;
}

/** "the four around it", "the blocks around it", "the eight surrounding it". */
function around(
  tokens: Token[],
  j: number,
  ctx: PlaceContext,
  base: string | undefined,
): PlaceFound | undefined {
  if (!base) return undefined;
  const n = readCount(tokens, j);
  let k = n ? n.next : j;
  if (!n && !/^(ones|blocks)$/.test(w(tokens, k))) return undefined;
  if (/^(ones|blocks|squares)$/.test(w(tokens, k))) k++;
  if (w(tokens, k) === 'all') k++;
  if (!/^(around|round|surrounding)$/.test(w(tokens, k)) || !/^(it|that)$/.test(w(tokens, k + 1)))
    return undefined;
  const steps = [
    [-1, 0],
    [1, 0],
    [0, -1],
    [0, 1],
    ...(n?.value === 4
      ? []
      : [
          [-1, -1],
          [-1, 1],
          [1, -1],
          [1, 1],
        ]),
  ] as [number, number][];
  const inside = steps.map(([r, b]) => shift(ctx.grid, base, r, b)).filter((p) => p !== undefined);
  return { ...pointer(k + 2, inside, 'place.around'), outside: false };
}

const TOWARDS = /^(just|right|directly|immediately|at|on|to|the|its|that|'s|is)$/;

/**
 * "the seam right below it": after a seam between two blocks both of its neighbours, after one block that block and the one on the
 * other side. "The seam to the left of 3-3", "the seam on its right". What is told of a "side" alone may be the quilt's.
 */
function seamBeside(
  tokens: Token[],
  j: number,
  ctx: PlaceContext,
  placeAt: (j: number) => PlaceFound | undefined,
): PlaceFound | undefined {
  if (w(tokens, j) !== 'seam') return undefined;
  let k = j + 1;
  while (
    k < j + 5 &&
    TOWARDS.test(w(tokens, k)) &&
    (w(tokens, k) !== 'right' || DIRECTIONS.has(w(tokens, k + 1)))
  )
    k++;
  const way = DIRECTIONS.get(w(tokens, k));
  if (!way) return undefined;
  const sideways = way[0] === 0;
  if (sideways && !/^(of|'s|is|seam|its|the|to|on)$/.test(w(tokens, k - 1))) return undefined;
  const own = w(tokens, k - 1) === 'its';
  // what was taken off had the seam underneath
  const under = /^(under|underneath|beneath)$/.test(w(tokens, k));
  let next = k + 1;
  if (w(tokens, next) === 'hand') next++;
  const side = w(tokens, next) === 'side';
  if (side) next++;
  const of = w(tokens, next) === 'of';
  if (of) next++;
  const it = /^(it|that|this)$/.test(w(tokens, next)) && !own;
  const named = it || own ? undefined : placeAt(next);
  if (named && (named.kind !== 'blocks' || named.places.length !== 1 || (sideways && !of))) return undefined;
  // "the seam on the right of 2-4": one of its own
  if (named && sideways && /^(on|at)$/.test(w(tokens, k - 2))) return undefined;
  if (
    !it &&
    !own &&
    !named &&
    (side || of || under || /^(\d|row|block|the|a|an|edge|border|corner|column)/.test(w(tokens, next)))
  )
    return undefined;
  if (it) next += /^(one|block)$/.test(w(tokens, next + 1)) ? 2 : 1;
  const bases = named ? named.places : ctx.focus.filter((p) => splitBlock(p));
  if (bases.length !== 1 && (bases.length !== 2 || sideways)) return undefined;
  const moved = bases.map((p) => shift(ctx.grid, p, way[0], way[1]));
  const beside = bases.length === 1 ? [...moved.filter((p) => p !== undefined), bases[0]] : moved;
  return {
    ...pointer(named?.next ?? next, beside, 'place.seam-beside'),
    ...(bases.length === 1 ? { outside: false } : {}),
  };
}

/** "the block diagonally below", "the one diagonally above it to the left". */
function diagonal(
  tokens: Token[],
  j: number,
  ctx: PlaceContext,
  base: string | undefined,
): PlaceFound | undefined {
  if (
    !base ||
    !/^(one|block|square)$/.test(w(tokens, j)) ||
    !/^(diagonally|diagonal)$/.test(w(tokens, j + 1))
  )
    return undefined;
  const down = /^(below|beneath|under|down)$/.test(w(tokens, j + 2));
  if (!down && !/^(above|over|up)$/.test(w(tokens, j + 2))) return undefined;
  let next = j + 3;
  if (w(tokens, next) === 'it') next++;
  let k = next;
  while (/^(and|to|on|the|its)$/.test(w(tokens, k)) && k < next + 3) k++;
  const side = /^(left|right)$/.test(w(tokens, k)) ? w(tokens, k) : undefined;
  const inside = [-1, 1]
    .filter((d) => !side || d === (side === 'left' ? -1 : 1))
    .map((d) => shift(ctx.grid, base, down ? 1 : -1, d))
    .filter((p) => p !== undefined);
  // without a side it is only known where the quilt's edge leaves but one
  return {
    ...pointer(side ? k + 1 : next, inside.length === 1 ? inside : [], 'place.diagonal'),
    outside: false,
  };
}

/** "it", "that one", "them", "those two", "both", "there", "the same block", "the other one", "that whole row", "the rest of the row". */
/** Does "other two" begin what is told, so that its "the" was only left out? */
const othersUnled = (tokens: Token[], i: number): boolean =>
  /^(|[,.;:]|\n|and|but|then)$/.test(w(tokens, i - 1)) &&
  /^(two|three|four|five|six|[2-6]|ones)$/.test(w(tokens, i + 1)) &&
  !/^(row|rows|column|columns|sides?|edges?|borders?|corners?|of)$/.test(w(tokens, i + 2));

export function backPointer(tokens: Token[], i: number, ctx: PlaceContext): PlaceFound | undefined {
  const word = w(tokens, i);
  const after = w(tokens, i + 1);
  const { grid, focus } = ctx;
  // "net on 2-2 only, other two left as is"
  if (word === 'other' && othersUnled(tokens, i)) {
    const led = [...tokens.slice(0, i), { ...tokens[i]!, w: 'the' }, ...tokens.slice(i)];
    const found = backPointer(led, i, ctx);
    return found && { ...found, next: found.next - 1 };
  }
  const here = (next: number, rule: string): PlaceFound => ({
    next,
    places: focus,
    how: 'implied',
    rule,
    kind: 'pointer',
  });
  // "fused interfacing behind that and 2-1", "net over that, 20 min"
  if (
    word === 'that' &&
    /^(behind|over|under|underneath|beneath|below|above|on|round|around|across|beside|to|with)$/.test(
      w(tokens, i - 1),
    ) &&
    (after === '' || /^([.,;!&+]|and|too|as|then|now|in|with|by|for|first|instead)$/.test(after))
  )
    return here(i + 1, 'place.that-one');
  // "spot-cleaned that with a drop of detergent", "darned that by hand"
  if (
    word === 'that' &&
    /[^e]ed$/.test(w(tokens, i - 1)) &&
    /^(with|by|using|too|again|as|twice)$/.test(after) &&
    focus.length > 0
  )
    return here(i + 1, 'place.that-one');
  if (word === 'that' || word === 'this' || word === 'the' || word === 'same') {
    const skip = after === 'same' ? 1 : 0;
    const noun = w(tokens, i + 1 + skip);
    // "that whole row", "same column", but not "that row three"
    const whole = /^(whole|entire|full|complete)$/.test(noun);
    const lineNoun = whole ? w(tokens, i + 2 + skip) : noun;
    const lineEnd = i + (whole ? 3 : 2) + skip;
    if (whole || ((word !== 'the' || skip) && !readCount(tokens, lineEnd))) {
      const at = splitBlock(focus.at(-1) ?? '');
      const isRow = lineNoun === 'row';
      if (at && (isRow || lineNoun === 'column' || lineNoun === 'col'))
        return {
          next: lineEnd,
          places: isRow ? rowOf(grid, at.row) : columnOf(grid, at.block),
          how: 'implied',
          rule: isRow ? 'place.that-row' : 'place.that-column',
          kind: 'pointer',
        };
    }
    if (noun === 'rest' && ['of', 'along'].includes(w(tokens, i + 2))) {
      const k = ['the', 'that', 'it', 'this'].includes(w(tokens, i + 3)) ? i + 4 : i + 3;
      const row = splitBlock(focus.at(-1) ?? '')?.row;
      // "the first two of row three", then "the rest of that one"
      const one =
        w(tokens, k) === 'one' &&
        /^(that|this)$/.test(w(tokens, k - 1)) &&
        focus.length > 1 &&
        focus.every((p) => splitBlock(p)?.row === row);
      const isRow = w(tokens, k) === 'row' || w(tokens, i + 3) === 'it' || one;
      if (row !== undefined && isRow) {
        const named = w(tokens, k) === 'row' ? readCount(tokens, k + 1) : undefined;
        const which = named?.value ?? row;
        return {
          next: named ? named.next : /^(row|one)$/.test(w(tokens, k)) ? k + 1 : i + 4,
          places: rowOf(grid, which).filter((p) => !focus.includes(p)),
          how: 'implied',
          rule: 'place.rest-of-row',
          kind: 'pointer',
        };
      }
      if (row !== undefined && (w(tokens, k) === 'column' || w(tokens, k) === 'col')) {
        const column = splitBlock(focus.at(-1)!)!.block;
        return {
          next: k + 1,
          places: columnOf(grid, column).filter((p) => !focus.includes(p)),
          how: 'implied',
          rule: 'place.rest-of-column',
          kind: 'pointer',
        };
      }
    }
    if (noun === 'other') {
      const corner = otherCorner(tokens, i + 2, ctx);
      if (corner) return corner;
    }
    const left = word === 'the' && noun === 'rest' ? restOfGroup(tokens, i + 2, ctx) : undefined;
    if (left) return left;
    if (/^(other|remaining)$/.test(noun) || (noun === 'others' && word === 'the')) {
      const n = readCount(tokens, i + 2);
      const k = n ? n.next : i + 2;
      const noun2 = w(tokens, k);
      if (/^(rows|rose)$/.test(noun2)) return otherRows(ctx, n?.value, k + 1);
      // "the left edge is frayed", "so's the top", "the other two are fine"
      const sides = n?.value === 2 ? sidesTold(ctx) : undefined;
      if (n && ['borders', 'border', 'sides', 'edges', 'corners'].includes(noun2))
        return others(
          sides && noun2 !== 'corners' ? { ...ctx, focus: sides } : ctx,
          n.value,
          k + 1,
          sides ? `${sides[0]!.split('-')[0]}s` : noun2,
        );
      if (sides && !['blocks', 'ones', 'rows', 'borders', 'sides'].includes(noun2))
        return others({ ...ctx, focus: sides }, 2, k, `${sides[0]!.split('-')[0]}s`);
      if (n && n.value === 3 && !['blocks', 'ones', 'rows'].includes(noun2)) {
        const kind = focus.find((p) => /^(border|edge|corner)-/.test(p));
        if (kind) return others(ctx, 3, k, `${kind.split('-')[0]}s`);
      }
      // "replace 2-3, leave the other as is"
      const bare =
        !n &&
        /^(|[.,;!]|as|be|alone|i|is|'s|was|can|will|gets?|needs?|and|but|too|tomorrow|later)$/.test(noun2);
      if (noun2 === 'one' || noun2 === 'block' || (n && n.value <= 6) || noun === 'others' || bare) {
        const end =
          noun === 'others' ? i + 2 : ['one', 'block', 'blocks', 'ones'].includes(noun2) ? k + 1 : k;
        const inLine = othersInLine(tokens, end, ctx, n?.value);
        if (inLine) return inLine;
        const group = [
          ...(ctx.cloth ? [ctx.cloth] : []),
          ...(ctx.list ? [ctx.list] : []),
          ...[...ctx.earlier].reverse(),
        ].find(
          (g) =>
            g.length > focus.length &&
            // "the other one" of six is none
            (n || noun === 'others' || noun2 === '' || g.length - focus.length === 1) &&
            (!bare || g.length === 2) &&
            focus.length > 0 &&
            focus.every((p) => g.includes(p)) &&
            (!n || g.length - focus.length === n.value || n.value === 1),
        );
        if (group)
          return {
            next: end,
            places: group.filter((p) => !focus.includes(p)),
            how: 'implied',
            rule: 'place.the-other',
            kind: 'pointer',
          };
        // "the first three blocks of row two", then "the other two"
        const onward = n ? restOfRowOf(ctx, n.value) : undefined;
        if (onward)
          return { next: end, places: onward, how: 'implied', rule: 'place.the-other', kind: 'pointer' };
        if (!bare && (!n || n.value === 1)) {
          const previous = [...ctx.earlier].reverse().find((g) => g.length === 1 && !focus.includes(g[0]!));
          if (previous)
            return { next: end, places: previous, how: 'implied', rule: 'place.the-other', kind: 'pointer' };
        }
        return undefined;
      }
      return undefined;
    }
    // "quilted that length afresh", of a side; without one a length is measured
    const stretch =
      (word === 'that' || word === 'this' || skip > 0) &&
      /^(length|run|stretch|strip|part)$/.test(lineNoun) &&
      focus.length > 0 &&
      focus.every((p) => /^(border|edge)-/.test(p));
    if (stretch) return here(lineEnd, 'place.that-one');
    if (
      (word === 'that' || word === 'this' || (word === 'the' && skip) || word === 'same') &&
      [
        'one',
        'block',
        'piece',
        'corner',
        'square',
        'spot',
        'place',
        'stretch',
        'section',
        'bit',
        'side',
        'edge',
        'border',
        'area',
      ].includes(noun) &&
      !readCount(tokens, i + 2 + skip)
    ) {
      if (noun === 'corner') {
        const corner = [focus, ...[...ctx.earlier].reverse()].find((g) =>
          g.some((p) => p.startsWith('corner')),
        );
        if (corner)
          return {
            next: i + 2 + skip,
            places: corner,
            how: 'implied',
            rule: 'place.that-corner',
            kind: 'pointer',
          };
      }
      return here(i + 2 + skip, 'place.that-one');
    }
    // "4-3's the worse of the two", then "dabbed at the worse one"
    if (
      word === 'the' &&
      /^(worse|worst|bad|nasty|nastier|nastiest|poor|awkward)$/.test(noun) &&
      w(tokens, i + 2) === 'one' &&
      focus.length === 1
    )
      return here(i + 3, 'place.that-one');
    // "the second of them", "the first of those two"
    if (word === 'the') {
      const nth = nthOf(tokens, i, ctx);
      if (nth) return nth;
    }
    if (word === 'the' && noun === 'corner' && /^(diagonally|opposite)$/.test(w(tokens, i + 2)))
      return undefined;
    // "frayed along the left and the bottom, gone completely at the corner": where the two sides meet
    if (word === 'the' && noun === 'corner' && w(tokens, i + 2) !== 'of') {
      const meeting = cornerBetween(focus);
      if (meeting)
        return { next: i + 2, places: [meeting], how: 'implied', rule: 'place.the-corner', kind: 'pointer' };
    }
    if (
      word === 'the' &&
      noun === 'corner' &&
      w(tokens, i + 2) !== 'of' &&
      // "the corner block, top right" says which
      !cornerPhrase(tokens, i + 1, ctx)
    ) {
      const groups = [focus, ...[...ctx.earlier].reverse()];
      const corner =
        groups.find((g) => g.some((p) => p.startsWith('corner'))) ??
        groups.find((g) => g.some((p) => isCornerBlock(grid, p)));
      if (corner)
        return {
          next: i + 2,
          places: corner.filter((p) => p.startsWith('corner') || isCornerBlock(grid, p)),
          how: 'implied',
          rule: 'place.the-corner',
          kind: 'pointer',
        };
    }
    const many = ctx.cloth && (noun === 'lot' || ctx.cloth.length === 2) ? ctx.cloth : focus;
    if (word === 'the' && (noun === 'pair' || noun === 'lot') && many.length > 1) {
      const of = w(tokens, i + 2) === 'of' && /^(them|those|these)$/.test(w(tokens, i + 3));
      return { ...here(of ? i + 4 : i + 2, 'place.the-pair'), places: many };
    }
    return undefined;
  }
  if (
    word === 'corner' &&
    /^(the|that|this)$/.test(w(tokens, i - 2)) &&
    !/^(of|block|at|diagonally)$/.test(after)
  ) {
    const corner = [focus, ...[...ctx.earlier].reverse()].find((g) => g.some((p) => p.startsWith('corner')));
    if (corner)
      return {
        next: i + 1,
        places: corner.filter((p) => p.startsWith('corner')),
        how: 'implied',
        rule: 'place.the-corner',
        kind: 'pointer',
      };
  }
  // "both the others need net", "all the rest are fine"
  if (/^(both|all)$/.test(word) && after === 'the' && /^(others?|rest)$/.test(w(tokens, i + 2))) {
    const rest = backPointer(tokens, i + 1, ctx);
    if (rest && (word === 'all' || rest.places.length === 2)) return rest;
  }
  // "the binding's off both those sides", "those two edges": the sides just told
  if (/^(both|those|these)$/.test(word)) {
    let k = i + 1;
    while (/^(of|those|these|two|three|the|2|3)$/.test(w(tokens, k)) && k < i + 4) k++;
    if (/^(sides|edges|borders)$/.test(w(tokens, k))) {
      const sides = focus.filter((p) => /^(border|edge)-/.test(p));
      // "put them on both sides", where the left and right borders were taken off
      const told = word !== 'both' || k > i + 1 || sides.every((p) => /-(left|right)$/.test(p));
      if (told && sides.length > 1 && sides.length === focus.length)
        return { next: k + 1, places: sides, how: 'implied', rule: 'place.those-sides', kind: 'pointer' };
    }
  }
  // "the rest of the borders", "the remaining sides", after one of them
  if (/^(rest|remaining|remainder)$/.test(word)) {
    let k = i + 1;
    while (/^(of|the|two|three|2|3)$/.test(w(tokens, k)) && k < i + 4) k++;
    const side = focus.find((p) => /^(border|edge)-/.test(p));
    const noun = w(tokens, k);
    if (side && (/^borders$/.test(noun) ? side.startsWith('border') : /^(sides|edges)$/.test(noun)))
      return others(ctx, 3, k + 1, `${side.split('-')[0]}s`);
  }
  // "other three: leave or replace", "remaining two tomorrow"
  if (/^(other|remaining)$/.test(word) && !/^(the|every|each|any|no)$/.test(w(tokens, i - 1))) {
    const n = readCount(tokens, i + 1);
    const side = focus.find((p) => /^(border|edge|corner)-/.test(p));
    if (n?.value === 3 && side) return others(ctx, 3, n.next, `${side.split('-')[0]}s`);
    // "other 2 rows tied"
    if (n && /^(rows|rose)$/.test(w(tokens, n.next))) {
      const rows = otherRows(ctx, n.value, n.next + 1);
      if (rows) return rows;
    }
    // "other two sides tomorrow"
    const named = n !== undefined && /^(sides|borders|edges)$/.test(w(tokens, n.next));
    const both = n?.value === 2 ? sidesTold(ctx) : undefined;
    // "top + R on, other two tmrw"
    if (n && both && (named || endsOrTells(w(tokens, n.next))))
      return others({ ...ctx, focus: both }, 2, named ? n.next + 1 : n.next, `${both[0]!.split('-')[0]}s`);
    if (
      n &&
      side &&
      /^(sides|borders|edges|corners)$/.test(w(tokens, n.next)) &&
      focus.length + n.value === 4
    )
      return others(ctx, n.value, n.next + 1, `${side.split('-')[0]}s`);
  }
  // "all 3 netted"
  if (word === 'all') {
    const n = readCount(tokens, i + 1);
    if (
      n &&
      n.value > 1 &&
      n.value < 20 &&
      !/^(rows?|blocks?|columns?|corners?|sides?|borders?|of|layers?|skeins?|spools?)$/.test(
        w(tokens, n.next),
      )
    ) {
      const group = [ctx.cloth ?? [], focus, [...(ctx.earlier.at(-1) ?? []), ...focus]].find(
        (g) => unique(g).length === n.value,
      );
      if (group)
        return {
          next: n.next,
          places: unique(group),
          how: 'implied',
          rule: 'place.all-of-them',
          kind: 'pointer',
        };
    }
  }
  const rest =
    everythingElse(tokens, i, ctx) ??
    restOfIt(tokens, i, ctx) ??
    thoseLines(tokens, i, ctx) ??
    inBetween(tokens, i, ctx);
  if (rest) return rest;
  // "every one of them", "each of those": what "them" is
  if ((word === 'every' || word === 'each') && !/^(other)$/.test(after)) {
    let k = i + 1;
    while (/^(single|last|one)$/.test(w(tokens, k)) && k < i + 4) k++;
    if (
      w(tokens, k) === 'of' &&
      /^(them|those|these)$/.test(w(tokens, k + 1)) &&
      !/^(blocks?|squares?|rows?|seams?|ties|pieces?|patches|\w+ones)$/.test(w(tokens, k + 2))
    ) {
      const places = plural(ctx);
      if (places.length > 1)
        return { next: k + 2, places, how: 'implied', rule: 'place.them', kind: 'pointer' };
    }
  }
  // "one of the others", "one of those": which can't be known
  if (
    !/^(every|each|single|last)$/.test(w(tokens, i - 1)) &&
    (word === 'one' || word === 'another') &&
    after === 'of' &&
    /^(the|those|these|them)$/.test(w(tokens, i + 2)) &&
    (w(tokens, i + 2) !== 'the' || /^(others|blocks|corners|squares|rest)$/.test(w(tokens, i + 3)))
  )
    return {
      next: w(tokens, i + 2) === 'the' ? i + 4 : i + 3,
      places: [],
      how: 'implied',
      rule: 'place.one-of',
      kind: 'pointer',
    };
  // "three more of them": which can't be known either
  const more = after === 'more' || /^(another|few)$/.test(word) ? readCount(tokens, i) : undefined;
  if (
    more &&
    w(tokens, more.next) === 'more' &&
    w(tokens, more.next + 1) === 'of' &&
    /^(those|these|them|'em)$/.test(w(tokens, more.next + 2))
  )
    return {
      next: more.next + 3,
      places: [],
      how: 'implied',
      rule: 'place.one-of',
      kind: 'pointer',
    };
  // "there was a hole" only says that it is
  if (word === 'there' && /^('s|is|are|was|were|'re)$/.test(after)) return undefined;
  if (word === 'it' || word === 'there' || word === 'here') return here(i + 1, 'place.it');
  if (word === 'them' || word === 'they' || word === 'both' || word === 'these') {
    if (
      word === 'both' &&
      (after === 'of' ||
        ['sides', 'ways', 'ends', 'edges', 'borders', 'layers', 'were', 'are', 'had'].includes(after) ===
          true)
    ) {
      // "both of the bunnies" names its cloth itself
      if (
        after === 'of' &&
        !/^(them|those|these|it)$/.test(w(tokens, i + 2)) &&
        !/^(two|ones|blocks|squares|pieces|corners|rows)$/.test(w(tokens, i + 3))
      )
        return undefined;
      if (after === 'of')
        return { next: i + 3, places: plural(ctx, 2), how: 'implied', rule: 'place.both', kind: 'pointer' };
      if (['sides', 'ways', 'ends', 'edges', 'borders', 'layers'].includes(after)) return undefined;
    }
    return {
      next: i + 1,
      places: plural(ctx, word === 'both' ? 2 : undefined),
      how: 'implied',
      rule: word === 'both' ? 'place.both' : 'place.them',
      kind: 'pointer',
    };
  }
  if (word === 'those') {
    const count = readCount(tokens, i + 1);
    // "I took those three dollars each", "those two metres": a price, an amount
    const n = count && !isUnit(w(tokens, count.next)) ? count : undefined;
    return {
      next: n ? n.next : i + 1,
      places: plural(ctx, n && n.value > 1 ? n.value : undefined),
      how: 'implied',
      rule: 'place.those',
      kind: 'pointer',
    };
  }
  return undefined;
}

/** The blocks of a row that are left beside several of it, where there are just so many. */
function restOfRowOf({ grid, focus }: PlaceContext, count: number): string[] | undefined {
  const row = splitBlock(focus[0] ?? '')?.row;
  if (row === undefined || focus.length < 2 || !focus.every((p) => splitBlock(p)?.row === row))
    return undefined;
  const rest = rowOf(grid, row).filter((p) => !focus.includes(p));
  return rest.length === count ? rest : undefined;
}

/** "the rest", "the rest of them", after one or some of a few blocks told together were spoken of: those that were not. */
function restOfGroup(
  tokens: Token[],
  k: number,
  { focus, earlier, cloth, list }: PlaceContext,
): PlaceFound | undefined {
  const of = w(tokens, k) === 'of';
  if (of && !/^(them|those|these|'em|em)$/.test(w(tokens, k + 1))) return undefined;
  if (!of && /^(row|column|day|evening|time|stuff|bit|thread|cloth|fabric)$/.test(w(tokens, k)))
    return undefined;
  const group = [...(cloth ? [cloth] : []), ...(list ? [list] : []), ...[...earlier].reverse()].find(
    (g) => g.length > focus.length && g.length < 9 && focus.length > 0 && focus.every((p) => g.includes(p)),
  );
  if (!group?.every((p) => splitBlock(p)) || group.length < 3) return undefined;
  return {
    next: of ? k + 2 : k,
    places: group.filter((p) => !focus.includes(p)),
    how: 'implied',
    rule: 'place.the-other',
    kind: 'pointer',
  };
}

/** "the first of them", "the last of those": one of the places last spoken of, in their order. */
function nthOf(tokens: Token[], i: number, ctx: PlaceContext): PlaceFound | undefined {
  const last = w(tokens, i + 1) === 'last';
  const n = last ? { value: ctx.focus.length, next: i + 2 } : readOrdinal(tokens, i + 1);
  if (!n || w(tokens, n.next) !== 'of' || !/^(them|those|these|the)$/.test(w(tokens, n.next + 1)))
    return undefined;
  let next = n.next + 2;
  if (w(tokens, next - 1) === 'the') {
    if (!/^(two|three|pair|four|lot)$/.test(w(tokens, next))) return undefined;
    next++;
  }
  const place = ctx.focus.length > 1 && ctx.focus.length < 13 ? ctx.focus[n.value - 1] : undefined;
  return place
    ? { next, places: [place], how: 'implied', rule: 'place.nth-of-them', kind: 'pointer' }
    : undefined;
}

/** "between them it's all sound", "everything in between is fine", after two blocks of one row or column: those that lie between. */
function inBetween(
  tokens: Token[],
  i: number,
  { grid, focus, earlier }: PlaceContext,
): PlaceFound | undefined {
  if (
    w(tokens, i) !== 'between' ||
    tokens.slice(Math.max(0, i - 5), i).some((t) => /^(seams?|sashing|one|join)$/.test(t.w))
  )
    return undefined;
  const them = /^(them|those|these)$/.test(w(tokens, i + 1));
  if (!them && w(tokens, i - 1) !== 'in') return undefined;
  const next = them ? (/^(two|2)$/.test(w(tokens, i + 2)) ? i + 3 : i + 2) : i + 1;
  if (!them && tokens[next] && !/^([.,;!]|is|'s|are|all|and|looks?|too)$/.test(w(tokens, next)))
    return undefined;
  const pair =
    focus.length === 2
      ? focus
      : focus.length === 1 && earlier.at(-1)?.length === 1
        ? [...earlier.at(-1)!, ...focus]
        : [];
  const [a, b] = pair.map((p) => splitBlock(p));
  if (!a || !b || (a.row !== b.row && a.block !== b.block)) return undefined;
  const line = a.row === b.row ? rowOf(grid, a.row) : columnOf(grid, a.block);
  const [from, to] = [line.indexOf(pair[0]!), line.indexOf(pair[1]!)].sort((x, y) => x - y);
  const places = line.slice(from! + 1, to);
  return places.length
    ? { next, places, how: 'implied', rule: 'place.in-between', kind: 'pointer' }
    : undefined;
}

/** "the other left hand corner", "the other bottom corner block", after the one at that side was told of: the one at its other end. */
function otherCorner(
  tokens: Token[],
  k: number,
  { grid, focus, earlier }: PlaceContext,
): PlaceFound | undefined {
  const side = w(tokens, k);
  if (!/^(left|right|top|bottom|upper|lower)$/.test(side)) return undefined;
  let next = k + 1;
  if (w(tokens, next) === 'hand') next++;
  if (w(tokens, next) !== 'corner') return undefined;
  next++;
  const block = /^(block|square|one)$/.test(w(tokens, next));
  if (block) next++;
  const upright = /^(top|bottom|upper|lower)$/.test(side);
  const at = /^(top|upper)$/.test(side) ? 'top' : side === 'lower' ? 'bottom' : side;
  for (const place of [focus, ...[...earlier].reverse()].flat()) {
    const [kind, row, edge] = place.split('-');
    const told = splitBlock(place);
    const corner =
      kind === 'corner' && !block
        ? { row: row!, edge: edge! }
        : told && isCornerBlock(grid, place)
          ? { row: told.row === 1 ? 'top' : 'bottom', edge: told.block === 1 ? 'left' : 'right' }
          : undefined;
    if (!corner || (upright ? corner.row : corner.edge) !== at) continue;
    if (upright) corner.edge = corner.edge === 'left' ? 'right' : 'left';
    else corner.row = corner.row === 'top' ? 'bottom' : 'top';
    const places = [
      told
        ? cornerBlock(grid, corner.row === 'top', corner.edge === 'left')
        : `corner-${corner.row}-${corner.edge}`,
    ];
    return { next, places, how: 'implied', rule: 'place.other-corner', kind: told ? 'blocks' : 'part' };
  }
  return undefined;
}

/** "the other three in that column", "the others in the row", after some of its blocks were told of: the rest of that line. */
function othersInLine(
  tokens: Token[],
  end: number,
  { grid, focus, earlier }: PlaceContext,
  count: number | undefined,
): PlaceFound | undefined {
  let k = end;
  if (!/^(in|of|along|down)$/.test(w(tokens, k))) return undefined;
  k++;
  if (/^(the|that|this|same)$/.test(w(tokens, k))) k++;
  if (w(tokens, k) === 'same') k++;
  const noun = w(tokens, k);
  if (!/^(row|column|col)$/.test(noun)) return undefined;
  const named = readCount(tokens, k + 1);
  const last = splitBlock(focus.at(-1) ?? '');
  const nth = named?.value ?? (noun === 'row' ? last?.row : last?.block);
  if (nth === undefined) return undefined;
  const line = noun === 'row' ? rowOf(grid, nth) : columnOf(grid, nth);
  const told = [focus, focus.length === line.length ? [] : focus.concat(...earlier.slice(-2))];
  for (const group of told) {
    const rest = line.filter((p) => !group.includes(p));
    if (rest.length && rest.length < line.length && (count === undefined || rest.length === count))
      return {
        next: named?.next ?? k + 1,
        places: rest,
        how: 'implied',
        rule: 'place.rest-of-line',
        kind: 'pointer',
      };
  }
  return undefined;
}

const isCornerBlock = (grid: QuiltGrid, place: string): boolean => {
  const at = splitBlock(place);
  return (
    at !== undefined && (at.row === 1 || at.row === grid.rows) && (at.block === 1 || at.block === grid.blocks)
  );
};

/**
 * "everything else in row two is sound", "2-3 is torn, everything else in that row is fine", "2-3 and 4-1 need darning, everything else is
 * all right": what was not spoken of, of the line that is named or, where none is, of the top.
 */
function everythingElse(tokens: Token[], i: number, ctx: PlaceContext): PlaceFound | undefined {
  if (w(tokens, i) !== 'everything' || w(tokens, i + 1) !== 'else') return undefined;
  const groups = [...ctx.earlier.slice(-8), ctx.focus].filter((g) => g.some((p) => splitBlock(p)));
  // "row two: the third one's torn, everything else is fine"
  const heading = groups.findLastIndex((g, k) => k < groups.length - 1 && g.length > 3);
  const line = groups[heading];
  const within = line && groups.slice(heading + 1).every((g) => g.every((p) => line.includes(p)));
  const told = new Set((within ? groups.slice(heading + 1) : groups).flat());
  if (!told.size) return undefined;
  const rest = (next: number, places: string[]): PlaceFound | undefined => {
    const left = places.filter((p) => !told.has(p));
    return left.length && left.length < places.length
      ? { next, places: left, how: 'implied', rule: 'place.everything-else', kind: 'pointer' }
      : undefined;
  };
  if (/^(in|on|of|along)$/.test(w(tokens, i + 2))) {
    const k = /^(the|that|this)$/.test(w(tokens, i + 3)) ? i + 4 : i + 3;
    const last = splitBlock(ctx.focus.at(-1) ?? '');
    const named = readCount(tokens, k + 1);
    if (w(tokens, k) === 'row' && (named || last))
      return rest(named?.next ?? k + 1, rowOf(ctx.grid, named?.value ?? last!.row));
    if (/^(column|col)$/.test(w(tokens, k)) && (named || last))
      return rest(named?.next ?? k + 1, columnOf(ctx.grid, named?.value ?? last!.block));
    return undefined;
  }
  // "everything else stands": said of the note
  if (!/^(is|'s|was|looks|seems|feels|has|ok|okay|fine|sound|good)$/.test(w(tokens, i + 2))) return undefined;
  const row = ctx.walk?.heads && !ctx.walk.pair ? rowOf(ctx.grid, ctx.walk.row) : undefined;
  return rest(i + 2, within ? line : (row ?? allBlocks(ctx.grid)));
}

/** "rest of it", "the rest of the quilt", after rows or many blocks were named: all the other blocks. */
function restOfIt(tokens: Token[], i: number, ctx: PlaceContext): PlaceFound | undefined {
  const k = w(tokens, i) === 'the' ? i + 1 : i;
  if (!/^(rest|remainder)$/.test(w(tokens, k))) return undefined;
  // "the rest is tied", "rest quilted": without "of it" where the deed follows
  const deed = /^(is|'s|are|all|now|was|got)$/.test(w(tokens, k + 1)) ? w(tokens, k + 2) : w(tokens, k + 1);
  const waits = [2, 3, 4].some((n) => w(tokens, k + n) === 'wait');
  const next =
    (waits && /^(can|will|'ll|must|has|have|should|needs)$/.test(w(tokens, k + 1))) ||
    /^(tied|quilted|pressed|basted|done|finished|cleaned|vacuumed|tomorrow|tmrw|tmw|later|next|another|to|still)$/.test(
      deed,
    )
      ? k + 1
      : w(tokens, k + 1) !== 'of'
        ? undefined
        : w(tokens, k + 2) === 'it'
          ? k + 3
          : w(tokens, k + 2) === 'the' && w(tokens, k + 3) === 'quilt'
            ? k + 4
            : undefined;
  const blocks = ctx.focus.filter((p) => splitBlock(p));
  if (
    !next ||
    blocks.length < rowOf(ctx.grid, splitBlock(blocks[0] ?? '')?.row ?? 1).length ||
    blocks.length !== ctx.focus.length
  )
    return undefined;
  return {
    next,
    places: allBlocks(ctx.grid).filter((p) => !blocks.includes(p)),
    how: 'implied',
    rule: 'place.rest-of-it',
    kind: 'pointer',
  };
}

/** "both those rows", "those two columns", "all three rows": the last group that was whole rows, or columns, and several of them. */
function thoseLines(tokens: Token[], i: number, ctx: PlaceContext): PlaceFound | undefined {
  if (!/^(both|those|these|all)$/.test(w(tokens, i))) return undefined;
  let k = i + 1;
  while (/^(of|those|these|the)$/.test(w(tokens, k)) && k < i + 3) k++;
  const count = w(tokens, i) === 'both' ? { value: 2, next: k } : readCount(tokens, k);
  if (count) k = Math.max(k, count.next);
  const noun = w(tokens, k);
  if (
    !/^(rows|columns)$/.test(noun) ||
    (w(tokens, i) === 'all' && !count) ||
    /^(in|at|on|above|below|under|nearest)$/.test(w(tokens, k + 1))
  )
    return undefined;
  // "those rows two and three"
  const named = readCount(tokens, k + 1);
  if (named && named.value <= Math.max(ctx.grid.rows, ctx.grid.blocks)) return undefined;
  const rows = noun === 'rows';
  for (const group of [ctx.focus, ...[...ctx.earlier].reverse()]) {
    const lines = new Set(group.map((p) => (rows ? splitBlock(p)?.row : splitBlock(p)?.block)));
    if (lines.size < 2 || (count && lines.size !== count.value) || lines.has(undefined)) continue;
    const whole = [...lines].flatMap((n) => (rows ? rowOf(ctx.grid, n!) : columnOf(ctx.grid, n!)));
    if (whole.length !== group.length) continue;
    return { next: k + 1, places: group, how: 'implied', rule: 'place.those-lines', kind: 'pointer' };
  }
  // "that row's tied, and the one above it as far as the fourth block. Pins are out of both rows": told one after the other
  const told: number[] = [];
  for (const group of rows && count ? [ctx.focus, ...[...ctx.earlier].reverse()] : []) {
    const own = unique(group.map((p) => splitBlock(p)?.row));
    if (own.length !== 1 || own[0] === undefined || group.length < 2) break;
    if (!told.includes(own[0])) told.unshift(own[0]);
    if (told.length === count!.value)
      return {
        next: k + 1,
        places: told.flatMap((n) => rowOf(ctx.grid, n)),
        how: 'implied',
        rule: 'place.those-lines',
        kind: 'pointer',
      };
  }
  return undefined;
}

/** "both of those", "those three": the last group of just so many, or so many single places named one after the other. */
function together(ctx: PlaceContext, count: number): string[] | undefined {
  if (ctx.cloth?.length === count) return ctx.cloth;
  if (ctx.focus.length === count) return ctx.focus;
  // two seams are four blocks
  if (ctx.focus.length > 1) return undefined;
  const gathered: string[] = [];
  for (const group of [ctx.focus, ...[...ctx.earlier].reverse()]) {
    if (group.length === count && !gathered.length) return group;
    if (group.length > 1 && gathered.length) break;
    if (group.length === 1 && !gathered.includes(group[0]!)) gathered.unshift(group[0]!);
    if (gathered.length === count) return gathered;
  }
  return undefined;
}

/** What "them" stands on: the last group of several, or two single places named one after the other. */
function plural(ctx: PlaceContext, count?: number): string[] {
  const counted = count === undefined ? undefined : together(ctx, count);
  if (counted) return counted;
  if (ctx.cloth?.length) return ctx.cloth;
  if (ctx.focus.length > 1) return ctx.focus;
  const last = ctx.earlier.at(-1);
  if (ctx.focus.length === 1 && last && last.length === 1 && last[0] !== ctx.focus[0])
    return [last[0]!, ctx.focus[0]!];
  const group = [...ctx.earlier].reverse().find((g) => g.length > 1);
  return ctx.focus.length ? ctx.focus : (group ?? []);
}

/** The corner of the quilt at which two sides meet. */
function cornerBetween(focus: string[]): string | undefined {
  const sides = focus.map((p) => /^(?:edge|border)-(\w+)$/.exec(p)?.[1]);
  if (sides.length !== 2 || sides.includes(undefined)) return undefined;
  const upright = sides.find((s) => s === 'top' || s === 'bottom');
  const across = sides.find((s) => s === 'left' || s === 'right');
  return upright && across ? `corner-${upright}-${across}` : undefined;
}

/** "tied the other two rows": the rows that were not among those told as whole rows last. */
function otherRows(ctx: PlaceContext, count: number | undefined, next: number): PlaceFound | undefined {
  const { grid } = ctx;
  for (const group of [ctx.focus, ...[...ctx.earlier].reverse()]) {
    const rows = unique(group.flatMap((p) => (splitBlock(p) ? [String(splitBlock(p)!.row)] : []))).map(
      Number,
    );
    if (
      !rows.length ||
      rows.length >= grid.rows ||
      group.length !== rows.flatMap((r) => rowOf(grid, r)).length
    )
      continue;
    const left = Array.from({ length: grid.rows }, (_, k) => k + 1).filter((r) => !rows.includes(r));
    if (count !== undefined && left.length !== count) continue;
    return {
      next,
      places: left.flatMap((r) => rowOf(grid, r)),
      how: 'implied',
      rule: 'place.other-rows',
      kind: 'pointer',
    };
  }
  return undefined;
}

/** Does nothing follow that the number counts? */
const endsOrTells = (word: string): boolean =>
  /^(|[.,;:]|tomorrow|tmrw|tmw|later|next|to|still|tonight|on|off|done|cut|and|are|is|will|can|i)$/.test(
    word,
  );

/** The two sides of one border or edge that were told one after the other. */
function sidesTold(ctx: PlaceContext): string[] | undefined {
  const [last] = ctx.focus;
  const stem = /^(border|edge)-/.exec(last ?? '')?.[0];
  if (!stem || ctx.focus.length > 2) return undefined;
  const told = unique([...(ctx.focus.length === 2 ? [] : (ctx.earlier.at(-1) ?? [])), ...ctx.focus]);
  return told.length === 2 && told.every((p) => p.startsWith(stem)) ? told : undefined;
}

/** "other three" of the borders, edges or corners after one has been named. */
function others(ctx: PlaceContext, _count: number, next: number, noun: string): PlaceFound {
  const stem = noun.startsWith('border') ? 'border' : noun.startsWith('corner') ? 'corner' : 'edge';
  const all =
    stem === 'corner'
      ? ['top-left', 'top-right', 'bottom-right', 'bottom-left']
      : ['top', 'right', 'bottom', 'left'];
  return {
    next,
    places: all.map((s) => `${stem}-${s}`).filter((p) => !ctx.focus.includes(p)),
    how: 'implied',
    rule: 'place.other-sides',
    kind: 'pointer',
  };
}
