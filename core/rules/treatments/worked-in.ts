import type { Action } from '../../../shared/vocabulary.ts';
import { isPredicate } from '../clause/is-predicate.ts';
import type { Item } from '../item.ts';
import { wordsBetween } from '../words-between.ts';
import { lightVerb } from './light-verb.ts';
import { removalSoon } from './removal-soon.ts';
import { found, type Way, type WayFound, type WordAt } from './way.ts';

/** "put a few stitches in it", "gave the seam a few whip stitches", "put new ties in", "put the quilting back in". */
export function stitchesPutIn({ items, k, item }: WordAt): WayFound {
  const worked = workedIn(items, k);
  return (
    worked &&
    found(
      {
        action: worked.action,
        form: worked.form,
        at: worked.at,
        items: [item],
        rule: `treatment.worked-in-${worked.action}`,
      },
      k,
      worked.at,
    )
  );
}

/** Stitches, ties or quilting as a thing that is put in or on. */
function workedIn(items: Item[], k: number): { action: Action; form: Way['form']; at: number } | undefined {
  const item = items[k]!;
  if (
    item.seam ||
    !(
      item.stitches ||
      item.object === 'ties' ||
      item.object === 'quilting' ||
      /stitches$|^(stitch|sts)$/.test(item.w)
    )
  )
    return undefined;
  if (item.action && isPredicate(items, k)) return undefined;
  const before = wordsBetween(items, k - 5, k);
  const after = wordsBetween(items, k + 1, Math.min(items.length, k + 4));
  if (removalSoon(items, k)) return undefined;
  if (
    items.some((x, m) => m !== k && (x.fail || x.finding === 'missing') && isPredicate(items, m) && !x.seam)
  )
    return undefined;
  const isTies = item.object === 'ties' || /^knots?$/.test(item.w);
  const isQuilting = item.object === 'quilting' || item.w.startsWith('quilting');
  const light = lightVerb(items, k);
  const fresh = / (new|fresh|more|extra|missing|replacement|another) ([a-z]+ )?$/.test(before);
  if (isTies) {
    const put = light && / (in|into|on|back|along|across|every|at|round|through) /.test(after);
    if (light && (put || fresh)) return { action: 'tie', form: light.form, at: light.k };
    if (fresh && / (in|on|along|across|at) /.test(after)) return { action: 'tie', form: 'noun', at: k };
    return undefined;
  }
  if (isQuilting)
    return light &&
      / (back in|in|back|in again|along|round|around|across) /.test(after) &&
      !/^ (quilting )?in the ditch/.test(after)
      ? { action: 'quilt', form: light.form, at: light.k }
      : undefined;
  if (
    light &&
    (/ (a|few|couple of|couple|some|two|three|four|five|six|several|\d+|of|more|tiny|little|extra|whip|ladder|back|blanket|running|catch|holding|securing)( [a-z]+)? $/.test(
      before,
    ) ||
      item.stitch) &&
    (/ (in|into|on|through|along|across|over|to|round|around|at|there|by) /.test(after) ||
      k === items.length - 1 ||
      /^(gave|give|giving)$/.test(items[light.k]!.w))
  )
    return { action: 'resew', form: light.form, at: light.k };
  return undefined;
}
