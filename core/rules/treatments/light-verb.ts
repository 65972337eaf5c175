import type { Item } from '../item.ts';
import { wordsBetween } from '../words-between.ts';
import type { Way } from './way.ts';

/** Verbs that say nothing of their own: the noun after them tells the work ("put a darn in", "gave it a few stitches"). */
const LIGHT: Record<string, Way['form']> = {
  put: 'past',
  putting: 'ing',
  did: 'past',
  do: 'base',
  doing: 'ing',
  done: 'past',
  worked: 'past',
  work: 'base',
  working: 'ing',
  wove: 'past',
  made: 'past',
  make: 'base',
  making: 'ing',
  gave: 'past',
  give: 'base',
  giving: 'ing',
  ran: 'past',
  added: 'past',
  add: 'base',
  adding: 'ing',
  sewed: 'past',
  sewn: 'past',
  sew: 'base',
  sewing: 'ing',
  took: 'past',
  take: 'base',
  popped: 'past',
  got: 'past',
  tied: 'past',
  set: 'past',
};
export const LIGHT_LEAD =
  / (put|putting|did|do|doing|done|worked|work|working|wove|made|make|making|ran|added|add|adding|popped|tried) (in )?(a |an |one |another )?(quick |little |small |tiny |wee |neat |proper |bit of a )*$/;

/** The light verb before the noun at `k`. */
export function lightVerb(items: Item[], k: number): { k: number; form: Way['form'] } | undefined {
  for (let m = k - 1; m >= Math.max(0, k - 9); m--) {
    const w = items[m]!.w;
    if (Object.hasOwn(LIGHT, w)) {
      const modal = / (to|will|'ll|gonna|could|might|should|must|can) $/.test(wordsBetween(items, m - 2, m));
      return { k: m, form: w === 'put' && modal ? 'base' : LIGHT[w]! };
    }
    if (items[m]!.token.kind === 'mark') return undefined;
  }
  return undefined;
}
