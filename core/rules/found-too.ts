import { boundaryBefore, type Item } from './item.ts';

const STOP = /^([.;!?:\n(),]|--)$/;
const BE = /^(is|'s|are|was|were|has|have)$/;
const TOO = /^(too|as well|as|likewise)$/;
const MOST_WORDS = 9;

/**
 * "the calico's faded and so is the drill", "the backing is stained, and so is most of row one": where what is found of a cloth or a part
 * is so of another, the index behind that one. Of blocks told one after the other the list of them does.
 */
export function foundToo(items: Item[], verb: number, joint: number, from: number): number | undefined {
  const found = items.slice(verb + 1, joint);
  if (found.filter((x) => x.finding || x.fail).length !== 1 || found.some((x) => x.place || x.action))
    return undefined;
  let to = from;
  while (to < items.length && to < from + MOST_WORDS && !STOP.test(items[to]!.w)) {
    if (TOO.test(items[to]!.w)) break;
    if (/^(and|but|so|i|which)$/.test(items[to]!.w) && !items[to]!.place) break;
    if (items[to]!.finding || items[to]!.action?.form === 'past') return undefined;
    to++;
  }
  let start = verb;
  while (start > 0 && verb - start < 8 && !STOP.test(items[start - 1]!.w)) start--;
  const one = items.slice(start, verb);
  const other = items.slice(from, to);
  const isBlocks = (told: Item[]): boolean => told.some((x) => x.place && x.place.kind !== 'part');
  const isNamed = (told: Item[]): boolean => told.some((x) => x.place || x.fabric);
  return isNamed(one) && isNamed(other) && !(isBlocks(one) && isBlocks(other)) && !sidesOnly(one, other)
    ? to
    : undefined;
}
/** "the left edge is frayed and so are its corners": parts of one kind stay one list. */
const sidesOnly = (one: Item[], other: Item[]): boolean =>
  [...one, ...other].every((x) => !x.fabric && x.place?.kind !== 'blocks');

/** How many words "too" and its like are at `k`, where a statement ends with them. */
function tooAt(items: Item[], k: number): number {
  const count = items[k]!.w === 'as' ? (items[k + 1]?.w === 'well' ? 2 : 0) : TOO.test(items[k]!.w) ? 1 : 0;
  const next = items[k + count]?.w ?? '.';
  return count && (STOP.test(next) || /^(and|but|so|i)$/.test(next)) ? count : 0;
}

/** "the calico's faded, the drill too", "… and the border as well": what is found of the one, told of the other. */
export function withFoundAsWell(items: Item[]): Item[] {
  const m = items.findIndex((_x, k) => k > 3 && tooAt(items, k) > 0);
  if (m < 0) return items;
  let from = m;
  while (from > 0 && m - from < 6 && !/^(,|and|&|\+|--)$/.test(items[from - 1]!.w)) from--;
  let joint = from;
  while (joint > 0 && /^(,|and|&|\+|--)$/.test(items[joint - 1]!.w)) joint--;
  const verb = items.slice(0, joint).findLastIndex((x) => BE.test(x.w));
  if (joint === from || verb < 1 || joint - verb > 7 || joint - verb < 2) return items;
  const said = items.slice(verb, joint);
  if (said.some((x) => STOP.test(x.w)) || foundToo(items, verb, joint, from) !== m) return items;
  return [
    ...items.slice(0, joint),
    boundaryBefore(items[from]!, ';'),
    ...items.slice(from, m),
    ...said.map((x) => ({ ...x })),
    ...withFoundAsWell(items.slice(m + tooAt(items, m))),
  ];
}
