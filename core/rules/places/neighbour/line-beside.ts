import type { Token } from '../../../text/tokenise.ts';
import { wordAt as w } from '../../../text/word-at.ts';
import { columnOf, gridOfRow, rowOf, splitBlock } from '../grid.ts';
import type { PlaceContext, PlaceFound } from '../place-found.ts';
import type { Ways } from './ways-at.ts';

const ENDS =
  /^(|[,.;:!?]|is|'s|has|and|too|as|a|are|was|looks|needs|wants|by|but|with|will|'ll|had|got|gets|now|then|also|tomorrow|tonight|later|today)$/;

/** "the last column has faded, and the one before it a bit as well": after a whole row or column the next one. */
export function lineBeside(tokens: Token[], ways: Ways, ctx: PlaceContext): PlaceFound | undefined {
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
  // "the one to the right of it", "the one below that"
  const of = w(tokens, ways.next) === 'of' ? ways.next + 1 : ways.next;
  const next =
    /^(it|that|this)$/.test(w(tokens, of)) && (of === ways.next || ENDS.test(w(tokens, of + 1)))
      ? of + 1
      : ways.next;
  // "the one below row four", "the one after 3-2"
  // and "the one below the same, by machine"
  if (
    next === ways.next &&
    !ENDS.test(w(tokens, next)) &&
    !(w(tokens, next) === 'the' && w(tokens, next + 1) === 'same')
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
