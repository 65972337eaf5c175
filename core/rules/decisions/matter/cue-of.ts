import type { DecisionStatus } from '../../../../shared/vocabulary.ts';
import { OPEN_CUE, SETTLED_CUE } from '../../../lexicon/matters.ts';
import { PatternSet, plainWordsOf } from '../../../text/pattern-set.ts';

const TELLS_OPEN = new PatternSet([
  OPEN_CUE,
  /\b(?:could|might|may|maybe|perhaps) (?:\w+ )?(?:go|going|pick|choose|stick|opt)\b/,
]);

const TELLS_SETTLED = new PatternSet([SETTLED_CUE]);

/** What these words say of a matter, by themselves: that it stands open, or that it is settled. */
export function cueOf(words: string): DecisionStatus | undefined {
  // "some of the tying before breakfast, no idea how long": the time is not known, and nothing is open
  if (
    / (?:how long|how many (?:hours|minutes)|what time)(?: it took| i (?:was|spent)[^,]*| that took| for)? $/.test(
      words,
    )
  )
    return undefined;
  const plain = plainWordsOf(words);
  if (TELLS_OPEN.test(words, plain)) return 'open';
  if (
    TELLS_SETTLED.test(words, plain) &&
    !/\b(?:settled|fixed) (?:along|in|into|down|at|to|towards)\b/.test(words) &&
    !/\bdecided (?:to|against|not)\b/.test(words)
  )
    return 'settled';
  return undefined;
}
