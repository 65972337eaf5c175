import { COLOURS } from '../../lexicon/colours.ts';
import type { Clause } from '../clause/clause.ts';
import type { ClauseView } from '../clause-view.ts';
import { makeDraft } from '../draft.ts';
import type { Item } from '../item.ts';
import type { ClausePlaces } from '../places/places-of-clause.ts';
import type { ReaderState } from '../reader-state.ts';
import { wordsBetween } from '../words-between.ts';
import { isTreatment } from './is-treatment.ts';
import type { stitchOf } from './stitch-of.ts';

/** "the back wants doing tomorrow", "2-2 needs it too": the same as was just told done of another place. */
const WANTS_DOING =
  / (?:has|have|is|are)(?: n't| not)(?: been)?(?: done)?(?: yet)? $| (?:wants?|needs?|wanting|needing|waiting) (?:doing|done|it|the same|to be done)(?: |$)/;

/** "the reverse is to follow tomorrow", "rows 7 to 9 tmrw", "four still to go": the same there, another day. */
const TO_FOLLOW =
  / (?:(?:(?:can|will|'ll|must|should) )?wait (?:till|until|for)|have to wait|to follow|(?:planned|scheduled|booked|due|pencilled in) (?:for|tomorrow|next)|follows?|following|to come|to go|to do|to be done|(?:still|yet) to (?:do|go|come)|left to do|next|next time|(?:mon|tues|wednes|thurs|fri|satur|sun)day|mon|tues?|weds?|thurs?|fri|sat|sun|tomorrow|tmrw|tmw|tonight|later|another (?:day|evening|night)|this (?:afternoon|evening)|(?:'ll|will|shall|going to) do|(?:next|another) job) /;
const FOLLOWING =
  /^(the|a|and|,|&|\+|i|'ve|gets?|got|on|(?:mon|tues|wednes|thurs|fri|satur|sun)day|mon|tues?|weds?|thurs?|fri|sat|sun|by|is|are|'s|to|follow|follows|following|planned|scheduled|booked|due|pencilled|in|go|do|come|next|tomorrow|tmrw|tmw|later|still|then|has|have|n't|not|been|yet|on|in|for|will|'ll|be|now|all|both|of|rest|too|also|morning|evening|night|tonight|day|time|another|left|after|that|this|yet|\/|afternoon|weekend|till|until|first|others?|ones?|wants?|needs?|wanting|needing|waiting|doing|done|it|job|jobs|week|wait|have|has|can|must|well|as|just|-|--|\()$/;

/** Behind a comma: "by machine", "in red wool", "with the gray thread". */
const tellsHow = (rest: Item[]): boolean =>
  rest.length > 0 &&
  rest.some((x) => x.stitch || x.material || x.fabric) &&
  rest.every(
    (x) => x.stitch || x.material || x.fabric || COLOURS.has(x.w) || /^(by|in|with|the|a|same|st)$/.test(x.w),
  );

/** "(the side borders are on) the bottom one I'll do tomorrow": words of doing what was told, behind a place. */
const doneLater = (items: Item[], x: Item): boolean =>
  /^(i|we|'m|am|going|shall|do|doing|can|another|and|leave|leaving|till|until|supper|lunch|dinner|tea|breakfast|a|in|bit|minute|while|when|'s|dry|light)$/.test(
    x.w,
  ) && items.slice(0, items.indexOf(x)).some((y) => y.place);

/** "I'll do its neighbour after supper", "going to do 2-4 in a bit": where the doing comes before the place. */
const WILL_DO =
  /^(?:and |then |so |now |right |ok |okay |maybe |, )*(?:(?:i|we) )?(?:'ll|will|shall|'m going to|am going to|'re going to|going to|gonna|'m gonna|can|'ll have to|have to|'ll just|'ll probably) do /;
function ledIn(items: Item[]): number {
  const place = items.findIndex((x) => x.place && x.w !== 'it');
  if (place < 1 || !/^(do|the|its)$/.test(items[place - 1]!.w)) return 0;
  const words = wordsBetween(items, 0, place).trimStart();
  return WILL_DO.test(words) && / (?:do|the|its) $/.test(words) ? place : 0;
}

/**
 * "the reverse is to follow tomorrow", "r3 to go tmrw", "4-7 next": the treatment before is planned for other places. "ties
 * first", "and then the backing": the same is done with another thing.
 */
export function toFollow(
  state: ReaderState,
  v: ClauseView,
  clause: Clause,
  placed: ClausePlaces,
  stitch: ReturnType<typeof stitchOf>,
): void {
  const led = ledIn(v.items);
  // "4-4 still to do, by machine", "rows 2 and 3 to follow, in red wool": how, behind the comma
  const how = v.items.findIndex((x, k) => k > 0 && x.w === ',' && tellsHow(v.items.slice(k + 1)));
  const items = how < 0 ? v.items : v.items.slice(0, how);
  if (
    !items.every(
      (x, k) =>
        k < led ||
        x.place ||
        x.seam ||
        x.object ||
        (x.stitch && !x.action) ||
        FOLLOWING.test(x.w) ||
        doneLater(items, x),
    )
  )
    return;
  const told = state.drafts.findLast(isTreatment);
  const source = told?.entry ?? (state.memory.lastKind === 'treatment' ? state.memory.treatment : undefined);
  if (!source?.action || source.action === 'leave' || /^(considering|dropped)$/.test(source.state)) return;
  const words = ` ${items.flatMap((x) => (x.place && !x.object && x.w !== 'it' ? [] : [x.w])).join(' ')} `;
  const wants = told !== undefined && !items.some((x) => x.part === 'binding') && WANTS_DOING.test(words);
  const thing = source.action === 'remove' ? items.find((x) => x.object && x.object !== 'piece') : undefined;
  if (thing) {
    const goesOn = told?.sentence === v.sentence && /^(then|and|,)$/.test(clause.joint);
    if (!goesOn || thing.object === source.object) {
      if (!TO_FOLLOW.test(words) && !(goesOn && / first /.test(words))) return;
    }
  } else if (
    !(wants || TO_FOLLOW.test(words)) ||
    (placed.kind !== 'specific' && !(placed.kind === 'general' && placed.places[0] !== 'quilt'))
  )
    return;
  const object = thing?.object ?? source.object;
  const own = thing && /^(backing|batting|binding|border)$/.test(thing.object!);
  const places = thing ? (own ? [thing.object!] : undefined) : placed.places;
  const planned = wants || led > 0 || TO_FOLLOW.test(words) || / first /.test(words);
  state.drafts.push(
    makeDraft(
      'treatment',
      v,
      {
        action: [source.action, 'treatment.to-follow', undefined, 'implied'],
        state: [planned ? 'planned' : source.state, 'treatment.to-follow', items],
        ...(object ? { object: [object, 'treatment.to-follow', thing, thing ? 'said' : 'implied'] } : {}),
        ...(places ? { places: [places, 'place.said', thing ? [thing] : placed.items] } : {}),
        ...(stitch ? { stitch: [stitch.stitch, 'treatment.to-follow', stitch.item] } : {}),
      },
      places ? 'said' : 'unneeded',
    ),
  );
}
