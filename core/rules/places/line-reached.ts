import { COLUMN_WORDS } from '../../lexicon/place-words.ts';
import { readOrdinal } from '../../text/read-number.ts';
import type { Token } from '../../text/tokenise.ts';
import { columnOf, rowOf } from './grid.ts';
import type { PlaceContext, PlaceFound } from './place-found.ts';

const COLUMNS = new Set(COLUMN_WORDS.filter((x) => x !== 'c'));
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
    .findLast((t) => /^(rows?|blocks?|squares?|edges?|sides?|ones?)$/.test(t.w) || COLUMNS.has(t.w))?.w;
  if (!noun) return undefined;
  const inRows = /^rows?$/.test(noun);
  if (!inRows && !COLUMNS.has(noun)) return undefined;
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
