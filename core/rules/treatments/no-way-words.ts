import { wordSet } from '../../text/word-set.ts';

/**
 * Words of nearly every clause at which no rule finds a way: none of the rules is asked there. What can be a thing or a deed
 * ("one", "on", "off", "had", "nothing") is not among them; `tests/understand/no-way-words.test.ts` shows that no rule finds a
 * way at one of these.
 */
export const NO_WAY_WORDS = wordSet(
  "the a an this that these those it its they them there here i i'm my me we you she he her his " +
    'and or but so both either of to in at by for with from as into onto over under behind between along through round about ' +
    "is are was were be am 's 'm 're 've 'll 'd do does did will would could can should must may might not n't no " +
    'all every each some other another same new old little whole right now then still just only very quite too also well like ' +
    'where when what which who how because if until before after while down up',
);
