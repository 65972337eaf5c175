import { WORK_THINGS } from '../../lexicon/deed-frames.ts';
import type { Item } from '../item.ts';
import { wordsBetween } from '../words-between.ts';
import { isNet } from './is-cloth.ts';
import { found, type WayFound, type WordAt } from './way.ts';

/** Words between a length and the thing that took it: "35 min spent on the little patch". */
const ON_IT =
  /^(on|for|over|at|with|spent|went|gone|just|only|the|that|this|my|its|one|a|another|new|little|small|big|first|second|last|other|in|total|or|so)$/;
/** "the patch on 2-5 took me about …", "was a good …". */
const TOOK =
  /^(took|taken|was|came|ran|cost|has|'s|me|us|to|about|around|nearly|just|over|under|a|good|full|only|some|solid|exactly|roughly)$/;

/** The treatment that a thing of work stands for. */
const workOf = (x: Item) =>
  isNet(x)
    ? ('overlay' as const)
    : x.seam
      ? ('resew' as const)
      : Object.hasOwn(WORK_THINGS, x.w)
        ? WORK_THINGS[x.w]
        : undefined;

/** "twenty-five minutes on the patch at 2-3", "the seam in 4-1 took me a quarter of an hour": what took the time was made. */
export function timedWork({ items, k, item, before }: WordAt): WayFound {
  if (!items.some((x) => x.duration)) return undefined;
  const action = workOf(item);
  if (!action || / (?:old|earlier|existing|previous|no|not) $/.test(before)) return undefined;
  // another verb tells what was done to it
  if (items.some((x, m) => m !== k && (x.action?.form === 'past' || REMOVING.test(x.w)) && !x.seam))
    return undefined;
  if (
    / (?:will|'ll|going to|gonna|need|needs|allow|reckon|left|another|should|would|might|to (?!finish|end)) /.test(
      wordsBetween(items),
    )
  )
    return undefined;
  if (!lengthBefore(items, k) && !lengthBehind(items, k)) return undefined;
  return found({ action, form: 'past', at: k, items: [item], rule: 'treatment.timed-work' }, k);
}
/** "patch on 4-1 done", "the net over row two is finished", "patch on 4-2 half done": the thing, where it is, and how far it is. */
export function thingDone({ items, k, item }: WordAt): WayFound {
  const action = workOf(item);
  if (!action || item.seam || item.part) return undefined;
  if (
    !items
      .slice(0, k)
      .every((x) => /^(the|a|an|that|my|its|new|fresh|and|so|ok|okay|right|now|then|also|,)$/.test(x.w))
  )
    return undefined;
  let m = k + 1;
  if (!/^(on|in|over|at|for|to|behind|of)$/.test(items[m]?.w ?? '')) return undefined;
  while (
    items[m]?.place ||
    /^(on|in|over|at|for|to|behind|of|the|and|&|,|whole|all)$/.test(items[m]?.w ?? '')
  )
    m++;
  if (!items.slice(k + 1, m).some((x) => x.place)) return undefined;
  while (/^(is|'s|are|all|now|both|got)$/.test(items[m]?.w ?? '')) m++;
  const half = /^(half|nearly|almost|partly|part)$/.test(items[m]?.w ?? '');
  if (half) m++;
  if (!/^(done|finished|complete|completed)$/.test(items[m]?.w ?? '')) return undefined;
  return found(
    { action, form: half ? 'ing' : 'past', at: k, items: [item], rule: 'treatment.thing-done' },
    k,
  );
}

const REMOVING = /^(off|out|unpicking|removing|taking|getting|pulling|ripping)$/;

function lengthBefore(items: Item[], k: number): boolean {
  let m = k - 1;
  while (m > 0 && ON_IT.test(items[m]!.w)) m--;
  // "it took me an hour, that patch on 6-4"
  if (
    items[m]?.w === ',' &&
    items[m - 1]?.duration &&
    /^(?:the|that|this)$/.test(items[m + 1]!.w) &&
    / took (?:me |us )?(?:about |nearly |over |just |all of |the best part of )*$/.test(
      wordsBetween(items, 0, m - 1),
    )
  )
    return true;
  return items[m]?.duration !== undefined && items.slice(m + 1, k).some((x) => /^(on|for|over)$/.test(x.w));
}

function lengthBehind(items: Item[], k: number): boolean {
  if (k > 0 && !/^(the|that|this|my|its)$/.test(items[k - 1]!.w) && !items[k - 1]!.place) return false;
  let m = k + 1;
  while (items[m]?.place || /^(on|in|at|between|and|over|of|for|,)$/.test(items[m]?.w ?? '')) m++;
  const verb = m;
  while (TOOK.test(items[m]?.w ?? '')) m++;
  return m > verb && items[m]?.duration !== undefined;
}
