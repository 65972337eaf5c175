import type { Action } from '../../../shared/vocabulary.ts';
import type { Item } from '../item.ts';

const MENDS = new Set<Action>(['darn', 'patch', 'resew', 'clean', 'stabilize', 'overlay']);
const IN = /^(?:in|on|at|between|of|along|across)$/;
const PLACE_WORD = /^(?:the|and|&|row|block|of|in|on|its)$/;
/** Behind the last of them: its end, how and how long it took, when. */
const ENDS =
  /^(?:|[,.;!]|and|&|by|with|using|in|too|as|well|today|tomorrow|tonight|now|all|both|yesterday|this|last)$/;

const isMending = ({ w, action }: Item): boolean =>
  action ? MENDS.has(action.v) && action.form !== 'ing' : /^(?:closed|close|shut)$/.test(w);

/** "the tear in 3-3", "the old stain on the backing": damage as a thing, and the index behind its place. */
function damageAt(items: Item[], from: number): { at: number; next: number } | undefined {
  if (!/^(?:the|that|those)$/.test(items[from]?.w ?? '')) return undefined;
  let at = from + 1;
  while (
    /^(?:old|little|small|big|long|other|worst|worn|brown|nasty)$/.test(items[at]?.w ?? '') &&
    at < from + 3
  )
    at++;
  const thing = items[at];
  if (!thing || !(thing.finding || thing.seam) || thing.place || thing.fabric || thing.action)
    return undefined;
  let next = IN.test(items[at + 1]?.w ?? '') ? at + 2 : thing.seam ? at + 1 : -1;
  if (next < 0) return undefined;
  const first = next;
  while (items[next] && (items[next]!.place || (PLACE_WORD.test(items[next]!.w) && items[next + 1]?.place)))
    next++;
  return next > first ? { at, next } : undefined;
}

/**
 * "darned the hole in 2-2 and the tear in 3-3", "closed the seam 2-2/2-3, the tear in 4-4 and the one below it": what is named behind the
 * first goes on in the verb of the list. It is mended, and nothing that is found anew.
 */
export function withMendedToo(items: Item[]): Item[] {
  const verb = items.findIndex(isMending);
  if (verb < 0 || items.filter((x) => x.finding || x.seam).length < 2) return items;
  const out = [...items];
  for (let k = verb; k < items.length - 4; k++) {
    if (!isMending(items[k]!)) continue;
    let told = damageAt(items, items[k + 1]?.w === 'up' ? k + 2 : k + 1);
    while (told) {
      const end: number = told.next;
      let from = end;
      while (/^(?:and|&|,|\+)$/.test(items[from]?.w ?? '') && from < end + 2) from++;
      const more = from > end ? damageAt(items, from) : undefined;
      if (!more) break;
      const behind = items[more.next];
      if (behind && !ENDS.test(behind.w) && !behind.duration && !behind.stitch) break;
      const thing = out[more.at]!;
      if (thing.finding) out[more.at] = { ...thing, finding: undefined, fail: undefined };
      told = more;
    }
  }
  return out;
}
