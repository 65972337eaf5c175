import { readCount } from '../../../text/read-number.ts';
import type { Token } from '../../../text/tokenise.ts';
import { wordAt as w } from '../../../text/word-at.ts';
import { blockAt, countUp, splitBlock } from '../grid.ts';
import type { PlaceContext, PlaceFound } from '../place-found.ts';
import type { Axis } from './axis-of.ts';

/** "the two rows above", "those two rows below it": counted from the rows last spoken of. */
export function linesBeside(tokens: Token[], i: number, ctx: PlaceContext): PlaceFound | undefined {
  const j = /^(the|those|these)$/.test(w(tokens, i)) ? i + 1 : i;
  const count = j > i ? readCount(tokens, j) : undefined;
  if (!count || count.value < 2 || !/^rows$/.test(w(tokens, count.next))) return undefined;
  const way = WAYS.get(w(tokens, count.next + 1));
  if (way?.axis !== 'row') return undefined;
  const next = /^(it|that|them|those|these)$/.test(w(tokens, count.next + 2))
    ? count.next + 3
    : count.next + 2;
  if (/^(row|rows|the|number|\d+)$/.test(w(tokens, next))) return undefined;
  const rows = ctx.focus.flatMap((p) => splitBlock(p)?.row ?? []);
  if (!rows.length) return undefined;
  const from = way.step < 0 ? Math.min(...rows) : Math.max(...rows);
  const lines = Array.from({ length: count.value }, (_, k) => from + way.step * (k + 1));
  const places = lines.flatMap((row) =>
    countUp(1, ctx.grid.blocks).flatMap((block) => blockAt(ctx.grid, row, block) ?? []),
  );
  return {
    next,
    places,
    how: 'implied',
    rule: 'place.rows-beside',
    kind: 'pointer',
    ...(lines.some((row) => row < 1 || row > ctx.grid.rows) ? { outside: true } : {}),
  };
}

export const WAYS = new Map<string, { axis: Axis; step: 1 | -1 }>(
  Object.entries({
    below: { axis: 'row', step: 1 },
    beneath: { axis: 'row', step: 1 },
    under: { axis: 'row', step: 1 },
    underneath: { axis: 'row', step: 1 },
    down: { axis: 'row', step: 1 },
    above: { axis: 'row', step: -1 },
    up: { axis: 'row', step: -1 },
    left: { axis: 'column', step: -1 },
    right: { axis: 'column', step: 1 },
  } as const),
);
