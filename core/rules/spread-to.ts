import type { Item } from './item.ts';
import { boundaryBefore } from './item.ts';

/** What damage does that goes on to another place. */
const SPREADS =
  /^(spread|spreads|spreading|crept|creeps|creeping|run|runs|travelled|traveled|wandered|wicked|migrated|carried|carries|gone|goes|extends|continues)$/;
/** Findings that a place has from the one beside it. */
const CREEPS = new Set([
  'stain',
  'mildew',
  'dye-bleed',
  'fraying',
  'tear',
  'insect-damage',
  'fading',
  'shattered',
]);

/**
 * "mildew on 4-2, it's crept up into the block above", "stain on 3-2 and it has spread to 3-3": the same is found at the other
 * place, as in "…, the block above too". "It's gone to 3-3" without a finding before it, and "run from", say nothing of the kind.
 */
export function withSpreads(items: Item[]): Item[] {
  for (let k = 2; k < items.length - 2; k++) {
    if (!SPREADS.test(items[k]!.w) || items[k]!.action?.form === 'past') continue;
    let to = k + 1;
    while (
      /^(up|down|out|over|across|on|through|along|right|even|also)$/.test(items[to]?.w ?? '') &&
      to < k + 4
    )
      to++;
    if (!/^(to|into|onto|in to|on to)$/.test(items[to]?.w ?? '')) continue;
    const at = items[to + 1]?.w === 'the' && !items[to + 1]!.place ? to + 2 : to + 1;
    const place = items[at]?.place;
    if (!place?.places.length) continue;
    let from = k;
    while (
      /^(it|that|which|'s|has|have|is|also|now|just|even|already|seems|to)$/.test(items[from - 1]?.w ?? '')
    )
      from--;
    let joint = from;
    while (/^(,|and|&|but|--|-|\.|;)$/.test(items[joint - 1]?.w ?? '')) joint--;
    const said = items.slice(0, joint).findLastIndex((x) => x.finding || x.fail || x.action);
    if (said < 0 || joint - said > 8 || !CREEPS.has(items[said]!.finding ?? '')) continue;
    // "the stain in 3-3 spread into 3-4": one statement, whose places are all its own; "a tear in 3-2 which runs into 3-3"
    if (joint === from && !(from < k && items.slice(said, from).some((x) => x.place))) continue;
    return [
      ...items.slice(0, joint),
      boundaryBefore(items[from]!, ','),
      ...items.slice(to + 1, at + 1),
      { i: items[at]!.i, j: items[at]!.j, w: 'too', token: items[at]!.token },
      ...withSpreads(items.slice(at + 1)),
    ];
  }
  return items;
}
