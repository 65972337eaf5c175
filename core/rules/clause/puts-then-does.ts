import type { Item } from '../item.ts';
import { isStuff } from './begins-another-way.ts';
import { REMOVE_VERBS } from './removal-at.ts';

const PUT = /^(?:over|on|onto|behind|under|underneath|across|in|into|at|round|around)$/;
const IT = /^place\.(?:it|them|that-one|those|both)$/;
const LEADS = /^(?:i|we|then|also|'ve|have|just|um|uh|er|and|after that)$/;
const BEFORE_THING = /^(?:the|my|that|those|all|both|of|whole|old|other|out|up|off|her|its)$/;

/**
 * "put net over it | and darned 3-3", "put a patch on that and pressed the backing": the stuff was put where it was spoken of, and the
 * deed behind has a thing of its own. "Put a patch on it and zigzagged it down", "… and stitched the edges" tell how it was put there.
 */
export function putsThenDoes(items: Item[], k: number, current: Item[]): boolean {
  if (!/^(?:and|&|\+|,)$/.test(items[k]!.w) || !current.some(isStuff)) return false;
  const end = current.at(-1)!;
  if (!(end.place && IT.test(end.place.rule)) && !/^(?:it|them|that|there)$/.test(end.w)) return false;
  if (!PUT.test(current.at(-2)?.w ?? '')) return false;
  let m = k + 1;
  while (LEADS.test(items[m]?.w ?? '') && m < k + 4) m++;
  const verb = items[m];
  if (!verb || (verb.action?.form !== 'past' && REMOVE_VERBS[verb.w]?.form !== 'past')) return false;
  let at = m + 1;
  while (BEFORE_THING.test(items[at]?.w ?? '') && !items[at]!.place && at < m + 4) at++;
  const thing = items[at];
  if (!thing || (thing.place && IT.test(thing.place.rule))) return false;
  if (thing.place?.kind === 'blocks') return true;
  return (
    !/^(?:resew|baste|trim|cut)$/.test(verb.action?.v ?? '') &&
    Boolean(thing.place || thing.object || thing.part)
  );
}
