import type { TreatmentState } from '../../../shared/vocabulary.ts';
import { BEHIND_DEED } from '../../lexicon/deed-frames.ts';
import { PhraseTrie } from '../../text/phrase-trie.ts';
import type { Item } from '../item.ts';

const BEHIND = new PhraseTrie<TreatmentState>();
for (const [state, phrases] of BEHIND_DEED) for (const words of phrases) BEHIND.add(words, state);

/** What a deed is done to, and what joins it. */
const DONE_TO =
  /^(the|that|this|those|of|on|in|for|to|both|all|and|&|,|one|ones|it|them|whole|back|edge|over|row|up|behind|under|underneath|across|along|round|around|between|from|at|piece|patch|block|square|idea)$/;

/** "replacing 3-4 is off the table", "netting row two can wait": what is said of the deed at `k` behind the places it is done to, and where that ends. */
export function toldBehind(items: Item[], k: number): { state: TreatmentState; end: number } | undefined {
  // "swapping out 3-4"
  let from = /^(out|off|down|up)$/.test(items[k + 1]?.w ?? '') && items[k + 2]?.place ? k + 2 : k + 1;
  while (
    from < k + 10 &&
    items[from] &&
    (items[from]!.place || items[from]!.fabric || DONE_TO.test(items[from]!.w))
  )
    from++;
  if (from >= items.length) return undefined;
  const ahead: { w: string; end: number }[] = [];
  for (let m = from; m < Math.min(items.length, from + 7); m++)
    for (const w of items[m]!.w.split(' ')) ahead.push({ w, end: m + 1 });
  const hit = BEHIND.longestAt(ahead, 0);
  if (!hit) return undefined;
  const { end } = ahead[hit.next - 1]!;
  return ENDS.test(items[end]?.w ?? '') ? { state: hit.payloads[0]!, end } : undefined;
}
/** Nothing is told behind it that would be of something else ("darning 3-4 is next to impossible"). */
const ENDS =
  /^(|[.,;:!?)]|--|-|now|then|today|tomorrow|tonight|again|too|i|we|it|so|and|but|because|since|after all|after|any more|for|on|in|as|with|by|till|until|really|though)$/;

/** Is the item at `k` said of a deed told before it in the stretch that begins at `start`? */
export function isToldOfDeed(items: Item[], k: number, start: number): boolean {
  for (let m = k - 1; m >= Math.max(start, k - 12); m--) {
    const form = items[m]!.action?.form;
    if (form === 'past') return false;
    if (form === 'ing') return (toldBehind(items, m)?.end ?? 0) > k;
  }
  return false;
}
