import type { Item } from '../item.ts';
import { found, type Way, type WayFound, type WordAt } from './way.ts';

/** "worked on the stain with a cotton bud", "going to try some vinegar on the mark". */
export function stainWorkedOn({ items, k, item, all }: WordAt): WayFound {
  const cleaned = workOnStain(items, k, all);
  return (
    cleaned &&
    found({ action: 'clean', form: cleaned, at: k, items: [item], rule: 'treatment.worked-on-stain' }, k)
  );
}

function workOnStain(items: Item[], k: number, all: string): Way['form'] | undefined {
  const w = items[k]!.w;
  if (
    !/^(worked|working|work|tackled|tackle|tackling|treated|treat|treating|tried|try|trying|used|attacked|went)$/.test(
      w,
    )
  )
    return undefined;
  if (!items.some((x) => x.finding === 'stain' || x.finding === 'mildew')) return undefined;
  if (
    !/\b(swab|swabs|cotton bud|cotton buds|q tip|q tips|vinegar|brush|sponge|solvent|detergent|soap|peroxide|lemon|damp|water|blotting|spit|saliva|eraser|rubber|cloth|soda|borax|spirit|spirits)\b/.test(
      all,
    )
  )
    return undefined;
  if (items.some((x) => x.action?.v === 'clean' && x.action.form === 'past')) return undefined;
  return /ing$/.test(w) ? 'ing' : /^(work|tackle|treat|try)$/.test(w) ? 'base' : 'past';
}
