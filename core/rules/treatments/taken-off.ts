import type { RemovedObject } from '../../../shared/vocabulary.ts';
import { REMOVE_VERBS, removalAt } from '../clause/removal-at.ts';
import type { Item } from '../item.ts';
import { wordsBetween } from '../words-between.ts';
import { objectOf, ownObject, removable, thingOf } from './removed-object.ts';
import { found, type WayFound, type WordAt } from './way.ts';

/** "do I leave the batting in or do I pull it", "I'm not pulling anything": of what can only be taken out no "out" is said. */
function pulledAtAll(items: Item[], k: number, thing: string | undefined): WayFound {
  const form = /^pull(s|ed|ing)?$/.exec(items[k]!.w);
  if (
    !form ||
    !/^(it|them|that|those|anything|any|either|both|both of (?:them|those))$/.test(items[k + 1]?.w ?? '')
  )
    return undefined;
  const next = items[k + 2];
  if (
    next &&
    next.token.kind !== 'mark' &&
    !/^(or|and|now|then|after|at|of|today|tomorrow|instead|either)$/.test(next.w)
  )
    return undefined;
  const object = items.slice(0, k).findLast((x) => x.object)?.object ?? thing;
  if (!object || !/^(batting|ties|quilting|stitching|pins|backing|interfacing|old-patch)$/.test(object))
    return undefined;
  return found(
    {
      action: 'remove',
      object: object as RemovedObject,
      form: form[1] === 'ing' ? 'ing' : form[1] === 'ed' ? 'past' : 'base',
      at: k,
      items: [items[k]!],
      rule: 'treatment.pulled',
    },
    k,
  );
}

/** "(old patch, ugly.) comes off later", "coming off next": the thing just told of, of which no word is said again. */
function comesOffUnnamed(items: Item[], k: number, thing: string | undefined): WayFound {
  // "coming out" is one item where it also tells of a seam
  const whole = /^(come|comes|coming|came) (?:off|out|away)$/.exec(items[k]!.w);
  const verb = whole?.[1] ?? items[k]!.w;
  if (!whole && (!/^(come|comes|coming|came)$/.test(verb) || !/^(off|out|away)$/.test(items[k + 1]?.w ?? '')))
    return undefined;
  const end = whole ? k : k + 1;
  const it = removable(thing);
  if (
    !it ||
    !items.slice(0, k).every(
      (x) =>
        // "the other one's coming off tomorrow"
        /^place\.(one-of-them|the-other)$/.test(x.place?.rule ?? '') ||
        /^(and|so|to|will|must|has|have|had|got|gotta|needs|need|ought|should|can|could|might|may|'ll|'s|is|are|'ve|'d|all|both|each|just|still|really|definitely|now|then|of|them|that|this|it|they|those|these|the|but)$/.test(
          x.w,
        ),
    )
  )
    return undefined;
  if (
    items.slice(end + 1).some(
      (x) =>
        // "came off easily", "came off without a fight"
        !/^(easily|easy|clean|cleanly|nicely|well|fine|ok|okay|without|a|much|any|fight|trouble|struggle|fuss|at|last|finally|quite|very|already|in one piece|later|next|first|tomorrow|tonight|now|soon|today|too|then|week|after|that|,|on|monday|tuesday|wednesday|thursday|friday|saturday|sunday)$/.test(
          x.w,
        ),
    )
  )
    return undefined;
  return found(
    {
      action: 'remove',
      object: it,
      form:
        verb === 'came'
          ? 'past'
          : verb === 'coming' &&
              !items.slice(end + 1).some((x) => /^(later|next|tomorrow|then|week)$/.test(x.w))
            ? 'ing'
            : 'base',
      at: k,
      items: [items[k]!],
      rule: 'treatment.comes-off',
    },
    k,
    end,
  );
}

/** What a verb of removing takes off. */
export function takenOff({ items, k, item, before, all, thing }: WordAt): WayFound {
  const pulled = pulledAtAll(items, k, thing) ?? comesOffUnnamed(items, k, thing);
  if (pulled) return pulled;
  const removal = removalAt(items, k);
  // "(I pieced the border.) It comes out (5 1/2 in wide)"
  if (
    /^comes?$/.test(item.w) &&
    removal &&
    items[k + 1]?.w === 'out' &&
    !items[k + 2] &&
    /^ (?:it|that|they|those) $/.test(before)
  )
    return undefined;
  if (removal && !item.place) {
    // "got it off, and would you believe they used newspaper for the batting"
    const pronoun =
      /^(it|them|em)$/.test(items[k + 1]?.w ?? '') &&
      removal.particle === k + 2 &&
      !items.slice(0, k).some((x) => x.object || x.part === 'border' || /^(one|ones)$/.test(x.w));
    const object =
      (pronoun ? thingOf(items, k, removal.particle, thing) : undefined) ??
      objectOf(items, k, removal.particle) ??
      thingOf(items, k, removal.particle, thing);
    const plain =
      /^(remov|unpick|peel|strip|detach|unstitch|unpin|snip|unsew|unquilt|frog|untie|untying)/.test(item.w);
    if (object || (plain && removal)) {
      // "cut them out and pieced new ones in": the pieces, whatever else was taken off before
      if (
        item.action?.v === 'cut' &&
        (!object ||
          (pronoun && object.item === item && /^(batting|backing|binding|border|pins)$/.test(object.object)))
      )
        return 'none';
      // "cut off the excess batting": trimmed, and the layer is still there
      if (
        /^(cut|cutting|snipped|clipped|sliced|took)$/.test(item.w) &&
        object &&
        /^(batting|backing|border|binding)$/.test(object.object) &&
        / (excess|extra|surplus|spare|overhanging|overhang|leftover) /.test(wordsBetween(items, k, k + 6))
      )
        return found(
          {
            action: 'trim',
            form: removal.form,
            at: k,
            items: [item, object.item],
            rule: 'treatment.excess-cut',
          },
          k,
          items.indexOf(object.item),
        );
      // "cut out the backing": new cloth cut to size
      if (
        /^cut/.test(item.w) &&
        removal.particle === k + 1 &&
        items[k + 1]!.w === 'out' &&
        object &&
        /^(backing|binding|border|batting|label)$/.test(object.object) &&
        !/ (old|the rest|of) /.test(all)
      )
        return 'none';
      // "snipped and pulled all the ties": the later verb tells what
      if (
        !object &&
        /^(and|&|,)$/.test(items[k + 1]?.w ?? '') &&
        REMOVE_VERBS[items[k + 2]?.w ?? '']?.form === removal.form
      )
        return 'none';
      if (/^(work|works|worked|working)$/.test(item.w) && !object) return 'none';
      if (
        /^(get|gets|got|getting|have|has|had|having|come|comes|came|coming|drop|dropped|take|takes)$/.test(
          item.w,
        ) &&
        !object
      )
        return 'none';
      return found(
        {
          action: 'remove',
          object: object?.object ?? ownObject(item.w, thing, items[k + 1]?.w),
          form:
            (removal.form === 'base' &&
              /^(come|comes)$/.test(item.w) &&
              / (has|have|'ve|'s|had)( all| now| just| already| finally)* $/.test(before)) ||
            // "I have the backing off"
            (item.w === 'have' && / (?:i|we)(?: now)? $/.test(before) && items[k + 1]?.w !== 'to')
              ? 'past'
              : removal.form,
          at: k,
          items: object ? [item, object.item] : [item],
          rule: 'treatment.remove',
        },
        k,
        ...(object ? [items.indexOf(object.item)] : []),
        ...(removal.particle ? [removal.particle] : []),
      );
    }
  }
  return undefined;
}
