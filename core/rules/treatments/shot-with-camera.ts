import type { Item } from '../item.ts';
import { found, type WayFound, type WordAt } from './way.ts';

/** "I shot the front and back with the good camera", "shot both sides for the file": a photograph. The edge that is shot is worn. */
export function shotWithCamera({ items, k, item, before, after }: WordAt): WayFound {
  if (item.w !== 'shot' || !/^ (?:the|both|all|each|every|it|them|its) |^ (?=\S)/.test(after))
    return undefined;
  const next = items[k + 1];
  const thing = /^(the|both|all|each|every|its)$/.test(next?.w ?? '') ? items[k + 2] : next;
  if (!thing?.place && !/^(sides|front|back|whole|corners?)$/.test(thing?.w ?? '')) return undefined;
  const told = / (?:i|and|then|we|,|:) $/.test(before) || before.trim() === '';
  const seen = / (?:camera|phone|file|record|light|photos?|owner|report) /.test(
    ` ${items.map((x) => x.w).join(' ')} `,
  );
  if (!told || (!seen && !/ i $/.test(before) && before.trim() !== '')) return undefined;
  return found({ action: 'photograph', form: 'past', at: k, items: [item], rule: 'treatment.shot' }, k);
}

/** "photos of the back", "pics: front + back", "photos after that: front, back": pictures, and behind them what they are of. */
export function picturesOf(items: Item[], k: number): boolean {
  if (!PICTURES.test(items[k]?.w ?? '')) return false;
  let m = k + 1;
  while (m < k + 6 && BEFORE_SUBJECT.test(items[m]?.w ?? '')) m++;
  return items[m]?.place !== undefined;
}
export const PICTURES = /^(photos|photographs|pictures|pics|snaps|shots)$/;
const BEFORE_SUBJECT = /^(of|the|then|after|afterwards|that|also|too|both|all|:|-|--)$/;
