import type { Token } from '../../text/tokenise.ts';
import { wordAt as w } from '../../text/word-at.ts';
import { blockAt, countUp, splitBlock, unique } from './grid.ts';
import type { PlaceContext, PlaceFound } from './place-found.ts';
import { isGluedNumber } from './place-tokens.ts';
import { readIndexList } from './read-index.ts';

type Axis = 'row' | 'block';
const LETTERS = new Map<string, Axis>(Object.entries({ r: 'row', b: 'block', c: 'block' }));
const WORDS = new Map<string, Axis>(
  Object.entries({
    row: 'row',
    rows: 'row',
    block: 'block',
    blocks: 'block',
    blk: 'block',
    blks: 'block',
    col: 'block',
    cols: 'block',
    column: 'block',
    columns: 'block',
  }),
);

const axisAt = (tokens: Token[], i: number): Axis | undefined =>
  isGluedNumber(tokens[i + 1])
    ? (LETTERS.get(w(tokens, i)) ?? WORDS.get(w(tokens, i)))
    : WORDS.get(w(tokens, i));

/**
 * "r2-3 c4-6", "r4-5/b1-2", "c2 r1-3", "b2 of r1-3", "r2-4 b3": rows crossed with blocks or columns in short hand, either first. At least
 * one of them stands as a letter on its figure; written out they are read elsewhere.
 */
export function shortCross(tokens: Token[], i: number, ctx: PlaceContext): PlaceFound | undefined {
  const first = axisAt(tokens, i);
  if (!first) return undefined;
  const listAt = (k: number, axis: Axis): { values: number[]; next: number } | undefined =>
    readIndexList(tokens, k + 1, {
      prefix: new Set([w(tokens, k)]),
      homophones: false,
      max: axis === 'row' ? ctx.grid.rows : ctx.grid.blocks,
      plural: true,
    });
  const one = listAt(i, first);
  if (!one) return undefined;
  let j = one.next;
  // "R5-C2", "r3.c2": a mark between the letters and no range
  const mark = /^[-.]$/.test(w(tokens, j)) && tokens[j]!.glued && tokens[j + 1]?.glued;
  // "R4 - C1, C2"
  const apart =
    first === 'row' &&
    one.values.length === 1 &&
    w(tokens, j) === '-' &&
    w(tokens, j + 1) === 'c' &&
    isGluedNumber(tokens[j + 2]);
  if (mark || apart || /^(,|\/|x|of|in|:)$/.test(w(tokens, j))) j++;
  const second = axisAt(tokens, j);
  if (!second || second === first || !(LETTERS.has(w(tokens, i)) || LETTERS.has(w(tokens, j))))
    return undefined;
  const other = listAt(j, second);
  if (!other) return undefined;
  // "b4, r2 b3": the row is that of the block behind it
  if (first === 'block' && axisAt(tokens, other.next) === 'block') return undefined;
  const [rows, blocks] = first === 'row' ? [one, other] : [other, one];
  const named = rows.values.flatMap((r) => blocks.values.map((b) => blockAt(ctx.grid, r, b)));
  const inside = named.filter((p): p is string => p !== undefined);
  // "R3C2-R3C4", "r2b1 to r4b1": from the one to the other
  const last =
    named.length === 1 && inside.length && /^(-|to|thru|through)$/.test(w(tokens, other.next))
      ? shortCross(tokens, other.next + 1, ctx)
      : undefined;
  if (last?.places.length === 1) {
    const [a, b] = [splitBlock(inside[0]!)!, splitBlock(last.places[0]!)!];
    if (a.row === b.row || a.block === b.block)
      return {
        next: last.next,
        places: countUp(a.row, b.row).flatMap((r) =>
          countUp(a.block, b.block).flatMap((k) => blockAt(ctx.grid, r, k) ?? []),
        ),
        how: 'said',
        rule: 'place.row-block',
        kind: 'blocks',
      };
  }
  return {
    next: other.next,
    places: unique(inside),
    how: 'said',
    rule: 'place.row-block',
    kind: 'blocks',
    ...(inside.length < named.length ? { outside: true } : {}),
  };
}
