import { REMOVE_VERBS } from './clause/removal-at.ts';
import { boundaryBefore, type Item } from './item.ts';
import { wordsBetween } from './words-between.ts';

/** How the words behind "which …" go on with what stood before it. */
const GOES_ON =
  /^(is|'s|are|'re|has|have|'ve|had|was|were|will|'ll|gets?|needs?|wants?|comes?|came|come|came out|come out|coming out|came off|come off|went|i|we|can|could|should|must|may|might|stays?|goes|got|shall)$/;
const MOST_SUBJECT = 12;
const MOST_RELATIVE = 12;
const STOP = /^([.;!?:\n(]|--)$/;

/** Does a thing of the quilt stand in these words, and nothing that is done or found? */
const isSubject = (words: Item[]): boolean =>
  words.some((x) => x.place || x.part || x.object || x.seam || x.fabric || x.finding === 'old-repair') &&
  !words.some(
    (x) =>
      (x.finding && x.finding !== 'old-repair') ||
      x.fail ||
      x.clock ||
      x.duration ||
      /^(i|we|is|was|are|were|has|have|had|'ve)$/.test(x.w) ||
      (x.action?.form === 'past' && !x.seam && !x.part),
  );

/** Where the words begin of what stands before the comma at `k`: behind a stop, or behind an "and" that joins no places. */
function startOfSubject(items: Item[], k: number): number {
  let at = k;
  while (at > 0 && k - at < MOST_SUBJECT) {
    const { w } = items[at - 1]!;
    if (STOP.test(w) || /^(but|so|then|because|while)$/.test(w)) break;
    if (/^(and|,|&)$/.test(w) && !(items[at - 2]?.place && items[at]?.place)) break;
    at--;
  }
  return at;
}

/**
 * "the border on the left, which has frayed, is coming off now": two statements of one thing. Gives the items as if they had been told one
 * after the other ("the border on the left has frayed; the border on the left is coming off now").
 */
export function withRelatives(said: Item[]): Item[] {
  const items = withoutOldDeeds(said);
  // "I shall unpick it this afternoon, after which it will be either darned or replaced"
  const after = items.findIndex(
    (x, m) => x.w === ',' && items[m + 2]?.w === 'which' && /^(after|upon|following)$/.test(items[m + 1]!.w),
  );
  if (after > 0)
    return [
      ...withRelatives(items.slice(0, after)),
      boundaryBefore(items[after]!, ';'),
      ...withRelatives(items.slice(after + 3)),
    ];
  const k = items.findIndex((x, m) => x.w === ',' && items[m + 1]?.w === 'which');
  if (k < 1) return items;
  const found = foundAtLast(items, k);
  if (found) return [...items.slice(0, k), boundaryBefore(items[k]!, ';'), ...found, ...items.slice(k + 2)];
  const end = items.findIndex((x, m) => m > k + 2 && (x.w === ',' || STOP.test(x.w)));
  if (end < 0 || items[end]!.w !== ',' || end > k + MOST_RELATIVE) return items;
  if (!GOES_ON.test(items[end + 1]?.w ?? '')) return items;
  const from = startOfSubject(items, k);
  const subject = items.slice(from, k);
  if (!isSubject(subject)) return items;
  const told = [...subject.map((x) => ({ ...x })), ...items.slice(k + 2, end)];
  const rest = withRelatives(items.slice(end + 1));
  return [...items.slice(0, from), ...told, boundaryBefore(items[end]!, ';'), ...subject, ...rest];
}

const WAS = /^(?:had|has|have|is|'s|was|were|are|'ve|'d)$/;
const JOINS = /^(?:and|&|meets?|joins?|with|to|from|\/)$/;

/**
 * "closed the seam between 2-1 and 3-1, and the one between 2-2 and 3-2, which had come open too", "patched 3-3 and 2-4, which was
 * torn": of the places worked on, those told last are what was found so. Gives what the statement behind the comma speaks of.
 */
function foundAtLast(items: Item[], k: number): Item[] | undefined {
  if (!WAS.test(items[k + 2]?.w ?? '')) return undefined;
  const end = items.findIndex((x, m) => m > k && (STOP.test(x.w) || /^(?:,|and|but|so)$/.test(x.w)));
  if (items[end]?.w === ',' && GOES_ON.test(items[end + 1]?.w ?? '')) return undefined;
  const rest = items.slice(k + 2, end < 0 ? items.length : end);
  const fails = rest.some((x) => x.fail);
  if (!(fails || rest.some((x) => x.finding)) || rest.some((x) => x.place || x.action)) return undefined;
  const start = items.findLastIndex((x, m) => m < k && STOP.test(x.w)) + 1;
  const before = items.slice(start, k);
  if (!before.some((x) => (x.action && x.action.form !== 'base') || x.w === 'did')) return undefined;
  const seam = fails ? before.find((x) => x.seam) : undefined;
  let from = k;
  while (from > start && items[from - 1]!.place?.places.length) {
    from--;
    const both = /^(?:between|where)$/.test(items[from - 3]?.w ?? '') || items[from - 4]?.w === 'where';
    if (!JOINS.test(items[from - 1]?.w ?? '') || !(both || rest[0]!.w === 'were')) break;
    from--;
  }
  const told = items.slice(from, k);
  const places = before.filter((x) => x.place?.places.length).length;
  if (!told.length || !(seam || places > told.filter((x) => x.place).length)) return undefined;
  return [
    ...(seam ? [{ ...seam, action: undefined, object: undefined, measure: undefined }] : []),
    ...told.map((x) => ({ ...x })),
  ];
}

const WHEN =
  /^(?:yesterday|earlier|before|already|last|the other|this|on|day|night|week|month|morning|afternoon|evening|monday|tuesday|wednesday|thursday|friday|saturday|sunday|other|up|down|shut|over|only|just)$/;
const IS = /^(?:has|have|had|'s|is|are|was|were|looks?|seems?|needs?|wants?)$/;

/**
 * "that seam I closed yesterday has gone again", "the patch I sewed on last week is lifting": which one it is, told by the work of an
 * earlier day, and no work of this one.
 */
function withoutOldDeeds(said: Item[]): Item[] {
  const items = withoutDeedsOfObject(said);
  const k = items.findIndex(
    (x, m) =>
      m > 1 &&
      /^(?:i|we)$/.test(x.w) &&
      items[m + 1]?.action?.form === 'past' &&
      isThing(items[m - 1]!) &&
      /^(?:the|that|this|those|these|its)$/.test(items[m - 2]!.w) &&
      tellsOf(items, m + 2),
  );
  return k < 0
    ? items
    : [...items.slice(0, k + 1), { ...items[k + 1]!, action: undefined }, ...items.slice(k + 2)];
}

/** "washed the border I unpicked yesterday", "pressed the strips that I'd cut": which thing the work was done to, told by an earlier deed. */
function withoutDeedsOfObject(items: Item[]): Item[] {
  const k = items.findIndex((x, m) => m > 2 && /^(?:i|we)$/.test(x.w) && isObjectBefore(items, m));
  if (k < 0) return items;
  let verb = k + 1;
  while (/^(?:'d|had|'ve|have|just|already)$/.test(items[verb]?.w ?? '')) verb++;
  const deed = items[verb];
  if (deed?.action?.form !== 'past' && REMOVE_VERBS[deed?.w ?? '']?.form !== 'past') return items;
  let end = verb + 1;
  while (/^(?:off|out)$/.test(items[end]?.w ?? '') || WHEN.test(items[end]?.w ?? '')) end++;
  const next = items[end]?.w ?? '.';
  if (!STOP.test(next) && !/^(?:,|and|with|in|by|for|then|so|but)$/.test(next)) return items;
  const from = /^(?:that|which)$/.test(items[k - 1]!.w) ? k - 1 : k;
  return [...items.slice(0, from), ...items.slice(end)];
}

/** Is the thing before "I" at `m` the object of a verb that stands right before it? */
function isObjectBefore(items: Item[], m: number): boolean {
  const at = /^(?:that|which)$/.test(items[m - 1]!.w) ? m - 2 : m - 1;
  const thing = items[at];
  if (!thing || !(isThing(thing) || thing.measure === 'strip' || thing.w === 'strips')) return false;
  let det = at - 1;
  while (det > at - 3 && /^(?:old|new|other|border|binding|whole|loose)$/.test(items[det]?.w ?? '')) det--;
  return (
    /^(?:the|that|those|this)$/.test(items[det]?.w ?? '') &&
    items[det - 1]?.action?.form === 'past' &&
    !items[det - 1]!.place
  );
}

const isThing = (x: Item): boolean =>
  Boolean(x.finding || x.seam || x.object || x.part) ||
  /^(?:patch|darn|mend|repair|one|bit|piece)$/.test(x.w);

/** A time gone by, and then what is said of the thing. */
function tellsOf(items: Item[], from: number): boolean {
  let k = from;
  while (k < from + 5 && WHEN.test(items[k]?.w ?? '')) k++;
  return (
    k > from &&
    IS.test(items[k]?.w ?? '') &&
    /\b(?:yesterday|earlier|last|before|other|morning|monday|tuesday|wednesday|thursday|friday|saturday|sunday)\b/.test(
      wordsBetween(items, from, k),
    )
  );
}
