import type { Action } from '../../../shared/vocabulary.ts';
import type { Draft } from '../draft.ts';
import { LEXICON } from '../lexicon-index.ts';
import type { ReaderState } from '../reader-state.ts';

const LEADS = /^(,|just|only|for|on|of|with|doing|that|was|it|took|me|spent|went|the|all|that's|'s)$/;

/** The deed named right behind a length of time: "eighteen minutes for the darning", "35 min just the darning". */
function deedBehind(state: ReaderState, to: number): Action | undefined {
  const first = state.tokens.findIndex((t) => t.from >= to);
  if (first < 0) return undefined;
  let k = first;
  while (k < first + 5 && LEADS.test(state.tokens[k]?.w ?? '')) k++;
  if (k === first || !state.tokens.slice(first, k).some((t) => /^(for|on|just|only|the)$/.test(t.w)))
    return undefined;
  const hit = LEXICON.longestAt(state.tokens, k);
  const after = hit && state.tokens[hit.next]?.w;
  // "ten minutes for the darn in 2-3", and none for "the patching of the backing"
  if (
    !hit ||
    (after !== undefined && !/^([.,;!]|and|alone|itself|only|so|but|then|though|bit|part)$/.test(after))
  )
    return undefined;
  const action = hit.payloads.find((s) => s.k === 'action' && s.form !== 'past');
  return action?.k === 'action' ? action.v : undefined;
}

/**
 * A length told for one of several deeds by its name is that deed's: "the seam's whipstitched and the tear's darned, eighteen
 * minutes for the darning". Taken from the time at work, or from the deed it was given to for standing nearest.
 */
export function minutesOfDeed(state: ReaderState): void {
  const told = (d: Draft): boolean =>
    d.origins['minutes'] !== undefined &&
    (d.entry.kind === 'treatment' ||
      (d.entry.kind === 'work' && !d.entry.start && !d.entry.mark && !d.entry.time));
  const deeds = state.drafts.filter((d) => d.entry.kind === 'treatment' && d.entry.state === 'done');
  if (deeds.length < 2) return;
  for (const d of state.drafts.filter(told)) {
    // "25 minutes of cutting and fifteen on the piecing": a list of kinds of work
    if (
      d.entry.kind === 'work' &&
      state.drafts.some((x) => x !== d && x.entry.kind === 'work' && x.sentence === d.sentence && told(x))
    )
      continue;
    const origin = d.origins['minutes']!;
    const action = deedBehind(state, origin.to);
    if (!action) continue;
    const of = deeds.filter((t) => t.entry.kind === 'treatment' && t.entry.action === action);
    const one = of[0];
    if (of.length !== 1 || one === d || one?.entry.kind !== 'treatment' || one.entry.minutes !== undefined)
      continue;
    const { minutes } = d.entry as { minutes?: number };
    if (minutes === undefined) continue;
    one.entry.minutes = minutes;
    one.origins['minutes'] = origin;
    if (d.entry.kind === 'treatment') {
      delete d.entry.minutes;
      delete d.origins['minutes'];
    } else state.drafts = state.drafts.filter((x) => x !== d);
  }
}
