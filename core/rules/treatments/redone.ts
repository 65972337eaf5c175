import type { Item } from '../item.ts';
import { found, type Way, type WayFound, type WordAt } from './way.ts';

/** "redid the seam", "the quilting in 3-2 redone". */
export function redone({ items, k, item, thing }: WordAt): WayFound {
  const again = redoing(items, k, thing);
  return again && found({ ...again, at: k, items: [item], rule: 'treatment.redone' }, k);
}

/** What is done over again, by the thing nearest to the word for it. */
function redoing(
  items: Item[],
  k: number,
  thing: string | undefined,
): Pick<Way, 'action' | 'form'> | undefined {
  const w = items[k]!.w;
  const form: Way['form'] | undefined = /^(redid|redone)$/.test(w)
    ? 'past'
    : w === 'redoing'
      ? 'ing'
      : w === 'redo'
        ? 'base'
        : undefined;
  // "the knots in row one were too loose so I did them again"
  if (
    w === 'again' &&
    /^(it|them|that|those|'em|em)$/.test(items[k - 1]?.w ?? '') &&
    /^(did|done|doing|do)$/.test(items[k - 2]?.w ?? '') &&
    thing &&
    OF_THING[thing]
  )
    return {
      action: OF_THING[thing],
      form: items[k - 2]!.w === 'doing' ? 'ing' : items[k - 2]!.w === 'do' ? 'base' : 'past',
    };
  if (!form) return undefined;
  const near = [...items.slice(k + 1, k + 7), ...items.slice(Math.max(0, k - 7), k).reverse()];
  for (const x of near) {
    if (x.seam) return { action: 'resew', form };
    if (x.object === 'quilting') return { action: 'quilt', form };
    if (x.object === 'ties') return { action: 'tie', form };
    if (x.part === 'binding') return { action: 'bind', form };
    if (x.w === 'darn' || x.w === 'darning') return { action: 'darn', form };
    if (x.w === 'patch') return { action: 'patch', form };
    if (x.stitches || x.object === 'stitching') return { action: 'resew', form };
  }
  // "that seam's gone again. Redid it, ladder stitch": what it is was told before
  const action = /^(it|them|that|both)$/.test(items[k + 1]?.w ?? '') && thing ? OF_THING[thing] : undefined;
  return action && { action, form };
}

const OF_THING: Record<string, Way['action']> = {
  seam: 'resew',
  stitching: 'resew',
  quilting: 'quilt',
  ties: 'tie',
  binding: 'bind',
  'old-patch': 'patch',
};
