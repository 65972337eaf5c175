import { isPredicate } from '../clause/is-predicate.ts';
import type { Item } from '../item.ts';
import { wordsBetween } from '../words-between.ts';
import { aDarn } from './a-darn.ts';
import { aLining } from './a-lining.ts';
import { aPatch, properOne } from './a-patch.ts';
import { alsoTakenOff } from './also-taken-off.ts';
import { clearOf } from './clear-of.ts';
import { clothBehind } from './cloth-behind.ts';
import { clothIn } from './cloth-in.ts';
import { clothOver } from './cloth-over.ts';
import { comesOut } from './comes-out.ts';
import { fusibleBehind } from './fusible-behind.ts';
import { hasToGo } from './has-to-go.ts';
import { isOff } from './is-off.ts';
import { labelToGo } from './label-to-go.ts';
import { laidOut } from './laid-out.ts';
import { leaveAsFound, nothingDone } from './leave-as-found.ts';
import { namedOff, namedTreatment } from './named-treatment.ts';
import { netOff } from './net-off.ts';
import { netOver } from './net-over.ts';
import { NO_WAY_WORDS } from './no-way-words.ts';
import { offByNow } from './off-by-now.ts';
import { offCame } from './off-came.ts';
import { putIn } from './put-in.ts';
import { bindingFinished, onAgain, putOn } from './put-on.ts';
import { redone } from './redone.ts';
import { refineAction } from './refine-action.ts';
import { replacement } from './replacement.ts';
import {
  backTogether,
  drawnTogether,
  goneOver,
  isShut,
  lineOfStitch,
  ranUp,
  seamSeenTo,
  shutWith,
  wantsGoingOver,
} from './seam-closed.ts';
import { shavedOff } from './shaved-off.ts';
import { shotWithCamera } from './shot-with-camera.ts';
import { stainLifted, stainWorkedOn } from './stain-worked-on.ts';
import { takenOff } from './taken-off.ts';
import { thingInPlace } from './thing-in-place.ts';
import { thingDone, timedWork } from './timed-work.ts';
import { toComeOff } from './to-come-off.ts';
import { toolOver } from './tool-over.ts';
import type { Way, WayFound, WordAt } from './way.ts';
import { workAsThing } from './work-as-thing.ts';
import { workGiven } from './work-given.ts';
import { workNamed } from './work-named.ts';
import { workToDo } from './work-to-do.ts';
import { stitchesPutIn } from './worked-in.ts';

/** What is told by a thing ("sewed a patch on", "net over it"), tried at each word in this order; the first to find a way wins. */
export const WAYS_BY_THING: ((at: WordAt) => WayFound)[] = [
  timedWork,
  thingDone,
  netOff,
  netOver,
  workAsThing,
  clothBehind,
  aLining,
  fusibleBehind,
  thingInPlace,
  aPatch,
  properOne,
  aDarn,
  workNamed,
  workToDo,
  stitchesPutIn,
  redone,
  drawnTogether,
  toolOver,
  shotWithCamera,
  goneOver,
  seamSeenTo,
  wantsGoingOver,
  backTogether,
  namedTreatment,
  namedOff,
  shutWith,
  isShut,
  lineOfStitch,
  stainWorkedOn,
  stainLifted,
  shavedOff,
  hasToGo,
  clothOver,
  clothIn,
  workGiven,
  laidOut,
  leaveAsFound,
  nothingDone,
  bindingFinished,
  labelToGo,
  ranUp,
  putIn,
  putOn,
  onAgain,
  toComeOff,
  takenOff,
  offCame,
  offByNow,
  clearOf,
  isOff,
  comesOut,
];

const CHOOSING =
  / (or|either(?! sides?| ends?)|neither|between|whether|versus|vs|thinking|ways|options?|choices|happening|called off|off the table|scrapped|shelved|out of the question) /;

/** All treatments named in a clause, in the order said. `thing`: what "it" and "them" are when something is taken off. */
export function findWays(items: Item[], thing?: string): Way[] {
  const ways: Way[] = [];
  const used = new Set<number>();
  const all = wordsBetween(items);
  const choosing = CHOOSING.test(all);
  const keep = (told: WayFound): void => {
    if (!told || told === 'none') return;
    ways.push(told.way);
    for (const k of told.takes) used.add(k);
  };
  keep(replacement(items, thing));
  // cut from the clause's own words: joining them anew around every word took a sixth of this function's time
  const starts = [1];
  for (const x of items) starts.push(starts.at(-1)! + x.w.length + 1);
  const within = (from: number, to: number): string =>
    from < to ? all.slice(starts[from]! - 1, starts[to]) : '  ';
  for (let k = 0; k < items.length; k++) {
    if (used.has(k) || isNoWayWord(items[k]!)) continue;
    const at: WordAt = {
      items,
      k,
      item: items[k]!,
      before: within(Math.max(0, k - 6), k),
      after: within(k + 1, Math.min(items.length, k + 7)),
      all,
      choosing,
      thing,
      ways,
      used,
    };
    for (const rule of WAYS_BY_THING) {
      const told = rule(at);
      if (!told) continue;
      keep(told);
      break;
    }
  }
  for (let k = 0; k < items.length; k++) if (!used.has(k)) keep(verbLeft(items, k, thing));
  ways.push(...alsoTakenOff(items, ways));
  if (!ways.length) keep(stitchedShut(items, all));
  // "fused interfacing behind 6-5": the cloth and the verb tell one treatment
  const told = ways.filter(
    (x) => x.form !== 'noun' || !ways.some((y) => y !== x && y.action === x.action && y.form !== 'noun'),
  );
  return told.sort((a, b) => a.at - b.at || a.items.at(-1)!.i - b.items.at(-1)!.i);
}

/** Marks, figures and words that name no thing and no deed. */
export const isNoWayWord = ({ w, token }: Item): boolean => token.kind === 'mark' || NO_WAY_WORDS.has(w);

/** A verb of treatment that no rule for a thing has taken. */
function verbLeft(items: Item[], k: number, thing: string | undefined): WayFound {
  const item = items[k]!;
  if (!item.action || !isPredicate(items, k)) return undefined;
  const { v, form } = item.action;
  if (v === 'leave') return undefined;
  if (item.finding && !item.material && v !== 'darn') return undefined;
  if (item.seam && item.w !== 'seamed') return undefined;
  const action = refineAction(items, k, v, thing);
  return (
    action && { way: { action, form, at: k, items: [item], rule: `treatment.verb-${action}` }, takes: [k] }
  );
}

/** "whipst tear shut", "ladder stitch, seam closed": a stitch and what it has closed. */
function stitchedShut(items: Item[], all: string): WayFound {
  if (!/ (shut|closed|together) /.test(all) && !/ (tear|rip|seam|split) /.test(all)) return undefined;
  const at = items.findIndex(
    (x) => x.stitch && !x.weakStitch && !x.place && x.stitch !== 'hand' && x.stitch !== 'machine',
  );
  if (
    at < 0 ||
    items.some((x) => x.fail) ||
    !items.some(
      (x, m) => m > at && m < at + 4 && (x.seam || x.finding === 'tear' || x.finding === 'split-seam'),
    )
  )
    return undefined;
  const item = items[at]!;
  return {
    way: { action: 'resew', form: 'past', at, items: [item], rule: 'treatment.stitched-shut' },
    takes: [at],
  };
}
