import { isPredicate } from '../clause/is-predicate.ts';
import { BEGUN, IS_DONE, WILL_DO } from './a-patch.ts';
import { LIGHT_LEAD, lightVerb } from './light-verb.ts';
import { removalSoon } from './removal-soon.ts';
import { verbNear } from './verb-near.ts';
import { found, type WayFound, type WordAt } from './way.ts';

/** "a darn, could be a patch", "going with the darn", "forget the darn". */
export function aDarn({ items, k, item, before, after, choosing, used }: WordAt): WayFound {
  if (
    /^(darn|darns)$/.test(item.w) &&
    !isPredicate(items, k) &&
    (choosing ||
      / (won|wins|wins out) /.test(after) ||
      WILL_DO.test(after) ||
      BEGUN.test(before) ||
      / get away with (?:a|just a) $/.test(before) ||
      / (?:gave|given|giving) up on (?:the|that|my) $/.test(before) ||
      (/ (the|my|that) $/.test(before) && IS_DONE.test(after)) ||
      / (?:finished|finish|finishing|started|starting|begun|began|did|doing) (?:the|that|its|my) $/.test(
        before,
      ) ||
      /^ (it is|it 's|it 'll be) /.test(after) ||
      LIGHT_LEAD.test(before) ||
      (k <= 1 && items.some((x) => x.duration)) ||
      // "a darn on 2-3 in silk thread", "by hand a darn on 2-3": made just now, of that
      (/^ (?:(?:on|in|at|over|across) )/.test(after) &&
        items
          .slice(0, k)
          .every(
            (x) => x.stitch ?? /^(?:an?|with|in|by|one|small|little|neat|so|then|and|,|--|:)$/.test(x.w),
          ) &&
        items.some((x) => x.material === 'thread' || x.stitch)) ||
      / (needs?|wants?|gets?|between|or|and|be|'s|is|maybe|possibly|perhaps|either|with|for|forget|drop|scrap|not|no|than|of|rather) (a |the |an |just a |little |small |quick )*$/.test(
        before,
      )) &&
    (!/ (old|that|this|previous|earlier|existing|clumsy|has|somebody's) (a |little )*$/.test(before) ||
      IS_DONE.test(after)) &&
    !removalSoon(items, k)
  ) {
    if (BEGUN.test(before))
      return found({ action: 'darn', form: 'ing', at: k, items: [item], rule: 'treatment.a-darn' }, k);
    // "mend it with a darn"
    const mends = / with (?:a |the |just |small |little |neat )*$/.test(before)
      ? verbNear(items, k, ['resew'], used)
      : undefined;
    const light = mends ?? lightVerb(items, k);
    return found(
      {
        action: 'darn',
        form: light?.form ?? (IS_DONE.test(after) ? 'past' : 'noun'),
        at: light?.k ?? k,
        items: [item],
        rule: 'treatment.a-darn',
      },
      k,
      ...(light ? [light.k] : []),
    );
  }
  return undefined;
}
