import type { Item } from '../item.ts';
import { areNeighbours, splitBlock, unique } from '../places/grid.ts';

/** "has parted", "is pulling away", "'s come adrift": of two blocks that were one piece. */
const PARTED =
  /^(?:parted|parting|separated|separating|come|coming|came|pulled|pulling|torn|broken|split|gone|away|apart|adrift|loose|unstitched|detached|come away|come apart|come adrift|come loose|come off|pulled away|pulling away|pulled apart|torn away|broken away|come unstitched|come detached|gaping)$/;
const OF_IT = /^(?:it|and|but|,)$/;
const AUX = /^(?:has|have|'s|'ve|is|are|had|was|been|just|all|nearly|half|completely|right|clean)$/;

/**
 * "3-4 has parted from 3-5", "the middle block's pulling away from its neighbour on the left": a seam between two blocks is open.
 * The items with both blocks in one place, and the words of parting as an open seam.
 */
export function withParted(items: Item[]): Item[] {
  const from = items.findIndex(
    (x, k) => k > 1 && x.w === 'from' && isBlock(items[items[k + 1]?.w === 'the' ? k + 2 : k + 1]),
  );
  if (from < 2) return items;
  let first = from - 1;
  let told = false;
  while (first > 0 && (PARTED.test(items[first]!.w) || AUX.test(items[first]!.w))) {
    told ||= PARTED.test(items[first]!.w);
    first--;
  }
  const other = items[from + 1]!.w === 'the' ? from + 2 : from + 1;
  const b = items[other]!.place;
  // "it's come away from the one above", "(2-2 is thin) and has parted from its neighbour": told of what the neighbour is counted from
  const before = items.slice(0, first).findLast(isBlock)?.place;
  const a = OF_IT.test(items[first]!.w)
    ? b?.from
      ? { ...b, places: [b.from] }
      : before
    : items[first]!.place;
  if (!told || a?.places.length !== 1 || !b || !areNeighbours(a.places[0]!, b.places[0]!)) return items;
  const verb = items[from - 1]!;
  const joined = /^(?:and|but|,)$/.test(items[first]!.w);
  return [
    ...items.slice(0, joined ? first + 1 : first),
    {
      ...(joined ? items[other]! : items[first]!),
      place: { ...a, places: unique([...a.places, ...b.places]) },
    },
    { ...verb, fail: undefined, action: undefined, finding: 'split-seam' },
    ...items.slice(other + 1),
  ];
}

/** "where 2-2 meets 2-3 it's come apart", "where the bottom right block joins its neighbour the stitching's gone": the seam of the two. */
export function withMeetings(items: Item[]): Item[] {
  const at = items.findIndex((x) => x.w === 'where');
  if (at < 0) return items;
  const first = items[at + 1]?.w === 'the' ? at + 2 : at + 1;
  let second = first + 1;
  if (!/^(?:meets?|joins?|joined|touches|abuts|butts)$/.test(items[second]?.w ?? '')) return items;
  while (
    /^(?:meets?|joins?|joined|touches|abuts|butts|up|to|onto|against|on|the)$/.test(items[second]?.w ?? '')
  )
    second++;
  const [a, b] = [items[first]?.place, items[second]?.place];
  if (!isBlock(items[first]) || !isBlock(items[second]) || !a || !b) return items;
  const both = { ...items[first]!, place: { ...a, places: unique([...a.places, ...b.places]) } };
  let next = second + 1;
  while (/^(?:,|the|its)$/.test(items[next]?.w ?? '')) next++;
  // what has gone there is the seam
  if (!/^(?:it|stitching|stitches|sewing|join|join's|thread)$/.test(items[next]?.w ?? ''))
    return [...items.slice(0, at), both, ...items.slice(second + 1)];
  const seam: Item = {
    ...items[next]!,
    w: 'seam',
    seam: true,
    place: undefined,
    object: undefined,
    action: undefined,
  };
  return [...items.slice(0, at), seam, both, ...items.slice(next + 1)];
}

const isBlock = (x: Item | undefined): boolean =>
  x?.place?.places.length === 1 && splitBlock(x.place.places[0]!) !== undefined;
