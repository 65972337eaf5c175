import { lightVerb } from './light-verb.ts';
import { plainVerbNear } from './plain-verb-near.ts';
import { removalSoon } from './removal-soon.ts';
import { found, type WayFound, type WordAt } from './way.ts';

const WISHED = /^(needs?|wants?|gets?|getting|requires?|use)$/;

/** "gave 2-3 a lining of lawn", "row five wants a lining", "put a lining in behind it": cloth behind a block, by its name as a thing. */
export function aLining({ items, k, item, before, used }: WordAt): WayFound {
  if (
    !/^(lining|backing)$/.test(item.w) ||
    used.has(k) ||
    !(
      / (a|an|some|its own|another) (?:\S+ ){0,2}$/.test(before) ||
      // "the calico ones want lining"
      (item.w === 'lining' && !item.deed && / (?:needs?|wants?) $/.test(before))
    ) ||
    !items.some(
      (x) =>
        (x.place && x.place.kind !== 'part' && x.place.places.length > 0) || (x.fabric && x.w !== item.w),
    ) ||
    // "put a patch on 3-5 and another on the backing": the quilt's own
    / (?:on|onto|in|at|to|of|from|over) the $/.test(before) ||
    // "3-4 has had a lining at some point", "2-3 has a lining": how it was found
    / (?:had|has|have|old|is|was|there) (?:\S+ )?(?:a|an) (?:\S+ )?$/.test(before) ||
    items.some((x) => x.quantity?.unit || x.cost) ||
    removalSoon(items, k)
  )
    return undefined;
  const wished = items.slice(0, k).findLastIndex((x) => WISHED.test(x.w));
  const verb = lightVerb(items, k) ?? plainVerbNear(items, k);
  if (wished < 0 && !verb) return undefined;
  return found(
    {
      action: 'stabilize',
      form: verb?.form ?? 'noun',
      at: verb?.k ?? k,
      items: [item],
      rule: 'treatment.a-lining',
    },
    k,
    ...(verb ? [verb.k] : []),
  );
}
