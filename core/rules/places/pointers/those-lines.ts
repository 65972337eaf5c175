import { readCount } from '../../../text/read-number.ts';
import type { Token } from '../../../text/tokenise.ts';
import { wordAt as w } from '../../../text/word-at.ts';
import { columnOf, rowOf, splitBlock, unique } from '../grid.ts';
import type { PlaceContext, PlaceFound } from '../place-found.ts';
import { groupsBack, pointingTo } from './pointing-to.ts';

/** "both those rows", "those two columns", "all three rows": the last group that was whole rows, or columns, and several of them. */
export function thoseLines(tokens: Token[], i: number, ctx: PlaceContext): PlaceFound | undefined {
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
  for (const group of groupsBack(ctx)) {
    const lines = new Set(group.map((p) => (rows ? splitBlock(p)?.row : splitBlock(p)?.block)));
    if (lines.size < 2 || (count && lines.size !== count.value) || lines.has(undefined)) continue;
    const whole = [...lines].flatMap((n) => (rows ? rowOf(ctx.grid, n!) : columnOf(ctx.grid, n!)));
    if (whole.length !== group.length) continue;
    return pointingTo(k + 1, group, 'place.those-lines');
  }
  // "that row's tied, and the one above it as far as the fourth block. Pins are out of both rows": told one after the other
  const told: number[] = [];
  for (const group of rows && count ? groupsBack(ctx) : []) {
    const own = unique(group.map((p) => splitBlock(p)?.row));
    if (own.length !== 1 || own[0] === undefined || group.length < 2) break;
    if (!told.includes(own[0])) told.unshift(own[0]);
    if (told.length === count!.value)
      return pointingTo(
        k + 1,
        told.flatMap((n) => rowOf(ctx.grid, n)),
        'place.those-lines',
      );
  }
  return undefined;
}

/** "tied the other two rows": the rows that were not among those told as whole rows last. */
export function otherRows(
  ctx: PlaceContext,
  count: number | undefined,
  next: number,
): PlaceFound | undefined {
  const { grid } = ctx;
  for (const group of groupsBack(ctx)) {
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
    return pointingTo(
      next,
      left.flatMap((r) => rowOf(grid, r)),
      'place.other-rows',
    );
  }
  return undefined;
}
