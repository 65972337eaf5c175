import type { Entry } from '../../../shared/entry.ts';
import { SIDES } from '../../lexicon/place-words.ts';
import type { Item } from '../../rules/item.ts';
import type { ReaderState } from '../../rules/reader-state.ts';
import { areSamePlaces, type LastNote, placesOf, put, type Standing } from '../standing.ts';

/** "haven't pressed 4-4 yet, that's for tonight", "the backing's not off yet". */
const NOT_YET =
  / (?:have|has|had|'ve|'s|is|are|did|was|were) (?:n't|not) (?:\S+ ){0,6}(?:yet|though|actually|still|that 's|it 's|either|after all|[.,!]|$)| (?:have|has|is|are|'s) (?:n't|not) (?:actually |even |been )*(?:off|on|out|in|done|\S+ed|\S+n|put|cut) /;
const OFF_YET =
  / (?:is|'s|are|'re|was|were|has|have) (?:n't|not) (?:actually |even |come |quite |all )*(off|out|on|in|down) (?:yet|actually|though|still|[.,!]|$)/;

/**
 * A deed that the last note told as done is said to be none yet: it is planned, with nothing used and no time spent. "backing isn't off
 * yet, that's tomorrow", "haven't closed it yet, that's next".
 */
export function notYet(
  state: ReaderState,
  standing: Standing[],
  items: Item[],
  words: string,
): Standing[] | undefined {
  if (items.length > 14 || words.length > 90) return undefined;
  const s =
    deniedDeed(state, standing, words) ?? notOff(standing, items, words) ?? stillToDo(standing, words);
  if (!s) return undefined;
  put(s.draft, 'state', 'planned', 'amend.not-yet', []);
  put(s.draft, 'minutes', undefined, 'amend.not-yet', []);
  const others = standing.filter(
    ({ was }) => was.kind === 'treatment' && was.state === 'done' && was !== s.was,
  );
  // what was not done has used nothing
  return others.length
    ? standing
    : standing.filter(
        ({ was }) => !(was.kind === 'material' && was.use === 'used' && was.quantity === undefined),
      );
}

/** "that's still to do", "not yet", "no, tomorrow", "that's tomorrow's job": nothing but that, of the one deed that was told. */
const STILL_TO_DO = new RegExp(
  String.raw`^ ?(?:(?:no|nope|oh|ah|um|er|well|sorry|wait|oops|whoops|actually|but|hang on|hold on|correction|i (?:meant?|mean)|,|:|-) )*(?:` +
    String.raw`(?:(?:that|it|this|that one|this one) )(?:'s|is|should be|was|needs|wants) (?:actually |really |only |all |just )*(?:still |yet )?(?:to do|to be done|to come|doing|planned|(?:a job )?for (?:tomorrow|tonight|later|next week|another day)|tomorrow(?: 's)? (?:job|work)|tomorrow|not yet)` +
    String.raw`|(?:no|sorry|oops|actually) (?:, )?(?:(?:that|it) 's )?(?:for )?(?:tomorrow|still to do|to do|planned|only planned)` +
    String.raw`|still to be done|not (?:just )?yet|not done yet|not done ,? ?(?:only |just )?planned|to do ,? ?not done` +
    String.raw`)(?: (?:yet|though|actually|still|then|sorry|i mean|not done|,|\.|!))* ?$`,
);

/** Whether the words say of a deed just told as done that it is none yet; else they may ask what is to be done. */
export const isStillToDo = (last: LastNote | null | undefined, words: string): boolean =>
  Boolean(last) && STILL_TO_DO.test(words) && doneOf(last!.entries.map(({ entry }) => entry)).length === 1;

const doneOf = (entries: Entry[]): Entry[] =>
  entries.filter((e) => e.kind === 'treatment' && e.state === 'done' && e.action !== 'leave');

function stillToDo(standing: Standing[], words: string): Standing | undefined {
  if (!STILL_TO_DO.test(words)) return undefined;
  const [only, more] = doneOf(standing.map(({ was }) => was));
  return only && !more ? standing.find(({ was }) => was === only) : undefined;
}

/** Nothing but a plan of the deed that stands as done, in words that deny it. */
function deniedDeed(state: ReaderState, standing: Standing[], words: string): Standing | undefined {
  if (!NOT_YET.test(words)) return undefined;
  const plans = state.drafts.filter((d) => d.entry.kind !== 'remark');
  if (!plans.length || plans.some((d) => d.entry.kind !== 'treatment' || d.entry.state !== 'planned'))
    return undefined;
  const hit = standing.filter(
    ({ was }) =>
      was.kind === 'treatment' &&
      was.state === 'done' &&
      plans.every(
        ({ entry: e }) =>
          e.kind === 'treatment' &&
          e.action === was.action &&
          (!placesOf(e).length || areSamePlaces(placesOf(e), placesOf(was))),
      ),
  );
  return hit.length === 1 ? hit[0] : undefined;
}

/** "the backing's not off yet", "the net isn't on, actually". */
function notOff(standing: Standing[], items: Item[], words: string): Standing | undefined {
  const way = OFF_YET.exec(words)?.[1];
  if (!way || items.some((x) => x.finding || x.duration || x.quantity?.unit)) return undefined;
  const hit = standing.filter(({ was }) => {
    if (was.kind !== 'treatment' || was.state !== 'done') return false;
    const off = was.action === 'remove';
    if (off !== /^(?:off|out)$/.test(way)) return false;
    return items.some((x) =>
      off
        ? (x.object !== undefined && x.object === was.object) ||
          (x.part !== undefined && x.part === was.object) ||
          (x.place?.places.length && !SIDES[x.w] && x.place.places.join() === placesOf(was).join())
        : x.action !== undefined && x.action.v === was.action,
    );
  });
  return hit.length === 1 ? hit[0] : undefined;
}
