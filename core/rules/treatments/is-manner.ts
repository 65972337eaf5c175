import type { Item } from '../item.ts';
import { isCloth } from './is-cloth.ts';

/** "over the top", "over the face", "from the front": how it is done, not where. */
export function isManner(item: Item, items: Item[]): boolean {
  const k = items.indexOf(item);
  // "brought the edges together": those of the tear
  if (
    item.part === 'edge' &&
    item.place?.places[0] === 'edge' &&
    items.slice(k + 1, k + 5).some((x) => x.w === 'together') &&
    /^(the|its|both|two)$/.test(items[k - 1]?.w ?? '')
  )
    return true;
  // "patched, edges turned under and sewn down"
  if (
    item.part === 'edge' &&
    item.place?.places[0] === 'edge' &&
    / (?:turned|folded|tucked|turning|folding|pressed) (?:under|in)\b/.test(
      ` ${items
        .slice(k + 1, k + 5)
        .map((x) => x.w)
        .join(' ')}`,
    )
  )
    return true;
  // "couched it at the edges", "whipstitched all round the edge": how a cloth is held down
  if (item.part === 'edge')
    return (
      item.place?.places[0] === 'edge' &&
      /^(round|around|along|at|by)$/.test(
        /^(the|its|all|both)$/.test(items[k - 1]?.w ?? '')
          ? (items[k - 2]?.w ?? '')
          : (items[k - 1]?.w ?? ''),
      ) &&
      items.some((x) => x.stitch && x !== item) &&
      !items.some((x) => x.seam || x.part === 'binding' || (x.fail && x.w !== 'going'))
    );
  if (item.part !== 'top' && item.part !== 'backing') return false;
  // "lawn at the back of it, net on top": where the support lies
  if (item.part === 'backing' && ofSupport(items, k)) return true;
  if (item.part === 'backing')
    return (
      !items.some((x) => x.object === 'label' || x.object === 'ties') &&
      /^(from|through)$/.test(items[k - 2]?.w ?? '') &&
      items[k - 1]?.w === 'the' &&
      items.some((x) => x.action || (x.place !== item.place && x.place?.kind === 'blocks'))
    );
  return (
    /^(over|on|across|from|onto)$/.test(
      items[k - 1]?.w === 'the' || items[k - 1]?.w === 'its'
        ? (items[k - 2]?.w ?? '')
        : (items[k - 1]?.w ?? ''),
    ) &&
    (item.w === 'face' || item.w === 'top' || item.w === 'front') &&
    items.some(
      (x) =>
        x.material === 'net' ||
        x.w === 'one' ||
        x.w === 'patch' ||
        x.action?.v === 'overlay' ||
        // "calico behind it and darned over the top"
        (/^(?:darn|patch|stabilize)$/.test(x.action?.v ?? '') &&
          x.action!.form === 'past' &&
          items.some((y, m) => y.w === 'over' && m < k && k - m < 3)) ||
        // "stitched the rip shut over the top"
        (x.action?.v === 'resew' && items.some((y) => y.w === 'over')),
    )
  );
}

/** Does cloth stand right before "at the back": "muslin on the back of it"? */
const ofSupport = (items: Item[], k: number): boolean =>
  items[k - 1]?.w === 'the' &&
  /^(at|on)$/.test(items[k - 2]?.w ?? '') &&
  items[k - 3] !== undefined &&
  isCloth(items[k - 3]!);
