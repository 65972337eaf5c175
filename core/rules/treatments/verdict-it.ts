import type { Item } from '../item.ts';
import { wordsBetween } from '../words-between.ts';

/** "calico behind it is", "a darn it is, then", "net it is for 1-5": the way, and then the word that settles it. */
const BEHIND = /^ (?:is|'s) (?:$|[,.;!&-]|-- |then |now |and |so |i |for |on |after |in the end )/;
/** "it's the darn", "it'll be net then", "it's going to be calico behind", "it has to be a patch". */
const BEFORE =
  /^ (?:is|'s|was|'ll be|will be|shall be|(?:is|'s) going to be|(?:is|'s) gonna be|has to be|(?:has|'s) got to be|had better be) (?:just |only |definitely |probably )?(?:a |an |the |that )?$/;

/**
 * Is the "it" at `k` that of a verdict on the way named at `at`? It stands for the question that was open and not for the block
 * last spoken of.
 */
export const isVerdictIt = (items: Item[], k: number, at: number): boolean =>
  items[k]!.w === 'it' &&
  (k > at
    ? BEHIND.test(wordsBetween(items, k + 1, k + 5))
    : BEFORE.test(wordsBetween(items, k + 1, at)) && items[at]!.action?.form !== 'past');
