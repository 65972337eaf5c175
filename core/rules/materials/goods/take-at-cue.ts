import type { MaterialUse } from '../../../../shared/vocabulary.ts';
import type { Item } from '../../item.ts';
import { itemWord as w } from '../../item-word.ts';
import { wordsBetween } from '../../words-between.ts';
import { findGood, type GoodFound } from '../find-good.ts';
import { countAgain, HAD_HERE, justCounted } from './count-again.ts';
import { type Cue, cueAt } from './cue-at.ts';
import { goodAt } from './good-at.ts';
import type { GoodsTold } from './goods-told.ts';
import { headingEnd } from './heading.ts';
import { isOther } from './is-other.ts';
import { keptInStore } from './kept-in-store.ts';
import { pushGood } from './push-good.ts';
import { takeList } from './take-list.ts';

/** Goods behind a word for buying, needing, having or using them. */
export function takeAtCue(told: GoodsTold, k: number): number | undefined {
  const { items, state, sentence, priced, shop } = told;
  const cue = cueAt(items, k);
  if (!cue) return undefined;
  const turned = takeTurnedRound(told, k, cue);
  if (turned !== undefined) return turned;
  if (isOther(items, k, cue, priced || shop)) return undefined;
  const behind = takeBehind(told, k, cue);
  if (behind !== undefined) return behind;
  const had = justCounted(state, sentence) ? countAgain(items, k, cue) : undefined;
  // where there is none, as in "… still to buy", "2.2 m bought", the list stood before
  return had && takeCounted(told, k, had, cue.use === 'needed' ? 'needed' : 'on-hand');
}

/** "bought at the market: 2 m calico", "I need thread" */
function takeBehind(told: GoodsTold, k: number, cue: Cue): number | undefined {
  const { items, claims, priced, shop } = told;
  let at = cue.next;
  const headed = headingEnd(items, at);
  if (headed !== undefined) at = headed;
  while (
    // "bought at the market: 2 m calico"
    (items[at]?.task === 'shopping' ||
      // "what I have to buy is a yard of net"
      (/^(is|are|was)$/.test(w(items, at)) && /^(what|all)$/.test(w(items, Math.max(0, k - 2)))) ||
      // "still to buy is the wadding"
      (/^(is|are)$/.test(w(items, at)) && at === cue.next && cue.use === 'needed' && k === 0) ||
      // "used on 2-2: half a yard of muslin"
      (cue.use === 'used' && items[at]?.place && w(items, at + 1) === ':') ||
      /^(:|,|-|today|now|here|still|yet|also|me|in|up|just|this|for|one|time|the|on|it|these|of|home|with|from|town|at|market|shop|store|stall|sale|fair|yesterday|morning|afternoon|lunchtime)$/.test(
        w(items, at),
      )) &&
    at < cue.next + 8 &&
    !goodAt(items, at, cue, priced)
  )
    at++;
  const good = goodAt(items, at, cue, priced);
  if (!good) return undefined;
  // "that took 3 m of binding" is used up, "I took five yards at £2" bought
  let use: MaterialUse = /^took/.test(w(items, k)) && !priced && cue.use === 'bought' ? 'used' : cue.use;
  if (/^only$/.test(w(items, k)) && (priced || shop)) use = 'bought';
  // "so for materials: calico three metres, twelve pounds"
  if (/^(?:materials|mats)$/.test(w(items, k)) && priced) use = 'bought';
  // "I have three balls of it, two more to get": the second amount alone is to be got
  const more = use === 'on-hand' ? moreToGet(items, good.next) : undefined;
  if (more !== undefined) {
    pushGood(told, good, 'on-hand');
    for (const x of items.slice(k, more)) claims.cut.add(x);
    return takeList(told, items, more, 'needed', true);
  }
  // "I've three and a half metres of calico to buy yet"
  if (
    use === 'on-hand' &&
    // but "I have two balls, and I need to buy three more" has its own verb there
    /^(?! (?:\S+ )*(?:i|we|need|have|want|must) (?:\S+ )*to )(?: \S+){0,5}? to (?:buy|get|order|find|pick up|fetch)(?: yet| still| in)? (?:$|[,.;]|for |and |at |from |in |tomorrow |on )/.test(
      wordsBetween(items, good.next, good.next + 9),
    )
  ) {
    use = 'needed';
    if (good.material === 'fabric')
      good.material = / for (?:the )?(?:back|backing) /.test(wordsBetween(items, good.next, good.next + 8))
        ? 'backing'
        : 'fabric';
  }
  // "I got three yards of it in the cedar chest": had, and not bought
  if (
    /^(got|had)$/.test(w(items, k)) &&
    !priced &&
    !shop &&
    (keptInStore(items, good.next) ||
      /^(left|spare)$/.test(w(items, good.next).split(' ')[0]!) ||
      // "I got one roll of batting here already"
      HAD_HERE.test(wordsBetween(items, good.next, good.next + 5)))
  )
    use = 'on-hand';
  const fronted = use === 'bought' || use === 'needed' ? toldBefore(items, k) : undefined;
  if (fronted) {
    pushGood(told, fronted, use);
    for (const x of fronted.items) claims.cut.add(x);
  }
  told.use = use;
  for (let m = k; m < at; m++) claims.cut.add(items[m]!);
  const next = takeList(told, items, at, use, true);
  // "used the last of the grey thread closing the seam in 3-5": what it went on is done
  const deed = items[w(items, next) === ',' ? next + 1 : next];
  if (use === 'used' && !/took$/.test(w(items, k)) && deed?.action?.form === 'ing')
    deed.action = { ...deed.action, form: 'past' };
  return next;
}

