import { TASK_OF_ACTION } from '../../../shared/task-of-action.ts';
import { removalAt } from '../clause/removal-at.ts';
import type { Item } from '../item.ts';
import { itemWord as w } from '../item-word.ts';
import type { Named } from './task-near.ts';

/** After a word for beginning: "(settled down) to quilt", "(started in) to". */
const TO = /^(?:to|to it and|and)$/;
/** What may stand between the verb and the end of what is told: nothing that it is done to but the whole of it. */
const ENDS =
  /^(?:|,|\.|;|at|from|since|around|about|by|just|again|now|and|this|last|yesterday|today|tonight|on|in|away|--|-|:|when|till|until|after|before)$/;

/**
 * "settled down to quilt at one", "sat down to unpick it at two", "began to piece at nine": the kind of work of the bare verb behind a word for
 * beginning that ends at `end`, where nothing is named that it was done to.
 */
export function begunVerb(items: Item[], end: number): Named | undefined {
  let at = end;
  while (at < end + 2 && TO.test(w(items, at))) at++;
  const verb = items[at];
  if (!verb || !(at > end || w(items, end - 1) === 'to' || / to$/.test(w(items, end - 1)))) return undefined;
  const task =
    verb.task ??
    (verb.action?.form === 'base'
      ? TASK_OF_ACTION[verb.action.v]
      : removalAt(items, at)?.form === 'base'
        ? 'taking-apart'
        : undefined);
  if (!task || (verb.task && verb.part)) return undefined;
  const next = items[at + 1];
  const whole = next?.place?.rule === 'place.it' && next.w === 'it' ? at + 2 : at + 1;
  return ENDS.test(w(items, whole)) || items[whole]?.clock ? { task, at, item: verb } : undefined;
}
