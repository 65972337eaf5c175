import type { ReaderState } from '../reader-state.ts';
import { isTreatment } from './is-treatment.ts';

/** "finished 5-1, patched it with brown wool": what was done there is told behind. */
export function dropFinished(state: ReaderState): void {
  state.drafts = state.drafts.filter(
    (d) =>
      !isTreatment(d) ||
      d.entry.action ||
      !state.drafts.some(
        (x) =>
          isTreatment(x) &&
          x.entry.action &&
          x.sentence === d.sentence &&
          x.clause > d.clause &&
          x.placed !== 'said' &&
          x.entry.places?.join() === d.entry.places?.join(),
      ),
  );
}