/** "(three balls), two more to get", "(2 yd muslin), 3 yd still to buy": where the amount begins that is to be got. */
function moreToGet(items: Item[], from: number): number | undefined {
  let at = from;
  while (/^(,|and|&|but|;|-|already|here|another)$/.test(w(items, at)) && at < from + 4) at++;
  if (at === from || items[at]?.quantity?.value === undefined) return undefined;
  return /^ \S+(?: \S+){0,4}? to (?:buy|get|order|fetch) /.test(wordsBetween(items, at, at + 7))
    ? at
    : undefined;
}

/** "two yards of lawn I need, and a spool of thread" */
function takeTurnedRound(told: GoodsTold, k: number, cue: Cue): number | undefined {
  const { items, claims, made } = told;
  const ahead =
    !made.length &&
    /^(bought|needed)$/.test(cue.use) &&
    (/^(,|and|&|)$/.test(w(items, cue.next)) || (w(items, k) === 'bought' && items[cue.next]?.cost))
      ? toldBefore(items, k)
      : undefined;
  if (!ahead) return undefined;
  // "seven yards of backing I bought at 4.99"
  const price = items[cue.next]?.cost;
  const each = price?.each || (price && /^(?:at|@)/.test(w(items, cue.next)));
  pushGood(
    told,
    price && !ahead.cost
      ? { ...ahead, cost: { amount: price.amount, ...(each ? { each: true as const } : {}) } }
      : ahead,
    cue.use,
  );
  const end = price ? cue.next + 1 : cue.next;
  for (const x of items.slice(ahead.from, end)) claims.cut.add(x);
  let on = end;
  while (/^(,|and|&)$/.test(w(items, on))) on++;
  const more = on > end ? findGood(items, on, false) : undefined;
  return more?.quantity !== undefined && more.head !== undefined
    ? takeList(told, items, on, cue.use, true)
    : end;
}

/** "8 more of it (have 2)", "I have two skeins and need five": another count of the goods just told. */
function takeCounted(
  told: GoodsTold,
  k: number,
  had: { quantity: number; at: number },
  use: 'needed' | 'on-hand',
): number {
  const { items, claims } = told;
  pushGood(
    told,
    { quantity: had.quantity, items: items.slice(k, had.at), name: 'it', from: k, next: had.at },
    use,
  );
  const from = /^(i|we)$/.test(w(items, k - 1)) ? k - 1 : k;
  for (let m = from; m < had.at; m++) claims.cut.add(items[m]!);
  let next = had.at;
  // "8 skeins of yarn (have 2) and a pack of needles": the list goes on
  // "… I've got two put by, and a pack of needles"
  let onward = next;
  while (LIES_HERE.test(w(items, onward)) && onward < next + 4) onward++;
  if (/^[),]$/.test(w(items, onward))) onward++;
  if (told.use && /^(and|&|\+|plus)$/.test(w(items, onward))) {
    const more = findGood(items, onward + 1, false);
    if (more?.quantity !== undefined && more.head !== undefined)
      next = takeList(told, items, onward + 1, told.use, true);
  }
  return next;
}

const LIES_HERE = /^(?:already|here|left|put|set|laid|by|me|aside|away|back|over|spare|upstairs)$/;

/** "A couple of reels of red thread I bought, half a yard of flannel …": the good that stands before "I" and the verb at `k`. */
function toldBefore(items: Item[], k: number): GoodFound | undefined {
  const said = /^(i|we)$/.test(w(items, k - 1));
  // "seven yards of backing bought at 4.99"
  if (!said && !(w(items, k) === 'bought' && items[k + 1]?.cost)) return undefined;
  const end = said ? k - 1 : k;
  for (let m = Math.max(0, k - 10); m < end; m++) {
    const good = findGood(items, m, false);
    const told = good?.quantity !== undefined || (said && (m === 0 || /^(,|and|&)$/.test(w(items, m - 1))));
    if (good?.head !== undefined && told && (good.next === end || (good.cost && good.next === k + 2)))
      return good;
  }
  return undefined;
}
