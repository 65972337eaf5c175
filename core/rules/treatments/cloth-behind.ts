import { isPredicate } from '../clause/is-predicate.ts';
import type { Item } from '../item.ts';
import { isCloth } from './is-cloth.ts';
import { plainVerbNear } from './plain-verb-near.ts';
import { removalSoon } from './removal-soon.ts';
import { verbNear } from './verb-near.ts';
import { found, type WayFound, type WordAt } from './way.ts';

/** "muslin behind it", "a bit of silk as a support". */
export function clothBehind({ items, k, item, after, used }: WordAt): WayFound {
  // "I'll patch the one under it": the deed, and no patch laid under anything
  // "the polka is gone underneath": the block's own cloth, of which something is told
  if (item.deed || item.place?.rule === 'place.cloth-here') return undefined;
  if (anotherLiesUnder(items, k)) return undefined;
  // "the interfacing behind 1-3 is off": taken off
  if (item.material === 'interfacing' && / (?:is|'s|are) (?:now |all )?(?:off|out) /.test(after))
    return undefined;
  // "pinstripes all need cloth behind": what it is for, and not what is put there
  if (
    item.fabric &&
    HAS_IT.test(after) &&
    items.slice(k + 1, k + 9).some((x) => isCloth(x) || x.w === 'cloth')
  )
    return undefined;
  // "the two gingham ones need a support behind": where, and not what
  if (item.fabric && /^(?:ones|blocks|squares|pieces)$/.test(items[k + 1]?.w ?? '')) return undefined;
  // "an old mend, interfacing glued behind": how it was found
  if (
    (isCloth(item) || item.material === 'interfacing') &&
    items.slice(0, k).some((x) => x.finding === 'old-repair') &&
    /^ (?:glued|stuck|ironed|fused|sewn|stitched|pasted|bonded)(?: \S+)? (?:behind|underneath|on behind) /.test(
      after,
    )
  )
    return 'none';
  if (
    (isCloth(item) || item.material === 'interfacing' || /^(cloth|something|stuff)$/.test(item.w)) &&
    / (behind|underneath|to the back|on the back|on the reverse|at the back|in behind|support|as (a )?support|for support|under|beneath|backing it|to back) /.test(
      `${after} `,
    )
  ) {
    if (
      // "the old lining behind 2-2 has rotted"
      !(
        /^(old|rotted|rotten)$/.test(items[k - 1]?.w ?? '') &&
        items.slice(k + 1).some((x) => x.finding || x.fail)
      ) &&
      !(item.w === 'patch' && !/ (behind|underneath|under|beneath) /.test(after)) &&
      !/ (turned|folded|tucked|turning|edges) under /.test(after) &&
      !(
        items.some((x, m) => m > k && x.finding && !isBehind(items, m) && isPredicate(items, m)) &&
        !plainVerbNear(items, k)
      ) &&
      !removalSoon(items, k)
    ) {
      const beside = verbNear(
        items,
        k,
        ['resew', 'stabilize', 'piece', 'baste', 'patch', 'overlay', 'cut'],
        used,
      );
      // "maybe net, maybe calico behind": another way, and no word for this one
      const apart =
        beside && beside.k < k && items.slice(beside.k, k).some((x) => /^(?:maybe|or|perhaps)$/.test(x.w));
      const near = beside && (apart || hasItsOwn(items, beside.k, k)) ? undefined : beside;
      const plain = plainVerbNear(items, k);
      // "slipped muslin in behind and basted it": the basting is told beside it
      const fastened =
        near &&
        plain?.form === 'past' &&
        items[near.k]!.action?.v === 'baste' &&
        !/^(has|have|got|'ve)$/.test(items[plain.k]!.w);
      // "net over the face, no silk behind": not what the verb before it is of
      const none = /^(no|not|without)$/.test(items[k - 1]?.w ?? '');
      const verb = none
        ? undefined
        : fastened || (near && plain && isTold(items, near.k, plain.k))
          ? plain
          : (near ?? plain);
      if (/\b(behind|underneath|support|under|beneath)\b/.test(after) || verb || atTheBack(items, k, after)) {
        if (item.object === 'label' || item.material === 'other') return 'none';
        return found(
          {
            action: 'stabilize',
            form: verb?.form ?? 'noun',
            at: verb?.k ?? k,
            items: verb ? [items[verb.k]!, item] : [item],
            stuff: item,
            rule: 'treatment.cloth-behind',
          },
          k,
          ...(verb ? [verb.k] : []),
        );
      }
    }
  }
  return undefined;
}

/** "patched with the pinstripe, fusible web under it", "… with the check and a bit of interfacing behind": what is named last before "under" lies there. */
function anotherLiesUnder(items: Item[], k: number): boolean {
  const under = items.findIndex((x, m) => m > k && /^(?:behind|underneath|under|beneath)$/.test(x.w));
  const between = under < 0 ? [] : items.slice(k + 1, under);
  const joint = between.findLastIndex((x) => /^(?:,|and|&|\+|plus|with)$/.test(x.w));
  return (
    between.some((x) => x.material === 'adhesive') ||
    (joint >= 0 && between.slice(joint).some((x) => x.material === 'interfacing' || isCloth(x)))
  );
}

/** "patched it with the check, some interfacing behind", "closed the tear by hand with silk behind": a verb that has told already what it is done with, or to. */
function hasItsOwn(items: Item[], verb: number, k: number): boolean {
  // "put interfacing behind 3-3 and sewed the tear up"
  if (verb > k)
    return (
      items[verb]!.action?.v === 'resew' &&
      items.slice(verb + 1, verb + 4).some((x) => x.seam || /^(?:tear|split-seam)$/.test(x.finding ?? ''))
    );
  const between = items.slice(verb + 1, k);
  const v = items[verb]!.action?.v;
  if (v === 'resew') return between.some((x) => x.seam || /^(?:tear|split-seam)$/.test(x.finding ?? ''));
  const own = between.findIndex((x) => isCloth(x) || x.fabric);
  return (
    /^(?:patch|overlay)$/.test(v ?? '') &&
    own >= 0 &&
    between.slice(own).some((x) => /^(?:,|and|&|\+|with)$/.test(x.w))
  );
}

/** "closed it and put muslin behind": the first verb has what it is done to, and the second tells of another treatment. */
const isTold = (items: Item[], first: number, second: number): boolean =>
  second > first &&
  /^(?:it|that|this|them|those)$/.test(items[first + 1]?.w ?? '') &&
  items.slice(first + 2, second).some((x) => /^(?:and|then|&)$/.test(x.w));

/** "voile behind the tear": where the cloth lies. */
const isBehind = (items: Item[], m: number): boolean =>
  /^(behind|under|underneath|beneath)$/.test(items[m - 2]?.w ?? '') &&
  /^(the|that|this|a)$/.test(items[m - 1]!.w);

/** "lawn at the back of it", "muslin on the back, net on top": cloth that nothing is told of but where it is to lie. */
const atTheBack = (items: Item[], k: number, after: string): boolean =>
  / (?:at|on) the (?:back|reverse)(?: of (?:it|that|them|that one|this|this one|both|those|row|block|\d|(?:one|two|three|four|five|six|seven|eight|nine) (?:one|two|three|four|five|six|seven|eight|nine))\b| *$| [,?+&]| (?:and|or|with|then)\b)/.test(
    after,
  ) &&
  !/^(?:the|that|this|those|her|his|in|is|was)$/.test(items[k - 1]?.w ?? '') &&
  !items.some((x) => (x.quantity?.unit && x.quantity.unit !== 'piece') || x.cost || x.fail || x.finding);

const HAS_IT =
  /^ (?:(?:ones|blocks|squares|pieces|all|both|each|really|still|one|block) )*(?:needs?|wants?|gets?|has|have|got|getting|to have|to get|will|'ll|should|must) /;
