import type { Item } from '../item.ts';
import { wordsBetween } from '../words-between.ts';

const NO = /^(?:no|nope|nah|not|thankfully not|luckily not)$/;
const THOUGHT =
  / (?:(?:i|we)(?: 'd| had)? (?:thought|took it for|reckoned|feared|guessed|was afraid)(?: it was| at first)?|at first|at first glance|by the look of it) $/;
const BUT_NO =
  /^ (?:, )?(?:but |and |only )?(?:no|it 's not|it is n't|it was n't|it wasn't|it 's n't|that 's not|not so|it turns out|turned out)(?: ,| it| to| that|$| )/;

/**
 * A finding that she asks herself or took something for, and denies in the same breath, was not found: "damp spots, mould?
 * no, only water marks", "moth, I thought, but no, it's a burn". The place it was told of stays.
 */
export function withoutDenied(items: Item[]): Item[] {
  for (let k = 1; k < items.length - 1; k++) {
    const asked = items[k]!.w === '?' && NO.test(items[k + 1]!.w);
    if (!asked && !isThought(items, k)) continue;
    for (let m = k - 1; m >= 0 && !/^(?:[.;:?!,]|-|--|\n)$/.test(items[m]!.w); m--) {
      items[m]!.finding = undefined;
      items[m]!.fail = undefined;
    }
  }
  return items;
}

/** Does a comma stand at `k` behind what was only thought, and a "no" behind it? */
function isThought(items: Item[], k: number): boolean {
  if (items[k]!.w !== ',' && items[k]!.w !== 'but') return false;
  return (
    BUT_NO.test(wordsBetween(items, k, k + 6)) &&
    (THOUGHT.test(wordsBetween(items, k - 5, k)) || / thought /.test(wordsBetween(items, k - 7, k)))
  );
}
