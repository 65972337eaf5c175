import { boundaryBefore, type Item } from '../item.ts';
import { wordsBetween } from '../words-between.ts';
import { isStop } from './joints.ts';

/** A note to oneself, which begins a statement of its own. */
const MEMO =
  /^ (?:note to (?:self|me|myself)|(?:i )?(?:must |need to |have to |should )?remember to|(?:must n't|must not|do n't|do not) (?:let me )?forget (?:to|the)|(?:and )?remind me to) /;
const JOINT = /^(?:,|and|&|but|so|then|also|oh|--|-)$/;

/** "vacuumed the front and the back twenty minutes note to self photograph the border": a stop before the note to oneself. */
export function withMemoApart(items: Item[]): Item[] {
  const k = items.findIndex((_x, n) => n > 1 && MEMO.test(wordsBetween(items, n, n + 7)));
  if (k < 0) return items;
  let from = k;
  while (from > 0 && JOINT.test(items[from - 1]!.w) && !isStop(items[from - 1]!)) from--;
  const before = items.slice(0, from);
  if (!before.length || isStop(before.at(-1)!) || before.at(-1)!.w === ':') return items;
  // behind its deed ("press the border, note to self") or before it: only where a deed was told already is it the next one's
  if (!before.some((x) => x.action || x.finding || x.task)) return items;
  if (!items.slice(k + 2).some((x) => x.action || x.material || x.object || x.place)) return items;
  return [...before, boundaryBefore(items[k]!, ';'), ...items.slice(k)];
}
