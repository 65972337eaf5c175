import { isPredicate } from '../clause/is-predicate.ts';
import { lightVerb } from './light-verb.ts';
import { plainVerbNear } from './plain-verb-near.ts';
import { removalSoon } from './removal-soon.ts';
import { verbNear } from './verb-near.ts';
import { found, type WayFound, type WordAt } from './way.ts';

/** "the patch is finished": what was in hand, or the way that was chosen. */
export const IS_DONE = /^ (is|'s|are) (now |all |both )*(done|finished|complete|completed|on now) /;

/** "a darn will do for 2-4", "a patch would be enough". */
export const WILL_DO =
  /^ (?:will|'ll|would|'d|should|ought to) (?:just |easily |probably )?(?:do|suit|be enough|be best|be better)\b/;

const WORKED_ON =
  / (?:gave|give|giving|pressed|pressing|press|ironed|ironing|iron|steamed|steam|trimmed|trim|trimming|photographed|washed|dampened) (?:the|that|its|my|both|those) (?:new |fresh |other |big |little |green )?$/;
const HAS_THE_CLOTH =
  / (?:has|have|had|got|'s|'ve) (?:got |now |both |all )*(?:its|their|the) (?:(?:new|little|small|big|fresh) )*(?!old|same)(?:\S+ ){1,3}$/;

/** "started on the patch", "made a start on the darn": it is in hand. */
export const BEGUN =
  / (?:started|starting|begun|began|start|made a start|get going|got going) (?:on |with )?(?:the|that|its|my|this) $/;

/** "put a patch on", "needs a patch", "patch or leave". */
export function aPatch({ items, k, item, before, after, all, choosing, thing, used }: WordAt): WayFound {
  // "the edge of the patch is ravelling"
  if (/ of (?:the|that|this) $/.test(before) && items.slice(k + 1, k + 6).some((x) => x.finding))
    return undefined;
  // "patch is on three three", told of the one that was to go there; "there's a patch on 3-3" is an old one
  if (
    item.w === 'patch' &&
    thing !== 'old-patch' &&
    /^ (?:(?:the|so|right|ok|okay|and|now|well|um) )*$/.test(before) &&
    /^ (?:is|'s) (?:now )?on /.test(after) &&
    items.slice(k + 2, k + 5).some((x) => x.place?.kind === 'blocks') &&
    !items.some((x) => x.finding || x.fail)
  )
    return found({ action: 'patch', form: 'past', at: k, items: [item], rule: 'treatment.a-patch' }, k);
  // "patch going on 5-5 tomorrow", "a patch is going on 5-5 now"
  if (
    /^patch(?:es)?$/.test(item.w) &&
    thing !== 'old-patch' &&
    /^ (?:(?:a|the|new|so|and|right|ok|then|now|my|,|denim|calico|cotton) )*$/.test(
      before.replace(/^ +/, ' '),
    ) &&
    /^ (?:is |'s |are )?(?:now )?going (?:on|over|onto) /.test(after)
  )
    return found({ action: 'patch', form: 'noun', at: k, items: [item], rule: 'treatment.a-patch' }, k);
  // "2-3 patch on, ten min"
  if (
    item.w === 'patch' &&
    items[k - 1]?.place?.kind === 'blocks' &&
    /^ on (?:$|now |too |[,.;:] )/.test(after) &&
    !items.some((x) => x.finding || x.fail)
  )
    return found({ action: 'patch', form: 'past', at: k, items: [item], rule: 'treatment.a-patch' }, k);
  if ((item.w === 'patch' || item.w === 'patches') && !(item.action && isPredicate(items, k))) {
    // "gave the new patch a press", "ironed the patch on 3-3": what was done to it
    if (WORKED_ON.test(before) || (/ for (?:the |all the |my )?$/.test(before) && / cut /.test(before)))
      return 'none';
    // "substituted a new patch for the rotten one"
    if (items.slice(Math.max(0, k - 5), k).some((x) => x.action?.v === 'replace')) return 'none';
    if (
      choosing ||
      WILL_DO.test(after) ||
      BEGUN.test(before) ||
      / get away with (?:a|just a) $/.test(before) ||
      / (?:finished|finish|finishing|started|starting|begun|began|wants|needs|gets|got|had|did|doing|done|making|made) (?:the|that|its|my|this) $/.test(
        before,
      ) ||
      (/ (the|my|that) $/.test(before) && (IS_DONE.test(after) || /^ (won|wins|wins out) /.test(after))) ||
      / (a|an|new|another|denim|calico|small|little|no) $/.test(before) ||
      // "maybe flannel patch on 2-4", of any cloth
      ((items[k - 1]?.material === 'fabric' || items[k - 1]?.fabric !== undefined) &&
        / (?:maybe|perhaps|possibly|either|or|probably|thinking) (?:\S+ ){1,3}$/.test(before) &&
        !/ (?:the|that|this|its|old) (?:\S+ ){1,2}$/.test(before) &&
        !items.some((x) => x.finding || x.fail)) ||
      // "2-1 has the muslin patch, blanket stitch all the way round", "2-2 got its new calico patch": the one it was to have
      (!items.some((x) => x.finding || x.fail) &&
        HAS_THE_CLOTH.test(before) &&
        items[k - 1]?.material === 'fabric') ||
      // "2-2 and 3-3 have got their patches on"
      (/ (?:has|have|had|got|'s) (?:got |now |both |all )*(?:its|their|both their|the) $/.test(before) &&
        /^ on /.test(after)) ||
      / (not|forget|drop|scrap|instead of|than|with|for|between|be|no) (the |a )?$/.test(before) ||
      /^ (it is|it 's|it 'll be) /.test(after) ||
      // "3-2 patch sewn on", "patch whipped down"
      (!/ (?:old|that|this|earlier|existing) $/.test(before) &&
        /^ (?:(?:is|was|'s|now|all) )*(?:sewn|sewed|stitched|put|laid|fused|ironed|whipped|whipstitched|basted|pinned)(?: \S+)? (?:on|over|down) /.test(
          after,
        )) ||
      (items[k - 1]?.material === 'fabric' &&
        (k < 2 || /^(,|:|-|with|a|w|\.)$/.test(items[k - 2]?.w ?? ''))) ||
      / (put|sewed|sewn|sew|stitched|needs?|wants?|gets?|awaits?|awaiting|or|either|maybe|possibly|perhaps|to|with|of|for) $/.test(
        before.replace(/ (a|an|new|another|little|small|bit of|the|fresh) $/, ' '),
      ) ||
      (/ (has|have|got|'s) (a|an)( [a-z]+){0,2} $/.test(before) && /\bnow\b/.test(all))
    ) {
      if (
        (/ (old|that|this|previous|earlier|existing|clumsy|under|has|has an|the old|somebody's) (a )?$/.test(
          before,
        ) &&
          // "the thumb hole has a patch on it now"
          !(/ has a $/.test(before) && /\bnow\b/.test(after))) ||
        removalSoon(items, k)
      )
        return 'none';
      if (
        / (is|has|there|there's|'s) (a|an)( [a-z]+)? $/.test(before) &&
        / (on|over|in) /.test(after) &&
        !/\b(new|put|sewn|sewed|now)\b/.test(all)
      )
        return 'none';
      const verb =
        verbNear(items, k, ['resew', 'patch', 'piece', 'baste', 'cut'], used) ??
        plainVerbNear(items, k) ??
        (/ (?:doing|making) (?:the|that|its|my|this) $/.test(before) ? lightVerb(items, k) : undefined);
      if (BEGUN.test(before))
        return found({ action: 'patch', form: 'ing', at: k, items: [item], rule: 'treatment.a-patch' }, k);
      return found(
        {
          action: 'patch',
          form: verb?.form ?? (IS_DONE.test(after) ? 'past' : 'noun'),
          at: verb?.k ?? k,
          items: [item],
          rule: 'treatment.a-patch',
        },
        k,
        ...(verb ? [verb.k] : []),
      );
    }
  }
  return undefined;
}

/** "the hasty patch is off and there's a proper one on", "took the old patch off 3-2 and put a denim one on", "… and sewed another on". */
export function properOne({ k, item, before, after, thing, ways }: WordAt): WayFound {
  if (
    /^(one|another)$/.test(item.w) &&
    (thing === 'old-patch' || ways.some((x) => x.object === 'old-patch')) &&
    (/ (a|an) (new|proper|fresh|decent|better|neater|good|tidy|tidier) $/.test(before) ||
      / (?:put|sewed|stitched|laid|popped|got|ironed) (?:(?:a|an) (?:\S+ ){1,2})?$/.test(before)) &&
    /^ (on|there|over|in its)\b/.test(after)
  ) {
    return found({ action: 'patch', form: 'past', at: k, items: [item], rule: 'treatment.a-patch' }, k);
  }
  return undefined;
}
