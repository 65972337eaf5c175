import { type Item, wordsAt } from '../item.ts';
import { wordsBetween } from '../words-between.ts';

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
export function withoutAllOfIt(said: Item[]): Item[] {
  const items = withoutTail(withAllBefore(said));
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

/** Words before a cloth's name for all of it that hide it behind an "of". */
const ALL_BEFORE =
  /^ (?:(?:the (?:whole |entire )?(?:lot|whole|entirety)|every (?:last |single )*(?:bit|scrap|piece|inch|thread|shred|one|block|square)|each(?: one| piece| block)?|all|(?:anything|everything|whatever)(?: that)?(?: 's| is)?) (?:of|in)(?: the| that| this)?|all things) $/;

/** "replaced the lot of the pinstripe", "every scrap of pinstripe", "anything in pinstripe": as "all the pinstripe". */
function withAllBefore(items: Item[]): Item[] {
  const at = items.findIndex(
    (x, k) => x.fabric && k > 1 && /^(?:of|in|the|that|this|things)$/.test(items[k - 1]!.w),
  );
  if (at < 0) return items;
  for (let from = Math.max(0, at - 6); from < at - 1; from++) {
    if (!ALL_BEFORE.test(wordsBetween(items, from, at))) continue;
    return [
      ...items.slice(0, from),
      ...wordsAt(items[at - 1]!, 'all the'),
      items[at]!,
      ...withAllBefore(items.slice(at + 1)),
    ];
  }
  return [...items.slice(0, at + 1), ...withAllBefore(items.slice(at + 1))];
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

/** "all of it", "every last scrap of it", "the whole lot of them": said behind what was found, of the thing that was named. */
const TAIL =
  /^(?:just about |nearly |practically |pretty well )?(?:all|both|the lot|the whole lot|the whole|every (?:(?:single|last|blessed|damn) )?(?:scrap|inch|bit|thread|stitch|piece|block|one|shred)|the pair|(?:all|both) (?:of )?(?:two|three|four|five|six|seven|eight)|each one|each and every one|the whole thing|top to bottom|edge to edge|end to end)(?: (?:of|in) (?:it|them|'em|em|those|these))?$/;
const OF_THEM = /^ (?:all|both|every|each) (?:\w+ )?of (?:them|it|'em|em) /;
const STOP = /^[.;!?\n]$/;

/**
 * "rust chintz: dye bleed, all of it", "moss calico thin, every scrap": behind the damage and the name of what has it, that all of it
 * is meant points at nothing that was spoken of before.
 */
function withoutTail(items: Item[]): Item[] {
  for (let k = items.length - 2; k > 0; k--) {
    const mark = /^(?:,|-|--|\()$/.test(items[k]!.w);
    // "the moths have been at the grey all three of them": without a mark, right behind the cloth or what is found
    if (
      !mark &&
      !((items[k]!.fabric || items[k]!.finding) && OF_THEM.test(wordsBetween(items, k + 1, k + 5)))
    )
      continue;
    let end = items.findIndex((x, m) => m > k && (STOP.test(x.w) || /^(?:,|-|--|\)|and|but|so)$/.test(x.w)));
    if (end < 0) end = items.length;
    // "every block of it but the shirting one"
    if (items[end]?.w === 'but' || end - k > 8 || !TAIL.test(wordsBetween(items, k + 1, end).trim()))
      continue;
    const start = items.findLastIndex((x, m) => m < k && STOP.test(x.w)) + 1;
    const before = items.slice(start, mark ? k : k + 1);
    const named = before.findIndex((x) => x.fabric || (x.place?.how === 'said' && x.place.places.length));
    const found = before.findLastIndex((x) => x.finding || x.fail);
    if (named < 0 || found < 0 || before.some((x) => x.action?.form === 'past')) continue;
    items = [...items.slice(0, mark ? k : k + 1), ...items.slice(items[end]?.w === ')' ? end + 1 : end)];
  }
  return items;
}
