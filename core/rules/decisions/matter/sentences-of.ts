import { isStop } from '../../clause/joints.ts';
import type { Item } from '../../item.ts';

const SHORT = /^(c|ca|col|cols|bdg|bkg|acc|approx|qltg|betw|wadd|batt|thr|fab)$/;

/** The sentences of a note, each with its stop; the point behind a shortened word ("col.") is none. */
export function sentencesOf(items: Item[]): { items: Item[]; stop: string }[] {
  const out: { items: Item[]; stop: string }[] = [];
  let current: Item[] = [];
  for (let k = 0; k < items.length; k++) {
    const item = items[k]!;
    const short = item.w === '.' && SHORT.test(items[k - 1]?.w ?? '');
    if (short) continue;
    if (isStop(item)) {
      out.push({ items: current, stop: item.w });
      current = [];
    } else current.push(item);
  }
  if (current.length) out.push({ items: current, stop: '' });
  return out;
}
