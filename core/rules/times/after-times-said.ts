import { wordSet } from '../../text/word-set.ts';
import type { Item } from '../item.ts';

/** "9-11.30, 12-1", "9.40 to 11.15, then 1.30 to 3": the end of the stretch of time that a list has begun with. */
export function listedAfter(items: Item[]): number | undefined {
  let k = items.length - 1;
  while (k >= 0 && k >= items.length - 3 && /^(,|and|&|\+|then|again|;)$/.test(items[k]!.w)) k--;
  // "9-11 mending, 1-3 piecing"
  const joined = k < items.length - 1;
  while (
    joined &&
    k > 0 &&
    (items[k]!.task || /^(on|at|doing|of|the)$/.test(items[k]!.w)) &&
    k > items.length - 7
  )
    k--;
  return joined ? items[k]?.span?.end.minute : undefined;
}

/** Does a stretch begin after another has ended, by less than half a day? */
export const isLater = (
  span: { start: { minute: number }; end: { minute: number } },
  after: number,
): boolean =>
  (span.start.minute - after + 1440) % 720 < 420 && (span.end.minute - span.start.minute + 1440) % 720 < 420;

/** "at one no one twenty", "from nine, wait, nine thirty till ten": a time is put right, and the next number is one too. */
export function correctsClock(items: Item[]): 'moment' | 'stretch' | undefined {
  let k = items.length - 1;
  let marked = false;
  while (k > 0 && k >= items.length - 6 && PUTS_RIGHT.has(items[k]!.w)) {
    marked ||= /^(no|wait|sorry|rather|exactly|precisely|correction|mean|make)$/.test(items[k]!.w);
    k--;
  }
  if (!marked || !(items[k]?.clock || items[k]?.span)) return undefined;
  // "from ten past one, sorry, ten to one, until three": a clock again
  if (items[k]!.clock?.rule === 'time.past-to') return 'moment';
  return items[k]!.span || /^(from|between)$/.test(items[k - 1]?.w ?? '') ? 'stretch' : 'moment';
}

const PUTS_RIGHT = wordSet(
  'no wait sorry or rather more exactly precisely correction i mean make that it was at from hang hold on actually , - --',
);
