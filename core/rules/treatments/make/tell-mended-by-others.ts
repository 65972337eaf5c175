import type { Action } from '../../../../shared/vocabulary.ts';
import type { ClauseView } from '../../clause-view.ts';
import { makeDraft } from '../../draft.ts';
import type { Item } from '../../item.ts';
import type { ClausePlaces } from '../../places/places-of-clause.ts';
import type { ReaderState } from '../../reader-state.ts';

/** "somebody patched 2-3 before me": what others did is an old repair, where it is told at which block, and no treatment. */
export function tellMendedByOthers(
  state: ReaderState,
  v: ClauseView,
  verb: Item,
  placed: ClausePlaces,
  action: Action,
): void {
  const topical = state.topic?.sentence === v.sentence ? state.topic.places : [];
  const told = placed.kind === 'specific' ? placed.places : topical;
  if (['resew', 'patch', 'darn', 'stabilize', 'overlay', 'replace'].includes(action) && told.length)
    state.drafts.push(
      makeDraft(
        'condition',
        v,
        {
          finding: ['old-repair', 'condition.mended-by-others', verb],
          places: [told, 'place.said', placed.items],
        },
        'said',
      ),
    );
  else if (placed.outside && !placed.places.length) {
    const draft = makeDraft(
      'condition',
      v,
      {
        finding: ['old-repair', 'condition.mended-by-others', verb],
        places: [[], 'place.said', placed.items],
      },
      'none',
    );
    draft.outside = true;
    state.drafts.push(draft);
  }
}
