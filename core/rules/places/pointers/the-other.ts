import { readCount } from '../../../text/read-number.ts';
import type { Token } from '../../../text/tokenise.ts';
import { wordAt as w } from '../../../text/word-at.ts';
import { columnOf, cornerBlocks, rowOf, splitBlock } from '../grid.ts';
import { wholeLines } from '../line-spoken.ts';
import type { PlaceContext, PlaceFound } from '../place-found.ts';
import { tellsHow } from '../tells-how.ts';
import { others, sidesTold } from './other-sides.ts';
import { pointingTo } from './pointing-to.ts';
import { otherRows } from './those-lines.ts';

/** "the other one", "the other two", "the remaining sides", "the others": what of a group was not just told. */
export function theOther(tokens: Token[], i: number, ctx: PlaceContext): PlaceFound | undefined {
  const { focus } = ctx;
  const noun = w(tokens, w(tokens, i + 1) === 'same' ? i + 2 : i + 1);
  const n = readCount(tokens, i + 2);
  const k = n ? n.next : i + 2;
  const noun2 = w(tokens, k);
  if (/^(rows|rose)$/.test(noun2)) return otherRows(ctx, n?.value, k + 1);
  // "the left edge is frayed", "so's the top", "the other two are fine"
  const sides = n?.value === 2 ? sidesTold(ctx) : undefined;
  const cornerBlocks = n?.value === 3 && noun2 === 'corners' ? otherCornerBlocks(ctx) : undefined;
  if (cornerBlocks) return pointingTo(k + 1, cornerBlocks, 'place.the-other');
  if (n && ['borders', 'border', 'sides', 'edges', 'corners'].includes(noun2))
    return others(
      sides && noun2 !== 'corners' ? { ...ctx, focus: sides } : ctx,
      k + 1,
      // "the left border is frayed, the other three sides are sound": of the border
      sides
        ? `${sides[0]!.split('-')[0]}s`
        : noun2 === 'sides' && ctx.focus[0]?.startsWith('border-')
          ? 'borders'
          : noun2,
    );
  // "the left border is frayed, the others are sound"
  if (noun === 'others' && focus.length === 1 && /^(border|edge)-/.test(focus[0]!))
    return others(ctx, i + 2, `${focus[0]!.split('-')[0]}s`);
  if (sides && !['blocks', 'ones', 'rows', 'borders', 'sides'].includes(noun2))
    return others({ ...ctx, focus: sides }, k, `${sides[0]!.split('-')[0]}s`);
  if (n && n.value === 3 && !['blocks', 'ones', 'rows'].includes(noun2)) {
    const kind = focus.find((p) => /^(border|edge|corner)-/.test(p));
    if (kind) return others(ctx, k, `${kind.split('-')[0]}s`);
  }
  // "replace 2-3, leave the other as is"
  const bare =
    !n &&
    (/^(|[.,;!]|as|be|alone|i|is|'s|was|can|will|gets?|needs?|and|but|too|tomorrow|later)$/.test(noun2) ||
      // "darned the first by hand and the other on the machine"
      tellsHow(tokens, k));
  if (noun2 === 'one' || noun2 === 'block' || (n && n.value <= 6) || noun === 'others' || bare) {
    const end = noun === 'others' ? i + 2 : ['one', 'block', 'blocks', 'ones'].includes(noun2) ? k + 1 : k;
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
      return pointingTo(
        end,
        group.filter((p) => !focus.includes(p)),
        'place.the-other',
      );
    // "vacuumed rows one to three, the other three tomorrow"
    const lines = n && noun2 !== 'blocks' && (wholeLines(ctx.grid, focus)?.lines.length ?? 0) > 1;
    const rows = lines ? otherRows({ ...ctx, earlier: [] }, n.value, end) : undefined;
    if (rows) return rows;
    // "the first three blocks of row two", then "the other two"
    const onward = n ? restOfRowOf(ctx, n.value) : undefined;
    if (onward) return pointingTo(end, onward, 'place.the-other');
    if (!bare && (!n || n.value === 1)) {
      const previous = [...ctx.earlier].reverse().find((g) => g.length === 1 && !focus.includes(g[0]!));
      if (previous) return pointingTo(end, previous, 'place.the-other');
    }
    return undefined;
  }
  return undefined;
}

/** The other corner blocks, after one of them was spoken of. */
function otherCornerBlocks({ grid, focus }: PlaceContext): string[] | undefined {
  const corners = cornerBlocks(grid);
  return focus.length === 1 && corners.includes(focus[0]!)
    ? corners.filter((p) => p !== focus[0])
    : undefined;
}

/** The blocks of a row that are left beside several of it, where there are just so many. */
function restOfRowOf({ grid, focus }: PlaceContext, count: number): string[] | undefined {
  const row = splitBlock(focus[0] ?? '')?.row;
  if (row === undefined || focus.length < 2 || !focus.every((p) => splitBlock(p)?.row === row))
    return undefined;
  const rest = rowOf(grid, row).filter((p) => !focus.includes(p));
  return rest.length === count ? rest : undefined;
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
      return pointingTo(named?.next ?? k + 1, rest, 'place.rest-of-line');
  }
  return undefined;
}
