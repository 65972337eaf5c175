import { isPredicate } from '../clause/is-predicate.ts';
import { beginsToCome } from '../to-come.ts';
import { isNet } from './is-cloth.ts';
import { objectOfRepair } from './object-of-repair.ts';
import { removable } from './removed-object.ts';
import { found, type WayFound, type WordAt } from './way.ts';

const OWN_LAYER = /^(backing|batting|binding|border)$/;

/** "about half", "nearly", "most of the way": how far something has come off. */
const PARTLY =
  / (is|'s|are|'re|was|were)(?: (?:now|already|just|only|about|well|a good|more than|over|some|maybe|still))* (?:half ?way|part ?way|half|partly|part|nearly|almost|mostly|a third|two thirds|a quarter|three quarters|three - quarters|most)(?: of the way| of it)? $/;
const SEWN_ON = /^(?:backing|batting|binding|border|ties|quilting|interfacing|stitching)$/;

/** "the backing is off", "the ties are out"; what is half off is still being taken off. */
export function isOff(at: WordAt): WayFound {
  const partly = /^(?:off|out)$/.test(at.item.w) ? PARTLY.exec(at.before) : null;
  if (!partly) return wholeOff(at);
  const way = wholeOff({ ...at, before: `${at.before.slice(0, partly.index)} ${partly[1]} ` });
  if (way === undefined || way === 'none' || !SEWN_ON.test(way.way.object ?? '')) return undefined;
  return { ...way, way: { ...way.way, form: 'ing' } };
}

function wholeOff({ items, k, item, before, after, thing }: WordAt): WayFound {
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
          ? objectOfRepair(object.w)
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
