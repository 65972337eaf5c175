import type { Item } from '../../rules/item.ts';
import { areSamePlaces, placesOf, put, type Standing, takePlaces, twinOf } from '../standing.ts';
import { POINTERS } from './items.ts';

/** In the patterns `#` is the length, `@` the place or deed that it belongs to and any other place or deed. */
const LEAD = String.raw`^ (?:(?:no|nope|oh|ah|well|actually|sorry|wait|correction|hang on|hold on|hang|hold|on|but|and|um|uh|er|hmm|i mean|,|-|--|:|\.) )*`;
const NOT = String.raw`(?: ,)?(?: and)? not (?:for |on |of )?(?:the )?@`;
const OF_OTHER = new RegExp(
  `${LEAD}(?:(?:the |those |that )?# (?:,|was|were|is|'s|are|goes with|belongs to|belong to)(?: (?:for|on|of|all|just|only))*(?: the)? @|(?:it was )?(?:the )?@ (?:that )?(?:was|were|is|took|had)(?: me)? (?:the |those |that )#)(?:${NOT})?(?: [.!])* $`,
);

/**
 * "no, the fifty minutes was 1-4, not 3-2", "the half hour was for the patch": the length stands with one deed of the last note and belongs
 * to another, or to one of the places of it. Gives what stands afterwards; that there is a "not" moves no place.
 */
export function minutesOfOther(standing: Standing[], items: Item[]): Standing[] | undefined {
  const length = items.find((x) => x.duration)?.duration?.minutes;
  if (length === undefined || items.length > 16) return undefined;
  const told = items.filter((x) => !x.duration && (isPlace(x) || x.action || x.object));
  const [first] = told;
  const words = ` ${items.map((x) => (x.duration ? '#' : told.includes(x) ? '@' : x.w)).join(' ')} `;
  if (!first || told.length > 2 || !OF_OTHER.test(words)) return undefined;
  const from = standing.filter(({ was }) => was.kind === 'treatment' && was.minutes === length);
  if (from.length !== 1) return undefined;
  const source = from[0]!;
  const to = standing.filter((s) => s.was.kind === 'treatment' && isMeant(s, first));
  if (to.length === 1 && to[0] !== source) {
    if ((to[0]!.was as { minutes?: number }).minutes !== undefined) return undefined;
    put(source.draft, 'minutes', undefined, 'amend.minutes-of-other', []);
    put(to[0]!.draft, 'minutes', length, 'amend.minutes-of-other', [first]);
    return standing;
  }
  const places = isPlace(first) ? first.place!.places : [];
  const all = placesOf(source.was);
  if (to.length || !places.length || places.length >= all.length || !places.every((p) => all.includes(p)))
    return undefined;
  return standing.flatMap((s) => (s === source ? parted(s, places, first) : [s]));
}

const isPlace = (x: Item): boolean => Boolean(x.place?.places.length && !POINTERS.has(x.place.rule));

/** The deed that is named by all its places, or by what was done. */
const isMeant = ({ was }: Standing, x: Item): boolean =>
  was.kind === 'treatment' &&
  (isPlace(x)
    ? areSamePlaces(placesOf(was), x.place!.places)
    : (x.action !== undefined && x.action.v === was.action) ||
      (x.object !== undefined && x.object === was.object));

/** One deed at several places, of which the length is that of some. */
function parted(s: Standing, places: string[], named: Item): Standing[] {
  const rest = twinOf(s);
  put(s.draft, 'places', places, 'amend.minutes-of-other', [named]);
  takePlaces(rest, places, 'amend.minutes-of-other', [named]);
  put(rest.draft, 'minutes', undefined, 'amend.minutes-of-other', []);
  return [s, rest];
}
