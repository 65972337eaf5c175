import type { Action } from '../../shared/vocabulary.ts';
import { inflect } from '../text/inflect.ts';
import type { Item } from './item.ts';

/**
 * "used green twill + fusible web to patch a hole in 1-3": the stuff is told before the deed that it served. Gives the items as if the
 * deed had been told first, and what was used with it behind ("patched a hole in 1-3 with …").
 */
export function deedFirst(items: Item[]): Item[] {
  const k = items.findIndex((x, m) => x.w === 'used' && TELLS.test(items[m - 1]?.w ?? ''));
  if (k < 0) return items;
  const to = items.findIndex((x, m) => m > k && (x.w === 'to' || x.w === 'for') && !x.place);
  if (to < k + 2 || to > k + 14) return items;
  const stuff = items.slice(k + 1, to);
  if (!stuff.some((x) => x.material || x.fabric)) return items;
  if (stuff.some((x) => x.place || STOPS.test(x.w) || x.cost || x.quantity?.unit)) return items;
  const at = items[to]!.w === 'for' && /^(a|the|my)$/.test(items[to + 1]?.w ?? '') ? to + 2 : to + 1;
  const verb = deedAt(items, at, items[to]!.w === 'for');
  const rest = verb ? endOfDeed(items, at + 1) : at;
  if (!verb || !items.slice(k, rest + 1).some((x) => x.place || x.finding || x.seam)) {
    // "1-3 had a hole, used green twill for a patch": what it was told of stands before
    if (!verb || items[to]!.w !== 'for' || !items.slice(0, k).some((x) => x.place)) return items;
  }
  return [
    ...items.slice(0, k),
    verb,
    ...items.slice(at + 1, rest),
    { ...items[to]!, w: 'with' },
    ...stuff,
    ...items.slice(rest),
  ];
}

const TELLS = /^(|i|we|'ve|have|and|then|just|also|[.,;:(-]|--|so)$/;
const STOPS = /^([.;:!?()]|i|it|we|is|was|but|then|because|so)$/;

/** The deed named at `at` in the form in which it is told as done. */
function deedAt(items: Item[], at: number, named: boolean): Item | undefined {
  const item = items[at];
  if (!item) return undefined;
  const noun = named && Object.hasOwn(NAMED, item.w) ? NAMED[item.w]! : undefined;
  if (noun)
    return {
      ...item,
      w: noun.w,
      action: { v: noun.v, form: 'past' },
      object: undefined,
      material: undefined,
    };
  if (named) return undefined;
  if (item.w === 'put' || item.w === 'cut') return item;
  if (item.w === 'get') return { ...item, w: 'got' };
  // "used two yards of muslin to back it": what it was for
  if (item.action?.form !== 'base' || item.part || /^(piece|tie|bind|quilt|layer)$/.test(item.action.v))
    return undefined;
  return { ...item, w: inflect(item.w).past[0]!, action: { v: item.action.v, form: 'past' } };
}
const NAMED: Record<string, { w: string; v: Action }> = {
  patch: { w: 'patched', v: 'patch' },
  darn: { w: 'darned', v: 'darn' },
};

/** Where what the deed is done to ends: at a mark, or at an "and" that goes on to something else. */
function endOfDeed(items: Item[], from: number): number {
  for (let m = from; m < items.length; m++) {
    const { w, token } = items[m]!;
    if (/^(and|&|\+)$/.test(w) || w === ',') {
      const next = items[m + 1];
      if (!(next?.place || (next?.w === 'the' && items[m + 2]?.place))) return m;
    } else if ((token.kind === 'mark' && !items[m]!.place) || /^(then|but|so|because|i|took)$/.test(w))
      return m;
  }
  return items.length;
}
