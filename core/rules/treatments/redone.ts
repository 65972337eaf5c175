import type { Item } from '../item.ts';
import { found, type Way, type WayFound, type WordAt } from './way.ts';

/** "redid the seam", "the quilting in 3-2 redone". */
export function redone({ items, k, item, thing }: WordAt): WayFound {
  const back = putBack(items, k, thing);
  if (back) return back;
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

const PRONOUN = /^(?:it|them|they|those|these|that|'em|em)$/;

const isSewnIn = (thing: string | undefined): boolean => thing === 'ties' || thing === 'quilting';

/** Is the thing that was spoken of, and nothing else, what the verb is done to: "replaced them", "they need replacing"? */
export function isThingAgain(items: Item[], k: number, thing: string | undefined): boolean {
  if (!isSewnIn(thing)) return false;
  return (
    PRONOUN.test(items[k + 1]?.w ?? '') ||
    (/^(?:need|needs|want|wants|be|been|are|were|all)$/.test(items[k - 1]?.w ?? '') &&
      items.slice(0, k - 1).some((x) => PRONOUN.test(x.w) && !x.place?.places.length))
  );
}

/** "ties gone from 2-2 and 2-3", then "put those back with perle cotton", "replaced them", "will put new ones in". */
function putBack(items: Item[], k: number, thing: string | undefined): WayFound {
  const w = items[k]!.w;
  const renewed = /^(?:replac|renew|restor)(e|ed|ing)$/.exec(w)?.[1];
  const put = /^put(?:ting)?$/.test(w);
  if (!renewed && !put) return undefined;
  let end = k;
  if (put) {
    const behind = items.slice(k + 1, k + 6);
    const at = behind.findIndex((x) => /^(?:back|back in|in)$/.test(x.w));
    const said = behind.slice(0, at).map((x) => x.w);
    const same = said.every((y) =>
      /^(?:it|them|those|these|that|all|of|both|'em|em|the|missing|ones)$/.test(y),
    );
    const fresh = said.at(-1) === 'ones' && said.some((y) => /^(?:new|fresh)$/.test(y));
    if (at < 0 || !(fresh || (same && behind[at]!.w !== 'in')) || !isSewnIn(thing)) return undefined;
    end = k + 1 + at;
  } else if (!isThingAgain(items, k, thing)) return undefined;
  const before = items[k - 1]?.w ?? '';
  const form: Way['form'] =
    renewed === 'ing' || w === 'putting'
      ? 'ing'
      : renewed === 'e' ||
          (put && /^(?:to|will|'ll|must|should|can|gonna|shall|going to|need to)$/.test(before))
        ? 'base'
        : 'past';
  const takes = items.slice(k, end + 1).map((_x, m) => k + m);
  return found(
    { action: OF_THING[thing!]!, form, at: k, items: [items[k]!], rule: 'treatment.redone' },
    ...takes,
  );
}

const OF_THING: Record<string, Way['action']> = {
  seam: 'resew',
  stitching: 'resew',
  quilting: 'quilt',
  ties: 'tie',
  binding: 'bind',
  'old-patch': 'patch',
};
