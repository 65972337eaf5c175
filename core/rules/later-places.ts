import { boundaryBefore, type Item } from './item.ts';
import { wordsBetween } from './words-between.ts';

/** What is told of a place where the work is still to come. */
export const LATER =
  /^ (?:by (?:hand|machine) )?(?:(?:is|'s|are|'re|for|will be|to be|can wait) )?(?:still )?(?:for )?(?:to do|to be done|to go|to follow|to come|left to do|(?:a |another )?job for|tomorrow|tmrw|tmw|tonight|later|next|after|next time|another day|outstanding|waiting|can wait|will wait|next week|(?:planned|scheduled|due|booked|pencilled in|pencilled)(?: for)?)(?: (?:'s|job|jobs|work|another|day|on|next|monday|tuesday|wednesday|thursday|friday|saturday|sunday|for|the|weekend|month|then|now|tomorrow|tonight|maybe|today|though|week|time|too|lunch|tea|supper|dinner|this|afternoon|evening|morning|when|i|get|back|after|can|wait|by|hand|machine))* $/;
const DAY = '(?:on |for |this |next )*(?:mon|tues?|weds?|wednes|thu|thurs?|fri|sat|satur|sun)(?:day)?';
/** "(…,) other two sides on saturday": a day that lies ahead, where none was told of what is done. */
const ON_DAY = new RegExp(
  `^ (?:by (?:hand|machine) )?${DAY}(?: (?:morning|afternoon|evening|night|then|now|maybe|by|hand|machine|instead|when|i|get|back))* $`,
);
const DAY_TOLD = new RegExp(` (?:${DAY}|yesterday|today|tonight|this morning|last night) `);
const WILL_DO =
  /^ (?:(?:i|we|then|and|but) )*(?:will|'ll|going to|gonna|am going to|'m going to|to|must|still have to|have to|need to|(?:still |'ve |have )*got to) do (?:the )?$/;
/** "(…,) still have the upper one (to do)". */
const STILL_HAVE = /^ (?:(?:i|we|and|but|'ve|still|only|just|have|got) )*(?:have|got) (?:the )?$/;

/** "2-2 and 2-3 is for tonight", "… and 2-3 and 2-4 are to do": as many as the verb is of. */
const ofItsOwn = (verb: string, several: boolean): boolean =>
  several ? /^(?:are|'re)$/.test(verb) : /^(?:is|'s|can|will)$/.test(verb);

/** "still to press", "left to bind": the deed told again. */
const deedToCome = (items: Item[], k: number): boolean => {
  const to = /^(?:still|yet|left)$/.test(items[k]?.w ?? '') ? k + 1 : k;
  return items[to]?.w === 'to' && items[to + 1]?.action?.form === 'base';
};

/** "(bound top and left) by machine", "(2-3) in red wool": its place, and behind that only how. */
const toldHow = (told: Item[]): boolean => {
  const at = told.findLastIndex((x) => /^(?:by|in|with|w)$/.test(x.w));
  return (
    at > 0 &&
    at > told.length - 5 &&
    told.slice(Math.max(0, at - 2), at).some(isPlace) &&
    !told.slice(at).some(isPlace)
  );
};

const IN_PLACES = /^(?:the|and|&|\+|of|in|all|both|blocks?|ones?|round|along)$/;

/** One of several, or the other, or the rest: as good as named. */
const PICKED =
  /^place\.(the-other|one-of-them|rest-of-it|rest-of-row|rest-of-column|rest-of-line|other-rows|other-sides|everything-else)$/;

/** Blocks, a part or a cloth of the quilt, and nothing that points back. */
const isPlace = (x: Item | undefined): boolean =>
  x !== undefined &&
  ((x.place !== undefined &&
    (x.place.kind !== 'pointer' || x.place.how === 'said' || PICKED.test(x.place.rule)) &&
    x.place.places.length > 0) ||
    x.fabric !== undefined);

/**
 * "patched 6-1 and 6-2, 6-3 still to do", "tied rows one and two, row three tomorrow", "lined 4-1 and going to do 4-2 after tea": a stop
 * before the place whose turn comes later, so that it stands in no list with those that are done.
 */
export function withLaterPlaces(items: Item[]): Item[] {
  if (!items.some((x) => x.action?.form === 'past') || items.filter(isPlace).length < 2) return items;
  for (let k = 2; k < items.length - 1; k++) {
    if (!/^(?:,|and|but)$/.test(items[k]!.w)) continue;
    const from = items.slice(0, k).findLastIndex((x) => /^[.;:!?\n]$/.test(x.w)) + 1;
    const told = items.slice(from, k);
    if (
      (!told.slice(-2).some(isPlace) && !toldHow(told)) ||
      told.findLast((x) => (x.action && !x.place) || x.finding)?.action?.form !== 'past'
    )
      continue;
    const stop = items.findIndex((x, m) => m > k && /^[,.;:!?\n]$/.test(x.w));
    const end = stop < 0 ? items.length : stop;
    const at = items.findIndex((x, m) => m > k && m < end && isPlace(x));
    if (at < 0) continue;
    let last = at;
    while (last + 1 < end && (isPlace(items[last + 1]) || IN_PLACES.test(items[last + 1]!.w))) last++;
    if (items.slice(last + 1, end).some(isPlace)) continue;
    const lead = wordsBetween(items, k + 1, at);
    const later = /^(?:the|all|both|of|its|every| )*$/.test(lead)
      ? (items[k]!.w !== 'and' || ofItsOwn(items[last + 1]?.w ?? '', last > at)) &&
        (LATER.test(wordsBetween(items, last + 1, end)) ||
          deedToCome(items, last + 1) ||
          (PICKED.test(items[at]!.place?.rule ?? '') &&
            ON_DAY.test(wordsBetween(items, last + 1, end)) &&
            !DAY_TOLD.test(wordsBetween(told))))
      : last === at &&
        (WILL_DO.test(lead) ||
          (STILL_HAVE.test(lead) && / to do /.test(wordsBetween(items, last + 1, end).slice(0, 8))));
    if (later) return [...items.slice(0, k), boundaryBefore(items[k + 1]!, ';'), ...items.slice(k + 1)];
  }
  return items;
}
