import { givenForm, isGiven } from '../clause/given-form.ts';
import { found, type WayFound, type WordAt } from './way.ts';

/** "gave the backing a good vacuum". */
export function workGiven({ items, k, item }: WordAt): WayFound {
  if (
    item.action &&
    isGiven(items, k) &&
    (item.action.form === 'base' ||
      (item.action.form === 'ing' && /^(its|a|another|good)$/.test(items[k - 1]?.w ?? '')))
  ) {
    return found(
      {
        action: item.action.v,
        form: givenForm(items, k),
        at: k,
        items: [item],
        rule: `treatment.given-${item.action.v}`,
      },
      k,
    );
  }
  return undefined;
}
