import type { Action } from '../../../shared/vocabulary.ts';
import { found, type WayFound, type WordAt } from './way.ts';

/** What is put into a quilt, by its name, and the treatment that puts it there. */
const PUT_IN: Record<string, Action> = {
  ties: 'tie',
  tacking: 'baste',
  basting: 'baste',
  quilting: 'quilt',
};
const IS_IN =
  /^ (?:(?:is|are|'s|'re|was|were) )?(?:(?:now|all|both|finally|already|nearly|back) )*in (?:(?:on|for|across|down|along|round|all|now|,|[.;]|and) |$)/;
const LEAD = /^ +(?:(?:and|so|right|okay|ok|well|now|,|the|all|my|new|those|that's|that 's) )*$/;
const GOES_IN = /^ (?:is|are|'s|'re) (?:now |all )*going in /;

/** "ties are in on row two", "tacking's in", "ties going in on row three": what was sewn in, told of the thing. */
export function putIn({ items, k, item, before, after }: WordAt): WayFound {
  const action = PUT_IN[item.w];
  if (!action || !LEAD.test(before)) return undefined;
  const form = GOES_IN.test(after) ? 'ing' : IS_IN.test(after) ? 'past' : undefined;
  const at = items.findIndex((x, m) => m > k && x.w === 'in');
  return form && at > 0
    ? found({ action, form, at, items: [item], rule: 'treatment.put-in' }, k, at)
    : undefined;
}
