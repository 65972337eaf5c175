import type { DecisionStatus } from '../../../../shared/vocabulary.ts';
import { BOUGHT, JOB, OPEN_CUE, SETTLED_CUE } from '../../../lexicon/matters.ts';
import type { Item } from '../../item.ts';
import type { ReaderState } from '../../reader-state.ts';
import type { Part } from './part.ts';

/** "asked 240, she said 225, shook on it" */
export const struckDeal = (words: string, items: Item[]): boolean =>
  /\b(?:shook (?:hands )?on (?:it|that)|shook hands|what we shook on|struck a (?:deal|bargain)|met (?:me )?(?:in the middle|half ?way)|it 's a deal|we have a deal)\b/.test(
    words,
  ) && items.some(isSumOfJob);

/** A sum that a job could cost, or a bare number of that size. */
export const isSumOfJob = (x: Item): boolean =>
  (x.cost?.amount ?? (x.quantity?.unit ? 0 : (x.quantity?.value ?? 0))) >= 10;

/** "240 agreed", "agreed on 240 with her": a sum, and nothing beside it but that it stands. */
const isSumAgreed = (items: Item[]): boolean =>
  items.length <= 7 &&
  items.some((x) => /^(agreed|settled)$/.test(x.w)) &&
  items.filter((x) => isSumOfJob(x) && (x.cost || (x.quantity?.value ?? 0) >= 30)).length === 1 &&
  items.every((x) => isSumOfJob(x) || AGREED_ON.has(x.w));

const AGREED_ON = new Set(
  'agreed settled on at for it we is was then and so ok with her him them the owner client she he has have now all'.split(
    ' ',
  ),
);

/** The part that names the price of the job, and whether it is agreed. */
export function priceOf(
  parts: Part[],
  k: number,
  headed: DecisionStatus | undefined,
): DecisionStatus | undefined {
  const part = parts[k]!;
  const sum = part.items.find((x) => x.cost);
  const near = `${part.words}${/^(,|and|&|\+|but|so|--)$/.test(parts[k + 1]?.joint ?? '') && !parts[k + 1]?.topic ? parts[k + 1]!.words : ''}`;
  const named =
    (/\b(?:told|quoted|offered) (?:her|him|them|the (?:owner|client))\b/.test(part.words) &&
      part.items.some((x) => (x.cost?.amount ?? x.quantity?.value ?? 0) >= 10 && !x.quantity?.unit)) ||
    /\b(?:(?<!same )price|fee|quote|deposit|charging|what (?:do|should|shall|to|can) i? ?(?:charge|ask)|what to charge|how much to charge)\b/.test(
      part.words,
    );
  const bareSum =
    !sum &&
    JOB.test(part.words) &&
    part.items.some((x) => x.quantity?.value !== undefined && !x.quantity.unit && x.quantity.value >= 10);
  if (isSumAgreed(part.items)) return 'settled';
  if (!sum && !named && !bareSum) return undefined;
  if (BOUGHT.test(part.words)) return undefined;
  // "charging her by the hour, twenty five dollars"
  const next = parts[k + 1];
  const sumNext =
    next !== undefined && !next.topic && next.items.length <= 3 && next.items.some((x) => x.cost);
  const agreed =
    SETTLED_CUE.test(near) &&
    !/\b(?:n't|not|still to be|to be) (?:yet )?(?:agreed|settled|decided|fixed)\b/.test(near);
  if (!named && !JOB.test(near) && !agreed) return undefined;
  if (sum && !named && !JOB.test(near) && !agreed) return undefined;
  if (headed) return part.joint === 'but' && agreed ? 'settled' : headed;
  if (
    part.status === 'open' ||
    (OPEN_CUE.test(part.words) && !sum) ||
    /\b(?:waiting|thinking (?:about|it|on)|n't (?:answered|said|agreed|heard)|not (?:yet )?(?:heard|agreed|answered))\b/.test(
      near,
    )
  )
    return 'open';
  if (sum || bareSum || sumNext) return 'settled';
  return part.status ?? (part.cue || agreed ? 'settled' : 'open');
}

/** "She says 250", where the price stood open: the sum of the job. */
export function priceTold(state: ReaderState, parts: Part[]): DecisionStatus | undefined {
  if (parts.length > 2 || !state.memory.matters?.some((m) => m.about === 'price')) return undefined;
  const { items, words } = parts[0]!;
  const sums = items.filter((x) => isSumOfJob(x) && !x.quantity?.unit);
  return items.length <= 6 &&
    sums.length === 1 &&
    !BOUGHT.test(words) &&
    !items.some((x) => x.action || x.finding || x.material || x.duration) &&
    / (?:happy|pleased|says|said|ok|okay|fine|make it|it is|it 's|agreed|go with|going with|settled on|asking|ask) /.test(
      parts.map((p) => p.words).join(''),
    )
    ? 'settled'
    : undefined;
}
