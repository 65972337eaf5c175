import type { Action } from '../../../shared/vocabulary.ts';
import type { Item } from '../item.ts';
import type { Clause } from './clause.ts';
import { governorOf } from './governor.ts';
import { REMOVE_VERBS } from './removal-at.ts';

/** Treatments that have one and the same object when they are told as a pair; what is cut, pieced or taken off may be another. */
const SHARES = new Set<Action>([
  'clean',
  'wash',
  'dry',
  'press',
  'darn',
  'patch',
  'stabilize',
  'overlay',
  'resew',
  'tie',
  'quilt',
  'baste',
  'trim',
  'square-up',
  'measure',
  'photograph',
  'label',
]);
const JOINT = /^(and|&|\+|,|and then|then|plus|or)$/;
/** What may stand before a verb that has no object yet. */
const BEFORE_VERB =
  /^(i|we|'ve|have|has|'m|am|just|then|also|both|already|'ll|will|going to|gonna|must|should|need to|to|have to|so|ok|okay|right|now|today|tonight|and|been|was|busy|still)$/;
const BEHIND_VERB = /^(the|of|whole|all|both|in|on|at|along|across|round|it|them|those|that|up|down|off|,)$/;
const WHEN = /^(now|next|tomorrow|tonight|later|first|today)$/;
const NEED = /^(needs?|wants?|needing|wanting|requires?)$/;

const isVerb = (x: Item | undefined): boolean =>
  x?.action !== undefined && SHARES.has(x.action.v) && x.token.kind === 'word';

/**
 * Two verbs that share what they are said of: "cleaned and pressed 2-3" and "the backing needs washing and pressing". The
 * verb that has no object gets the other's, so that each clause tells the whole.
 */
export function shareObjects(clauses: Clause[]): Clause[] {
  let out = clauses;
  for (let k = clauses.length - 2; k >= 0; k--) {
    const [first, second] = [out[k]!, out[k + 1]!];
    if (first.sentence !== second.sentence || !JOINT.test(second.joint)) continue;
    // "the gingham that was ravelling | I have darned | and pressed the row": its object stands before it
    const begins = JOINT.test(first.joint) || out[k - 1]?.sentence !== first.sentence;
    const items = begins ? (lacksObject(first, second) ?? lacksSeam(first, second)) : undefined;
    if (items) out = out.with(k, { ...first, items });
    const needed = lacksNeed(first, second) ?? lacksGovernor(first, second);
    if (needed) out = out.with(k + 1, { ...second, items: needed });
  }
  return out;
}

/** "cleaned | and pressed 2-3": the first clause with the object of the second. */
function lacksObject(first: Clause, second: Clause): Item[] | undefined {
  const verb = first.items.at(-1)!;
  const other = second.items[0]!;
  if (
    !isVerb(verb) ||
    !isVerb(other) ||
    verb.action!.form !== other.action!.form ||
    verb.action!.v === other.action!.v
  )
    return undefined;
  // "torn between patching | and darning 3-3"
  const governed = verb.deed && governorOf(first.items, first.items.length - 1)?.state;
  if (!governed && !first.items.slice(0, -1).every((x) => BEFORE_VERB.test(x.w))) return undefined;
  const tail: Item[] = [];
  for (const x of second.items.slice(1)) {
    if (!x.place && !x.fabric && !BEHIND_VERB.test(x.w) && !(tail.length && WHEN.test(x.w))) break;
    tail.push(x);
  }
  while (tail.length && !tail.at(-1)!.place && !tail.at(-1)!.fabric && !WHEN.test(tail.at(-1)!.w)) tail.pop();
  return tail.some((x) => x.place || x.fabric) ? [...first.items, ...tail] : undefined;
}

/** "unpicked | and re-sewed the seam between 3-2 and 3-3": what is unpicked is that seam. */
function lacksSeam(first: Clause, second: Clause): Item[] | undefined {
  const verb = first.items.at(-1)!;
  const other = second.items[0]!;
  const taken = Object.hasOwn(REMOVE_VERBS, verb.w) ? REMOVE_VERBS[verb.w]! : undefined;
  if (!taken || taken.particle || verb.action || other.action?.v !== 'resew') return undefined;
  if (taken.form !== other.action.form || !first.items.slice(0, -1).every((x) => BEFORE_VERB.test(x.w)))
    return undefined;
  const rest = second.items.slice(1);
  const end = rest.findIndex(
    (x) =>
      !(x.seam || x.object || x.place || /^(the|that|both|those|all|between|in|on|of|at|and|&)$/.test(x.w)),
  );
  const tail = end < 0 ? rest : rest.slice(0, end);
  return tail.some((x) => x.seam || x.object === 'stitching') ? [...first.items, ...tail] : undefined;
}

/** "the backing needs washing | and pressing", "2-3 needs patching, | 2-4 darning": the second clause with the word that asks for it. */
function lacksNeed(first: Clause, second: Clause): Item[] | undefined {
  const verb = first.items.findLast((x) => x.action?.form === 'ing' || /^\S+ing (out|off|up)$/.test(x.w));
  const need = verb && first.items[first.items.indexOf(verb) - 1];
  if (!need || !NEED.test(need.w)) return undefined;
  const at = second.items.findIndex((x) => x.action);
  const named = at >= 0 && second.items.slice(0, at).every((x) => x.place || /^(the|block|and|,)$/.test(x.w));
  return named && second.items[at]!.action!.form === 'ing' ? second.items.toSpliced(at, 0, need) : undefined;
}

/** "torn between patching | and netting 3-3", "decided against washing it | or pressing it": the second clause with what governs the first. */
function lacksGovernor(first: Clause, second: Clause): Item[] | undefined {
  const other = second.items[0]!;
  if (!other.deed || other.action?.form !== 'ing') return undefined;
  const k = first.items.findLastIndex((x) => x.action !== undefined);
  if (first.items[k]?.action?.form !== 'ing' || !first.items[k]!.deed) return undefined;
  if (!first.items.slice(k + 1).every((x) => x.place || x.fabric || BEHIND_VERB.test(x.w))) return undefined;
  const governor = governorOf(first.items, k);
  return governor?.state ? [...first.items.slice(governor.from, k), ...second.items] : undefined;
}
