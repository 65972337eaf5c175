import type { Item } from '../../rules/item.ts';
import { unique } from '../../rules/places/grid.ts';
import { placesOf, put, type Standing, takePlaces, twinOf } from '../standing.ts';
import { POINTERS } from './items.ts';

/** In the patterns `@` is a place and `#` the deed by its own verb. */
const LEAD = String.raw`^ (?:(?:no|nope|oh|ah|well|actually|sorry|wait|correction|hang on|hold on|but|and|so|um|uh|er|just|hmm|i mean|though|,|-|--|:|\.) )*`;
const DONE = String.raw`(?:done|finished|started|begun|touched|reached|#|on|off|in)`;
const NOT = String.raw`(?:not|n't|never)(?: (?:been|actually|even|quite|really|yet|got))*`;
const NOT_YET = [
  // "2-3 not done yet", "4-2 isn't done yet", "row two hasn't been pressed"
  String.raw`@ (?:,|:|-|--)? ?(?:(?:is|'s|are|'re|was|were|has|have) )?${NOT} (?:${DONE}|yet)(?: (?:yet|still|though))*`,
  String.raw`@ (?:,|:|-|--)? ?(?:(?:is|'s|are|'re) )?(?:still|yet|left) to (?:do|go|come|be done|follow|be #)(?: though)?`,
  String.raw`@ (?:(?:is|'s|are|'re|will be|'ll be) )?(?:only |just |still )?(?:planned|for (?:tomorrow|later|tonight)|tomorrow|to follow)(?: though)?`,
  // "not 5-1 yet", "I haven't done 4-4 yet"
  String.raw`not @ (?:yet|though|just yet)`,
  String.raw`(?:i |we )?(?:have|'ve|had) ${NOT} (?:done|finished|touched|started|reached|got to|got round to|got as far as|#) @(?: (?:yet|still|though))*`,
  // but "I didn't do 4-4" takes it back
  String.raw`(?:i |we )?did ${NOT} (?:do|finish|touch|start|reach|get to|get round to|get as far as) @ (?:yet|just yet|so far)`,
];
/** When it will be done, or that it will. */
const LATER =
  "i we he she 'm 'll will am it they them that those this one 's is are 're 'd doing do be to get got going for on in next tomorrow tmrw tmw later tonight today another other day morning afternoon evening weekend week monday tuesday wednesday thursday friday saturday sunday still planned just only left at the come so and but then a bit after tea supper lunch".split(
    ' ',
  );
const PART_NOT_YET = new RegExp(
  `${LEAD}(?:${NOT_YET.join('|')})(?: (?:[.,;!]|-|--|so|and|but)(?: (?:${LATER.join('|')}|#|[.,!]))*)?(?: [.!])* $`,
);

/**
 * "correction, 2-3 not done yet", "no, 4-4's still to do, I'll do it tomorrow", "not 5-1 yet", after a deed that was told as done at these
 * and other places: at the others it is done, at these only planned. Gives what stands afterwards.
 */
export function partNotYet(standing: Standing[], items: Item[]): Standing[] | undefined {
  if (items.length > 22) return undefined;
  const named = items.filter(
    (x) => x.place?.places.length && (!POINTERS.has(x.place.rule) || x.place.kind === 'blocks'),
  );
  const places = unique(named.filter((x) => x.w !== 'it').flatMap((x) => x.place!.places));
  if (!places.length) return undefined;
  const verb = items.find((x) => x.action && x.action.form === 'past' && x.w !== 'done')?.action?.v;
  const words = ` ${items
    .map((x) =>
      x.w === 'it' || x.w === 'them'
        ? x.w
        : x.place?.places.length
          ? '@'
          : x.action && x.action.form !== 'base' && x.action.v === verb
            ? '#'
            : x.w,
    )
    .join(' ')
    .replace(/@(?: (?:,|and|&) @)+/g, '@')} `;
  if (!PART_NOT_YET.test(words)) return undefined;
  const hit = standing.filter(
    ({ was }) =>
      was.kind === 'treatment' &&
      was.state === 'done' &&
      (verb === undefined || verb === was.action) &&
      placesOf(was).length > places.length &&
      places.every((p) => placesOf(was).includes(p)),
  );
  if (!hit.length) return undefined;
  return standing.flatMap((s) => (hit.includes(s) ? inTwo(s, places, named) : [s]));
}

/** The deed at the places where it is done, and at those where it is not. */
function inTwo(s: Standing, places: string[], named: Item[]): Standing[] {
  const later = twinOf(s);
  takePlaces(s, places, 'amend.part-not-yet', named);
  put(later.draft, 'places', places, 'amend.part-not-yet', named);
  put(later.draft, 'state', 'planned', 'amend.part-not-yet', named);
  put(later.draft, 'minutes', undefined, 'amend.part-not-yet', []);
  return [s, later];
}
