import type { Token } from '../../../text/tokenise.ts';
import { wordAt as w } from '../../../text/word-at.ts';
import { columnOf, rowOf, splitBlock } from '../grid.ts';
import { lastBlock } from '../last-block.ts';
import type { PlaceContext, PlaceFound } from '../place-found.ts';
import { BLOCK_NOUNS } from '../place-tokens.ts';
import { wayAt } from './ways-at.ts';

/** "everything below it", "all the ones to the right of 2-2", "all those above that": the line from there to its end. */
export function allBeyond(
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
    if (w(tokens, j) === 'ones' || BLOCK_NOUNS.has(w(tokens, j))) j++;
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
