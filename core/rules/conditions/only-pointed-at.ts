import type { Draft } from '../draft.ts';
import type { ReaderState } from '../reader-state.ts';
import { isTreatment } from '../treatments/is-treatment.ts';
import { wordsBetween } from '../words-between.ts';

/** What points at damage without reporting it: "got the hole in 3-2 (closed)", "finally got round to the hole in 2-5", "next up the tear in 4-1". */
const POINTS =
  /^ (?:(?:finally|at last|i|we|'ve|have|so|and|then|now|right|just|ok|also|next|up|next up|first|turned|moved|on|went|started|set|about) )*(?:got|had|get|got (?:round|around) to|(?:back|on|down|over|round|around|up) to|next up|next|to|on|with|about)? ?(?:the|that) $/;

/**
 * Damage that the words only point at, where what was done about it follows in the same sentence without a place of its own: it is no
 * finding of this note.
 */
export function withoutPointedAt(state: ReaderState): void {
  state.drafts = state.drafts.filter((d) => !onlyPointsAt(state, d));
}

function onlyPointsAt(state: ReaderState, d: Draft): boolean {
  if (d.entry.kind !== 'condition' || d.entry.finding === 'old-repair' || !d.entry.places?.length)
    return false;
  const { places } = d.entry;
  const origin = d.origins['finding'];
  const clause = state.clauses[d.clause];
  const at = clause?.items.findIndex((x) => x.finding && x.token.from === origin?.from) ?? -1;
  if (!clause || at < 1 || !POINTS.test(wordsBetween(clause.items, 0, at))) return false;
  // "the hole in 3-2 is bigger": something is told of it
  if (
    clause.items
      .slice(at + 1)
      .some((x) => /^(?:is|'s|are|was|were|has|have|had|looks|goes|runs|measures|could)$/.test(x.w))
  )
    return false;
  return state.drafts.some(
    (t) =>
      isTreatment(t) &&
      t.sentence === d.sentence &&
      t.clause > d.clause &&
      t.placed !== 'said' &&
      t.entry.places?.join() === places.join(),
  );
}
