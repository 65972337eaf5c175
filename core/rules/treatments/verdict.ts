import type { Action } from '../../../shared/vocabulary.ts';
import type { ClauseView } from '../clause-view.ts';
import { makeDraft } from '../draft.ts';
import type { Item } from '../item.ts';
import type { ReaderState } from '../reader-state.ts';

/** "the crepeline idea is off", "the support from behind is abandoned", "new backing idea scrapped": one of the ways that stood open. */
export function dropIdea(state: ReaderState, v: ClauseView, words: string): void {
  const gone =
    / (idea|plan|option|notion|scheme)( is|'s| 's)? (off|out|scrapped|dropped|abandoned|gone|dead|no good|rejected|shelved)\b/.test(
      words,
    ) ||
    /( is| 's| was| were| are| been) (now )?(abandoned|scrapped|off the table|out of the question|off the cards|forgotten|dropped|rejected|dismissed|discounted|ruled out|discarded|vetoed|shelved)\b/.test(
      words,
    ) ||
    /( is| 's) (off|out)( now| then)? $/.test(words);
  if (!gone) return;
  const open = state.memory.open.findLast((o) => namesWay(v.items, o.action));
  if (!open) return;
  state.drafts.push(
    makeDraft(
      'treatment',
      v,
      {
        action: [open.action, 'treatment.idea-dropped', v.items],
        state: ['dropped', 'state.dropped', v.items],
        ...(open.object ? { object: [open.object, 'treatment.idea-dropped', undefined, 'implied'] } : {}),
        places: [[...open.places], 'place.of-open', undefined, 'implied'],
      },
      'carried',
    ),
  );
}

/** Do these words name such a treatment, by its verb or its stuff? */
const namesWay = (items: Item[], action: Action): boolean =>
  items.some(
    (x) =>
      (x.material === 'net' && action === 'overlay') ||
      x.action?.v === action ||
      (x.w === 'patch' && action === 'patch') ||
      (/^(new|fresh|replacement)$/.test(x.w) && action === 'replace') ||
      ((x.fabric || x.material === 'fabric') && /^(replace|patch|stabilize)$/.test(action)) ||
      (x.material === 'interfacing' && action === 'stabilize') ||
      (/^supports?$/.test(x.w) && action === 'stabilize') ||
      (/^replacements?$/.test(x.w) && action === 'replace'),
  );

/** "net.", "patch wins", "the darn, then": one of the ways that stood open, and no word besides. */
export function chooseIdea(state: ReaderState, v: ClauseView): void {
  const { items } = v;
  if (state.drafts.length || state.clauses.reduce((n, c) => n + c.items.length, 0) > 8) return;
  if (
    !items.every((x) => CHOICE.test(x.w) || x.material === 'net' || x.material === 'interfacing' || x.action)
  )
    return;
  const open = state.memory.open.findLast((o) => namesWay(items, o.action));
  if (!open) return;
  state.drafts.push(
    makeDraft(
      'treatment',
      v,
      {
        action: [open.action, 'treatment.chosen', items],
        state: ['planned', 'treatment.chosen', items],
        ...(open.object ? { object: [open.object, 'treatment.chosen', undefined, 'implied'] } : {}),
        places: [[...open.places], 'place.of-open', undefined, 'implied'],
      },
      'carried',
    ),
  );
}

const CHOICE =
  /^(the|a|an|right|ok|okay|so|then|it|is|'s|be|wins|won|it'll|'ll|will|shall|yes|yeah|well|go|going|for|with|i|'ve|have|decided|definitely|settled|chosen|chose|final|answer|my|new|fresh|and|--|-|now|patch|darn|support|replacement|piece)$/;
