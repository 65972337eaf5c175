import type { Item } from '../../item.ts';
import { itemWord as w } from '../../item-word.ts';
import { wordsBetween } from '../../words-between.ts';

/** "I've got", "we still need", "I have already bought", with the comma behind it. */
const VERB =
  /^ (?:i|we) (?:(?:'ve|'ll|have|had|still|already|also|only|do|will|shall|just) ){0,3}(?:got|have|need|want|bought|ordered|used|own|'ve)(?: (?:already|still|left|here|in|by me|in the box|at home|enough of)){0,2} (?:[,:;]|-|--) /;

/** "the white thread", "a new roll": words of the thing alone. */
const isThing = (x: Item): boolean =>
  x.token.kind === 'word' &&
  !x.quantity &&
  !x.place &&
  !x.finding &&
  !x.clock &&
  !x.duration &&
  !/^(?:i|we|and|but|so|with|on|in|is|are|was|'s)$/.test(x.w);

/**
 * "white thread I've got, one spool", "pins we need, two packs": the thing, who has or wants it, and only then how much
 * of it, as "I've got one spool white thread" would have it.
 */
export function countedBehindVerb(items: Item[]): Item[] {
  for (let k = 1; k < items.length - 2; k++) {
    if (!/^(?:i|we)$/.test(w(items, k))) continue;
    const verb = VERB.exec(wordsBetween(items, k, k + 8))?.[0];
    if (!verb) continue;
    const end = k + verb.trim().split(' ').length;
    const amount = items[end];
    // behind the amount the sentence is at its end, or goes on with something else
    if (!amount?.quantity?.unit || amount.cost || !/^(?:|[,;.)]|and|but|&)$/.test(w(items, end + 1)))
      continue;
    let from = k;
    while (from > 0 && k - from < 5 && isThing(items[from - 1]!)) from--;
    while (/^(?:the|my|our|that|this|a)$/.test(w(items, from))) from++;
    const thing = items.slice(from, k);
    if (!thing.some((x) => x.material || x.fabric) || thing.some((x) => x.action && !x.material)) continue;
    if (from > 0 && !/^(?:[,;.:(]|and|but|so|&|the|my|our|that|this|a)$/.test(w(items, from - 1))) continue;
    return [
      ...items.slice(0, from),
      ...items.slice(k, end - 1).filter((x) => !/^(?:already|here|left)$/.test(x.w)),
      amount,
      ...thing,
      ...countedBehindVerb(items.slice(end + 1)),
    ];
  }
  return items;
}
