import { readCount } from '../../text/read-number.ts';
import type { Token } from '../../text/tokenise.ts';
import { blockAt, unique } from './grid.ts';
import type { PlaceContext, PlaceFound } from './place-found.ts';

/** After these a list of numbers is a list of rows or blocks, not of pairs. */
const LISTED = new Set([
  'row',
  'rows',
  'rose',
  'block',
  'blocks',
  'column',
  'columns',
  'col',
  'cols',
  'r',
  'b',
  'road',
]);

/**
 * "Moth holes one, one, two, two, four, four": a recogniser writes a comma between the numbers of "1-1, 2-2, 4-4". Read
 * only where the whole run of numbers is even, and every pair of it is a block of this quilt.
 */
export function commaPairs(tokens: Token[], i: number, ctx: PlaceContext): PlaceFound | undefined {
  const before = tokens[i - 1];
  if (
    before &&
    (LISTED.has(before.w) ||
      before.kind === 'number' ||
      (before.w === ',' && tokens[i - 2]?.kind === 'number'))
  )
    return undefined;
  const numbers: number[] = [];
  let next = i;
  for (;;) {
    const count = readCount(tokens, next);
    if (!count || count.value < 1 || count.value > 60) break;
    numbers.push(count.value);
    next = count.next;
    if (tokens[next]?.w !== ',' || !readCount(tokens, next + 1)) break;
    next++;
  }
  if (numbers.length < 2 || numbers.length % 2) return undefined;
  const after = tokens[next]?.w ?? '';
  if (
    /^(inch|inches|in|cm|mm|m|ml|yards?|yd|yds|minutes?|min|mins|hours?|hr|hrs|h|-|to|of|spools?|skeins?|packs?|reels?|half)$/.test(
      after,
    )
  )
    return undefined;
  const places: string[] = [];
  for (let k = 0; k < numbers.length; k += 2) {
    const place = blockAt(ctx.grid, numbers[k]!, numbers[k + 1]!);
    if (!place) return undefined;
    places.push(place);
  }
  return { next, places: unique(places), how: 'said', rule: 'place.comma-pairs', kind: 'blocks' };
}
