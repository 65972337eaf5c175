import type { Item } from '../item.ts';
import { wordsBetween } from '../words-between.ts';
import type { Way } from './way.ts';

/** Verbs that only say that something is put somewhere, with their form. */
const PLAIN: Record<string, Way['form']> = {
  put: 'past',
  laid: 'past',
  lay: 'base',
  laying: 'ing',
  putting: 'ing',
  slipped: 'past',
  tucked: 'past',
  slid: 'past',
  eased: 'past',
  worked: 'past',
  popped: 'past',
  fitted: 'past',
  inserted: 'past',
  threaded: 'past',
  set: 'past',
  got: 'past',
  has: 'past',
  have: 'past',
  "'ve": 'past',
  glued: 'past',
  ironed: 'past',
  stuck: 'past',
  shoved: 'past',
  bunged: 'past',
  slotted: 'past',
  poked: 'past',
  pushed: 'past',
  fed: 'past',
  added: 'past',
  applied: 'past',
  pop: 'base',
  slide: 'base',
  stick: 'base',
  ease: 'base',
  bung: 'base',
  popping: 'ing',
  slipping: 'ing',
  tucking: 'ing',
  sliding: 'ing',
  sticking: 'ing',
  easing: 'ing',
  placed: 'past',
  slip: 'base',
  tuck: 'base',
  gets: 'noun',
  get: 'noun',
  needs: 'noun',
  wants: 'noun',
  need: 'noun',
  goes: 'noun',
  going: 'noun',
  sandwiched: 'past',
  basted: 'past',
  went: 'past',
  fixed: 'past',
  give: 'base',
  gave: 'past',
};
/** What a "not" behind it denies, where behind a thing it sets one against another. */
const NEGATED =
  /^(?:|is|'s|are|'re|was|were|am|'m|do|does|did|will|would|could|should|might|may|must|can|has|have|had|or|and|but|if|be|i|we|why|better)$/;

/** Such a verb before the thing at `k`, or behind it ("net was laid over it"). */
export function plainVerbNear(items: Item[], k: number): { k: number; form: Way['form'] } | undefined {
  for (let m = k - 1; m >= Math.max(0, k - 7); m--) {
    const w = items[m]!.w;
    // "2-3 gets the net, not the patch": the verb was of the other
    if (w === 'not' && !NEGATED.test(items[m - 1]?.w ?? '')) break;
    if (Object.hasOwn(PLAIN, w)) {
      let form = PLAIN[w]!;
      if (w === 'put' && /^(to|will|'ll|could|might|gonna|should|must)$/.test(items[m - 1]?.w ?? ''))
        form = 'base';
      if (
        (w === 'have' || w === 'get') &&
        /^(to|will|'ll|must|should|gonna|could)$/.test(items[m - 1]?.w ?? '')
      )
        form = 'noun';
      return { k: m, form };
    }
  }
  // "net was laid over it", "muslin has gone in behind", "net laid on & tacked down"
  for (let m = k + 1; m < Math.min(items.length, k + 6); m++) {
    if (
      !/^(laid|put|placed|set|slipped|tucked|slid|eased|gone|fitted|applied|introduced|inserted)$/.test(
        items[m]!.w,
      )
    )
      continue;
    if (m > k + 1 && !/^(was|were|been|being|has|have|'s|is|are|got|be|now|then)$/.test(items[m - 1]!.w))
      continue;
    const future = / (will|'ll|to|must|should|shall|can|could|might) (now |then )?be $/.test(
      wordsBetween(items, m - 4, m),
    );
    return { k: m, form: future ? 'noun' : 'past' };
  }
  return undefined;
}
