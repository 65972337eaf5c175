import { TELLS_OF_THING } from './clause/begins-gapped.ts';
import { PARTICLES, REMOVE_VERBS, removalAt } from './clause/removal-at.ts';
import { boundaryBefore, type Item } from './item.ts';
import { wordsBetween } from './words-between.ts';

/** "…; left 83 3/4", "…; and the right side 84": the next of the sides that are measured. */
const isSide = (part: Item[]): boolean =>
  part.length <= 6 &&
  part.some((x) => x.quantity) &&
  /^ (?:and )?(?:the )?(?:top|bottom|left|right|l|r|left hand|right hand)(?: hand)?(?: side| edge)?(?: is| was| 's|,)* /.test(
    wordsBetween(part),
  ) &&
  part.every(
    (x) =>
      x.quantity ||
      x.place ||
      x.measure ||
      /^(?:top|bottom|left|right|l|r|hand|side|edge|is|was|'s|the|and|,)$/.test(x.w),
  );

/** "…; an hour and ten off for dinner", "…; less 20 min on the telephone": a break in the stretch before. */
const isRest = (part: Item[]): boolean =>
  part.length <= 9 &&
  part.some((x) => x.duration) &&
  !part.some((x) => x.action || x.task || x.place?.kind === 'blocks') &&
  / (?:off|out|less|minus|break|lunch|dinner|tea|supper|coffee|phone|telephone) /.test(wordsBetween(part));

const isDeed = (part: Item[]): boolean =>
  part.some((x) => x.action?.form === 'past') && !part.some((x) => x.span || x.cost);

/** "(darned a second;) same stitch, same thread", "(linen thread, running stitch;) 7-5 darned": only how it was done. */
const isHow = (part: Item[]): boolean =>
  part.length <= 9 &&
  part.some((x) => x.stitch || (x.material && x.material !== 'fabric') || x.w === 'same') &&
  part.every(
    (x) =>
      x.stitch ||
      (x.material && !x.object && !x.place) ||
      /^(?:same|the|a|in|with|by|and|also|again|thread|stitch|colour|color|yarn|linen|cotton|silk|grey|gray|white|cream|black|navy|,)$/.test(
        x.w,
      ),
  );

/** "(5 yds of it bought;) 31.50 altogether": what it came to. */
const isTotal = (part: Item[]): boolean =>
  part.length <= 5 &&
  part.some((x) => x.quantity || x.cost) &&
  / (?:altogether|in all|all told|in total|total|for the lot) /.test(wordsBetween(part));

/** "(Removed: the interfacing;) old paper label, top right corner": the next thing that was taken off, with where it was. */
const isThingOff = (part: Item[]): boolean =>
  part.length <= 10 &&
  part.filter(
    (x) =>
      /^labels?$/.test(x.w) || (x.object && !x.seam && x.object !== 'piece' && x.action?.form !== 'past'),
  ).length === 1 &&
  part.every(
    (x) =>
      /^labels?$/.test(x.w) ||
      (x.quantity && !x.quantity.unit) ||
      (x.object && !x.seam) ||
      x.place ||
      TELLS_OF_THING.test(x.w) ||
      /^(?:,|and|from|on|in|at|along|off|behind|under|out|of|all|both)$/.test(x.w),
  );

/** The verb of taking off that these words begin with, with its particle where that stands beside it. */
function removalIn(before: Item[]): Item[] {
  const at = before.findIndex((_x, k) => k < 4 && removalAt(before, k)?.form === 'past');
  if (at < 0 || !before.some((x) => x.object)) return [];
  if (before.some((x) => x.finding && x.finding !== 'old-repair')) return [];
  const { particle } = removalAt(before, at)!;
  return particle === at + 1
    ? before.slice(at, at + 2)
    : particle === undefined || particle === at
      ? [before[at]!]
      : [];
}

/** "(Cleaned: top border, 10 min;) backing, 20 min": the next place, with its own length. */
const isPlaceTimed = (part: Item[]): boolean =>
  part.length <= 8 &&
  part.some((x) => x.duration) &&
  part.some((x) => x.place?.how === 'said' || x.part) &&
  part.every((x) => x.place || x.part || x.duration || /^(?:,|:|and|&|all|of|the|both)$/.test(x.w));

/** The deed that heads these words: "Cleaned: top border, 10 min". */
const headOf = (before: Item[]): Item[] =>
  before[0]?.action?.form === 'past' && before.some((x) => x.duration) && before.length <= 12
    ? [before[0]]
    : [];

/** "(Patched: 2-3;) 3-3; all of row 4": the next place of a list that its word heads. */
const isPlaceOnly = (part: Item[]): boolean =>
  part.length > 0 &&
  part.length <= 8 &&
  part.some((x) => x.place?.how === 'said') &&
  part.every((x) => x.place || /^(?:,|and|&|all|of|the|also|both)$/.test(x.w));

const headsPlaces = (before: Item[]): boolean =>
  before.length > 1 &&
  before.length <= 24 &&
  (before[0]!.action?.form === 'past' || before[0]!.finding !== undefined) &&
  isPlaceOnly(before.slice(before[1]!.w === ':' ? 2 : 1).slice(-8));

/**
 * "Top 70 1/2 in.; bottom 71; left 83", "6:30 to 3:15; an hour off for dinner": a semicolon that only parts what is told of one thing
 * is read as a comma.
 */
export function withListStops(items: Item[]): Item[] {
  if (!items.some((x) => x.w === ';' || x.w === ':')) return items;
  let before: Item[] = [];
  return items.flatMap((item, k) => {
    // "Vacuumed: front, 20 min": a deed and what it was done to
    if (
      item.w === ':' &&
      (before.length === 1 || before.length === 2) &&
      ((before.length === 1 &&
        before[0]!.action?.form === 'past' &&
        items[k + 1]?.place?.how === 'said' &&
        items[k + 1]!.place!.kind !== 'blocks') ||
        (REMOVE_VERBS[before[0]!.w]?.form === 'past' &&
          (before.length === 1 || PARTICLES.has(before[1]!.w)) &&
          (items[k + 1]?.object || items[k + 1]?.w === 'label')))
    )
      return [];
    if (item.w !== ';' || item.token.kind !== 'mark') {
      // "Removed: label, top right corner": the thing, and not the sewing on of one
      const thing =
        /^labels?$/.test(item.w) && REMOVE_VERBS[before[0]?.w ?? '']?.form === 'past' && before.length < 5
          ? { ...item, action: undefined, object: 'label' as const }
          : item;
      if (/^[.!?\n]$/.test(item.w)) before = [];
      else before.push(thing);
      return [thing];
    }
    const end = items.findIndex((x, m) => m > k && /^[;.!?\n]$/.test(x.w));
    const part = items.slice(k + 1, end < 0 ? items.length : end);
    // the verb is said again, so that each has its own place and length
    const verb = isThingOff(part) ? removalIn(before) : isPlaceTimed(part) ? headOf(before) : [];
    if (verb.length) {
      before = [...verb];
      return [item, ...verb.map((x) => saidAgain(x, part[0]!))];
    }
    const goesOn =
      (isPlaceOnly(part) && headsPlaces(before)) ||
      (isSide(part) && before.some((x) => x.quantity)) ||
      (isRest(part) && before.some((x) => x.span)) ||
      (isTotal(part) && before.some((x) => x.quantity?.unit)) ||
      (isHow(part) && isDeed(before)) ||
      (isHow(before) && isDeed(part));
    if (!goesOn) {
      before = [];
      return [item];
    }
    const comma = { ...item, w: ',', token: { ...item.token, w: ',' } };
    before.push(comma);
    return [comma];
  });
}

/** The word once more, where the next of the list begins. */
const saidAgain = (x: Item, next: Item): Item => ({
  ...x,
  i: next.i,
  j: next.i,
  token: { ...x.token, from: next.token.from, to: next.token.from },
});

const TURNS_TO = / (?:as for|as regards|with regard to|regarding|what becomes of|turning to|coming to) $/;

/** "…, and as for the last column, net it or leave it", "…, and what becomes of 4-4, …": what is told next is of that place, as behind a colon. */
export function withTopics(items: Item[]): Item[] {
  const at = items.findIndex(
    (x, k) =>
      k > 3 &&
      x.place?.how === 'said' &&
      items[k + 1]?.w === ',' &&
      TURNS_TO.test(wordsBetween(items, k - 4, items[k - 1]!.w === 'the' ? k - 1 : k)),
  );
  if (at < 0) return items;
  let from = at;
  while (from > 0 && !/^[,;.]$/.test(items[from - 1]!.w)) from--;
  if (from === 0) return items;
  const stop = boundaryBefore(items[from]!, ';');
  const colon = boundaryBefore(items[at + 1]!, ':');
  return [...items.slice(0, from - 1), stop, items[at]!, colon, ...items.slice(at + 2)];
}
