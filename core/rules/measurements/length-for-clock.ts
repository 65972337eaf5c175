import { LENGTH_UNIT_SET } from '../../lexicon/units.ts';
import type { Item } from '../item.ts';

/** "one diagonal at 99 inches and the other at 101": a length where lengths are told, and not one minute past one. */
export function lengthForClock(item: Item, before: Item[]): void {
  const { clock, token } = item;
  if (clock!.firm || clock!.fixed || !/^\d{3}$/.test(token.w) || item.j !== item.i + 1) return;
  const last = before.findLast(
    (x) => x.quantity?.unit || /^(start|stop|quit|finish|beg[aiu]n|back|since|until|till|done|off)/.test(x.w),
  );
  if (!last?.quantity?.unit || !LENGTH_UNIT_SET.has(last.quantity.unit)) return;
  item.quantity = { next: item.j, value: Number(token.w), rule: 'amount.number' };
  item.clock = undefined;
}
