import { removalAt } from '../../clause/removal-at.ts';
import type { Item } from '../../item.ts';
import { itemWord as w } from '../../item-word.ts';
import type { Claims } from '../../read-amounts.ts';
import { wordsBetween } from '../../words-between.ts';
import { isLight } from '../work-items.ts';

/**
 * "It took me two hours to unpick the border", "cutting the strips took an hour", "40 min on 3-2, darning": what has taken
 * its time is done.
 */
const PAST_OF: Record<string, string> = {
  unpick: 'unpicked',
  remove: 'removed',
  take: 'took',
  rip: 'ripped',
  strip: 'stripped',
  get: 'got',
};

export function tookTime(items: Item[], claims: Claims): void {
  const length = items.findIndex((x) => x.duration);
  if (length < 0) return;
  const reach = / the (?:best|better) part of $/.test(wordsBetween(items, length - 5, length)) ? 7 : 4;
  const took = items.slice(Math.max(0, length - reach), length).findIndex((x) => /^(took|taken)$/.test(x.w));
  const done = (k: number): void => {
    items[k]!.action = { ...items[k]!.action!, form: 'past' };
  };
  if (took >= 0) {
    const deed = items[length + 2];
    const past = deed && PAST_OF[deed.w];
    if (w(items, length + 1) === 'to' && deed && (past || deed.action?.form === 'base')) {
      if (deed.action) done(length + 2);
      else deed.w = past!;
      claims.drop.add(items[length + 1]!);
      return;
    }
    const at = Math.max(0, length - reach) + took;
    const verb = items.slice(0, at).findLastIndex((x) => x.action?.form === 'ing');
    const said = items.slice(verb + 1, at);
    if (
      verb >= 0 &&
      said.some((x) => x.place || x.seam || x.object || x.material) &&
      !said.some((x) => x.action) &&
      !isWhatComesOff(items, verb)
    )
      done(verb);
    return;
  }
  // "three quarters of an hour it took, patching five two", "pressing row two: 12 min"
  const verb = items.findIndex((x) => x.action?.form === 'ing' && !x.object);
  const before = wordsBetween(items, 0, verb);
  const onThing = items.slice(verb + 1).some((x) => x.place?.kind === 'blocks' || x.seam);
  if (
    verb >= 0 &&
    onThing &&
    (verb > length
      ? TOOK_BEHIND.test(wordsBetween(items, length + 1, verb)) && items.slice(0, length).every(isLight)
      : /^ *$/.test(before) && length >= items.length - 2 && /^[:=]$/.test(w(items, length - 1)))
  ) {
    done(verb);
    return;
  }
  // "darn 2-2 15 min", "2-2 darn 15 min", "wash 50 ml soap 1h": an order to nobody, for it has its time
  const first = items[0]!.place?.kind === 'blocks' ? 1 : 0;
  const named = items[first === 1 ? 0 : 1]?.place?.kind === 'blocks' || items[0]!.action?.v === 'wash';
  if (
    items[first]?.action?.form === 'base' &&
    !items[first]!.material &&
    named &&
    length <= 6 &&
    !/ (?:tomorrow|later|next|need|needs|will|'ll|should|maybe|est|guess|reckon|to) /.test(
      wordsBetween(items),
    )
  )
    done(first);
  // "3-3: darning, quarter of an hour"
  if (first === 1 && w(items, 1) === ':' && items[2]?.action?.form === 'ing' && length <= 5) {
    done(2);
    return;
  }
  const last = items.length - 1;
  if (
    items[last]!.action?.form === 'ing' &&
    w(items, last - 1) === ',' &&
    items.some((x) => x.place?.kind === 'blocks')
  )
    done(last);
}

const TOOK_BEHIND =
  /^ (?:(?:it|that|this|which) )?(?:took|was|went)(?: (?:me|us|all told|altogether|in all|on|over|,|:|--))* $/;

/** "unpicked the old quilting on row one, that took an hour": what is taken out, and no work that took its time. */
const isWhatComesOff = (items: Item[], verb: number): boolean => {
  let k = verb - 1;
  while (k > 0 && /^(the|all|of|that|old|out|off|its|up|some|most)$/.test(w(items, k))) k--;
  return k >= 0 && items[verb]!.object !== undefined && removalAt(items, k) !== undefined;
};
