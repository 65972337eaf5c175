import { found, type WayFound, type WordAt } from './way.ts';

/** "label lower right corner tomorrow", "label on the back next week": where it is to go, with no verb. */
export function labelToGo({ items, k, item, before, after }: WordAt): WayFound {
  // "need to make a label", "still have a label to write"
  if (
    item.w === 'label' &&
    (/ (?:to|must|should|will|'ll|gonna) (?:make|do|write|embroider|sew|print|stitch|design) (?:a|the|its|some sort of) (?:new |little |proper )?$/.test(
      before,
    ) ||
      /^ (?:still )?to (?:make|do|write|embroider|print|stitch|be made|be written)\b/.test(after))
  )
    return found({ action: 'label', form: 'base', at: k, items: [item], rule: 'treatment.label-to-go' }, k);
  // "the tag's got to go on the back"
  if (item.object === 'label' && !item.action && TO_GO.test(after))
    return found({ action: 'label', form: 'base', at: k, items: [item], rule: 'treatment.label-to-go' }, k);
  if (item.w !== 'label' || !items.slice(0, k).every((x) => /^(the|and|then|,)$/.test(x.w))) return undefined;
  let m = k + 1;
  while (/^(on|in|at|to|the|for|next|tomorrow|,)$/.test(items[m]?.w ?? '') && m < k + 5) m++;
  const place = items[m]?.place?.places[0];
  if (!place || !/^(corner-|backing$)/.test(place)) return undefined;
  const rest = items.slice(m + 1);
  const later = items.slice(k + 1, m).some((x) => /^(next|tomorrow)$/.test(x.w));
  if (!(rest.length || later) || !rest.every((x) => LATER.test(x.w))) return undefined;
  return found({ action: 'label', form: 'base', at: k, items: [item], rule: 'treatment.label-to-go' }, k);
}

const LATER =
  /^(tomorrow|tmrw|tmw|later|next|week|time|tonight|,|on|to|go|do|last|then|monday|tuesday|wednesday|thursday|friday|saturday|sunday|morning|evening)$/;
const TO_GO =
  /^ (?:(?:'s|is|has|still|yet|got|will|needs) )*(?:gotta|to|needs|wants) (?:go|be sewn|be put|be stitched|going|putting|sewing) (?:back )?on /;
