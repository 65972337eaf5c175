import { isPredicate } from '../clause/is-predicate.ts';
import { found, type WayFound, type WordAt } from './way.ts';

const DEEDS = { patch: 'patch', patches: 'patch', darn: 'darn', darns: 'darn' } as const;

/** What makes it a thing that was there before, or one that is not there yet. */
const NOT_NEW =
  / (?:old|earlier|previous|existing|later|clumsy|ugly|somebody's|someone's|there|another|that|this|no|any|a) (?:\S+ )?$/;
const THERE = /^ (?:(?:is|'s|are|now|both|all|finally|already) )*(?:on|down|in place|over)\b/;
/** "patch on, blanket stitch", "patch on 6-2": where no verb is said the thing opens what is told. */
const OPENS =
  /^ +(?:(?:and|so|right|ok|okay|well|now|um|uh|er|then|,|the|my|new|fresh|little|small|neat|one|two|three|four|both|all|calico|denim|cotton|linen|muslin|silk|wool|felt) )*$/;
const SHOWN = / (?:that's|that 's|that is|there's|there 's) (?:the |my |that |its |a )?(?:\S+ )?$/;
/** "6-2 has had its patch", "4-1 got its darn" */
const HAD = / (?:has|have|had|got|'s|'ve|has had|have had|'s had) (?:now |finally )?(?:its|their) (?:\S+ )?$/;
/** "the hole in 1-3 has a patch over it" */
const OVER_IT = /^ (?:on|over|across) (?:it|them|that) /;

/** "that's the patch down", "6-2's patch is on", "patches on both of them", "5-5 has had its darn": the thing is told, and that it is there. */
export function thingInPlace({ items, k, item, before, after: behind, thing }: WordAt): WayFound {
  // "patch of blue check on 4-2"
  const after = behind.replace(/^ of (?:the |plain )?(?:\S+ ){1,2}?(?=on )/, ' ');
  if (!Object.hasOwn(DEEDS, item.w) || (item.action && !THERE.test(after) && isPredicate(items, k)))
    return undefined;
  if (items.some((x, m) => m !== k && (x.fail || (x.finding && (m > k || x.finding === 'old-repair')))))
    return undefined;
  if (
    items.some((x) =>
      /^(or|either|off|half|partly|nearly|almost|being|going|needs?|wants?|to|will|'ll|maybe|if|whether)$/.test(
        x.w,
      ),
    )
  )
    return undefined;
  const action = DEEDS[item.w as keyof typeof DEEDS];
  const done = found({ action, form: 'past', at: k, items: [item], rule: 'treatment.in-place' }, k);
  if (HAD.test(before) && !/ (?:off|out|removed) /.test(after)) return done;
  if (
    SHOWN.test(before) &&
    / (?:that|the|my) /.test(before) &&
    /^ (?:down|on|in|done|sewn|finished)\b/.test(after)
  )
    return done;
  // "the hole in 1-3 has a patch over it": what was found there is what was worked on
  if (
    OVER_IT.test(after) &&
    / (?:has|have|'s got|has got|got) (?:a|an) (?:\S+ )?$/.test(before) &&
    items.some((x, m) => m < k && x.finding && /^(the|that|this)$/.test(items[m - 1]?.w ?? ''))
  )
    return done;
  if (action !== 'patch' || thing === 'old-patch' || !THERE.test(after)) return undefined;
  if (OPENS.test(before)) return done;
  return / (?:is|'s|are) /.test(after.slice(0, 6)) && !NOT_NEW.test(before) ? done : undefined;
}
