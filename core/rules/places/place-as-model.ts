import { type Item, wordsAt } from '../item.ts';

/** What can be the same as elsewhere; a row or a cloth that is the same tells where it is. */
const SAME_WHAT =
  /^(?:way|treatment|deal|thing|fix|cure|repair|mend|job|method|stitch|sts?|thread|stuff|problem|trouble|damage|story|wear|state|condition|again|exact|kind|sort|of)$/;
/** "same as (I did on) 2-2", "same as (we used for) the top border" */
const LED_ON =
  /^(?:i|we|he|she|they|you|did|used|done|gave|had|have|has|'ve|'d|do|for|on|in|to|with|at|over|the|was|were)$/;
const LEADS_LIKE =
  /^(?:just|exactly|much|done|treated|mended|fixed|repaired|closed|handled|it|that|them|up)$/;
const BEHIND = /^(?:|[.,;:!?)]|--?|and|but|had|has|got|was|is|did|only|except|with|in|by|though|tho|then)$/;
const MOST_BETWEEN = 5;

/**
 * "2-4 gets the same as 2-2", "patched 4-2 the same way as 2-2", "1-1 done like 1-2", "darned as on 3-1": the place behind is the model that
 * the other was done after, and nothing is done there now. It falls out of the items that were read last, and stays with the word
 * "same"; what is spoken of does not change. `next` is the word behind.
 */
export function takenAsModel(items: Item[], next: string): boolean {
  const at = items.length - 1;
  const model = items[at]!.place;
  if (!model?.places.length || model.rule === 'place.it' || !BEHIND.test(next)) return false;
  let k = at - 1;
  while (k > 0 && at - k < MOST_BETWEEN && LED_ON.test(items[k]!.w)) k--;
  const like = items[k]?.w;
  if (like === 'as') {
    let same = k - 1;
    while (same >= 0 && k - same <= 3 && SAME_WHAT.test(items[same]!.w)) same--;
    const found = items[same];
    if (found?.w === 'same') {
      found.model = model.places;
      items.splice(k);
      return true;
    }
  }
  // "same fix on 2-4 as on 2-1"
  const found = like === 'as' ? items.slice(Math.max(0, k - 6), k).find((x) => x.w === 'same') : undefined;
  if (found && items[k - 1]!.place) {
    found.model = model.places;
    items.splice(k);
    return true;
  }
  const led = items[k - 1];
  if (!led || !(like === 'like' ? led.action || LEADS_LIKE.test(led.w) : like === 'as' && led.action))
    return false;
  // "as" alone leads on only where more than the bare place is behind it: "darned as on 3-1"
  if (like === 'as' && k === at - 1) return false;
  const words = wordsAt(items[k]!, 'the same way');
  words[1]!.model = model.places;
  items.splice(k, items.length - k, ...words);
  return true;
}
