import { boundaryBefore, type Item } from './item.ts';

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
export function withRelatives(items: Item[]): Item[] {
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
