import type { Token } from '../../../text/tokenise.ts';
import { wordAt as w } from '../../../text/word-at.ts';
import { unique } from '../grid.ts';
import type { PlaceContext, PlaceFound } from '../place-found.ts';
import { pointingTo } from './pointing-to.ts';

const SIDE = /^(top|bottom|left|right)$/;

/** "(the top and bottom borders are faded, the left one is sound,) replacing the top and the bottom": two sides told before, by their sides alone. */
export function sidesAgain(tokens: Token[], i: number, ctx: PlaceContext): PlaceFound | undefined {
  if (w(tokens, i) !== 'the' || !SIDE.test(w(tokens, i + 1)) || !/^(and|&)$/.test(w(tokens, i + 2)))
    return undefined;
  const at = w(tokens, i + 3) === 'the' ? i + 4 : i + 3;
  if (!SIDE.test(w(tokens, at))) return undefined;
  const next = /^ones$/.test(w(tokens, at + 1)) ? at + 2 : at + 1;
  if (
    !/^(|[.,;:!?)]|and|but|is|are|'s|need|needs|have|by|with|now|too|tomorrow|later|again|first|next|as|i)$/.test(
      w(tokens, next),
    )
  )
    return undefined;
  const told = unique([...ctx.earlier.slice(-4).flat(), ...ctx.focus]);
  const stem = /^(border|edge)-/.exec(ctx.focus.at(-1) ?? '')?.[0];
  const places = [w(tokens, i + 1), w(tokens, at)].map((side) => `${stem}${side}`);
  return stem && places.every((p) => told.includes(p))
    ? pointingTo(next, places, 'place.those-sides')
    : undefined;
}
