import { TASK_OF_ACTION } from '../../../shared/task-of-action.ts';
import type { Action, Task } from '../../../shared/vocabulary.ts';
import type { Item } from '../item.ts';
import { itemWord as w } from '../item-word.ts';
import { wordsBetween } from '../words-between.ts';
import { hasObject, isGoods, isLight, isWorkedOn } from './work-items.ts';

export type Named = { task: Task; at: number; item: Item };

/** The kind of work named nearest to the run of items `from`..`to`, with only light words between. */
export function taskNear(items: Item[], from: number, to: number): Named | undefined {
  let before: Named | undefined;
  for (let k = from - 1; k >= Math.max(0, from - 12); k--) {
    const x = items[k]!;
    if (x.task) {
      if (!hasObject(items, k) && !isGoods(items, k) && !isWorkedOn(items, k))
        before = { task: x.task, at: k, item: x };
      break;
    }
    // "an hour to the piecing, and ten minutes to …": a list goes on with its own kind of work
    if (x.w === ',' && k !== from - 1 && !SUMMING.test(wordsBetween(items, k + 1, from))) break;
    // "binding by hand tonight, 7:30 to 9:40"
    if (x.stitch && items[k - 1]?.task) continue;
    if (!isLight(x) && !x.clock) break;
    if (x.clock || x.span || x.duration) break;
  }
  let after: Named | undefined;
  for (let k = to; k < Math.min(items.length, to + 12); k++) {
    const x = items[k]!;
    if (x.task) {
      if (!hasObject(items, k) && !isGoods(items, k) && !isWorkedOn(items, k))
        after = { task: x.task, at: k, item: x };
      break;
    }
    if (!isLight(x)) break;
    if (x.clock || x.span || x.duration) break;
    // "quarter of an hour it took and unpicked a patch": of what was told before
    if (/^(and|,|then|so)$/.test(x.w) && OF_BEFORE.test(wordsBetween(items, to, k))) break;
    if (w(items, k) === ',' && w(items, k + 1) !== 'on' && !closesWithTask(items, k + 1)) break;
  }
  if (before && after && (after.at === to || /^(of|on|for|to|doing|at|in|went)$/.test(w(items, to))))
    return after;
  if (before && after) return from - before.at <= after.at - to + 2 ? before : after;
  return before ?? after;
}

const OF_BEFORE = /^ (?:it|that|which|they) (?:took|was|were)(?: me)?(?: all told| in all)? $/;

/** "piecing, all told 3 hours", "the mending, that was an hour": what only leads up to the time. */
const SUMMING =
  /^ (?:(?:all told|in all|altogether|total|so|about|around|nearly|just|over|a good|that took|it took|that was|it was|which took|took me|took|for|me|say|maybe) )+$/;

/** "…, all mending": nothing but the kind of work after the comma. */
function closesWithTask(items: Item[], from: number): boolean {
  const last = items.at(-1);
  return Boolean(last?.task) && items.length - from <= 3 && items.slice(from, -1).every(isLight);
}

/** The kind of work that the word at `k` names, or that its verb is of. */
export const taskOf = (items: Item[], k: number): Task | undefined =>
  verbOfWork(items, k) ?? (items[k]!.task && !hasObject(items, k) ? items[k]!.task : undefined);

export function nearTask(items: Item[], from: number, reach: number): Named | undefined {
  for (let k = from; k < Math.min(items.length, from + reach); k++) {
    const x = items[k]!;
    if (x.task) return hasObject(items, k) ? undefined : { task: x.task, at: k, item: x };
    if (!isLight(x) || x.w === ',' || x.w === 'and') return undefined;
  }
  return undefined;
}

