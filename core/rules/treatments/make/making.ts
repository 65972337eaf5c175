import type { Clause } from '../../clause/clause.ts';
import type { ClauseView } from '../../clause-view.ts';
import type { ClausePlaces } from '../../places/places-of-clause.ts';
import type { ReaderState } from '../../reader-state.ts';
import type { stitchOf } from '../stitch-of.ts';
import type { Way } from '../way.ts';

/** A deed that a clause tells, with what it takes to make a treatment of it. */
export type Making = {
  state: ReaderState;
  clause: Clause;
  v: ClauseView;
  way: Way;
  /** The words of the whole sentence, joined by blanks. */
  sentence: string;
  placed: ClausePlaces;
  stitch: ReturnType<typeof stitchOf>;
};
