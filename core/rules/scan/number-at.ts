import { isNumberAt, startsNumber } from '../../text/starts-number.ts';
import type { Token } from '../../text/tokenise.ts';
import { wordSet } from '../../text/word-set.ts';
import { findCost, findQuantity } from '../amounts/find-amount.ts';
import { isListedPrice, isSum } from '../amounts/is-sum.ts';
import type { Item } from '../item.ts';
import { LEXICON } from '../lexicon-index.ts';
import { findPointer, findPart as sidedPlace } from '../places/place-pipeline.ts';
import { correctsClock, isLater, listedAfter } from '../times/after-times-said.ts';
import { findClock } from '../times/find-clock.ts';
import { findDuration } from '../times/find-duration.ts';
import { findSpan } from '../times/find-span.ts';
import { hoursOfWork } from '../times/hours-of-work.ts';
import { isClockExpected } from '../times/is-clock-expected.ts';
import { blocksAt } from './blocks-at.ts';
import type { ScanContext } from './scan-context.ts';
import { widenItem } from './widen-item.ts';

/** After these a number is a clock time even where it could be a block. */
const STRONG_LEADS = new Set(['since', 'till', 'until', 'til', 'o']);

/** Right behind the name of a day two numbers with a dash are hours, where a kind of work follows. */
const DAY = /^(mon|tues?|wed|thur?s?|fri|sat|sun)(day|nesday|sday|urday)?$/;

const TWELVE = wordSet('noon midday midnight');

const ROUGHLY = wordSet('about around just like roughly oh maybe say gone nearly bang only somewhere');

/**
 * Gives an item the sense of the number that begins at its token (or of "about", "just like", where an hour follows): stretch of time, length of
 * time, hour, price, block, amount, in this order. Tells whether it has found one.
 */
export function numberAt(
  tokens: Token[],
  i: number,
  item: Item,
  { ctx, commerce, work, items }: ScanContext,
): boolean {
  const { token } = item;
  const before = tokens[i - 1]?.w ?? '';
  const numeric = token.kind === 'number' || startsNumber(token.w);
  // "0910 survey", "1340: piecing"
  const opens =
    i === 0 &&
    /^(?:[01]\d|2[0-3])[0-5]\d$/.test(token.w) &&
    namesWork(tokens, /^[:,-]$/.test(tokens[1]?.w ?? '') ? 2 : 1);
  const twelve = TWELVE.has(token.w);
  const mendsClock = work && (numeric || twelve) ? correctsClock(items) : undefined;
  const expected =
    work &&
    (numeric || twelve || ROUGHLY.has(token.w)) &&
    (mendsClock !== undefined || isClockExpected(tokens, i));
  if (numeric || twelve || expected) {
    const listed = listedAfter(items);
    const led = before === 'from' ? 'from' : before === 'between' ? 'between' : 'none';
    const block = blocksAt(tokens, i, ctx);
    // Two bare numbers are a block before they are a stretch of time: "between 5-1 and 5-2", "three one to three four".
    const named = block !== undefined && (block.places.length > 0 || tokens[i + 1]?.w === '-');
    const span = findSpan(
      tokens,
      i,
      led !== 'none'
        ? led
        : STRONG_LEADS.has(before) || mendsClock === 'moment'
          ? 'since'
          : listed !== undefined || mendsClock === 'stretch'
            ? 'from'
            : led,
    );
    const timely = span && (span.sure || STRONG_LEADS.has(before));
    const another =
      listed !== undefined &&
      span !== undefined &&
      isLater(span, listed) &&
      /^(|,|\.|;|on|at|of|doing|and|\w+ing)$/.test(tokens[span.next]?.w ?? '');
    if (
      span &&
      (!named ||
        another ||
        (timely &&
          (span.next > block.next ||
            !block.places.length ||
            DAY.test(/^[:,]$/.test(before) ? (tokens[i - 2]?.w ?? '') : before) ||
            hoursOfWork(tokens, i, span.next))))
    ) {
      item.span = span;
      widenItem(item, tokens, span.next);
      return true;
    }
    const duration = findDuration(tokens, i);
    const hour = findClock(tokens, i, expected || opens);
    const clock = hour && isBlockBehind(tokens, i, hour) ? undefined : hour;
    if (duration && (!clock || duration.next >= clock.next)) {
      item.duration = duration;
      widenItem(item, tokens, duration.next);
      return true;
    }
    const quantity = findQuantity(tokens, i);
    const cost = findCost(tokens, i, commerce);
    if (
      clock &&
      // "it's 143 by 190 cm"
      !(/^(by|x|×)$/.test(tokens[clock.next]?.w ?? '') && isNumberAt(tokens, clock.next + 1)) &&
      !(
        cost &&
        (cost.next > clock.next ||
          (cost.next === clock.next &&
            !clock.firm &&
            (isSum(tokens, i) || (commerce && isListedPrice(token, items)))))
      ) &&
      !(quantity?.unit && quantity.next >= clock.next) &&
      !(named && !clock.firm && block.next >= clock.next && !STRONG_LEADS.has(before) && !mendsClock)
    ) {
      item.clock = clock;
      widenItem(item, tokens, clock.next);
      return true;
    }
    if (
      cost &&
      (!quantity?.unit || cost.next > quantity.next) &&
      !(block?.places.length && block.next >= cost.next && !/[£$€]/.test(token.w))
    ) {
      item.cost = cost;
      widenItem(item, tokens, cost.next);
      return true;
    }
    if (block && !(quantity?.unit && quantity.next > block.next && quantity.unit !== 'piece')) {
      item.place = block;
      widenItem(item, tokens, block.next);
      return true;
    }
    // "one below it", "two along from that"
    const beside =
      quantity && !quantity.unit ? (sidedPlace(tokens, i, ctx) ?? findPointer(tokens, i, ctx)) : undefined;
    if (beside && beside.next > quantity!.next) {
      item.place = beside;
      widenItem(item, tokens, beside.next);
      return true;
    }
    // "pieced in a new one brown serge on the machine": a pronoun, and no count
    if (quantity && !(token.w === 'one' && !quantity.unit && /^(new|fresh|other|different)$/.test(before))) {
      // "two spot-cleaned", "one" as a pronoun: a bare small word number is only a number where something is counted.
      item.quantity = quantity;
      widenItem(item, tokens, quantity.next);
      return true;
    }
  }
  return false;
}

/** Does a note end in the name of a kind of work from token `k` on? */
const namesWork = (tokens: Token[], k: number): boolean => {
  const hit = LEXICON.longestAt(tokens, k);
  return (
    Boolean(hit?.payloads.some((s) => s.k === 'task')) && /^(|[.;,\n])$/.test(tokens[hit!.next]?.w ?? '')
  );
};

/** "was only on 2-2": a block behind the words that may stand before an hour. */
const isBlockBehind = (tokens: Token[], i: number, hour: { next: number; firm: boolean }): boolean =>
  !hour.firm &&
  tokens[i]!.kind === 'word' &&
  /^(?:only|on|just|like|say|oh)$/.test(tokens[i]!.w) &&
  tokens[hour.next]?.w === '-' &&
  tokens[hour.next]!.glued &&
  tokens[hour.next + 1]?.kind === 'number' &&
  tokens[hour.next + 1]!.glued;
