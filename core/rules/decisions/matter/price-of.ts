import type { DecisionStatus } from '../../../../shared/vocabulary.ts';
import { BOUGHT, JOB, OPEN_CUE, SETTLED_CUE } from '../../../lexicon/matters.ts';
import type { Item } from '../../item.ts';
import type { ReaderState } from '../../reader-state.ts';
import { isDayOfMonth } from '../is-deadline.ts';
import type { Part } from './part.ts';
import { allAgreed } from './shared-status.ts';

/** "asked 240, she said 225, shook on it" */
export const struckDeal = (words: string, items: Item[]): boolean =>
  (/\b(?:shook (?:hands )?on (?:it|that)|shook hands|what we shook on|shook on the (?:price|sum)|struck a (?:deal|bargain)|met (?:me )?(?:in the middle|half ?way)|it 's a deal|we have a deal)\b/.test(
    words,
  ) &&
    items.some(isSumOfJob)) ||
  // "forty-five pounds all in, shaken on": where nothing else is told in that sentence
  (/ (?:shaken (?:hands )?on|hands shaken|shaken hands)(?: it| that)? $/.test(words) &&
    items.length <= 9 &&
    items.some(isSumOfJob) &&
    !items.some((x) => x.topic && x.topic !== 'price'));

/** A sum that a job could cost, or a bare number of that size. */
export const isSumOfJob = (x: Item): boolean =>
  (x.cost?.amount ?? (x.quantity?.unit ? 0 : (x.quantity?.value ?? 0))) >= 10;

/** "240 agreed", "agreed on 240 with her", "three hundred it is", "180 all in": a sum, and nothing beside it but that it stands. */
const isSumAlone = (items: Item[]): boolean =>
  items.length <= 9 &&
  items.filter((x) => isSumOfJob(x) && (x.cost || (x.quantity?.value ?? 0) >= 30)).length === 1 &&
  items.every((x) => isSumOfJob(x) || AGREED_ON.has(x.w));

const AGREED_ON = new Set(
  "agreed settled on at to for it we is was are 're 'll be then and so ok okay 's 've with her him them they the owner client she he has have now all in told lot job total done deal yes said and".split(
    ' ',
  ),
);
const STANDS =
  / (?:agreed|settled|ok|okay|deal|done deal|(?:she|he|they|owner|client) said yes to) | it is(?: then)? $/;

/** "two eighty, agreed", "180 all told, she's happy": the sum, and behind it that it stands, or that it does not yet. */
function sumAgreed(parts: Part[], k: number): DecisionStatus | undefined {
  const { items, words } = parts[k]!;
  if (!isSumAlone(items)) return undefined;
  const next = parts[k + 1];
  if (/ (?:n't|not) /.test(words)) return undefined;
  if (STANDS.test(words)) return next?.topic || next?.cue !== 'open' ? 'settled' : 'open';
  if (!next || next.topic || !/^(?:,|and|--|-|but|:)$/.test(next.joint) || next.items.length > 7)
    return undefined;
  return next.cue ?? (SHE_IS_HAPPY.test(next.words) ? 'settled' : undefined);
}

const SHE_IS_HAPPY =
  /^ (?:and )?(?:she|he|they|the \w+|owner|client) (?:is|'s|are|'re|was|were) (?:quite |very |perfectly )?(?:happy|pleased|fine|ok|okay|content)(?: with (?:that|it|this))? $/;

/** "settled today: 240, the 12th of June": a bare sum in a list of what is settled. */
const isBareSum = (items: Item[]): boolean => isSumAlone(items) && items.some(isSumOfJob);

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
    part.items.some(
      (x, at) =>
        x.quantity?.value !== undefined &&
        !x.quantity.unit &&
        x.quantity.value >= 10 &&
        // "the whole job has to be finished by November 20"
        !isDayOfMonth(part.items, at),
    );
  const agreedOn = sumAgreed(parts, k);
  if (agreedOn) return headed ?? agreedOn;
  if (headed && isBareSum(part.items)) return headed;
  // "240, hand quilting, cotton batting: all agreed"
  if (parts.length > 2 && allAgreed(parts) && isBareSum(part.items)) return 'settled';
  if (!sum && !named && !bareSum) return undefined;
  if (BOUGHT.test(part.words)) return undefined;
  // "bought 200 pins, 7 dollars for the whole lot": the price of what was told before it
  if (!named && !/ (?:job|work|agreed|settled) /.test(near) && parts.slice(0, k).some(areGoods))
    return undefined;
  // "quoted her 150, no answer yet"
  if (
    !part.topic &&
    /\b(?:quoted|offered|told|asked)\b/.test(part.words) &&
    parts[k + 1] &&
    !parts[k + 1]!.topic &&
    parts[k + 1]!.cue === 'open'
  )
    return 'open';
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

const areGoods = ({ words, items }: Part): boolean =>
  / (?:bought|purchased|ordered|got|picked up|fetched|found) /.test(words) &&
  items.some((x) => x.quantity || x.material);

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
