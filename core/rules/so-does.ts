import { boundaryBefore, type Item } from './item.ts';

const STOP = /^([.;!?:\n(),]|--)$/;
/** Verbs that stand for the one said before; "so is" and "so has" are told of each place by rules of their own. */
const PRO_VERB =
  /^(does|do|did|could|can|would|'d|will|'ll|should|must|might|was|were|needs|wants|gets|got)$/;
const JOINT = /^(,|and|&|\+|but|then)$/;
const LEAD = /^(the|all|both|every|that|those|of)$/;
const TOO = /^(too|also|as well|well)$/;

/** "the one below it" and "the other one" are told by rules that know what was said before. */
const isNamed = (x: Item | undefined): boolean =>
  x?.place !== undefined &&
  x.place.kind !== 'pointer' &&
  !POINTS.test(x.place.rule) &&
  x.place.places.length > 0;
/** "that whole row wants a press and so do rows three and four": what it is told of first may be pointed at. */
const isSubject = (x: Item | undefined): boolean =>
  isNamed(x) ||
  (/^place\.(?:it|that-row|that-column|that-one|them|those|both)$/.test(x?.place?.rule ?? '') &&
    x!.place!.places.length > 0);
/** "it wants a patch and so does the one above it" */
const isBeside = (x: Item | undefined): boolean =>
  isNamed(x) || (/^place\.(?:neighbour|next)$/.test(x?.place?.rule ?? '') && x!.place!.places.length > 0);
const POINTS =
  /^place\.(?:the-other|cloth-other|other-|one-of-them|next|rest-of|neighbour|nth-of|it|them|those|both|that-one)/;

const ends = (x: Item | undefined): boolean =>
  x === undefined || STOP.test(x.w) || JOINT.test(x.w) || TOO.test(x.w);

/** Where the list of places ends that begins at `from`; `from` where there is none. A place that begins a statement of its own ends it. */
function endOfPlaces(items: Item[], from: number): number {
  let at = from;
  let end = from;
  for (;;) {
    while (LEAD.test(items[at]?.w ?? '')) at++;
    if (!isBeside(items[at]) || !ends(items[at + 1])) return end;
    end = at + 1;
    if (!JOINT.test(items[end]?.w ?? '')) return end;
    at = end + 1;
  }
}

/**
 * "4-3 needs darning and so does 4-4", "4-3 was netted, as was 4-4", "so could 4-4": what is said of one place, told of another, is
 * said of both.
 */
export function withSoDoes(items: Item[]): Item[] {
  const so = items.findIndex(
    (x, k) =>
      k > 2 &&
      /^(so|as|nor|neither)$/.test(x.w) &&
      PRO_VERB.test(items[k + 1]?.w ?? '') &&
      endOfPlaces(items, k + 2) > k + 2,
  );
  if (so < 0) return items;
  let end = endOfPlaces(items, so + 2);
  const others = items.slice(so + 2, end);
  while (TOO.test(items[end]?.w ?? '')) end++;
  let joint = so;
  while (joint > 0 && JOINT.test(items[joint - 1]!.w)) joint--;
  const subject = items.slice(0, joint).findLastIndex((x) => isSubject(x));
  if (subject < 0 || items.slice(subject, joint).some((x) => /^[.;!?\n]$/.test(x.w))) return items;
  const rest = withSoDoes(items.slice(end));
  // "back to the torn one it wants a patch and so does the one above it": what was gone back to is told before
  const apart = items[subject]!.place!.rule === 'place.it' && items[subject - 1]?.w === 'one';
  return [
    ...items.slice(0, subject),
    ...(apart ? [boundaryBefore(items[subject]!, ';')] : []),
    items[subject]!,
    { ...others[0]!, ...AND },
    ...others,
    ...items.slice(subject + 1, joint),
    ...(rest.length && !/^[.;!?\n]$/.test(rest[0]!.w) ? [boundaryBefore(items[so]!)] : []),
    ...rest,
  ];
}

/** The joint between the two places, without any sense of its own. */
const AND = {
  w: 'and',
  place: undefined,
  fabric: undefined,
  part: undefined,
  object: undefined,
  material: undefined,
  action: undefined,
  finding: undefined,
  stitch: undefined,
  seam: undefined,
};
