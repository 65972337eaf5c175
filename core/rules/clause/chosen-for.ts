import { WORK_THINGS } from '../../lexicon/deed-frames.ts';
import { boundaryBefore, type Item } from '../item.ts';
import { isStop } from './joints.ts';

const BE = /^(?:is|'s|be|'ll|will|shall|has|to)$/;
const THEN = /^(?:then|so|after|all|in|the|end|definitely|finally|,)$/;

/** Something that can be chosen: a stuff, a cloth, a deed or its name. */
const isChoice = (x: Item | undefined): boolean =>
  x !== undefined &&
  (x.material !== undefined ||
    x.fabric !== undefined ||
    x.action !== undefined ||
    Object.hasOwn(WORK_THINGS, x.w));

/**
 * "The linen it is, then, for that tear, and the net is out": a choice is a statement of its own, and what it is for was told when the
 * ways were weighed: damage that is only pointed at is not found again. A block that is named stays.
 */
export function withChosenApart(items: Item[]): Item[] {
  const it = items.findIndex(
    (x, k) => x.w === 'it' && isChoice(items[k - 1]) && BE.test(items[k + 1]?.w ?? ''),
  );
  if (it < 0) return items;
  let be = it + 1;
  while (BE.test(items[be]?.w ?? '')) be++;
  let end = be;
  while (THEN.test(items[end]?.w ?? '') && end < be + 5) end++;
  const forIt = items[end]?.w === 'for' ? end : undefined;
  // "net it is, and the lawn is out": a new statement begins behind the comma
  if (forIt === undefined)
    return items[end] && isStop(items[end]!) && fastens(items, end + 1) ? joinedAt(items, end) : items;
  let last = forIt + 1;
  while (items[last] && !isStop(items[last]!) && !/^(?:,|and|but|so|no|not)$/.test(items[last]!.w)) last++;
  const what = items.slice(forIt, last);
  const named = what.some((x) => x.place?.places.length) && !what.some((x) => x.finding || x.seam);
  const pointed =
    what.some((x) => x.finding || x.seam) && /^(?:that|the|this|those|these)$/.test(what[1]?.w ?? '');
  if (!named && !pointed) return items;
  // "…, with the indigo", "…, by hand": how it is to be
  const goesOn = items[last]?.w === ',' && /^(?:with|in|by|using|w)$/.test(items[last + 1]?.w ?? '');
  return [
    ...items.slice(0, be),
    ...(named ? what : []),
    ...(items[last] && !isStop(items[last]!) && !goesOn ? [boundaryBefore(items[last]!, ';')] : []),
    ...withChosenApart(items.slice(goesOn || items[last]?.w !== ',' ? last : last + 1)),
  ];
}

const FASTENED =
  /^(?:sewn|sewed|stitched|whipstitched|slip ?stitched|backstitched|couched|basted|tacked|pinned|laid|ironed|fused|glued)$/;

/** "net it is. Sewn on with hair silk": how it was put on, without a word for what. */
const fastens = (items: Item[], k: number): boolean => {
  const at = /^(?:i|we)$/.test(items[k]?.w ?? '') ? k + 1 : k;
  const x = items[at];
  return (
    x !== undefined &&
    (FASTENED.test(x.w) || FASTENED.test(x.token.w)) &&
    /^(?:on|down|over|in|it|,|with|by)$/.test(items[at + 1]?.w ?? ',') &&
    !items.slice(at, at + 4).some((y) => y.place?.how === 'said' || y.seam || y.finding)
  );
};

const joinedAt = (items: Item[], k: number): Item[] => [
  ...items.slice(0, k),
  boundaryBefore(items[k]!, ','),
  ...items.slice(k + 1),
];
