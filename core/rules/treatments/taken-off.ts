import type { RemovedObject } from '../../../shared/vocabulary.ts';
import { isInverted, isPredicate } from '../clause/is-predicate.ts';
import { REMOVE_VERBS, removalAt } from '../clause/removal-at.ts';
import type { Item } from '../item.ts';
import { beginsToCome, isToCome } from '../to-come.ts';
import { wordsBetween } from '../words-between.ts';
import { isNet } from './is-cloth.ts';
import { found, type WayFound, type WordAt } from './way.ts';

/** What must go. */
export function hasToGo({ items, k, item, before, after, thing }: WordAt): WayFound {
  // "that patch has to go", "the batting must go"
  if (
    item.w === 'go' &&
    / (to|must|should|can|could|'ll|will|gotta) $/.test(before) &&
    !/^ (on|in|to|over|under|behind|back|round|with|into|for|up|down|out|off|through|there) /.test(after) &&
    // "label to go bottom right corner" goes on
    !(items[k - 2]?.object === 'label' && items[k + 1]?.place)
  ) {
    const told = items.slice(Math.max(0, k - 9), k).findLast((x) => x.object || x.finding === 'old-repair');
    if (told && (told.finding === 'old-repair' || (told.object && told.object !== 'piece' && !told.seam))) {
      return found(
        {
          action: 'remove',
          object: told.finding === 'old-repair' ? 'old-patch' : told.object!,
          form: 'base',
          at: k,
          items: [item, told],
          rule: 'treatment.has-to-go',
        },
        k,
        items.indexOf(told),
      );
    }
    // "the batting's all mouldy, so that has to go"
    const it =
      / (it|that|they|those) (has|have|had|must|'ll have|will have|should|gotta)(?: got)?(?: all| both| just)?(?: to)? $/.test(
        before,
      )
        ? removable(thing)
        : undefined;
    if (it && !told)
      return found(
        {
          action: 'remove',
          object: it,
          form: 'base',
          at: k,
          items: [item],
          rule: 'treatment.has-to-go',
        },
        k,
      );
  }
  return undefined;
}

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
    items
      .slice(end + 1)
      .some(
        (x) =>
          !/^(later|next|first|tomorrow|tonight|now|soon|today|too|then|week|after|that|,|on|monday|tuesday|wednesday|thursday|friday|saturday|sunday)$/.test(
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

/** "old patch. take off next", "old patch, remove", "ugly. comes off later", "to come off": what was just told of, with no word for it. */
export function toComeOff({ items, k, item, before, after, thing }: WordAt): WayFound {
  if (
    !/^(take|takes|lift|remove|removing|unpick|come|comes)\b/.test(item.w) ||
    !thing ||
    !/^(old-patch|label|interfacing)$/.test(thing)
  )
    return undefined;
  const rest = items.slice(k + 1).map((x) => x.w);
  const particle = / (off|out|away)$/.test(item.w) || /^(off|out|away)$/.test(rest[0] ?? '');
  if (/^(take|takes|lift|come|comes)/.test(item.w) && !particle) return undefined;
  if (
    !/^ (?:(?:to|will|must|needs?|and|then|so|it|that|should|will have|has|have|first) )*$/.test(
      before.replace(/^ +$/, ' '),
    )
  )
    return undefined;
  if (
    !/^ (?:(?:off|out|away|later|tomorrow|tmrw|tonight|next|week|time|first|then|after|soon|again|now) )*$/.test(
      after.replace(/^ +$/, ' '),
    )
  )
    return undefined;
  return found(
    {
      action: 'remove',
      object: thing as RemovedObject,
      form: 'base',
      at: k,
      items: [item],
      rule: 'treatment.to-come-off',
    },
    k,
  );
}

/** "off came the patch", "out with the batting". */
export function offCame({ items, k, item, thing }: WordAt): WayFound {
  if (isInverted(items, k)) {
    const after = items.slice(k + 1, k + 7).find((x) => x.object || x.finding === 'old-repair');
    const of = after ?? (items[k + 1]!.w !== 'with' && thing && thing !== 'seam' ? undefined : null);
    if (after || of === undefined) {
      const object = after
        ? after.finding === 'old-repair'
          ? 'old-patch'
          : after.object!
        : (thing as RemovedObject);
      return found(
        {
          action: 'remove',
          object,
          form:
            items[k + 1]!.w === 'with' ||
            items.slice(k + 1, k + 3).some((x) => /^(comes?|goes|go)$/.test(x.w))
              ? 'base'
              : 'past',
          at: k,
          items: after ? [item, after] : [item],
          rule: 'treatment.off-came',
        },
        k,
        ...(after ? [items.indexOf(after)] : []),
      );
    }
  }
  return undefined;
}

/** "rows five to seven are all clear of ties": what is there no longer. */
export function clearOf({ items, k, item }: WordAt): WayFound {
  if (!/^(clear|free|rid)$/.test(item.w) || items[k + 1]?.w !== 'of') return undefined;
  const thing = items.slice(k + 2, k + 5).find((x) => x.object);
  if (
    !thing?.object ||
    !/^(ties|pins|stitching|quilting|interfacing|old-patch)$/.test(thing.object) ||
    thing.seam
  )
    return undefined;
  return found(
    {
      action: 'remove',
      object: thing.object,
      form: 'past',
      at: k,
      items: [item, thing],
      rule: 'treatment.clear-of',
    },
    k,
    items.indexOf(thing),
  );
}

const OWN_LAYER = /^(backing|batting|binding|border)$/;

/** "the backing is off", "the ties are out". */
export function isOff({ items, k, item, before, after, thing }: WordAt): WayFound {
  // "the backing's away": off, as the Scots say, where of a seam it is damage
  if (
    item.w === 'away' &&
    /^ (?:the|old|so|and|now|right|,| )*\S+ (?:'s|is|are) (?:all |now )?$/.test(before) &&
    OWN_LAYER.test(items.slice(0, k).findLast((x) => x.object)?.object ?? '') &&
    !items.slice(k + 1, k + 3).some((x) => /^(at|from|on|along|in|to)$/.test(x.w))
  ) {
    const layer = items.slice(0, k).findLast((x) => x.object)!;
    return found(
      {
        action: 'remove',
        object: layer.object!,
        form: 'past',
        at: k,
        items: [item, layer],
        rule: 'treatment.is-off',
      },
      k,
      items.indexOf(layer),
    );
  }
  if (
    (item.w === 'off' || item.w === 'out') &&
    // "the patch is off the table": given up
    !/^ (the (table|cards|menu|agenda)|of the question) /.test(after) &&
    (/ (is|'s|are|'re|both|all|now|was|were|already|be|to|must|has to|to be|come) $/.test(before) ||
      // "that's every tie out of row three"
      / that (?:'s|is) (?:every|all the|the last|the last of the|both|most of the) (?:\S+ ){1,2}$/.test(
        before,
      ) ||
      isPredicate(items, k))
  ) {
    const object = [...items.slice(0, k)]
      .reverse()
      .find((x) => x.object || x.finding === 'old-repair' || x.part === 'binding' || x.part === 'border');
    // "it's off, after an hour of picking"
    const it = removable(thing);
    // "all of it off"
    const lot = / (all|the lot|the whole|most) of (it|them) $/.test(before);
    if (
      !object &&
      it &&
      (lot ||
        / (it|they) ('s|is|are|'re|has been|have been)( all| both| now| finally| at last)* $/.test(before)) &&
      !/^ (to|the|by|a|of|for|on|there|here|in) /.test(after)
    )
      return found(
        { action: 'remove', object: it, form: 'past', at: k, items: [item], rule: 'treatment.is-off' },
        k,
      );
    // "that scrap's off", "that bit of curtain's off", after an old patch was told of
    if (
      (thing === 'old-patch' || / (?:fused|glued|ironed)(?: on)? (?:bit|scrap|piece) /.test(before)) &&
      (object === undefined || object.object === 'piece') &&
      / (is|'s|are|'re|now|all) $/.test(before) &&
      items
        .slice(Math.max(0, k - 6), k)
        .some((x) => x.object === 'piece' || x.fabric || (x.material === 'fabric' && !isNet(x)))
    )
      return found(
        {
          action: 'remove',
          object: 'old-patch',
          form: 'past',
          at: k,
          items: [item],
          rule: 'treatment.is-off',
        },
        k,
      );
    const isTreatmentOff = object === undefined && items.slice(0, k).some((x) => isNet(x));
    if (object && !isTreatmentOff && !(object.stitches && object.seam)) {
      const objectId =
        object.finding === 'old-repair'
          ? 'old-patch'
          : (object.object ?? (object.part === 'border' ? 'border' : 'binding'));
      if (objectId !== 'piece' && !/\b(of the wash|of square|of true)\b/.test(after)) {
        return found(
          {
            action: 'remove',
            object: objectId,
            form:
              (/ (to|must|be|to be|has to|come) $/.test(before) && !/ (has been|been) $/.test(before)) ||
              // "binding off tomorrow"
              /^ next /.test(after) ||
              beginsToCome(after)
                ? 'base'
                : 'past',
            at: k,
            items: [item, object],
            rule: 'treatment.is-off',
          },
          k,
          items.indexOf(object),
        );
      }
    }
  }
  return undefined;
}

/** Ties or pins that come out. */
export function comesOut({ items, k, item, before, all, thing }: WordAt): WayFound {
  // "the batting's coming out now"
  if (item.fail && /^coming (out|off|away)$/.test(item.w)) {
    const out = items.slice(0, k).findLast((x) => x.object);
    // "(the batting's all lumps) so it's coming out tomorrow"
    const it = !out && /^(it|they|that|those)$/.test(items[k - 2]?.w ?? '') ? removable(thing) : undefined;
    if (it && /^(backing|batting|binding|border|interfacing|old-patch|label)$/.test(it))
      return found(
        {
          action: 'remove',
          object: it,
          form: / (tomorrow|later|next|soon|then|after|monday|tuesday|wednesday|thursday|friday|saturday|sunday) /.test(
            all,
          )
            ? 'base'
            : 'ing',
          at: k,
          items: [item],
          rule: 'treatment.comes-out',
        },
        k,
      );
    const sewn = out && /^(ties|quilting|stitching)$/.test(out.object!);
    const meant =
      / (now|tonight|today|next|first|as we speak|this (?:minute|morning|afternoon|evening)) /.test(all) ||
      isToCome(all);
    return out &&
      !out.seam &&
      out.object !== 'piece' &&
      (sewn ? meant && (items[k + 1]?.w === 'of' || isToCome(all) || / as we speak /.test(all)) : meant)
      ? found(
          {
            action: 'remove',
            object: out.object!,
            form: 'ing',
            at: k,
            items: [item, out],
            rule: 'treatment.comes-out',
          },
          k,
          items.indexOf(out),
        )
      : undefined;
  }
  // "the top border's on its way off"
  if (/^(off|out)$/.test(item.w) && / on (?:its|their) way $/.test(before)) {
    const off = items.slice(0, k).findLast((x) => x.object);
    return off && !off.seam
      ? found(
          {
            action: 'remove',
            object: off.object!,
            form: 'ing',
            at: k,
            items: [item, off],
            rule: 'treatment.comes-out',
          },
          k,
          items.indexOf(off),
        )
      : undefined;
  }
  // "it comes out five and a half inches wide": how large it is
  if (
    /^(come|comes|came) out$/.test(item.w) &&
    (items[k + 1]?.quantity || /^(at|to|about|around|just|nearly)$/.test(items[k + 1]?.w ?? ''))
  )
    return undefined;
  // "the ties come out first", "it has to come out"
  if (!item.fail || !/^(come|came) (out|off|away)$/.test(item.w) || / (have|has|'ve|'s|had) $/.test(before))
    return undefined;
  const told = items.slice(0, k).findLast((x) => x.object);
  const came = item.w.startsWith('came');
  if (told && came && (told.stitches || told.seam || item.w.endsWith('away'))) return undefined;
  const object = told
    ? told.object
    : came || / (it|they|that|those) /.test(before)
      ? removable(thing)
      : undefined;
  if (!object || (!told && came && !/ (it|they) $|^ (?:so |and )?(?:that|those) $/.test(before)))
    return undefined;
  const toDo =
    / (first|next|before|later|tomorrow|then|need|needs|will|'ll|to|must|should|has|have|can|could) /.test(
      all,
    ) ||
    (told && /s$/.test(told.w));
  return found(
    {
      action: 'remove',
      object,
      form: came || !toDo ? 'past' : 'base',
      at: k,
      items: told ? [item, told] : [item],
      rule: 'treatment.comes-out',
    },
    k,
    ...(told ? [items.indexOf(told)] : []),
  );
}

/** The thing last spoken of, where it can be taken off. */
const removable = (thing: string | undefined): RemovedObject | undefined =>
  thing && thing !== 'seam' ? (thing as RemovedObject) : undefined;

/** What these verbs take out without naming it. */
const ownObject = (w: string, thing: string | undefined, next = ''): RemovedObject =>
  // "old patches on 2-2 and 4-5. Unpicked the first"
  /^(unpick|remov|peel|lift|snip)/.test(w) &&
  thing === 'old-patch' &&
  /^(the first|the second|the last|the other|the one|both|first|one)/.test(next)
    ? 'old-patch'
    : // "column five is unpicked", in the middle of taking the quilting out
      /^(unpick|unstitch|snip)/.test(w) && thing && /^(quilting|ties|stitching)$/.test(thing)
      ? (thing as RemovedObject)
      : w.startsWith('unpin')
        ? 'pins'
        : w.startsWith('unquilt')
          ? 'quilting'
          : w.startsWith('unt')
            ? 'ties'
            : /^(frog|unstitch|unsew)/.test(w)
              ? 'stitching'
              : 'piece';

/** "took it out", "took out what was left of them": the thing spoken of before. */
function thingOf(
  items: Item[],
  k: number,
  particle: number | undefined,
  thing: string | undefined,
): { object: RemovedObject; item: Item } | undefined {
  if (!thing || thing === 'seam') return undefined;
  // "cut it out and pieced in new twill": the piece, and not the batting that was spoken of
  if (/^cut/.test(items[k]!.w) && /^(batting|backing|binding|border|pins)$/.test(thing)) return undefined;
  const next = items.slice(k + 1, (particle ?? k) + 6);
  const pronoun = next.find(
    (x, m) =>
      /^(it|them|that|those|what|em|this|both|both of (?:them|those)|each|either|neither)$/.test(x.w) ||
      // "took the first one off", "picked the other two out"
      /^place\.(one-of-them|the-other|other-sides|that-one)$/.test(x.place?.rule ?? '') ||
      // "picked out the rest"
      (/^(rest|remainder|others?|remains|last)$/.test(x.w) &&
        next[m - 1]?.w === 'the' &&
        !/^(of)$/.test(next[m + 1]?.w ?? '')),
  );
  if (pronoun) return { object: thing as RemovedObject, item: items[k]! };
  // "quilting stitches all snapped, picked out the rest"
  if (
    /^(ties|quilting|stitching|pins)$/.test(thing) &&
    next.some((x, m) => /^(rest|remains|remainder|others|left)$/.test(x.w) && next.length - m < 7) &&
    !next.some((x) => x.place || x.object)
  )
    return { object: thing as RemovedObject, item: items[k]! };
  // "an earlier patch at 6-4. It has since been lifted off"
  const passive =
    /^ (?:it|they|that|those) (?:(?:has|have|had|'s|'ve|since|now|all|later|then|also|just) )*(?:been|was|were|is|are|got) (?:(?:since|now|all|later|then|also|carefully|gently) )*$/.test(
      ` ${items
        .slice(0, k)
        .map((x) => x.w)
        .join(' ')} `,
    );
  return passive ? { object: thing as RemovedObject, item: items[k]! } : undefined;
}

/** What a removing verb takes off: the nearest thing after it, or before it in "the ties came out". */
function objectOf(
  items: Item[],
  k: number,
  particle: number | undefined,
): { object: RemovedObject; item: Item } | undefined {
  const limit = Math.min(items.length, (particle ?? k) + 9);
  const ofThing = (x: Item): RemovedObject | undefined => {
    if (x.place?.places.some((p) => p.startsWith('border'))) return 'border';
    if (x.place && x.w.startsWith('binding')) return 'binding';
    // "ripped out the zigzag"
    if (
      x.stitch &&
      !x.weakStitch &&
      !x.object &&
      /^(the|that|old|this|all)$/.test(items[items.indexOf(x) - 1]?.w ?? '')
    )
      return 'stitching';
    if (x.seam && x.w.startsWith('seam')) return 'stitching';
    // "the old mending stitches" that are unpicked
    if (x.finding === 'old-repair' && items[items.indexOf(x) + 1]?.stitches) return 'stitching';
    // "unpicked the broken quilting"
    if (x.finding === 'broken-stitching')
      return /quilting/.test(x.w) ? 'quilting' : /\btie/.test(x.w) ? 'ties' : 'stitching';
    // "somebody's clumsy darn", "the iron-on patch"
    if (x.finding === 'old-repair') return 'old-patch';
    // "peeled a bit of iron-on interfacing off"
    if (x.object === 'piece' && items[items.indexOf(x) + 1]?.w === 'of') {
      const of = items[items.indexOf(x) + 2];
      if (of?.object === 'interfacing' || of?.object === 'label') return of.object;
    }
    // "that glued scrap", "the ironed-on bit"
    if (
      x.object === 'piece' &&
      /^(glued|ironed|fused|stuck|ironed on|iron on)$/.test(items[items.indexOf(x) - 1]?.w ?? '')
    )
      return 'old-patch';
    const next = items[items.indexOf(x) + 1];
    if (
      x.object &&
      next?.object &&
      next.object !== 'piece' &&
      !next.action?.form.startsWith('p') &&
      !next.seam &&
      x.token.kind === 'word'
    )
      return next.object;
    return (
      x.object ??
      // "that twine snipped out", not the strings of a string quilt
      (/^(twine|yarn|wool|floss|pearl cotton|perle cotton)$/.test(x.w) && !next?.stitches && !next?.object
        ? 'ties'
        : undefined)
    );
  };
  // "the backing has to come off for that, ties first"
  if (/^(come|comes|came|coming)$/.test(items[k]!.w)) {
    const subject = items.slice(Math.max(0, k - 7), k).findLast((x) => ofThing(x) !== undefined);
    if (subject) return { object: ofThing(subject)!, item: subject };
  }
  // "peeled that patch off", "unpicked the old tacking", "pulled an old laundry label off the back"
  for (let m = k + 1; m < limit; m++) {
    const x = items[m]!;
    // "snipped out what there was of the old ties"
    if (x.w === 'there' && items[m - 1]?.w === 'what') continue;
    if (/^(but|because|there|i|so|then|from|behind|with|to)$/.test(x.w) && m > (particle ?? k)) break;
    if (
      particle !== undefined &&
      m > particle &&
      // "took off the left border": what stands right after the verb and its "off" is the thing
      particle > k + 1 &&
      x.place &&
      /^(off|from|of)$/.test(items[m - 1]?.w === 'the' ? (items[m - 2]?.w ?? '') : (items[m - 1]?.w ?? '')) &&
      !x.stitches &&
      !['binding', 'border'].includes(x.part ?? '')
    ) {
      // "took the label off the back": the back is where, not what
      continue;
    }
    const object = ofThing(x);
    if (object) return { object, item: x };
    if ((x.fabric || x.material === 'fabric') && !x.object && particle !== undefined && m < particle) {
      const later = items.slice(m + 1, limit).find((y) => y.object);
      if (!later) return { object: 'piece', item: x };
    }
  }
  for (let m = k - 1; m >= Math.max(0, k - 7); m--) {
    const x = items[m]!;
    const object = ofThing(x);
    if (object) return { object, item: x };
  }
  return undefined;
}
