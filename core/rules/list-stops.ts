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

/**
 * "Top 70 1/2 in.; bottom 71; left 83", "6:30 to 3:15; an hour off for dinner": a semicolon that only parts what is told of one thing
 * is read as a comma.
 */
export function withListStops(items: Item[]): Item[] {
  if (!items.some((x) => x.w === ';')) return items;
  let before: Item[] = [];
  return items.map((item, k) => {
    if (item.w !== ';' || item.token.kind !== 'mark') {
      if (/^[.!?\n]$/.test(item.w)) before = [];
      else before.push(item);
      return item;
    }
    const end = items.findIndex((x, m) => m > k && /^[;.!?\n]$/.test(x.w));
    const part = items.slice(k + 1, end < 0 ? items.length : end);
    const goesOn =
      (isSide(part) && before.some((x) => x.quantity)) ||
      (isRest(part) && before.some((x) => x.span)) ||
      (isTotal(part) && before.some((x) => x.quantity?.unit)) ||
      (isHow(part) && isDeed(before)) ||
      (isHow(before) && isDeed(part));
    if (!goesOn) {
      before = [];
      return item;
    }
    return { ...item, w: ',', token: { ...item.token, w: ',' } };
  });
}

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
