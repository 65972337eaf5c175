import { itemWord as w } from '../../item-word.ts';
import { findGood } from '../find-good.ts';
import type { GoodsTold } from './goods-told.ts';
import { takeList } from './take-list.ts';

/**
 * "25 min at the shops: 5 ft cording, 200 g soap flakes", "shopping, an hour. two yards of lawn": what the time at the shops, which has been
 * read by now, went on was got.
 */
export function takeFromShop(told: GoodsTold, k: number): number | undefined {
  const { state, sentence, items, made } = told;
  if (made.length || k > 3) return undefined;
  const led = k > 0 && /^(?::|-|--)$/.test(w(items, k - 1));
  const behind = k === 0 && Boolean(items[0]!.quantity?.unit);
  if (!led && !behind) return undefined;
  const shopped = state.drafts.some(
    ({ entry: e, sentence: n }) =>
      e.kind === 'work' &&
      e.task === 'shopping' &&
      (e.minutes !== undefined || e.end !== undefined) &&
      // a sentence behind the time, of which nothing else was told
      (led ? n === sentence.number : n === sentence.number - 1 && !told.sentence.before?.length),
  );
  if (!shopped) return undefined;
  const good = findGood(items, k, true);
  if (good?.head === undefined && good?.quantity === undefined) return undefined;
  return takeList(told, items, k, 'bought', true);
}
