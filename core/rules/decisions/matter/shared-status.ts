import type { DecisionStatus } from '../../../../shared/vocabulary.ts';
import { COLOURS } from '../../../lexicon/colours.ts';
import type { Part } from './part.ts';

const AND = /^(?:and|&|\+|,)$/;

/** The name of a matter and nothing else: "the border", "binding colour", "on the thread". */
const isBareMatter = ({ topic, items }: Part): boolean =>
  topic !== undefined &&
  items.length <= 4 &&
  items.every(
    (x) =>
      x === topic.item ||
      x.topic ||
      x.part ||
      x.material ||
      COLOURS.has(x.w) ||
      /^(?:and|the|its|a|on|about|of|for|new|colou?r|wool|cotton|hand)$/.test(x.w),
  );

/** "border not", "not the binding", "but not on the thread", "thread not yet" */
const DENIED =
  /^ (?:and |but )*(?:(?:not|nor)(?: yet)?(?: on| about| with| for)?(?: the| its| what| which)? (?:\S+ ){1,3}|(?:the |its )?(?:\S+ ){1,2}(?:not|not yet|not so|still not) )$/;

/** "everything's settled bar the price", "all agreed except for the binding" */
const ALL_BUT =
  / (?:everything|all|all of it|the lot|the rest|most of it)(?: else)?(?: (?:is|'s|has been|been|now))* (?:(?:settled|decided|agreed|sorted|fixed) )?(?:bar|barring|except|except for|apart from|save|save for|other than|but for|but) (?:the |its )?\S/;
const ALL_SETTLED =
  / (?:everything|all|all of it|the lot|the rest|most of it)(?: else)?(?: (?:is|'s|has been|been|now))* (?:settled|decided|agreed|sorted|fixed) $/;

/** A verb of settling or of doubt before the matter, which then holds for those behind it: "we've settled the batting and the thread". */
const VERB_BEFORE =
  / (?:settled|decided|agreed|sorted|chosen|picked|fixed|approved|undecided|unsure|not sure)(?: on| about| upon| for)?(?: the| its| a| hand| which| what)*(?: [a-z]+)? $/;

/** "thread tied as well": a matter of which the same is said. */
const TOO = / (?:too|as well|also|likewise|ditto) $/;
/** "240, hand quilting, cotton batting: all agreed" */
const ALL_STANDS =
  /^ (?:it 's |that 's |they 're )?(?:all|all of it|both|everything|the lot)(?: now| of it| of them| is| are| 's)* (?:agreed|settled|decided|fixed) $/;

/** Is all that the sentence lists said to stand by its last words? */
export const allAgreed = (parts: Part[]): boolean => ALL_STANDS.test(parts.at(-1)?.words ?? '');

/**
 * The status that a part has from its neighbours, where it names its matter and no more: "batting and thread agreed, border and binding
 * not", "settled the batting and the thread but not the binding", "price still open, deadline too".
 */
export function sharedStatus(parts: Part[], k: number): DecisionStatus | undefined {
  const part = parts[k]!;
  const before = parts[k - 1];
  const next = parts[k + 1];
  if (!part.topic) return undefined;
  if (ALL_BUT.test(part.words)) return 'open';
  if (before && part.joint === 'but' && !before.topic && ALL_SETTLED.test(before.words) && isBareMatter(part))
    return 'open';
  const settledBefore = parts.slice(0, k).some((p) => p.topic && p.status === 'settled');
  if (settledBefore && part.items.length <= 5 && DENIED.test(part.words)) return 'open';
  // "batting and thread agreed, border and binding not"
  if (
    settledBefore &&
    isBareMatter(part) &&
    next?.topic &&
    /^(?:and|&|\+)$/.test(next.joint) &&
    next.items.length <= 4 &&
    DENIED.test(next.words)
  )
    return 'open';
  if (before?.status && AND.test(part.joint) && TOO.test(part.words) && part.items.length <= 4)
    return before.status;
  if (!isBareMatter(part)) return undefined;
  // "backing and batting settled"
  if (next?.topic && next.cue === 'settled' && /^(?:and|&|\+)$/.test(next.joint) && next.items.length <= 6)
    return 'settled';
  // "border y/n, binding colour, price"
  if (
    before?.status === 'open' &&
    before.topic &&
    AND.test(part.joint) &&
    / y ?\/ ?n | or /.test(before.words)
  )
    return 'open';
  // "we've settled the batting and the thread"
  const led = parts.slice(0, k).findLast((p) => p.cue);
  if (
    led?.topic &&
    led.cue === led.status &&
    AND.test(part.joint) &&
    parts.slice(parts.indexOf(led) + 1, k).every((p) => isBareMatter(p)) &&
    VERB_BEFORE.test(led.words)
  )
    return led.status;
  return undefined;
}
