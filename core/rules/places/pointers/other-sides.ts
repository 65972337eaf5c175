import { unique } from '../grid.ts';
import type { PlaceContext, PlaceFound } from '../place-found.ts';

/** Does nothing follow that the number counts? */
export const endsOrTells = (word: string): boolean =>
  /^(|[.,;:]|tomorrow|tmrw|tmw|later|next|to|still|tonight|on|off|done|cut|and|are|is|will|can|i)$/.test(
    word,
  );

/** The two sides of one border or edge that were told one after the other. */
export function sidesTold(ctx: PlaceContext): string[] | undefined {
  const [last] = ctx.focus;
  const stem = /^(border|edge)-/.exec(last ?? '')?.[0];
  if (!stem || ctx.focus.length > 2) return undefined;
  const told = unique([...(ctx.focus.length === 2 ? [] : (ctx.earlier.at(-1) ?? [])), ...ctx.focus]);
  return told.length === 2 && told.every((p) => p.startsWith(stem)) ? told : undefined;
}

/** "other three" of the borders, edges or corners after one has been named. */
export function others(ctx: PlaceContext, next: number, noun: string): PlaceFound {
  const stem = noun.startsWith('border') ? 'border' : noun.startsWith('corner') ? 'corner' : 'edge';
  const all =
    stem === 'corner'
      ? ['top-left', 'top-right', 'bottom-right', 'bottom-left']
      : ['top', 'right', 'bottom', 'left'];
  return {
    next,
    // "top frayed, left frayed, others okay"
    places: all
      .map((s) => `${stem}-${s}`)
      .filter((p) => !ctx.focus.includes(p) && !sidesTold(ctx)?.includes(p)),
    how: 'implied',
    rule: 'place.other-sides',
    kind: 'pointer',
  };
}
