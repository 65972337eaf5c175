import type { Action, RemovedObject, TreatmentState } from '../../../shared/vocabulary.ts';
import type { ClauseView } from '../clause-view.ts';
import { type Draft, makeDraft } from '../draft.ts';
import type { Item } from '../item.ts';
import { mendedCloth } from '../places/cloth-worked-on.ts';
import type { ClausePlaces } from '../places/places-of-clause.ts';
import type { ReaderState } from '../reader-state.ts';
import { wordsBetween } from '../words-between.ts';
import { planFor } from './as-planned.ts';
import { isTreatment } from './is-treatment.ts';
import { stitchOf, TAKES_STITCH } from './stitch-of.ts';

/** Work on a block that does not say what: "seen to 4-1", "that's 5-2 out of the way", "2-3 is complete". */
const UNSAID_DEED =
  / (?:did|done|treated|finished|completed?|mended|repaired|fixed|took care of|taken care of|sorted|sorted out|dealt with|saw to|seen to|looked after|attended to|worked on|tackled|managed|cracked|finished (?:off|up)|polished off|had a go at|been at|got through|got round to|got around to|made good|good to go|put right|set to rights|ticked off|crossed off|wrapped up|out of the way|(?:got|get) to (?=.* (?:as well|too|at last|today|tonight|yesterday))|gave .* the treatment) /;
const NOT_SO =
  / (?:what|none|neither|nor|nobody|no more|did n't|have n't|has n't|was n't|not|n't|never|nothing|undecided|how|same|somebody|someone|whoever|she|he|they(?! (?:are|'re|'ve) )|once|before now|years|anything|yet|by (?!hand|machine)\w+|must|should|to be|needs?|will|'ll) /;

/** Do these words tell that something was done to a place, and not what? */
export const tellsUnsaidDeed = (items: Item[]): boolean => {
  const words = wordsBetween(items);
  return items.some((x) => x.place?.places.length) && UNSAID_DEED.test(words) && !NOT_SO.test(words);
};

