import type { TreatmentState } from '../../../shared/vocabulary.ts';

/** "same on the back tomorrow". */
const LATER =
  / (?:to follow|follows|to come|to go|still to (?:do|go|come)|left to do|tomorrow|tmrw|next time|another (?:day|evening|night)) /;

const BEEN_DONE = / (?:has|have|'ve|been|was|were) (?:\S+ ){0,3}(?:done|treated|seen to) /;

/** How far something stands that is told to be the same as another thing was: `stood` is how far that one was. */
export function stateAgain(words: string, asked: boolean | undefined, stood: TreatmentState): TreatmentState {
  const tobe =
    / (want|wants|need|needs|will|'ll|to get|to do|to come|gets?|to be (?:treated|done|given|mended|repaired)|to receive|shall) /.test(
      words,
    ) || LATER.test(words);
  if (tobe && stood !== 'considering' && !/ (?:half a mind|tempted|inclined) /.test(words)) return 'planned';
  // "same on 3-1?", "2-4 maybe too"
  if (asked || / (?:maybe|perhaps|possibly|might|poss|half a mind|tempted|inclined) /.test(words))
    return 'considering';
  // "the lower left has now been done likewise", where it was to have the same
  return stood === 'planned' && BEEN_DONE.test(words) ? 'done' : stood;
}
