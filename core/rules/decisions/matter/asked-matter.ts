import { BLOCKS, type Part } from './part.ts';

/** "who carries it there", "when she collects it", "which way up it goes", "whether it hangs or lies flat": what is yet to be. */
const ASKS =
  /^ (?:(?:and|but|so|or|as for|um|uh|well|still|just) )*(?:(?:have n't|has n't|not|n't|never) (?:yet )?(?:settled|decided|agreed|sorted|fixed)(?: yet| on)? |(?:still )?(?:undecided|to (?:decide|settle|agree)) )?(?:who|whose|how|when|where|whether|which|what)(?: 's| is| 'll| will)? (?!(?:still|yet|not|n't|been|i have|have|all|else|left|made|did|had|has|have|was|were|gave|sewed|stitched|owned|left)\b)\S/;
/** What is said of it settles or leaves open; "nobody knows who made it" does not. */
const OF_IT =
  / (?:open|undecided|unsettled|unresolved|up in the air|(?:settled|decided|agreed|sorted|fixed|arranged)|an open question|to (?:be )?(?:settle|decide|agree)d?)\b/;
const IS_PAST = / (?:was|were|did|had|used to) /;

/**
 * "who carries it there is still open", "how it gets there isn't settled": a question about what is to become of the quilt, told as
 * open or settled, that none of the matters with a name of their own is.
 */
export function isAskedMatter(part: Part): boolean {
  const { words, items } = part;
  return (
    part.status !== undefined &&
    ASKS.test(words) &&
    OF_IT.test(words) &&
    !IS_PAST.test(words) &&
    !items.some((x) => BLOCKS(x) || (x.finding && !/^(?:open|flat)$/.test(x.w)) || x.seam)
  );
}

/** The same at the head of a note: nothing is asked of the log there. */
export const tellsOfQuestion = (whole: string): boolean =>
  /^(?:(?:and|but|so|oh|well|right) )*(?:who|how|when|where|whether|which|what) (?!(?:(?:is|'s|are|was) (?:n't |not |still |yet |all |left |now |also |already )*(?:open|undecided|unsettled|settled|decided|agreed|fixed|up in|to (?:be|decide|settle)|left|outstanding|the|my|it)|have|has|had|do|does|did|else|matters?|things?|points?|questions?|decisions?|bits?|issues?|items?|ones?|jobs?|choices?|of|all|remains|stays)\b)(?:i|we)?[^?]{6,}? (?:is|are|'s|was|has|have|i|we) (?:n't |not |still |yet |all |now |also |been |just |really )*(?:an )?(?:open|undecided|unsettled|unresolved|up in the air|settled|decided|agreed|sorted|fixed)\b/.test(
    whole,
  ) && !/\?$/.test(whole);
