import { found, type WayFound, type WordAt } from './way.ts';

/** "rows five to seven are all clear of ties": what is there no longer. */
export function clearOf({ items, k, item }: WordAt): WayFound {
  if (!/^(clear|free|rid)$/.test(item.w) || items[k + 1]?.w !== 'of') return undefined;
  const thing = items.slice(k + 2, k + 5).find((x) => x.object);
  if (
    !thing?.object ||
    !/^(ties|pins|stitching|quilting|interfacing|old-patch)$/.test(thing.object) ||
    thing.seam
  )
    return undefined;
  return found(
    {
      action: 'remove',
      object: thing.object,
      form: 'past',
      at: k,
      items: [item, thing],
      rule: 'treatment.clear-of',
    },
    k,
    items.indexOf(thing),
  );
}
