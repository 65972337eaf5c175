import type { ClauseView } from '../clause-view.ts';
import { type Draft, makeDraft } from '../draft.ts';
import { mendedCloth } from '../places/cloth-worked-on.ts';
import type { ClausePlaces } from '../places/places-of-clause.ts';
import type { ReaderState } from '../reader-state.ts';
import { planFor } from './as-planned.ts';

/** That something has still to be done to a place, and not what: "2-2 and 4-5 still want doing", "row 3 needs seeing to". */
const WANTS_WORK =
  / (?:wants?|wanting|needs?|needing|requires?|could do with|will want|will need|'ll want|'ll need|has to have|have to have)(?: (?:still|some|a|bit|lot|of|more|my|all|both))* (?:doing|done|seeing to|sorting(?: out)?|attention|work|dealing with|attending to|working on|something doing|something done|something)(?: (?:too|as well|yet|still|next|soon|badly|now|tomorrow|later|eventually|in|to|with|about|it|them|that|doing|done|on))* (?:[.!] )*$/;
const NOT_SO =
  / (?:what|which|none|neither|nor|nobody|nothing|anything|n't|not|never|no|how|whether|if|who|she|he|they|more than|than) /;

/** Work that a named place still wants, where nobody says what: the plan for it where there is one, else it is asked for. */
export function unsaidPlan(
  state: ReaderState,
  v: ClauseView,
  words: string,
  told: ClausePlaces,
): Draft | undefined {
  if (!WANTS_WORK.test(words) || NOT_SO.test(words)) return undefined;
  const topic = state.topic?.sentence === v.sentence && v.items.length <= 6 ? state.topic.places : undefined;
  const cloth = told.kind === 'none' && !topic ? mendedCloth(v.items, state) : undefined;
  const places =
    told.kind === 'specific' || isPart(told) || pointsBack(told)
      ? told.places
      : told.kind === 'none'
        ? (topic ?? cloth?.places)
        : undefined;
  if (!places?.length || told.outside) return undefined;
  if (v.items.some((x) => x.finding || (x.material && !x.fabric) || x.action)) return undefined;
  const action = planFor(state, places)?.action;
  return makeDraft(
    'treatment',
    v,
    {
      ...(action ? { action: [action, 'treatment.as-planned', undefined, 'implied'] } : {}),
      state: ['planned', 'treatment.unsaid', undefined],
      places: [places, 'place.said', cloth ? [cloth.item] : told.items],
    } as Parameters<typeof makeDraft>[2],
    'said',
  );
}

/** "that one still wants doing", "those need seeing to"; but "it needs work" may be of the quilt. */
const pointsBack = (told: ClausePlaces): boolean =>
  told.kind === 'pronoun' && told.items.every((x) => x.place!.rule !== 'place.it');

const isPart = (told: ClausePlaces): boolean =>
  told.kind === 'general' && told.places.length === 1 && told.places[0] !== 'quilt';
