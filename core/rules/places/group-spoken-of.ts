import type { Token } from '../../text/tokenise.ts';
import { wordAt as w } from '../../text/word-at.ts';
import { splitBlock } from './grid.ts';
import { areSides } from './outermost.ts';
import type { PlaceContext } from './place-found.ts';

/** The last group of a few blocks spoken of: one list, or two single blocks one after the other. */
export function spokenTogether(ctx: PlaceContext): string[] | undefined {
  const isFew = (g: string[]): boolean =>
    g.length > 1 && g.length <= 6 && (g.every((p) => splitBlock(p)) || areSides(g));
  // "one of the checks is torn, the left-hand one"
  if (ctx.cloth && isFew(ctx.cloth)) return ctx.cloth;
  if (isFew(ctx.focus)) return ctx.focus;
  if (ctx.list && ctx.focus.length === 1 && ctx.list.includes(ctx.focus[0]!)) return ctx.list;
  const last = ctx.earlier.at(-1);
  if (ctx.focus.length !== 1 || !last) return undefined;
  if (isFew(last) && last.includes(ctx.focus[0]!)) return last;
  // "now the upper one", where other things were spoken of between
  const before = ctx.earlier.slice(-5).findLast((g) => isFew(g) && g.includes(ctx.focus[0]!));
  if (before) return before;
  return last.length === 1 && isFew([last[0]!, ctx.focus[0]!]) && last[0] !== ctx.focus[0]
    ? [last[0]!, ctx.focus[0]!]
    : undefined;
}

/** "(darned the first two and netted) the last": of the list that the ones just told were picked from. */
export function pickedFrom(word: string, ctx: PlaceContext): string[] | undefined {
  const last = ctx.earlier.at(-1);
  if (!/^(second|third|fourth|last)$/.test(word) || !last || last.length < 3 || last.length > 6)
    return undefined;
  return ctx.focus.length < last.length &&
    ctx.focus.length > 0 &&
    ctx.focus.every((p) => last.includes(p) && splitBlock(p))
    ? last
    : undefined;
}

/** "2-2 and 2-4 are torn, the one on the left worse": of those two, and no block beside them. */
export const oneAtSide = (tokens: Token[], i: number, { focus }: PlaceContext): boolean =>
  focus.length === 2 &&
  focus.every((p) => splitBlock(p)) &&
  /^the (one|block|square) on the (left|right)$/.test(
    tokens
      .slice(i, i + 5)
      .map((t) => t.w)
      .join(' '),
  ) &&
  !/^(of|hand|side)$/.test(w(tokens, i + 5));
