import type { Token } from '../../text/tokenise.ts';
import type { FabricIndex } from '../fabrics/find-fabric.ts';
import type { Item } from '../item.ts';
import { findMention, type Mention } from './find-mention.ts';
import { splitBlock, unique } from './grid.ts';
import type { PlaceContext, PlaceFound } from './place-found.ts';

/** What was just named is spoken of from now on; places named one after the other with only "and" or a comma between are one group. */
export function moveFocus(ctx: PlaceContext, found: PlaceFound, items: Item[]): void {
  if (found.from) ctx.stepped = { from: found.from, to: found.places };
  else if (!/^place\.(it|that-one)$/.test(found.rule)) delete ctx.stepped;
  if (found.bases?.length && found.places.length) ctx.counted = { from: found.bases, to: found.places };
  else if (!/^place\.(it|them|that-one)$/.test(found.rule)) delete ctx.counted;
  const before = items.at(-2);
  // the seams "2-1/2-2 and 3-1/3-2" are one group as well
  const joint = before && /^(,|and|&|\+|\/)$/.test(before.w) ? items.at(-3) : undefined;
  if (found.rule === 'place.it' || found.rule === 'place.them') {
    if (found.places !== ctx.focus && found.places.length) {
      ctx.earlier.push(ctx.focus);
      ctx.focus = found.places;
    }
    return;
  }
  // "2-1 2-2 and 2-3 tied": a list without its comma
  const beside =
    before?.place?.rule === 'place.pair' && found.rule === 'place.pair' && before.j === items.at(-1)!.i;
  if (beside) {
    ctx.focus = unique([...ctx.focus, ...found.places]);
    ctx.told = [];
    return;
  }
  if (joint?.place && joint.place.kind !== 'part' && joint.place.places.length && found.kind !== 'pointer') {
    ctx.focus = [...new Set([...ctx.focus, ...found.places])];
    ctx.told = [];
    return;
  }
  // "1-1 and 2-5, no, 2-4": the last of the group was wrong
  const wrong = /^(no|sorry|wait)$/.test(before?.w ?? '')
    ? items.at(items.at(-3)?.w === ',' ? -4 : -3)
    : undefined;
  if (
    wrong?.place &&
    ctx.focus.length > 1 &&
    wrong.place.places.join() === ctx.focus.at(-1) &&
    found.kind === 'blocks' &&
    found.how === 'said' &&
    found.places.length === 1
  ) {
    ctx.focus = [...ctx.focus.slice(0, -1), ...found.places];
    return;
  }
  tellOne(ctx, found);
  if (ctx.focus.length) ctx.earlier.push(ctx.focus);
  if (found.among) ctx.earlier.push(found.among);
  // "the blue: a hole in 3-1, the other two are sound": one of the cloth's blocks, so that the others are known
  const { cloth } = ctx;
  if (
    cloth &&
    // "the twill: a new piece for the top one. The bottom one stays"
    (found.kind === 'blocks' || (found.rule === 'place.one-of-them' && !ctx.earlier.includes(cloth))) &&
    found.places.length < cloth.length &&
    found.places.every((p) => cloth.includes(p))
  )
    ctx.earlier.push(cloth);
  ctx.focus = found.places;
}

/** "2-3 is torn, 3-5 is faded, 5-1 has a hole": told one by one, so that "all three" of them can be spoken of at once. */
function tellOne(ctx: PlaceContext, { places }: PlaceFound): void {
  const [only] = places;
  ctx.told = places.length === 1 && splitBlock(only!) ? unique([...(ctx.told ?? []), only!]) : [];
  if (ctx.told.length > 2 && ctx.told.length < 7) ctx.list = ctx.told;
}

/** "the gingham in row two is torn, the other two are fine": of one of its blocks the cloth's others can be spoken of. */
export function rememberCloth(
  ctx: PlaceContext,
  found: PlaceFound,
  items: Item[],
  fabrics: FabricIndex,
): void {
  if (!/^place\.cloth-(?:block|within)$/.test(found.rule)) return;
  const names = items.findLast((x) => x.fabric)?.fabric?.names ?? [];
  const blocks = names.flatMap((name) => fabrics.blocks[name] ?? []);
  if (blocks.length > found.places.length && found.places.every((p) => blocks.includes(p)))
    ctx.earlier.push(blocks);
}

/** "darned the hole, and the one below it": from then on it is where that hole is. */
export function pointBack(ctx: PlaceContext, items: Item[], mentions: Mention[], tokens: Token[]): void {
  const the = items.slice(-3).findIndex((x) => /^(the|that|this)$/.test(x.w));
  if (
    the < 0 ||
    /^(in|on|at|of|between|from|along|near|by|beside|next|below|above|under|underneath|over|that|which|joining|where|just|right|left|either|around|round|down|up|across)$/.test(
      tokens[items.at(-1)!.j]?.w ?? '',
    )
  )
    return;
  const places = findMention(items.slice(-3).slice(the), mentions);
  if (!places || places.length > 4) return;
  if (ctx.focus.length) ctx.earlier.push(ctx.focus);
  ctx.focus = places;
}
