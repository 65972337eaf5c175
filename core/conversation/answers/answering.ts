import type { Draft } from '../../rules/draft.ts';
import type { Item } from '../../rules/item.ts';
import { type ClausePlaces, placesOfClause } from '../../rules/places/places-of-clause.ts';
import type { ReaderState } from '../../rules/reader-state.ts';
import type { DayFound } from '../../rules/times/find-day.ts';
import type { Cue } from '../cues.ts';
import { POINTERS } from '../mend/items.ts';
import type { LastNote, Standing } from '../standing.ts';

/** A note while it is read as the answer to what was asked. */
export type Answering = {
  state: ReaderState;
  last: LastNote;
  standing: Standing[];
  items: Item[];
  /** The items up to the first stop: an answer mostly comes first. */
  head: Item[];
  words: string;
  /** The day that the note before was told of, where the answer names none. */
  day: DayFound | undefined;
  cue: Cue;
  /** Drafts that the answer took up; the others are told beside it. */
  taken: Set<Draft>;
  used: Set<Item>;
};

/** Words that name nothing: what is left beside them is what was meant. */
export const SMALL =
  /^(the|a|an|it|was|is|'s|that|those|one|ones|of|with|i|used|put|over|them|they|we|round|mean|oh|no|yes|some|sorry|were|actually|,|\.|and|my|this|ah|right|called|from|said|should|have|think|reckon|believe|guess|suppose|probably|then|um|er|uh|hmm|that|bit)$/;

/** Drafts that stand on the words of the answer itself are no entries of their own. */
export function takeOver(a: Answering, items: Item[]): void {
  for (const d of a.state.drafts) {
    const at = d.origins['entry'];
    if (at && items.some((x) => x.token.from >= at.from && x.token.from < at.to)) a.taken.add(d);
  }
}

/** The places that are named, and not only pointed at by "it" or "them". */
export const placesNamed = (items: Item[]): ClausePlaces =>
  placesOfClause(items.filter((x) => !POINTERS.has(x.place?.rule ?? '')));
