import { found, type WayFound, type WordAt } from './way.ts';

/** "label lower right corner tomorrow", "label on the back next week": where it is to go, with no verb. */
export function labelToGo({ items, k, item }: WordAt): WayFound {
  if (item.w !== 'label' || !items.slice(0, k).every((x) => /^(the|and|then|,)$/.test(x.w))) return undefined;
  let m = k + 1;
  while (/^(on|in|at|to|the|for)$/.test(items[m]?.w ?? '') && m < k + 4) m++;
  const place = items[m]?.place?.places[0];
  if (!place || !/^(corner-|backing$)/.test(place)) return undefined;
  const rest = items.slice(m + 1);
  if (!rest.length || !rest.every((x) => LATER.test(x.w))) return undefined;
  return found({ action: 'label', form: 'base', at: k, items: [item], rule: 'treatment.label-to-go' }, k);
}

const LATER =
  /^(tomorrow|tmrw|tmw|later|next|week|time|tonight|,|on|to|go|do|last|then|monday|tuesday|wednesday|thursday|friday|saturday|sunday|morning|evening)$/;
