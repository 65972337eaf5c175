import { isPredicate, isWashOver } from '../clause/is-predicate.ts';
import { found, type WayFound, type WordAt } from './way.ts';

/** "forget the darning", "no washing", "skip the pressing", "the darning's off", "the washing won't happen": the work as a matter to take or drop. */
export function workNamed({ items, k, item, before, after }: WordAt): WayFound {
  // "the washing is done and it's spread flat to dry": told of the quilt, where the bare mark of the hours is read before
  if (isWashOver(items, k))
    return found({ action: 'wash', form: 'past', at: k, items: [item], rule: 'treatment.work-over' }, k);
  // "whole-quilt wash called off"
  const noun = item.action?.form === 'base' && /^(?:wash|clean|press)$/.test(item.w);
  if (noun && /^ (?:is |'s |now )*(?:called off|cancelled|canceled|scrapped|off|dropped) $/.test(after))
    return found(
      { action: item.action!.v, form: 'noun', at: k, items: [item], rule: 'treatment.work-named' },
      k,
    );
  // "no wash for this one"
  if (noun && / no $/.test(before) && /^ (?:(?:for|on) |this )/.test(after))
    return found(
      { action: item.action!.v, form: 'noun', at: k, items: [item], rule: 'treatment.work-named' },
      k,
    );
  if (item.action?.form !== 'ing' || item.part || item.seam || item.object || isPredicate(items, k))
    return undefined;
  const named =
    / (?:forget|scrap|drop|skip|cancel|ditch|bin|nix|never mind|no|against|not)(?: about)?(?: the| that| any| all the| all that)? $/.test(
      before,
    ) ||
    /^ (?:is|'s|are|was|idea|plan) (?:off|out|now off|not|n't|scrapped|abandoned|dropped) /.test(after) ||
    /^ (?:won|wins|it is|it 's) /.test(after);
  return named
    ? found({ action: item.action.v, form: 'noun', at: k, items: [item], rule: 'treatment.work-named' }, k)
    : undefined;
}