/** The same of what was last spoken of: "took care of those", "sorted that one out", "it's been seen to". */
const TENDED =
  /^ (?:(?:oh|right|ok|okay|so|and|well|there|,|now|i|i 've|'ve|have|just|also|then|we|that 's) )*(?:took care of|taken care of|sorted|dealt with|saw to|seen to|attended to|put right|made good|treated|mended|repaired|fixed|tackled|finished off) (?:it|that|them|those|these|this|both|'em|em|both of (?:them|those)|all of (?:them|those)|that one|this one|the (?:lot|pair|two)(?: of (?:them|those))?)(?: (?:one|ones|two|three|up|out|now|too|as well|all|both|already|today|tonight|this morning|this afternoon|this evening|last night|yesterday|then))*(?: [.!])* $/;

/** "that's been dealt with", "it's sorted now": the same, told of the thing. */
const BEEN_TENDED =
  /^ (?:(?:oh|right|ok|okay|so|and|well|,|now) )*(?:it|that|this|that one|this one|they|those|both) (?:'s|is|has|have|are|'ve|'re)(?: all| now| both| been| finally)* (?:seen to|dealt with|sorted|sorted out|attended to|taken care of|put right|made good|fixed|mended)(?: now| too| today| tonight| already| at last)*(?: [.!])* $/;

/**
 * Something done to places that are named, where the words do not say what: "did five one and six four last night". The deed of the
 * work in hand or of the plan for those places stands in where there is one; else it is asked for.
 */
export function unsaidDeed(
  state: ReaderState,
  v: ClauseView,
  words: string,
  told: ClausePlaces,
  placed: ClausePlaces,
  ongoing: Action | undefined,
  stitch: ReturnType<typeof stitchOf>,
): Draft | undefined {
  const inHand = IN_HAND.test(words);
  if (!(inHand || UNSAID_DEED.test(words)) || NOT_SO.test(words)) return undefined;
  const { items } = v;
  const topic = state.topic?.sentence === v.sentence && items.length <= 6 ? state.topic.places : undefined;
  const cloth = told.kind === 'none' ? mendedCloth(items, state) : undefined;
  const where =
    told.kind === 'specific'
      ? { places: placed.places, items: placed.items }
      : cloth
        ? { places: cloth.places, items: [cloth.item] }
        : told.kind === 'none' && topic
          ? { places: topic, items: [] as Item[] }
          : plannedPart(state, told);
  if (!where) return undefined;
  // "3-1: net over, finished": said once more of what the sentence told
  if (
    told.kind === 'none' &&
    state.drafts.some((d) => isTreatment(d) && d.entry.action && d.sentence === v.sentence) &&
    items.every((x) => /^(?:all|now|and|is|it|'s|so|done|finished|complete|completed|sorted|,)$/.test(x.w))
  )
    return undefined;
  // "did the seam between two two and two three, by hand"
  // "binding by hand tonight, 7 to 9. Finished the top and right sides": a side that is finished is bound
  const bound = where.places.every((p) => /^(edge|border)-/.test(p)) && isBinding(state);
  if (bound) where.places = where.places.map((p) => p.replace('border-', 'edge-'));
  const known =
    workFinished(items) ??
    (items.some((x) => x.seam) ? 'resew' : undefined) ??
    (bound ? 'bind' : undefined) ??
    // "rows 1 and 2 done in the ditch"
    (stitch?.stitch === 'in-the-ditch' ? 'quilt' : undefined) ??
    ongoing ??
    restOfRow(state, where.items) ??
    planFor(state, where.places)?.action ??
    didSame(state, v, words, where.places) ??
    didAsWell(state, v, words, where.places) ??
    (goesOnAlong(state, where.places) ? state.memory.treatment?.action : undefined);
  const before = known ? undefined : goneOnWith(state, words, told, where.places);
  // "I did the one below it as well": the same again, with its stitch
  if (before && before.state !== 'doing' && items.length <= 9 && / (?:too|as well|also|again) /.test(words))
    return undefined;
  const action = known ?? before?.action;
  if (inHand && !action) return undefined;
  stitch ??= bound ? state.clauses.map((c) => stitchOf(c.items)).find(Boolean) : undefined;
  return makeDraft(
    'treatment',
    v,
    {
      ...(action ? { action: [action, 'treatment.of-task', undefined, 'implied'] } : {}),
      state: [inHand || HALF_DONE.test(words) ? 'doing' : 'done', 'treatment.unsaid', undefined],
      ...(before?.object ? { object: [before.object, 'treatment.of-task', undefined, 'implied'] } : {}),
      places: [where.places, 'place.said', where.items],
      // "did 2-3 by hand": how, before it was asked what
      ...(stitch && (!action || TAKES_STITCH.has(action))
        ? { stitch: [stitch.stitch, `stitch.${stitch.stitch}`, stitch.item] as const }
        : {}),
    } as Parameters<typeof makeDraft>[2],
    'said',
  );
}

/** "backing done, 20 min", "border done": the part for which something is planned, by its side where the plan has one. */
function plannedPart(
  state: ReaderState,
  told: ClausePlaces,
): { places: string[]; items: Item[] } | undefined {
  const [part, more] = told.places;
  if (told.kind !== 'general' || !part || more || part === 'quilt') return undefined;
  const sided = (state.memory.plans ?? []).flatMap((p) =>
    p.places.length === 1 && p.places[0]!.startsWith(part === 'binding' ? 'edge-' : `${part}-`)
      ? p.places
      : [],
  );
  const places = [[part], ...sided.map((p) => [p])].find((p) => planFor(state, p));
  return places ? { places, items: told.items } : undefined;
}

/** "polished off the last of the darning in 2-2", "finished the quilting on row two", "got through all the tying in row 1": the deed by its name. */
function workFinished(items: Item[]): Action | undefined {
  const at = items.findIndex(
    (x, k) =>
      x.action?.form === 'ing' &&
      / (?:finished|finished off|finished up|completed|polished off|wrapped up|got through|done|did|cracked|tackled|ticked off) (?:the |my |all |last |rest |remaining |bit |bits |of |that |those |with )*$/.test(
        wordsBetween(items, 0, k),
      ),
  );
  return at >= 0 && /^(?:in|on|at|of|for|along|across|round|around|to|over)$/.test(items[at + 1]?.w ?? '')
    ? items[at]!.action!.v
    : undefined;
}

const DID_THAT =
  / (?:i|we) (?:'ve |have |'d |had )?(?:already )?(?:did|done)(?: today| already| too| earlier| yesterday| this \S+| last night)* (?:[.!,] )*$| (?:is|'s|are|has|have|been)(?: \S+){0,2} done(?: already| too| now)* (?:[.!,] )*$/;

/** "the back needs vacuuming, the front's been done", "2-5 I'd darned already, 3-5 I did today": the deed just told, at another place. */
function didSame(state: ReaderState, v: ClauseView, words: string, places: string[]): Action | undefined {
  const last = state.drafts.at(-1);
  if (!last || !isTreatment(last) || last.sentence !== v.sentence || !DID_THAT.test(words)) return undefined;
  const { action, state: stands, places: before } = last.entry;
  return action &&
    !/^(remove|leave)$/.test(action) &&
    stands !== 'dropped' &&
    !before?.some((p) => places.includes(p))
    ? action
    : undefined;
}

/** "tied row six and did row four while I was at it": told in one breath with the deed before, and done there too. */
function didAsWell(state: ReaderState, v: ClauseView, words: string, places: string[]): Action | undefined {
  const last = state.drafts.findLast(isTreatment);
  const { action, state: stands, places: before } = last?.entry ?? {};
  if (
    !last ||
    !action ||
    stands !== 'done' ||
    /^(remove|leave|replace|photograph|measure)$/.test(action) ||
    !before?.length ||
    // the same again, with its stitch
    / (?:too|as well|also) /.test(words) ||
    before.some((p) => places.includes(p)) ||
    // the same kind of place: a block, a part
    /^\d/.test(before[0]!) !== /^\d/.test(places[0] ?? '') ||
    state.drafts.some((d) => d.clause > last.clause && d.entry.kind === 'condition') ||
    !/^ (?:(?:and|then|,|also|after that) )*(?:(?:i|we) )?(?:(?:also|then|just|even|'ve|have) )*did /.test(
      words,
    )
  )
    return undefined;
  return last.sentence === v.sentence || state.clauses[v.index + 1]?.joint === 'while' ? action : undefined;
}

/** "tied r3 b1-3", then "rest of r3 done": the deed that the row was begun with. */
function restOfRow(state: ReaderState, placed: Item[]): Action | undefined {
  const last = state.memory.treatment;
  return placed.length === 1 && placed[0]!.place?.rule === 'place.rest-of-row' && last?.state === 'done'
    ? last.action
    : undefined;
}

/** "row one tied" and then "did rows two and three": work that goes from row to row, or from side to side, goes on with the next. */
const goesOnAlong = ({ memory, grid, drafts }: ReaderState, places: string[]): boolean => {
  const told = memory.treatment;
  if (drafts.length || memory.lastKind !== 'treatment' || !told?.action || !/^(done|doing)$/.test(told.state))
    return false;
  if (!/^(tie|quilt|baste|bind)$/.test(told.action)) return false;
  const isRow = (list: string[]): boolean =>
    list.length >= Math.min(grid.blocks, grid.rows) && list.every((p) => /^\d/.test(p));
  return isRow(places) && isRow(told.places);
};

/** "row four's half done". */
const HALF_DONE = / (?:half|nearly|almost|partly|part|mostly) (?:done|finished|way through) /;

/** Is the binding the work in hand, by this note or before it? */
const isBinding = (state: ReaderState): boolean => {
  const told = state.drafts.findLast(({ entry: e }) => e.kind === 'work' && e.task !== undefined)?.entry;
  return (told?.kind === 'work' ? told.task : state.memory.running) === 'binding';
};
/** "doing the other one now", "working on the next two": in hand. */
const IN_HAND =
  /^ (?:(?:and|so|now|right|ok|okay|then|,|just|well|i 'm|i am|we 're) )*(?:doing|working on|starting on|started on|busy with|at work on|moving on to|on to|onto) (?:the |its |those |that |both )/;
const TOO =
  / (?:done|finished|completed?|sorted) (?:now |all )*(?:too|as well|also) | also (?:done|did|finished) | did (?:\S+ ){1,6}(?:too|as well|also) (?:[.!] )*$/;
/** Places told by where they stand to those spoken of: work that goes on there is the same work. */
const GOES_ON = /^place\.(?:the-other|other-|one-of-them|next|rest-of|neighbour|nth-of-them)/;

/** "did the other two, 15 min", "next one's done too", "that row's finished": what the last treatment was, where the talk goes on from it. */
function goneOnWith(
  state: ReaderState,
  words: string,
  told: ClausePlaces,
  places: string[],
): { action?: Action; state: TreatmentState; object?: RemovedObject } | undefined {
  const { memory } = state;
  const source =
    state.drafts.findLast(isTreatment)?.entry ??
    (memory.lastKind === 'treatment' ? memory.treatment : undefined);
  if (!source?.action || source.action === 'leave' || /^(considering|dropped)$/.test(source.state))
    return undefined;
  const inHand = source.state === 'doing' && source.places?.some((p) => places.includes(p));
  const goesOn =
    (told.items.length > 0 && told.items.every((x) => GOES_ON.test(x.place!.rule))) || TOO.test(words);
  return inHand || goesOn ? source : undefined;
}

/** "took care of those, ten minutes": something done to what was last spoken of, where the words do not say what. */
export function tendedTo(state: ReaderState, v: ClauseView, words: string): Draft | undefined {
  const { items } = v;
  const plain =
    items.length <= 14
      ? words
          .replace(
            /(?: ,| in| took| for)? (?:about |all of )?(?:\S+ ){1,4}(?:minutes|mins|min|hours?|hrs?) $/,
            ' ',
          )
          .replace(/ , quarter of an hour $|(?: ,)? half an hour $/, ' ')
      : words;
  if (!state.memory.last || !state.memory.focus.length || !(TENDED.test(plain) || BEEN_TENDED.test(plain)))
    return undefined;
  return makeDraft(
    'treatment',
    v,
    {
      state: ['done', 'treatment.unsaid', undefined],
      places: [[...state.memory.focus], 'place.spoken-of', undefined, 'implied'],
      minutes: [items.find((x) => x.duration)?.duration?.minutes, 'time.minutes', undefined],
    },
    'carried',
  );
}
