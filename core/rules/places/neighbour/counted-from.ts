import type { Token } from '../../../text/tokenise.ts';
import { wordAt as w } from '../../../text/word-at.ts';
import { wordsBetween } from '../../words-between.ts';
import { blockOfThing } from '../find-mention.ts';
import { blockFrom, cornerBlock, rowOf, splitBlock, unique } from '../grid.ts';
import { lastBlock, lastCorner } from '../last-block.ts';
import { oneOfThem } from '../one-of-them.ts';
import type { PlaceContext, PlaceFound } from '../place-found.ts';
import { blocksPicked } from '../place-found.ts';
import { BLOCK_NOUNS } from '../place-tokens.ts';
import { type Step, type Ways, wayAt } from './ways-at.ts';

/** What a way is counted from: the places spoken of before, and those that are named at a token. */
type Ground = { ctx: PlaceContext; placeAt: (j: number) => PlaceFound | undefined };

/** How far a way goes: so many steps (one), to each of the first so many, or to several blocks at once; `needsEnd` where only a verb behind it makes it a place; `fromCorner` where a corner named behind it is its block. */
type Reach = {
  distance?: number;
  spread?: number;
  many?: boolean;
  needsEnd?: boolean;
  fromCorner?: boolean;
};

/** The blocks that lie these ways from what is named behind them, or else from the block last spoken of. */
export function countedFrom(
  tokens: Token[],
  told: Ways,
  { ctx, placeAt }: Ground,
  { distance = 1, spread, many = false, needsEnd = false, fromCorner = false }: Reach = {},
): PlaceFound | undefined {
  let ways = told;
  let next = ways.next;
  let based = false;
  let bases: string[] | undefined;
  let how: 'said' | 'implied' = 'implied';
  const joint = /^(of|from|to)$/.test(w(tokens, next)) ? next + 1 : next;
  const corner = /^(that|the|this)$/.test(w(tokens, joint)) && w(tokens, joint + 1) === 'corner';
  const cornered = corner && w(tokens, joint + 2) !== 'of' ? lastCorner(ctx) : undefined;
  const pick = `${w(tokens, joint)} ${w(tokens, joint + 1)} ${w(tokens, joint + 2)} ${w(tokens, joint + 3)}`;
  const end = /^the (first|last) of (?:those|them|these)$/.exec(pick)?.[1];
  const picked = end && ctx.focus.length > 1 ? ctx.focus.at(end === 'first' ? 0 : -1) : undefined;
  const one = w(tokens, joint) === 'the' ? oneOfThem(tokens, joint, ctx) : undefined;
  const thing = thingAt(tokens, joint, ctx);
  if (one?.places.length === 1 && !end) {
    // "two up from the left-hand one of those"
    based = true;
    next = one.next;
    bases = one.places;
  } else if (picked && splitBlock(picked)) {
    // "the two under the last of those"
    based = true;
    next = joint + 4;
    bases = [picked];
  } else if (cornered) {
    // "the two under that corner one"
    based = true;
    next = /^(one|block|square)$/.test(w(tokens, joint + 2)) ? joint + 3 : joint + 2;
    bases = [cornered];
  } else if (thing) {
    // "the next one to the right of that tear"
    based = true;
    next = thing.next;
    bases = [thing.block];
  } else if (
    /^(it|that|this|there|them|those|these)$/.test(w(tokens, joint)) &&
    !(w(tokens, joint) === 'there' && joint === next)
  ) {
    based = true;
    const plural = /^(them|those|these)$/.test(w(tokens, joint));
    next = joint + 1;
    if (/^(one|block|square|two|pair)$/.test(w(tokens, next)) && !/^(it|there)$/.test(w(tokens, joint)))
      next++;
    const group = ctx.focus.filter((p) => splitBlock(p));
    bases = plural && group.length > 1 && group.length < 13 ? group : undefined;
  } else {
    const named = middleOfRow(tokens, joint, ctx) ?? placeAt(w(tokens, joint) === 'the' ? joint + 1 : joint);
    // "the block next to the top right corner"
    const corner =
      fromCorner && named?.places.length === 1
        ? /^corner-(top|bottom)-(left|right)$/.exec(named.places[0]!)
        : null;
    if (corner) {
      bases = [cornerBlock(ctx.grid, corner[1] === 'top', corner[2] === 'left')];
      next = named!.next;
      if (w(tokens, next) === 'one' || BLOCK_NOUNS.has(w(tokens, next))) next++;
      based = true;
      how = 'said';
    } else if (named?.kind === 'blocks' && named.places.length === 1) {
      bases = named.places;
      next = named.next;
      based = true;
      how = 'said';
    } else if (NOT_AFTER.test(w(tokens, w(tokens, next) === 'the' ? next + 1 : next))) return undefined;
    else if (joint > next && w(tokens, next) !== 'to') return undefined;
  }
  // "the block next to it on the right"
  const side =
    ways.list[0]!.slack && /^(on|to)$/.test(w(tokens, next)) ? wayAt(tokens, next, undefined) : undefined;
  if (side && !side.several) {
    ways = { list: [side], next: side.next };
    next = side.next;
  }
  // "diagonally below 2-2 on the right"
  const slant = ways.list[0]!.slantwise ? wayAt(tokens, next, undefined) : undefined;
  if (slant && !slant.several && slant.steps[0]!.row === 0) {
    ways = { list: [ways.list[0]!, slant], next: slant.next };
    next = slant.next;
  }
  // "(the two over them …) no, it was the two under them": counted from where the wrong ones were
  const again =
    how === 'implied' &&
    !end &&
    !cornered &&
    !thing &&
    one?.places.length !== 1 &&
    (mendsPlace(tokens, next) || mendsAtHead(tokens, next))
      ? countedAgain(ctx, ways)
      : undefined;
  if (again) bases = again;
  if (!bases) {
    const base = lastBlock(ctx);
    if (!base)
      return based || !needsEnd
        ? { next, places: [], how: 'implied', rule: 'place.neighbour', kind: 'pointer' }
        : undefined;
    bases = (spread && oneForEach(ctx.focus, spread, ways)) || [
      mendsPlace(tokens, next) || isAcrossSeam(tokens, next) || standsBesideIt(tokens, next)
        ? base
        : originOf(ctx, base, ways, based || isIts(tokens, next)),
    ];
  }
  if (
    needsEnd &&
    !based &&
    !/^(is|'s|are|has|have|had|there|got|needs?|wants?|gets?|:|too|also|same)$/.test(w(tokens, next))
  )
    return undefined;
  const all = ways.list.every((x) => !x.several);
  const turned =
    all &&
    ways.list.length === 2 &&
    (ways.list[0]!.steps[0]!.row === 0) !== (ways.list[1]!.steps[0]!.row === 0);
  const steps: Step[] =
    turned && !many
      ? [
          {
            row: ways.list[0]!.steps[0]!.row + ways.list[1]!.steps[0]!.row,
            block: ways.list[0]!.steps[0]!.block + ways.list[1]!.steps[0]!.block,
          },
        ]
      : ways.list.flatMap((x) => x.steps);
  const several = steps.length > 1;
  // "the two right under those two": one under each
  const each = spread !== undefined && spread === bases.length && !several;
  const reach = several || each ? [1] : spread ? Array.from({ length: spread }, (_, k) => k + 1) : [distance];
  const named = bases.flatMap((base) => {
    return steps.flatMap((s) => reach.map((r) => blockFrom(ctx.grid, base, s.row * r, s.block * r)));
  });
  let inside = named.filter((p): p is string => p !== undefined);
  // "next to it" at the right-hand edge can only be the one on the left
  if (!inside.length && ways.list[0]!.slack) {
    inside = [blockFrom(ctx.grid, bases[0]!, 0, -1)].filter((p) => p !== undefined);
  }
  const outside = several ? !inside.length : inside.length < named.length && !ways.list[0]!.slack;
  return {
    next,
    places: unique(inside).filter((p) => bases.length === 1 || !bases.includes(p)),
    how,
    rule: several ? 'place.neighbours' : how === 'said' ? 'place.neighbour-of' : 'place.neighbour',
    kind: 'pointer',
    bases,
    ...(outside ? { outside: true } : {}),
    ...(bases.length === 1 ? { from: bases[0]! } : {}),
  };
}

/** "no what am I saying it was the two under them" */
const mendsAtHead = (tokens: Token[], next: number): boolean =>
  next < 16 && /^(no|nope|sorry|wait)$/.test(w(tokens, 0));

/** What the neighbours told last were counted from, where these lie another way from there. */
function countedAgain({ counted, focus }: PlaceContext, { list }: Ways): string[] | undefined {
  const step = list.length === 1 && !list[0]!.several ? list[0]!.steps[0] : undefined;
  if (!counted || !step || counted.to.join() !== focus.join()) return undefined;
  const [from, to] = [splitBlock(counted.from[0] ?? ''), splitBlock(counted.to[0] ?? '')];
  if (!from || !to) return undefined;
  const same =
    Math.sign(to.row - from.row) === Math.sign(step.row) &&
    Math.sign(to.block - from.block) === Math.sign(step.block);
  return same ? undefined : counted.from;
}

/** "sorry, I meant the one under it": put right, and no second neighbour. */
const mendsPlace = (tokens: Token[], next: number): boolean =>
  tokens.slice(Math.max(0, next - 9), next).some((t) => /^(sorry|meant|mean|no)$/.test(t.w));

/** "(the one above is torn,) and the seam with the one below is open": the seam is that of the block just told. */
const isAcrossSeam = (tokens: Token[], next: number): boolean => {
  const said = tokens.slice(Math.max(0, next - 9), next).map((t) => t.w);
  const seam = said.lastIndexOf('seam');
  return (
    seam >= 0 &&
    /^(with|between|to|joining|shared|it)$/.test(said[seam + 1] ?? '') &&
    !said.includes('.', seam)
  );
};

/** "the seam between it and the one underneath", "where that meets the next one down": counted from what "it" is. */
const standsBesideIt = (tokens: Token[], next: number): boolean =>
  BESIDE_IT.test(wordsBetween(tokens, next - 10, next));

const BESIDE_IT =
  / (?:it|that|this)(?: one| block| square)? (?:and|&|to|from|with|meets|joins|touches) (?:(?:the|its|one|block|square|neighbour|neighbor|next) )+[^,.;]*$/;

/** "the one to its left", "its right-hand neighbour": of the one just told. */
const isIts = (tokens: Token[], next: number): boolean =>
  [1, 2, 3, 4].some((n) => w(tokens, next - n) === 'its');

/**
 * "the one above is stained and the one to the left is fine", "below 2-3 it's frayed, above it it's sound": of two neighbours told one after
 * the other the second is counted from the same block, where it would lead back to it or turns aside without "that" or "it".
 */
function originOf({ grid, stepped }: PlaceContext, base: string, { list }: Ways, based: boolean): string {
  const [way] = list;
  if (!stepped || !stepped.to.includes(base) || list.length > 1 || !way || way.several) return base;
  const step = way.steps[0]!;
  const [at, from] = [splitBlock(base)!, splitBlock(stepped.from)!];
  const back = Math.sign(from.row - at.row) === step.row && Math.sign(from.block - at.block) === step.block;
  const aside =
    !based && (from.row === at.row ? step.row !== 0 : from.block === at.block && step.block !== 0);
  return (back || aside) && blockFrom(grid, stepped.from, step.row, step.block) ? stepped.from : base;
}

/** "netted 4-2 and 4-3 and the two above": one above each, where as many lie side by side as are told. */
function oneForEach(focus: string[], count: number, { list }: Ways): string[] | undefined {
  const [way] = list;
  const at = focus.map((p) => splitBlock(p));
  const first = at[0];
  if (!first || at.length !== count || count < 2 || list.length > 1 || way!.several) return undefined;
  const { row, block } = way!.steps[0]!;
  return at.every((p) => p && (row ? p.row === first.row : block ? p.block === first.block : false))
    ? focus
    : undefined;
}

const NOT_AFTER =
  /^(top|bottom|left|right|side|edge|border|corner|hand|row|column|half|middle|centre|center|batting|backing|binding|sashing|patch|net|tulle|interfacing|iron|light|lamp|paper)$/;

/** "that tear", "the big hole": the block where it was found. */
export function thingAt(
  tokens: Token[],
  i: number,
  { mentions }: PlaceContext,
): { block: string; next: number } | undefined {
  if (!mentions?.length || !/^(that|the|this)$/.test(w(tokens, i))) return undefined;
  for (const k of [i + 1, i + 2]) {
    const block = blockOfThing(w(tokens, k), mentions);
    if (block) return { block, next: k + 1 };
  }
  return undefined;
}

/** "(in row four) the block to the right of | the middle one": the middle of the row that is spoken of. */
function middleOfRow(tokens: Token[], k: number, { focus, grid }: PlaceContext): PlaceFound | undefined {
  const noun = w(tokens, k + 2);
  if (w(tokens, k) !== 'the' || !/^(middle|centre|center)$/.test(w(tokens, k + 1))) return undefined;
  if (noun !== 'one' && !BLOCK_NOUNS.has(noun)) return undefined;
  const row = splitBlock(focus[0] ?? '')?.row;
  if (row === undefined || !focus.every((p) => splitBlock(p)?.row === row)) return undefined;
  const line = rowOf(grid, row);
  return line.length % 2 ? blocksPicked(k + 3, [line[(line.length - 1) / 2]!]) : undefined;
}
