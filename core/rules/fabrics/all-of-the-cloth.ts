import type { Item } from '../item.ts';

/** "both of them", "all three", "every one of its blocks", "the lot": that all of it is meant, which the cloth's name says already. */
const ALL_OF_IT =
  /^(?:(?:(?:all|both)(?: (?:of|the))* )?(?:both|all|two|three|four|five|six|seven|eight|every one|every single one|each one|every last one|every block|the lot|the whole lot|the pair)(?: (?:ones|blocks|bits|pieces|squares))?(?: of (?:it|them|its|the|those|that))?(?: (?:blocks|bits|pieces|squares|places))?)$/;
const TELLS =
  /^(is|'s|are|'re|was|were|has|have|'ve|had|looks?|seems?|shows?|needs?|wants?|gets?|got|gone|went|bled|ran|faded|rotted|shattered|split|torn|thin|worn|frayed|stained)$/;
const LONGEST = 6;

/**
 * "the lavender lawn, all three of them, has faded", "the gingham ones, both, are thin": what is said between the cloth and its verb
 * names no other blocks, and is left out so that the verb follows its subject.
 */
export function withoutAllOfIt(items: Item[]): Item[] {
  const left: Item[] = [];
  for (let k = 0; k < items.length; k++) {
    left.push(items[k]!);
    const next = items[k + 1];
    if (!next || !/^(,|\(|-|--|both|all|all .*|both .*|every .*)$/.test(next.w)) continue;
    const cloth = /^(ones|blocks|bits|pieces|squares)$/.test(items[k]!.w) ? items[k - 1] : items[k];
    if (!cloth?.fabric) continue;
    const from = /^(,|\(|-|--)$/.test(next.w) ? k + 2 : k + 1;
    const end = endOfAll(items, from);
    if (end) k = end - 1;
  }
  return left;
}

/** Where the words for "all of it" at `from` end, if a verb follows; the mark behind them too. */
function endOfAll(items: Item[], from: number): number | undefined {
  let words = '';
  for (let m = from; m < from + LONGEST && items[m]; m++) {
    words = words ? `${words} ${items[m]!.w}` : items[m]!.w;
    const end = /^(,|\)|-|--)$/.test(items[m + 1]?.w ?? '') ? m + 2 : m + 1;
    const verb = items[end];
    if (verb && ALL_OF_IT.test(words) && (TELLS.test(verb.w) || verb.finding)) return end;
  }
  return undefined;
}
