import type { Token } from '../../../text/tokenise.ts';
import { wordAt as w } from '../../../text/word-at.ts';
import { blockFrom } from '../grid.ts';
import { lastBlock } from '../last-block.ts';
import type { PlaceContext, PlaceFound } from '../place-found.ts';
import { countedFrom, thingAt } from './counted-from.ts';
import { oneStep, STEPS, waysAt } from './ways-at.ts';

/** "directly beneath that one there is an old patch", "below 3-2 there's a hole": the block below, where the other is only told for its place. */
export function whereItLies(
  tokens: Token[],
  i: number,
  ctx: PlaceContext,
  placeAt: (j: number) => PlaceFound | undefined,
): PlaceFound | undefined {
  const mended = mendedNeighbour(tokens, i, ctx, placeAt);
  if (mended) return mended;
  const k = w(tokens, i) === 'right' ? i + 1 : i;
  const lead = /^(directly|just|immediately|straight)$/.test(w(tokens, i - 1)) ? i - 2 : i - 1;
  if (!/^(|[.,;:!?\n]|--|and|but|so|then|um|uh|er|also|well)$/.test(w(tokens, lead))) return undefined;
  const beside = besideNamed(tokens, i, ctx, placeAt);
  if (beside) return beside;
  // "directly over four-one, mould"
  const over = w(tokens, k) === 'over' && lead < i - 1;
  if (!over && !/^(below|beneath|underneath|under|above)$/.test(w(tokens, k))) return undefined;
  // "under it", "beneath the second of them": what a patch had hidden
  const one = /^(that|this) (one|block|square)$/.test(`${w(tokens, k + 1)} ${w(tokens, k + 2)}`);
  const named = one || thingAt(tokens, k + 1, ctx) !== undefined;
  const at = w(tokens, k + 1) === 'the' ? k + 2 : k + 1;
  const rule = placeAt(at)?.rule ?? '';
  // "under the sateen" may be what the cloth hides
  const cloth = rule === 'place.cloth-one' && /^(below|above)$/.test(w(tokens, k));
  if (!named && !cloth && !/^place\.(pair|row-block|block-row)$/.test(rule)) return undefined;
  const ways = over ? oneStep(STEPS.get('above')!, k + 1) : waysAt(tokens, k, undefined);
  const found = ways && countedFrom(tokens, ways, { ctx, placeAt });
  return found &&
    found.next > k + 1 &&
    /^(there|is|'s|lies|sits|it|[,:])$/.test(w(tokens, found.next)) &&
    (lead < i - 1 || !/^[,:]$/.test(w(tokens, found.next)))
    ? found
    : undefined;
}

/** Between what was said and what is right. */
const NO =
  /^(?:,|-|--|no|nope|sorry|wait|hang|on|hold|i|mean|meant|or|rather|not|that|'s|make|actually|oops|er|um|uh|oh|tell|a|lie|scratch|the|one|block)$/;

/** "the block under three-three, no, sorry, under three-two": told by a block beside it, as the one before was. */
function mendedNeighbour(
  tokens: Token[],
  i: number,
  ctx: PlaceContext,
  placeAt: (j: number) => PlaceFound | undefined,
): PlaceFound | undefined {
  const last = ctx.items?.at(-1) && ctx.items.findLast((x) => x.place);
  if (!last?.place?.from || i - last.j > 7) return undefined;
  const between = tokens.slice(last.j, i).map((t) => t.w);
  if (!between.some((word) => /^(?:no|nope|sorry|mean|meant|rather|wait)$/.test(word))) return undefined;
  if (!between.every((word) => NO.test(word))) return undefined;
  const ways = waysAt(tokens, i, undefined);
  const found = ways && countedFrom(tokens, ways, { ctx, placeAt });
  return found?.from && found.next > i + 1 ? found : undefined;
}

/** "to the right of two two it's frayed", "next to the sateen on the right, torn": a block told by its side of one that is named. */
function besideNamed(
  tokens: Token[],
  i: number,
  ctx: PlaceContext,
  placeAt: (j: number) => PlaceFound | undefined,
): PlaceFound | undefined {
  const to = w(tokens, i) === 'to' && w(tokens, i + 1) === 'the' ? i + 2 : i;
  const side = to > i && /^(left|right)$/.test(w(tokens, to)) && w(tokens, to + 1) === 'of';
  const next =
    (w(tokens, i) === 'next' && /^(to|door)$/.test(w(tokens, i + 1))) ||
    /^(beside|alongside)$/.test(w(tokens, i));
  if (!side && !next) return undefined;
  const door = w(tokens, i + 1) === 'door' && w(tokens, i + 2) === 'to';
  const behind = side ? to + 2 : door ? i + 3 : w(tokens, i) === 'next' ? i + 2 : i + 1;
  const base = placeAt(w(tokens, behind) === 'the' ? behind + 1 : behind);
  if (base?.kind !== 'blocks' || base.places.length !== 1) return undefined;
  const ways = waysAt(tokens, i, undefined);
  const found = ways && countedFrom(tokens, ways, { ctx, placeAt });
  // "next to 3-3" may be either side; at the end of a row there is but one
  if (!found || (next && found.next === base.next && !endsRow(base.places[0]!, ctx))) return undefined;
  return /^(there|is|'s|it|has|[,:])$/.test(w(tokens, found.next)) ? found : undefined;
}

/** Is it the first or the last block of its row? */
const endsRow = (place: string, { grid }: PlaceContext): boolean =>
  blockFrom(grid, place, 0, 1) === undefined || blockFrom(grid, place, 0, -1) === undefined;

/** "directly beneath that one there is a patch", "right above it there's a hole", "below that one, a stain": the block it is at. */
export function straightBelow(tokens: Token[], i: number, ctx: PlaceContext): PlaceFound | undefined {
  const led = /^(directly|immediately|right|just)$/.test(w(tokens, i));
  const j = led ? i + 1 : i;
  const way = w(tokens, j);
  const one = /^(that|this) (one|block)$/.test(`${w(tokens, j + 1)} ${w(tokens, j + 2)}`);
  // "underneath that" may be what a patch had hidden
  if (!/^(below|above)$/.test(way) && !((led || one) && /^(beneath|under|underneath)$/.test(way)))
    return undefined;
  if (!/^(|[.,;:\n]|and|then|so|but|now)$/.test(w(tokens, i - 1))) return undefined;
  // "directly below, someone's been at it before"
  const bare = led && /^[,:]$/.test(w(tokens, j + 1));
  if (!bare && !/^(it|that|this)$/.test(w(tokens, j + 1))) return undefined;
  const next = bare ? j + 1 : one ? j + 3 : j + 2;
  if (
    !/^(there|,|:|-|--|is|'s|has|had|was|looks|a|an|some|we|i|somebody|someone|they|she|he|whoever|old)$/.test(
      w(tokens, next),
    )
  )
    return undefined;
  const base = lastBlock(ctx);
  const place = base && blockFrom(ctx.grid, base, way === 'above' ? -1 : 1, 0);
  return {
    next,
    places: place ? [place] : [],
    how: 'implied',
    rule: 'place.neighbour',
    kind: 'pointer',
    ...(place ? {} : { outside: Boolean(base) }),
  };
}
