import { readCount, readOrdinal } from '../../text/read-number.ts';
import type { Token } from '../../text/tokenise.ts';
import { wordAt as w } from '../../text/word-at.ts';
import { columnOf, rowOf, splitBlock } from './grid.ts';
import type { PlaceContext, PlaceFound } from './place-found.ts';
import { BLOCK_NOUNS, COLUMN_NOUNS } from './place-tokens.ts';

/** How far back the rows may have been spoken of, in words. */
const REACH = 14;

/** "three rows tied, I'm on the fourth", "the top row's done, starting the second": a row whose noun was said before. */
export function lineReached(tokens: Token[], i: number, ctx: PlaceContext): PlaceFound | undefined {
  if (
    tokens[i - 1]?.w !== 'the' ||
    !/^(on|onto|to|through|starting|started|doing|up|into|begun)$/.test(tokens[i - 2]?.w ?? '')
  )
    return undefined;
  const nth = readOrdinal(tokens, i);
  if (!nth || nth.value < 2) return undefined;
  const after = tokens[nth.next];
  if (after?.kind === 'word' && !/^(now|and|but|already|so|at|since|today|tonight)$/.test(after.w))
    return undefined;
  const noun = tokens
    .slice(Math.max(0, i - REACH), i)
    .findLast((t) => /^(rows?|blocks?|squares?|edges?|sides?|ones?)$/.test(t.w) || COLUMN_NOUNS.has(t.w))?.w;
  if (!noun) return undefined;
  const inRows = /^rows?$/.test(noun);
  if (!inRows && !COLUMN_NOUNS.has(noun)) return undefined;
  const places = inRows ? rowOf(ctx.grid, nth.value) : columnOf(ctx.grid, nth.value);
  return places.length
    ? {
        next: nth.next,
        places,
        how: 'implied',
        rule: inRows ? 'place.ordinal-row' : 'place.ordinal-column',
        kind: 'blocks',
      }
    : undefined;
}

/** "(that row's tied) and the one above it as far as the fourth block": of a row pointed at, the blocks up to the one reached. */
export function reachedAlong(tokens: Token[], found: PlaceFound, { grid }: PlaceContext): PlaceFound {
  const at = splitBlock(found.places[0] ?? '');
  if (!at || found.places.length < 2 || found.places.join() !== rowOf(grid, at.row).join()) return found;
  let k = found.next;
  if (w(tokens, k) === 'as' && w(tokens, k + 1) === 'far' && w(tokens, k + 2) === 'as') k += 3;
  else if (w(tokens, k) === 'up' && w(tokens, k + 1) === 'to') k += 2;
  else return found;
  if (w(tokens, k) === 'the') k++;
  const named = BLOCK_NOUNS.has(w(tokens, k));
  const n = named ? readCount(tokens, k + 1) : readOrdinal(tokens, k);
  if (!n || n.value < 1 || n.value > found.places.length) return found;
  const next =
    !named && (BLOCK_NOUNS.has(w(tokens, n.next)) || w(tokens, n.next) === 'one') ? n.next + 1 : n.next;
  return { ...found, places: found.places.slice(0, n.value), next };
}
