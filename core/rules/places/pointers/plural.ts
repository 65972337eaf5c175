import { splitBlock, unique } from '../grid.ts';
import type { PlaceContext } from '../place-found.ts';
import { seamsInHand } from '../seams-in-hand.ts';
import { groupsBack } from './pointing-to.ts';

/** "both of those", "those three": the last group of just so many, or so many single places named one after the other. */
function together(ctx: PlaceContext, count: number): string[] | undefined {
  // "holes in 2-2 and 4-4, and the gingham in the second is thin", then "both patched": the pair that the one is of
  const [one] = ctx.focus;
  const pair =
    ctx.focus.length === 1
      ? ctx.earlier.slice(-2).findLast((g) => g.length === count && g.includes(one!) && !isNarrowed(ctx, g))
      : undefined;
  if (pair) return pair;
  const seams = count === 2 ? seamsInHand(ctx) : undefined;
  if (seams) return unique(seams.flat());
  if (ctx.cloth?.length === count) return ctx.cloth;
  if (ctx.focus.length === count) return ctx.focus;
  const list = toldOneByOne(ctx);
  if (list?.length === count) return list;
  // two seams are four blocks
  if (ctx.focus.length > 1) return undefined;
  const gathered: string[] = [];
  for (const group of groupsBack(ctx)) {
    // "2-2 and 3-3 are stained, 4-4 is torn", and then "those two": no single block told since is two
    if (group.length === count && !(gathered.length === 1 && isNarrowed(ctx, group))) return group;
    // "3-3 is torn, and the linen in 5-5 is thin": named by its cloth first
    if (count === 2 && ctx.earlier.at(-1) === group && gathered.length && isNarrowedCloth(ctx, group))
      continue;
    // "2-4 and 2-5 are torn, and 3-5", and then "all three of them"
    const both = [...group, ...gathered];
    if (gathered.length && both.length === count && unique(both).length === count) return both;
    if (group.length > 1 && gathered.length) break;
    if (group.length === 1 && !gathered.includes(group[0]!)) gathered.unshift(group[0]!);
    if (gathered.length === count) return gathered;
  }
  return undefined;
}

/** Are these all the blocks of one of the quilt's cloths? */
const isCloth = ({ grid }: PlaceContext, group: string[]): boolean =>
  Object.values(grid.fabrics ?? {}).some(
    (b) => b.length === group.length && b.every((p) => group.includes(p)),
  );

const isNarrowedCloth = (ctx: PlaceContext, group: string[]): boolean =>
  group.length > 1 && group.includes(ctx.focus[0]!) && isCloth(ctx, group);

/** "the linen in 5-5 and the check in 4-4", "3-3 is torn and the check in 4-4 thin": only named, to say which of its blocks is meant beside another. */
const isNarrowed = (ctx: PlaceContext, group: string[]): boolean => {
  const before = ctx.earlier.at(-2);
  return (
    ctx.earlier.at(-1) === group &&
    isCloth(ctx, group) &&
    before?.length === 1 &&
    splitBlock(before[0]!) !== undefined &&
    !group.includes(before[0]!) &&
    ctx.focus.length === 1
  );
};

/** Three or more blocks told one by one, while one of them is spoken of. */
export const toldOneByOne = ({ list, focus }: PlaceContext): string[] | undefined =>
  focus.length === 1 && list?.includes(focus[0]!) ? list : undefined;

/** What "them" stands on: the last group of several, or two single places named one after the other. */
export function plural(ctx: PlaceContext, count?: number): string[] {
  const counted = count === undefined ? undefined : together(ctx, count);
  if (counted) return counted;
  if (ctx.cloth?.length) return ctx.cloth;
  if (ctx.focus.length > 1) return ctx.focus;
  if (ctx.lost) return [];
  const list = toldOneByOne(ctx);
  if (list) return list;
  const last = ctx.earlier.at(-1);
  // "spot cleaned 4-4, washed it": the whole of the quilt is none of several
  if (count === undefined && ctx.focus.join() === 'quilt' && last?.length === 1) return [];
  if (ctx.focus.length === 1 && last && last.length === 1 && last[0] !== ctx.focus[0] && last[0] !== 'quilt')
    return [last[0]!, ctx.focus[0]!];
  const group = [...ctx.earlier].reverse().find((g) => g.length > 1);
  return ctx.focus.length ? ctx.focus : (group ?? []);
}
