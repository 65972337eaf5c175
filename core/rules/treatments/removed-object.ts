import type { RemovedObject } from '../../../shared/vocabulary.ts';
import type { Item } from '../item.ts';
import { wordsBetween } from '../words-between.ts';
import { objectOfRepair } from './object-of-repair.ts';

/** The thing last spoken of, where it can be taken off. */
export const removable = (thing: string | undefined): RemovedObject | undefined =>
  thing && thing !== 'seam' ? (thing as RemovedObject) : undefined;

/** What these verbs take out without naming it. */
export const ownObject = (w: string, thing: string | undefined, next = ''): RemovedObject =>
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
export function thingOf(
  items: Item[],
  k: number,
  particle: number | undefined,
  thing: string | undefined,
): { object: RemovedObject; item: Item } | undefined {
  if (!thing || thing === 'seam') return undefined;
  // "cut it out and pieced in new twill": the piece, and not the batting that was spoken of
  if (/^cut/.test(items[k]!.w) && /^(batting|backing|binding|border|pins)$/.test(thing)) return undefined;
  const next = items.slice(k + 1, (particle ?? k) + 6);
  // "the ties are out", then "so for 3-1 either I cut it out …": the block, which is one, and no ties
  if (
    /^cut/.test(items[k]!.w) &&
    next[0]?.w === 'it' &&
    /^(ties|pins|quilting|stitching)$/.test(thing) &&
    items.slice(0, k).some((x) => x.place?.kind === 'blocks') &&
    !items.slice(0, k).some((x) => x.stitches)
  )
    return undefined;
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
  // "cut that frayed one clean out", after a label came off elsewhere: the block that is frayed
  const block =
    pronoun?.place &&
    /^(?:that|this|the|those) \S+ ones?$/.test(pronoun.w) &&
    !/ (?:first|second|last|other|old) /.test(pronoun.w) &&
    !/^(?:ties|quilting|stitching|old-patch)$/.test(thing);
  if (pronoun && !block) return { object: thing as RemovedObject, item: items[k]! };
  // "quilting stitches all snapped, picked out the rest"
  if (
    /^(ties|quilting|stitching|pins)$/.test(thing) &&
    next.some((x, m) => /^(rest|remains|remainder|others|left)$/.test(x.w) && next.length - m < 7) &&
    !next.some((x) => x.place || x.object)
  )
    return { object: thing as RemovedObject, item: items[k]! };
  // "a later patch, machine sewn, which I have removed": the "which" is cut off with the statement before
  const alone = items
    .slice((particle ?? k) + 1)
    .every((x) => /^(?:[.;!]|now|since|already|carefully|today)$/.test(x.w));
  const lead = wordsBetween(items, 0, k);
  if (
    /^ (?:which|that) (?:i|we) (?:(?:have|'ve|had|'d|then|now|since|duly) )*$/.test(lead) ||
    (alone && /^ (?:(?:i|we) )?(?:(?:have|'ve|had|'d|then|now|since|duly) )+$|^ (?:i|we) $/.test(lead)) ||
    // "old wadding: lumpy, taken out", "ugly, removed"
    (alone &&
      lead.trim() === '' &&
      /^(?:taken|removed|peeled|lifted|pulled|unpicked|stripped|extracted|withdrawn|detached)(?: |$)/.test(
        items[k]!.w,
      ))
  )
    return { object: thing as RemovedObject, item: items[k]! };
  // "an earlier patch at 6-4. It has since been lifted off", "so that's peeled off now"
  const passive =
    /^ (?:(?:so|and|but|well|,) )*(?:it|they|that|those|both) (?:(?:has|have|had|'s|'ve|since|now|all|later|then|also|just) )*(?:been|was|were|is|are|got|'s|'re) (?:(?:since|now|all|later|then|also|carefully|gently) )*$/.test(
      ` ${items
        .slice(0, k)
        .map((x) => x.w)
        .join(' ')} `,
    );
  return passive ? { object: thing as RemovedObject, item: items[k]! } : undefined;
}

/** What a removing verb takes off: the nearest thing after it, or before it in "the ties came out". */
export function objectOf(
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
    if (x.finding === 'old-repair') return objectOfRepair(x.w);
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
  // "the label I took off the back": the thing stands before the one who did it
  let doer = k - 1;
  while (/^('ve|have|had|'d|just|already)$/.test(items[doer]?.w ?? '')) doer--;
  const namedBefore =
    /^(i|we)$/.test(items[doer]?.w ?? '') &&
    items.slice(Math.max(0, doer - 4), doer).some((x) => ofThing(x) !== undefined);
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
      (particle > k + 1 || namedBefore) &&
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
  let where: { object: RemovedObject; item: Item } | undefined;
  for (let m = k - 1; m >= Math.max(0, k - 9); m--) {
    const x = items[m]!;
    const object = ofThing(x);
    if (!object) continue;
    // "the quilting along the bottom border has to be unpicked": the border is where
    const led = items[m - 1]?.w === 'the' ? items[m - 2]?.w : items[m - 1]?.w;
    const along = /^(along|on|down|round|around|across|in|at|from)$/.test(led ?? '') && (x.place || x.part);
    if (!along) return { object, item: x };
    where ??= { object, item: x };
  }
  return where;
}
