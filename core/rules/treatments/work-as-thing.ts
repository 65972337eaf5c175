import { MANNER, WORK_THINGS } from '../../lexicon/deed-frames.ts';
import { governorOfThing } from '../clause/governor.ts';
import { toldBehind } from '../clause/told-behind.ts';
import type { Item } from '../item.ts';
import { removalSoon } from './removal-soon.ts';
import { found, type Way, type WayFound, type WordAt } from './way.ts';

/** "2-3 calls for a darn", "decided against the lining", "a support is one option for row two": the treatment as a thing, and how it stands. */
export function workAsThing({ items, k, item, before, after, ways, used }: WordAt): WayFound {
  const action = Object.hasOwn(WORK_THINGS, item.w) ? WORK_THINGS[item.w]! : undefined;
  if (!action || used.has(k) || ways.some((x) => x.action === action)) return undefined;
  // "needs a darn sewn in", "a patch put on": a rule of its own
  if (
    /^ (?:\S+ )?(?!needed |required |wanted |called |planned )(?:\S+ed|sewn|put|laid|set|let) /.test(after) ||
    removalSoon(items, k)
  )
    return undefined;
  if (items.some((x) => x.quantity?.unit || x.cost)) return undefined;
  const given = givenTo(items, k);
  if (given)
    return found(
      { action, form: given.form, at: given.k, items: [item], rule: 'treatment.as-thing' },
      k,
      given.k,
    );
  // "(6-1 gets the patch,) 6-2 the darn"
  if (isGappedThing(items, k))
    return found({ action, form: 'noun', at: k, items: [item], rule: 'treatment.as-thing' }, k);
  // "(net for the first,) a darn for the second": what each gets, in a list
  if (/^ (?:(?:and|then|so|but|a|an|the|little|small|new|quick|,) )*$/.test(before) && isMeantFor(items, k))
    return found({ action, form: 'noun', at: k, items: [item], rule: 'treatment.as-thing' }, k);
  const headline = /^(?:clean|wash|press)$/.test(action) ? headlineForm(items, k) : undefined;
  if (headline) return found({ action, form: headline, at: k, items: [item], rule: 'treatment.as-thing' }, k);
  const governor = governorOfThing(items, k);
  const told =
    governor?.state ??
    ((WITH_ARTICLE.test(before) || opensClause(items, k)) && !IS_OFF.test(after)
      ? toldBehind(items, k)?.state
      : undefined);
  if (!told || told === 'done') return undefined;
  // "needs support", "wants darning": without its article only what is no thing besides
  if (!WITH_ARTICLE.test(before) && !opensClause(items, k) && !(governor && action === 'stabilize'))
    return undefined;
  return found({ action, form: 'noun', at: k, items: [item], rule: 'treatment.as-thing' }, k);
}
/** "6-2 the darn", "the calico ones a good wash", "the border a press": a place or a cloth, and the thing that it is given too. */
const isGappedThing = (items: Item[], k: number): boolean =>
  k > 1 &&
  k < 8 &&
  items.slice(0, k).some((x) => x.place || x.fabric) &&
  (items[0]!.place !== undefined || /^(a|an|the|some|good|new|little|quick)$/.test(items[k - 1]!.w)) &&
  items.every((x, m) => m === k || x.place || x.fabric || GAPPED.test(x.w)) &&
  items.slice(0, k).findIndex((x) => x.place || x.fabric) < 3;

/**
 * "Low-suction vac, entire quilt, both faces: 55 min", "quick press of row 2": how it was done and what, then where or how long, and no verb.
 * "Cold hand wash, decided" is a way chosen and no work.
 */
function headlineForm(items: Item[], k: number): Way['form'] | undefined {
  if (k === 0 || k > 4 || !items.slice(0, k).every((x) => MANNER.test(x.w))) return undefined;
  const behind = items.slice(k + 1);
  // where the place and the length are told in clauses behind it, they tell whether it is done
  if (!behind.length) return 'base';
  if (behind.some((x) => TELLS_OTHERWISE.test(x.w))) return undefined;
  if (behind.some((x) => x.duration)) return 'past';
  return /^(of|over|on|,|:|-)$/.test(behind[0]!.w) &&
    behind.slice(1, 4).some((x) => x.place?.kind === 'blocks' || x.part !== undefined)
    ? 'past'
    : undefined;
}
const TELLS_OTHERWISE =
  /^(only|is|'s|will|'ll|would|to|decided|settled|agreed|open|or|maybe|perhaps|next|tomorrow|later|needs?|wants?|needed|planned|tonight|no|not|n't|\?)$/;

/** "(a darn) for 2-4", "(patch) for the first one": the thing, the place and nothing more. */
function isMeantFor(items: Item[], k: number): boolean {
  if (items[k + 1]?.w !== 'for') return false;
  const at = /^(the|that)$/.test(items[k + 2]?.w ?? '') && !items[k + 2]!.place ? k + 3 : k + 2;
  return (
    (items[at]?.place?.places.length ?? 0) > 0 &&
    items[at]!.place!.kind !== 'part' &&
    /^(|[,.;!]|and|but|too|then|instead|i|think)$/.test(items[at + 1]?.w ?? '')
  );
}
/** "darn on 2-3 is next", "3-4: patch is called off": nothing before it but its place. */
const opensClause = (items: Item[], k: number): boolean =>
  items.slice(0, k).every((x) => x.place || /^(:|,|and|so|but|then|now|right|ok|-)$/.test(x.w));
/** "the patch on 3-4 is off": taken off, or called off; a rule of its own. */
const IS_OFF = / (?:is|'s|are) (?:now |all )?(?:off|out) /;

/** "gave 2-3 a darn", "busy giving the one below it a quick patch": the verb of giving, what it is given to, and the thing. */
function givenTo(items: Item[], k: number): { k: number; form: Way['form'] } | undefined {
  let at = k - 1;
  while (at > 0 && HOW.test(items[at]!.w)) at--;
  if (at === k - 1 || !/^(a|an|its|another)$/.test(items[at + 1]!.w)) return undefined;
  while (
    at > 0 &&
    (items[at]!.place || /^(it|them|both|each|all|the|that|one|ones|of|in|and)$/.test(items[at]!.w))
  )
    at--;
  const w = items[at]?.w ?? '';
  if (/^(was|were|been|'s been)$/.test(items[at - 1]?.w ?? '') && w === 'given')
    return { k: at, form: 'past' };
  if (!Object.hasOwn(GIVING, w)) return undefined;
  return { k: at, form: GIVING[w]! };
}
const GAPPED = /^(the|a|an|just|only|and|,|new|fresh|little|small|quick|good|ones|blocks|pieces|both|all)$/;
const HOW =
  /^(a|an|its|another|quick|little|small|new|neat|good|proper|light|bit|of|decent|fine|simple|tiny|wee|fresh)$/;
const GIVING: Record<string, Way['form']> = {
  gave: 'past',
  given: 'past',
  give: 'base',
  giving: 'ing',
  // "I still owe 1-2 a darn"
  owe: 'base',
};

const WITH_ARTICLE =
  / (?:a|an|the|its|their|some|another|my) (?:\S+ ){0,2}$| (?:new|fresh|net|small|little|simple) $/;
