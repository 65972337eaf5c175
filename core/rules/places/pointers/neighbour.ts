import { readCount } from '../../../text/read-number.ts';
import type { Token } from '../../../text/tokenise.ts';
import { wordAt as w } from '../../../text/word-at.ts';
import { blockFrom, columnOf, rowOf, splitBlock } from '../grid.ts';
import { oneAtSide } from '../group-spoken-of.ts';
import { lastBlock } from '../last-block.ts';
import { isNoNeighbour } from '../neighbour/is-no-neighbour.ts';
import { isOneOfLine } from '../neighbour/nth-of-line.ts';
import type { PlaceContext, PlaceFound } from '../place-found.ts';
import { around, diagonal } from './around-it.ts';
import { DIRECTIONS } from './directions.ts';
import { oppositeCorner, oppositeSide, otherEnd } from './over-against.ts';
import { pointingInside, pointingTo } from './pointing-to.ts';
import { seamBeside } from './seam-beside.ts';

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
  if (isOneOfLine(tokens, i) || isNoNeighbour(tokens, i) || oneAtSide(tokens, i, ctx)) return undefined;
  const { grid } = ctx;
  const base = lastBlock(ctx);
  const across = oppositeCorner(tokens, i, ctx, base);
  if (across) return across;
  const facing = oppositeSide(tokens, i, ctx);
  if (facing) return facing;
  let j = i;
  if (head === 'the' || head === 'its') j++;
  const farEnd = otherEnd(tokens, j, ctx, base);
  if (farEnd) return farEnd;
  const very = w(tokens, j);
  // "the next seam to the right"
  const seam = very === 'next' && w(tokens, j + 1) === 'seam' ? j + 1 : j;
  const slant =
    diagonal(tokens, j, ctx, base) ?? around(tokens, j, ctx, base) ?? seamBeside(tokens, seam, ctx, placeAt);
  if (slant) return slant;
  if (very === 'next' || very === 'following') return nextAlong(tokens, i, j, ctx, base);
  // "the one below", "the block above it", "the two below", "the ones either side"
  let count = 1;
  let both = false;
  const sides = eitherSide(tokens, i, ctx, placeAt);
  if (sides) return sides;
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
      return pointingInside(
        steps.next + (from === 'from' ? 3 : 1),
        [blockFrom(grid, base, sign * steps.value, 0)],
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
  // "darned another one after that": later, and where nobody has said
  if ((word === 'after' || word === 'before') && /^(?:another|more)$/.test(w(tokens, i - 1)))
    return undefined;
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
    places = (p) => Array.from({ length: count }, (_, q) => blockFrom(grid, p, dr * (q + 1), db * (q + 1)));
  } else if (word === 'next' || word === 'beside' || word === 'after' || word === 'along') {
    if (word === 'next' && w(tokens, next) === 'to') next++;
    if (word === 'next' && w(tokens, next) === 'door') next++;
    places = (p) => Array.from({ length: count }, (_, q) => blockFrom(grid, p, 0, q + 1));
  } else if (word === 'before' && k === j && head !== 'the' && /^\w/.test(w(tokens, next))) {
    // "darned one more block before supper": when it was
    return undefined;
  } else if (word === 'before') {
    places = (p) => [blockFrom(grid, p, 0, -1)];
  } else if (word === 'either' && w(tokens, next) === 'side') {
    next++;
    both = true;
    places = (p) => [blockFrom(grid, p, 0, -1), blockFrom(grid, p, 0, 1)];
  } else if (word === 'up' || word === 'down') {
    places = (p) => [blockFrom(grid, p, word === 'up' ? -1 : 1, 0)];
  } else return undefined;
  if (w(tokens, next) === 'of') next++;
  if (['it', 'that', 'this', 'them', 'one'].includes(w(tokens, next))) {
    next++;
    if (['one', 'block'].includes(w(tokens, next))) next++;
  } else {
    // "the one below 3-2": measured from the place named next
    const named = placeAt(w(tokens, next) === 'the' ? next + 1 : next);
    if (named && named.kind === 'blocks' && named.places.length === 1)
      return { ...pointingInside(named.next, places(named.places[0]!), 'place.neighbour-of'), how: 'said' };
  }
  if (!base) return pointingTo(next, [], 'place.neighbour');
  const found = pointingInside(next, places(base), both ? 'place.either-side' : 'place.neighbour');
  return both ? { ...found, outside: false } : found;
}

