import type { Token } from '../../../text/tokenise.ts';
import { wordAt as w } from '../../../text/word-at.ts';
import { blockFrom, splitBlock } from '../grid.ts';
import type { PlaceContext, PlaceFound } from '../place-found.ts';
import { DIRECTIONS } from './directions.ts';
import { pointingInside } from './pointing-to.ts';

const TOWARDS = /^(just|right|directly|immediately|at|on|to|the|its|that|'s|is)$/;

/**
 * "the seam right below it": after a seam between two blocks both of its neighbours, after one block that block and the one on the
 * other side. "The seam to the left of 3-3", "the seam on its right". What is told of a "side" alone may be the quilt's.
 */
export function seamBeside(
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
  const named = it || own ? undefined : placeAt(w(tokens, next) === 'the' ? next + 1 : next);
  if (named && (named.kind !== 'blocks' || named.places.length !== 1 || (sideways && !of))) return undefined;
  // "the seam on the right of 2-4": one of its own
  if (named && sideways && /^(on|at)$/.test(w(tokens, k - 2))) return undefined;
  if (
    !it &&
    !own &&
    !named &&
    // "did the next seam to the right the same way"
    !(w(tokens, next) === 'the' && w(tokens, next + 1) === 'same') &&
    (side || of || under || /^(\d|row|block|the|a|an|edge|border|corner|column)/.test(w(tokens, next)))
  )
    return undefined;
  if (it) next += /^(one|block)$/.test(w(tokens, next + 1)) ? 2 : 1;
  const along = w(tokens, j - 1) === 'next' && sideways && !named && seamAlong(ctx, way[1]);
  if (along) return pointingInside(next, along, 'place.seam-beside');
  const bases = named ? named.places : ctx.focus.filter((p) => splitBlock(p));
  if (bases.length !== 1 && (bases.length !== 2 || sideways)) return undefined;
  const moved = bases.map((p) => blockFrom(ctx.grid, p, way[0], way[1]));
  const beside = bases.length === 1 ? [...moved.filter((p) => p !== undefined), bases[0]] : moved;
  return {
    ...pointingInside(named?.next ?? next, beside, 'place.seam-beside'),
    ...(bases.length === 1 ? { outside: false } : {}),
  };
}

/** "did the next seam to the right", after the seam between two blocks of a row: the one between the outer of them and its neighbour. */
function seamAlong({ focus, grid }: PlaceContext, way: number): string[] | undefined {
  const pair = focus.map((p) => splitBlock(p));
  const [a, b] = pair;
  if (pair.length !== 2 || !a || !b || a.row !== b.row || Math.abs(a.block - b.block) !== 1) return undefined;
  const outer = `${a.row}-${way > 0 ? Math.max(a.block, b.block) : Math.min(a.block, b.block)}`;
  const beyond = blockFrom(grid, outer, 0, way);
  return beyond ? [outer, beyond] : undefined;
}
