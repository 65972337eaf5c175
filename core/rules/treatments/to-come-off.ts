import type { RemovedObject } from '../../../shared/vocabulary.ts';
import { found, type WayFound, type WordAt } from './way.ts';

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