export function nearTaskBefore(items: Item[], to: number, reach: number): Named | undefined {
  for (let k = to - 1; k >= Math.max(0, to - reach); k--) {
    const x = items[k]!;
    if (x.task) return hasObject(items, k) ? undefined : { task: x.task, at: k, item: x };
    if (!/^(is|'s|are|was|all|now|,|me|with|that|the|just|got|has|been|i|'m|'ve|nearly)$/.test(x.w))
      return undefined;
  }
  return undefined;
}

/** Work about the work: setting up, oiling the machine, clearing the table. */
export function otherTask(items: Item[], k: number): Named | undefined {
  const near = wordsBetween(items, k + 1, k + 9);
  const hit =
    /^ (?:(?:before|after) that |spent |just |only |were |was |went |to |on |of |in |for |this morning |this afternoon |this evening |today |, )*(putting the [a-z ]*(?:up|away|together)|setting (?:up|the [a-z ]+ up)|clearing|oiling|tidying|sweeping|sorting|threading|winding|changing the|rethreading|cleaning the machine|packing (?:up|away)|hunting|looking for|untangling|sharpening|descaling|refilling|scrubbing|wiping|dusting|polishing|greasing|adjusting|assembling|rearranging|searching|mounting|fussing|moving the|shifting the|untying knots|fixing the machine|servicing)\b/.exec(
      near,
    );
  if (!hit) return undefined;
  const words = hit[0].trim().split(' ').length;
  const at = Math.min(items.length - 1, k + words);
  return { task: 'other', at, item: items[at]! };
}

/** Verbs of long work, which are said without naming what was worked on. */
const LONG_WORK = new Set<Action>([
  'tie',
  'quilt',
  'piece',
  'cut',
  'darn',
  'resew',
  'remove',
  'baste',
  'bind',
  'patch',
]);

/** "quilted two hours tonight", "unpicked for an hour and ten": time at a kind of work, with nothing named that it was done to. */
export function worked(items: Item[], k: number): Named | undefined {
  let at = k - 1;
  while (
    at > 0 &&
    /^(for|about|around|another|a|good|nearly|over|just|away|solid|roughly|like)$/.test(w(items, at))
  )
    at--;
  const task = verbOfWork(items, at);
  return task ? { task, at, item: items[at]! } : undefined;
}

/** "quilted from two to three", "stitched till eleven": the bare verb of work that the time at `k` is told with. */
export function verbBefore(items: Item[], k: number): Named | undefined {
  let at = k - 1;
  while (
    at > 0 &&
    /^(from|between|till|until|til|since|at|it|away|on|for|about|around|just|only|,)$/.test(w(items, at))
  )
    at--;
  const task = verbOfWork(items, at);
  // "layered & pinned 9 to 10": two deeds
  const another = items.slice(Math.max(0, at - 3), at).some((x) => x.action?.form === 'past');
  return task && !another && items[at]!.action!.form === 'past' ? { task, at, item: items[at]! } : undefined;
}

/** The kind of work of the verb at `k`, where nothing is named that it was done to. */
export function verbOfWork(items: Item[], k: number): Task | undefined {
  const verb = items[k];
  if (!verb?.action || !LONG_WORK.has(verb.action.v) || verb.action.form === 'base') return undefined;
  if (verb.action.form === 'ing' && verb.task) return undefined;
  if (/^(was|were|is|are|be|been|get|got|gets|is|'s|had|it|that|which)$/.test(w(items, k - 1)))
    return undefined;
  // "it's laid out and pinned an hour": done to the quilt, as what stands before it
  if (DONE_TO_IT.test(wordsBetween(items, k - 6, k))) return undefined;
  const near = items.slice(Math.max(0, k - 4), Math.min(items.length, k + 5));
  if (
    near.some(
      (x) =>
        // "pieced for a bit", "quilted on it as well"
        !/^(bit|well|good)$/.test(x.w) &&
        !(x.place?.rule === 'place.it' && w(items, k + 1) === 'on' && items[k + 2] === x) &&
        (x.place?.places.length || x.object || x.seam || x.finding || x.fabric || x.stitch),
    )
  )
    return undefined;
  return TASK_OF_ACTION[verb.action.v];
}

const DONE_TO_IT =
  / (?:'s|is|are|'re|been|was|were) (?:(?:all|now|both) )*(?:laid|spread|layered|washed|dried|pressed) (?:out )?and $/;

const ERRAND =
  / (?:(?:in|into|to|round|around) town|(?:to|at|in|round|from) (?:the )?(?:\w+ )?(?:shops?|stores?|drapers?|haberdashers?|haberdashery|market|mill|mall|merchants?)) /;

/** "popped out for thread, took forty minutes": nothing but where she went and for what. */
const OUT_FOR =
  /^ (?:i |we |and |'ve |just |had to )*(?:popped|nipped|went|gone|ran|run|dashed|drove|been|out)(?: out| over| down| off| up)? for (?:some |more |the |a |new )*(?:\w+ ){1,5}(?:, )?(?:(?:that |it |which )?(?:took|was)(?: me)? )?(?:about |around |all of )?$/;

/** "an hour and ten in town for thread", "went to the draper's, forty minutes". */
export function errand(items: Item[], k: number): Named | undefined {
  const from = Math.max(0, k - 8);
  const lead = items.slice(from, k);
  if (OUT_FOR.test(wordsBetween(items, 0, k))) return { task: 'shopping', at: k, item: items[k]! };
  if (lead.some((x) => x.action || x.place?.places.length || x.duration)) return undefined;
  return ERRAND.test(wordsBetween(items, from, k)) || ERRAND.test(wordsBetween(items, k + 1, k + 9))
    ? { task: 'shopping', at: k, item: items[k]! }
    : undefined;
}
