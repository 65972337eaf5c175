import type { Clause } from '../clause/clause.ts';
import type { ClauseView } from '../clause-view.ts';
import { makeDraft } from '../draft.ts';
import type { Item } from '../item.ts';
import { mentionsOf } from '../mentions-of.ts';
import type { Mention } from '../places/find-mention.ts';
import type { ClausePlaces } from '../places/places-of-clause.ts';
import type { ReaderState } from '../reader-state.ts';
import { wordsBetween } from '../words-between.ts';
import { stateAgain } from './state-again.ts';
import type { stitchOf } from './stitch-of.ts';

const OF_DAMAGE = / same (?:\S+ )?(?:problem|trouble|damage|wear|story|state|condition) /;

/** What was told last of these places, in this note or before: the deeds, or else the damage. */
export function toldOf(state: ReaderState, places: string[], damage = false): Mention[] {
  const here = [...(state.memory.mentions ?? []), ...mentionsOf(state.drafts)].filter((m) =>
    places.every((p) => m.places.includes(p)),
  );
  const of = (deed: boolean): Mention[] => {
    const last = here.findLastIndex((m) => Boolean(m.action) === deed && (deed || m.finding));
    if (last < 0) return [];
    let first = last;
    // "backed with linen and netted": two deeds told of it together
    while (first > 0 && Boolean(here[first - 1]!.action) === deed) first--;
    return here.slice(deed ? Math.max(first, last - 1) : last, last + 1);
  };
  const deeds = damage ? [] : of(true);
  return deeds.length ? deeds : of(false);
}

/** "5-4 gets the same as 2-1", "1-1, same as 1-2": what was done, or else found, at the place that is named as the model. */
export function asModel(
  state: ReaderState,
  clause: Clause,
  v: ClauseView,
  placed: ClausePlaces,
  stitch: ReturnType<typeof stitchOf>,
): boolean {
  const at = v.items.find((x) => x.model);
  if (!at?.model) return false;
  const words = wordsBetween(v.items);
  const told = toldOf(state, at.model, OF_DAMAGE.test(words));
  const topical = state.topic?.sentence === v.sentence && placed.kind === 'none' ? state.topic.places : [];
  const places = placed.places.length ? placed.places : topical;
  if (!places.length) return false;
  if (!told.length) return unknownModel(state, clause, v, at, places, placed);
  for (const m of told) {
    if (m.finding) {
      state.drafts.push(
        makeDraft(
          'condition',
          v,
          {
            finding: [m.finding, 'condition.as-model', at],
            places: [[...places], 'place.said', placed.items],
          },
          'said',
        ),
      );
      continue;
    }
    const say = stitch?.stitch ?? m.stitch;
    state.drafts.push(
      makeDraft(
        'treatment',
        v,
        {
          action: [m.action, 'treatment.as-model', at],
          state: [stateAgain(words, clause.asked, m.state ?? 'done'), 'treatment.as-model', at],
          ...(m.object ? { object: [m.object, 'treatment.as-model', at] } : {}),
          places: [[...places], 'place.said', placed.items],
          ...(say ? { stitch: [say, 'treatment.as-model', stitch?.item ?? at] } : {}),
        },
        'said',
      ),
    );
  }
  return true;
}

/** "maybe do 4-4 the same as 2-2?", where nothing was told of 2-2: a way in question, and which one is not known. */
function unknownModel(
  state: ReaderState,
  clause: Clause,
  v: ClauseView,
  at: Item,
  places: string[],
  placed: ClausePlaces,
): boolean {
  const stands = stateAgain(wordsBetween(v.items), clause.asked, 'done');
  if (stands !== 'considering' || v.items.some((x) => x.finding || x.material || x.action?.v)) return false;
  state.drafts.push(
    makeDraft(
      'treatment',
      v,
      {
        state: [stands, 'treatment.as-model', at],
        places: [[...places], 'place.said', placed.items],
      },
      'said',
    ),
  );
  return true;
}
