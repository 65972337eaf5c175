import type { Action } from '../../../shared/vocabulary.ts';
import { isPredicate } from '../clause/is-predicate.ts';
import { objectOfRepair } from './object-of-repair.ts';
import { found, type WayFound, type WordAt } from './way.ts';

/** "all three overlays were executed", "replacement was rejected", "as is replacement of the piece". */
export function namedTreatment({ items, k, item, before, all, ways }: WordAt): WayFound {
  const named = NOUN_ACTIONS[item.w];
  if (
    named &&
    Object.hasOwn(NOUN_ACTIONS, item.w) &&
    !ways.some((x) => x.action === named) &&
    !(item.action && isPredicate(items, k) && item.action.form !== 'base')
  ) {
    const performed =
      /\b(executed|complete|completed|finished|applied|fitted|carried out|installed|attached|given|received|performed|undertaken)\b/.test(
        all,
      );
    const weighed =
      /\b(rejected|dismissed|discounted|ruled out|called off|under consideration|considered|weighing|contemplated|an option|(?:to|will|shall|must|should) (?:be given|receive)|is out|is off|called for|required|proposed|planned)\b/.test(
        all,
      ) || / (as is|as are) $/.test(before);
    // "removal of the old patch is complete"
    const thing = items.slice(k + 1, k + 7).find((x) => x.object || x.finding === 'old-repair');
    const object = thing?.finding === 'old-repair' ? objectOfRepair(thing.w) : thing?.object;
    if (named === 'remove' && !object) return undefined;
    if (performed || weighed) {
      return found(
        {
          action: named,
          ...(named === 'remove' && object ? { object } : {}),
          form: performed && !/ (will|to|must|should|shall) be /.test(all) ? 'past' : 'noun',
          at: k,
          items: [item],
          rule: 'treatment.named',
        },
        k,
      );
    }
  }
  return undefined;
}

/** Treatments by the noun for them. */
const NOUN_ACTIONS: Record<string, Action> = {
  removal: 'remove',
  overlay: 'overlay',
  overlays: 'overlay',
  replacement: 'replace',
  replacements: 'replace',
  patches: 'patch',
  darns: 'darn',
  support: 'stabilize',
  supports: 'stabilize',
  stabilization: 'stabilize',
  stabilisation: 'stabilize',
};

/** "the wash is called off", "whole-quilt wash off": a treatment by the noun for it, given up. */
export function namedOff({ items, k, item, before, after }: WordAt): WayFound {
  const named = Object.hasOwn(NOUNS_OFF, item.w) ? NOUNS_OFF[item.w] : undefined;
  if (!named) return undefined;
  const off =
    (GIVEN_UP.test(after) && items.slice(0, k).every((x) => x.place || LEAD.test(x.w))) ||
    GIVING_UP.test(before) ||
    ONCE_PLANNED.test(before) ||
    WAS_PLANNED.test(after);
  if (!off) return undefined;
  return found({ action: named, form: 'noun', at: k, items: [item], rule: 'treatment.named' }, k);
}
const LEAD = /^(the|that|so|right|ok|okay|and|now|whole|quilt|-|big|hand|wet|spot|um|well)$/;
const GIVEN_UP =
  /^ (?:is|'s|has been|was|are)? ?(?:now |all )?(?:called off|off the table|cancelled|canceled|scrapped|abandoned|shelved|not happening|out of the question|ruled out|rejected) |^ (?:is|'s) (?:off|out)(?: now| then| after all)? (?:$|[,.;]|and |so |but |because |since )|^ i (?:'ve |have )?(?:now )?(?:given up|dropped|abandoned|decided against|scrapped) (?:on )?(?:$|[,.;]|and |now )/;
/** "scrap the wash", "skipping the wash" */
const GIVING_UP =
  / (?:scrap|skip|forget|cancel|drop|ditch|shelve|bin|scrapp|skipp|cancell|dropp|shelv|forgett|ditch|binn|nix|lose)(?:ed|ing|d)? (?:the|that|this|any) (?:whole |big |hand |wet )?$/;
/** "plan was a wash", "the wash was the plan" */
const ONCE_PLANNED =
  / (?:plan|idea|intention) (?:was|had been) (?:for )?(?:a|the) (?:gentle |hand |full |quick )?$/;
const WAS_PLANNED = /^ (?:was|had been) (?:the|my|our) (?:plan|idea|intention) /;
const NOUNS_OFF: Record<string, Action> = {
  wash: 'wash',
  washing: 'wash',
  bath: 'wash',
  soak: 'wash',
  darning: 'darn',
  'spot cleaning': 'clean',
  cleaning: 'clean',
  netting: 'overlay',
  patching: 'patch',
  tying: 'tie',
  pressing: 'press',
  trimming: 'trim',
};
