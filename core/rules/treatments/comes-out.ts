import { isToCome } from '../to-come.ts';
import { wordsBetween } from '../words-between.ts';
import { removable } from './removed-object.ts';
import { found, type WayFound, type WordAt } from './way.ts';

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
    // "the piece in 2-2 is coming out, I'll put in a bit of the check": meant so; what gives way comes away, or comes loose
    if (out?.object === 'piece')
      return item.w === 'coming out' && / (?:the|that|this|worn|torn|old|bad) piece (?:in|at|from) /.test(all)
        ? found(
            {
              action: 'remove',
              object: 'piece',
              form: meant && !isToCome(all) ? 'ing' : 'base',
              at: k,
              items: [item, out],
              rule: 'treatment.comes-out',
            },
            k,
            items.indexOf(out),
          )
        : undefined;
    return out &&
      !out.seam &&
      (sewn
        ? meant && (items[k + 1]?.w === 'of' || isToCome(all) || / (?:now|as we speak) /.test(all))
        : meant)
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
  // "the old patch came away in my hand"
  const loose =
    told?.object === 'old-patch' &&
    / (?:in my hands?|easily|clean|cleanly|at a touch|without) /.test(wordsBetween(items, k + 1));
  if (told && came && !loose && (told.stitches || told.seam || item.w.endsWith('away'))) return undefined;
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
