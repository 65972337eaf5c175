import type { Action } from '../../../shared/vocabulary.ts';
import { isPredicate } from '../clause/is-predicate.ts';
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
      /\b(rejected|dismissed|discounted|ruled out|under consideration|considered|weighing|contemplated|an option|is out|is off|called for|required|proposed|planned)\b/.test(
        all,
      ) || / (as is|as are) $/.test(before);
    // "removal of the old patch is complete"
    const thing = items.slice(k + 1, k + 7).find((x) => x.object || x.finding === 'old-repair');
    const object = thing?.finding === 'old-repair' ? 'old-patch' : thing?.object;
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
