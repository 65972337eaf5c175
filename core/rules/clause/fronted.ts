import type { Item } from '../item.ts';
import { wordsBetween } from '../words-between.ts';
import { joinsPlaces } from './joints.ts';
import { REMOVE_VERBS } from './removal-at.ts';

const DETERMINER = /^(the|that|those|these|its|her)$/;
const WHERE = /^(on|in|at|down|along|across|over|from|round|of|the|its|all|both)$/;
/** "I've", "we'll", "I'm", "I just", or the bare "I" before its verb. */
const WHO =
  /^ (?:i|we) (?:(?:'ve|'ll|'m|'re|'d|have|had|will|shall|am|are|just|only|also|already|might|still|have n't|going to|gonna|must|need to|want to) )*/;

/**
 * "the stain I'm leaving well alone", "the binding down the right side I've taken off", "the border strips I cut at five inches": does
 * a statement begin at `k` whose object stands before the one who does it?
 */
export function isFronted(items: Item[], k: number): boolean {
  if (!DETERMINER.test(items[k]?.w ?? '')) return false;
  let m = k + 1;
  while (/^(old|other|new|big|little|brown|rust|torn|worn|whole|two|three|four)$/.test(items[m]?.w ?? ''))
    m++;
  const thing = items[m];
  if (!thing || !(thing.finding || thing.object || thing.part || thing.seam || thing.fabric || thing.place))
    return false;
  m++;
  while (/^(strips?|ones?|blocks?|pieces?|bits?)$/.test(items[m]?.w ?? '')) m++;
  while (
    m < k + 10 &&
    (items[m]?.place || WHERE.test(items[m]?.w ?? '') || joinsPlaces(items, m)) &&
    !/^(i|we)$/.test(items[m]?.w ?? '')
  )
    m++;
  const who = WHO.exec(wordsBetween(items, m, m + 6));
  if (!who) return false;
  const verb = items[m + who[0].trim().split(' ').length];
  return verb !== undefined && (verb.action !== undefined || Object.hasOwn(REMOVE_VERBS, verb.w));
}