/** "the next one", "next two", "next block along", "the next row": `j` is the index of "next". */
function nextAlong(
  tokens: Token[],
  i: number,
  j: number,
  ctx: PlaceContext,
  base: string | undefined,
): PlaceFound | undefined {
  const { grid } = ctx;
  const head = w(tokens, i);
  const very = w(tokens, j);
  const n = readCount(tokens, j + 1);
  const k = n ? n.next : j + 1;
  const noun = w(tokens, k);
  if (noun === 'row' || noun === 'rows') {
    const row = splitBlock(ctx.focus.at(-1) ?? base ?? '')?.row;
    if (row === undefined) return undefined;
    // "the next row down"
    const down = w(tokens, k + 1) === 'down' && !/^(to|from|the|in)$/.test(w(tokens, k + 2));
    return pointingInside(
      down ? k + 2 : k + 1,
      Array.from({ length: n?.value ?? 1 }, (_, q) => rowOf(grid, row + q + 1)).flat(),
      'place.next-row',
    );
  }
  if (noun === 'column' || noun === 'col' || noun === 'columns') {
    const column = splitBlock(ctx.focus.at(-1) ?? base ?? '')?.block;
    if (column === undefined) return undefined;
    const along = /^(along|across|over)$/.test(w(tokens, k + 1)) && !/^(to|the|from)$/.test(w(tokens, k + 2));
    return pointingInside(
      along ? k + 2 : k + 1,
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
  const way = wayFrom(tokens, next);
  if (way)
    return pointingInside(
      way.next,
      Array.from({ length: count }, (_, q) =>
        blockFrom(grid, base, way.by[0] * (q + 1), way.by[1] * (q + 1)),
      ),
      way.by[0] > 0 ? 'place.next-down' : 'place.next',
    );
  return pointingInside(
    next,
    Array.from({ length: count }, (_, q) => blockFrom(grid, base, 0, q + 1)),
    'place.next',
  );
}

/** "(the next two) down", "to the left of it", "on its right", "above": which way they are counted. */
function wayFrom(tokens: Token[], at: number): { next: number; by: [number, number] } | undefined {
  if (w(tokens, at) === 'down') return { next: at + 1, by: [1, 0] };
  if (w(tokens, at) === 'up' && !/^(to|in)$/.test(w(tokens, at + 1))) return { next: at + 1, by: [-1, 0] };
  let k = at;
  while (/^(to|on|the|its|going|moving)$/.test(w(tokens, k)) && k < at + 3) k++;
  const word = w(tokens, k);
  const by = DIRECTIONS.get(word);
  const aside = word === 'left' || word === 'right';
  // "net over the next two over the top", "the next one left to do"
  if (
    !by ||
    /^(over|under|beneath|underneath)$/.test(word) ||
    (aside ? k === at : k > at) ||
    /^(row|rows|edge|border|side|block|corner|hand|half|end|column)$/.test(w(tokens, k + 1))
  )
    return undefined;
  const of = w(tokens, k + 1) === 'of' ? k + 2 : k + 1;
  const from = /^(it|that|this)$/.test(w(tokens, of)) ? of + 1 : k + 1;
  return { next: /^(one|block)$/.test(w(tokens, from)) && from > k + 1 ? from + 1 : from, by };
}

/** "stained on either side of it", "both sides of 3-2" */
function eitherSide(
  tokens: Token[],
  i: number,
  ctx: PlaceContext,
  placeAt: (j: number) => PlaceFound | undefined,
): PlaceFound | undefined {
  const { grid } = ctx;
  if (
    /^(either|both)$/.test(w(tokens, i)) &&
    /^(side|sides)$/.test(w(tokens, i + 1)) &&
    w(tokens, i + 2) === 'of'
  ) {
    const named = /^(it|that|this)$/.test(w(tokens, i + 3))
      ? undefined
      : placeAt(w(tokens, i + 3) === 'the' ? i + 4 : i + 3);
    const from =
      named?.kind === 'blocks' && named.places.length === 1
        ? named.places[0]
        : /^(it|that|this)$/.test(w(tokens, i + 3))
          ? lastBlock(ctx)
          : undefined;
    if (from)
      return {
        ...pointingInside(
          named?.next ?? i + 4,
          [
            blockFrom(grid, from, 0, -1),
            // "the seams either side of 3-3 are open": they are its own as well
            ...(/^seams?$/.test(w(tokens, w(tokens, i - 1) === 'on' ? i - 2 : i - 1)) ? [from] : []),
            blockFrom(grid, from, 0, 1),
          ],
          'place.either-side',
        ),
        outside: false,
      };
  }
  return undefined;
}
