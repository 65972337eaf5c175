import type { MaterialUnit } from '../../../shared/vocabulary.ts';
import {
  BANKNOTES,
  CURRENCY_SIGNS,
  CURRENCY_WORDS,
  LENGTH_UNIT_SET,
  SMALL_MONEY_WORDS,
  UNIT_WORDS,
} from '../../lexicon/units.ts';
import { beginsNumber, readCount, readNumber, withFraction } from '../../text/read-number.ts';
import { startsNumber } from '../../text/starts-number.ts';
import type { Token } from '../../text/tokenise.ts';
import { wordAt as w } from '../../text/word-at.ts';

export type QuantityFound = { next: number; value?: number; unit?: MaterialUnit; rule: string };
/** `each`: the price is by the unit, which `unit` names where it was said; `whole`: it was said to be for all of them. */
export type CostFound = {
  next: number;
  amount: number;
  each: boolean;
  whole?: boolean;
  unit?: MaterialUnit;
  rule: string;
};

/** After these "in" is no inch: "cut 3 in the red", "did 2 in row four". */
const PLACE_AHEAD = new Set(
  'the a an row rows block blocks that this there my it one two three col column r hand'.split(' '),
);

/** The unit at token `i`; "in" is a unit only after digits and where no place follows. */
export function readUnit(
  tokens: Token[],
  i: number,
  afterDigits: boolean,
): { unit: MaterialUnit; next: number } | undefined {
  const t = tokens[i];
  if (!t) return undefined;
  if (t.w === 'fat' && /^(quarters?|qtrs?|qs?)$/.test(w(tokens, i + 1)))
    return { unit: 'fat-quarter', next: i + 2 };
  if (t.w === '-' && tokens[i + 1] && Object.hasOwn(UNIT_WORDS, w(tokens, i + 1)))
    return readUnit(tokens, i + 1, afterDigits);
  if (!Object.hasOwn(UNIT_WORDS, t.w)) return undefined;
  const unit = UNIT_WORDS[t.w]!;
  if (t.w === 'in') {
    if (!afterDigits) return undefined;
    // "2 in each way", "squares 2 in a side"
    const across = w(tokens, i + 2) === 'way' || (w(tokens, i + 1) === 'a' && w(tokens, i + 2) === 'side');
    if (PLACE_AHEAD.has(w(tokens, i + 1)) && !across) return undefined;
  }
  if (t.w === 'sp' && !afterDigits) return undefined;
  if (t.w === 'y' || t.w === 'g' || t.w === 'h' || t.w === 'm') if (!afterDigits) return undefined;
  if (t.w === 'length' || t.w === 'lengths' || t.w === 'sheet' || t.w === 'card' || t.w === 'cards')
    if (!['of'].includes(w(tokens, i + 1))) return undefined;
  return { unit, next: i + 1 };
}

/**
 * "62 1/2 in", "two and a half yards", "a yard and three eighths", "half a metre", "a couple of packs", "quarter-inch",
 * "5 ft 2" (62 in), "half a dozen". Gives the number and, where one is said, the unit.
 */
export function findQuantity(tokens: Token[], i: number): QuantityFound | undefined {
  const t = tokens[i];
  if (!t) return undefined;
  // "a yard and three eighths", "an inch and a half", "another skein"
  if ((t.w === 'a' || t.w === 'an' || t.w === 'another') && tokens[i + 1]) {
    const afterAnother = t.w === 'another' ? findQuantity(tokens, i + 1) : undefined;
    if (afterAnother?.unit) return afterAnother;
    // "a whole reel", "a good yard"
    const described = /^(whole|full|good|further|new|fresh)$/.test(w(tokens, i + 1)) ? 1 : 0;
    const unit = readUnit(tokens, i + 1 + described, false);
    if (unit && !(described && unit.unit === 'piece')) {
      const full = withFraction(tokens, { value: 1, next: unit.next, inWords: true, fraction: false });
      const cents = unit.unit === 'm' && full.next === unit.next ? centsBehind(tokens, unit.next) : undefined;
      if (cents)
        return { next: cents.next, value: 100 + cents.value, unit: 'cm', rule: 'amount.metre-and-cents' };
      return { next: full.next, value: full.value, unit: unit.unit, rule: 'amount.a-unit' };
    }
  }
  // "inch and a half tails", "yard and a quarter"
  if (['inch', 'yard', 'metre', 'meter'].includes(t.w) && w(tokens, i + 1) === 'and') {
    const full = withFraction(tokens, { value: 1, next: i + 1, inWords: true, fraction: false });
    if (full.next > i + 1)
      return { next: full.next, value: full.value, unit: UNIT_WORDS[t.w]!, rule: 'amount.unit-and-fraction' };
  }
  // "inch long tails", "inch seams"
  if (
    t.w === 'inch' &&
    /^(long|wide|tails?|seams?|strips?|apart|overhang|border|binding)$/.test(w(tokens, i + 1))
  )
    return { next: i + 1, value: 1, unit: 'in', rule: 'amount.bare-inch' };
  const number = readNumber(tokens, i);
  if (!number) return undefined;
  let next = number.next;
  let value = number.value;
  if (
    w(tokens, next) === 'more' ||
    w(tokens, next) === 'odd' ||
    (w(tokens, next) === 'or' && w(tokens, next + 1) === 'so')
  )
    next += w(tokens, next) === 'or' ? 2 : 1;
  if (
    w(tokens, next) === 'brass' ||
    w(tokens, next) === 'full' ||
    w(tokens, next) === 'new' ||
    w(tokens, next) === 'little' ||
    w(tokens, next) === 'small' ||
    w(tokens, next) === 'big' ||
    w(tokens, next) === 'whole'
  ) {
    const unit = readUnit(tokens, next + 1, false);
    if (unit) next++;
  }
  const marked = feetMarked(tokens, i, number);
  if (marked) return marked;
  // "7/8 of a yard"
  if (number.fraction && value < 1 && w(tokens, next) === 'of' && /^(a|an|the)$/.test(w(tokens, next + 1))) {
    const part = readUnit(tokens, next + 2, false);
    if (part && LENGTH_UNIT_SET.has(part.unit))
      return { next: part.next, value, unit: part.unit, rule: 'amount.part-of-unit' };
  }
  const unit = readUnit(tokens, next, !number.inWords);
  if (!unit) return { next: number.next, value, rule: 'amount.number' };
  next = unit.next;
  // "two yards and a half", "1 yd 1/4"
  const more = withFraction(tokens, { value, next, inWords: true, fraction: number.fraction });
  if (more.next > next && LENGTH_UNIT_SET.has(unit.unit)) {
    value = more.value;
    next = more.next;
  }
  if (unit.unit === 'ft') {
    const k = w(tokens, next) === 'and' ? next + 1 : next;
    const inches = readNumber(tokens, k);
    if (inches && inches.value < 12) {
      const named = readUnit(tokens, inches.next, !inches.inWords);
      if (named?.unit === 'in' || (!named && k === next))
        return {
          next: named ? named.next : inches.next,
          value: value * 12 + inches.value,
          unit: 'in',
          rule: 'amount.feet-and-inches',
        };
    }
  }
  if (unit.unit === 'm') {
    // "1 m 58 cm", "a metre and 20 centimetres"
    const smaller = Number.isInteger(value) ? readNumber(tokens, next) : undefined;
    const cm = smaller && readUnit(tokens, smaller.next, !smaller.inWords);
    if (smaller && smaller.value < 100 && cm?.unit === 'cm')
      return {
        next: cm.next,
        value: value * 100 + smaller.value,
        unit: 'cm',
        rule: 'amount.metres-and-centimetres',
      };
    // "one metre twenty", "1 m 75": the smaller unit wins
    const cents = Number.isInteger(value) ? centsBehind(tokens, next) : undefined;
    if (cents)
      return {
        next: cents.next,
        value: value * 100 + cents.value,
        unit: 'cm',
        rule: 'amount.metre-and-cents',
      };
  }
  return { next, value, unit: unit.unit, rule: 'amount.quantity' };
}

/** "one metre twenty", "2 m 10": the centimetres behind whole metres. */
function centsBehind(tokens: Token[], i: number): { value: number; next: number } | undefined {
  const cents = readCount(tokens, i);
  return cents &&
    cents.value >= 5 &&
    cents.value < 100 &&
    !readUnit(tokens, cents.next, !cents.inWords) &&
    !['minutes', 'minute', 'min', 'each', 'pins'].includes(w(tokens, cents.next)) &&
    // "three metres, twelve pounds" without the comma
    !Object.hasOwn(CURRENCY_WORDS, w(tokens, cents.next))
    ? cents
    : undefined;
}

/** `5'4"`, `6' 2 1/2"`, `5'`: feet and inches as they are written on a plan. */
function feetMarked(
  tokens: Token[],
  i: number,
  feet: { value: number; next: number; inWords: boolean },
): QuantityFound | undefined {
  const mark = tokens[feet.next];
  if (feet.inWords || !mark?.glued || !/^['’′]$/.test(mark.w) || feet.next !== i + 1) return undefined;
  const inches = readNumber(tokens, feet.next + 1);
  if (!inches || inches.inWords || inches.value >= 12)
    return { next: feet.next + 1, value: feet.value, unit: 'ft', rule: 'amount.quantity' };
  const closed = /^("|''|”|″|in|inch|inches|ins)$/.test(w(tokens, inches.next))
    ? inches.next + 1
    : inches.next;
  return {
    next: closed,
    value: feet.value * 12 + inches.value,
    unit: 'in',
    rule: 'amount.feet-and-inches',
  };
}

type Tail = { each: boolean; whole: boolean; next: number; unit?: MaterialUnit };
const SETS = /^(lot|pair|two|set|three|four|five|six|bundle|bag|whole|both|job|lots|packet|pack|box)$/;
/** All of the goods before, whatever they came in. */
const BUNCH = /^(?:bunch|batch|lot|lots|bundle|bag|box|packet|pack|card|set|shebang|caboodle)$/;

/** What follows a price: "each", "a yard", "/yd", "per metre", "the lot", "the pair", "for both", "altogether". */
function priceTail(tokens: Token[], i: number): Tail {
  const word = w(tokens, i);
  const after = w(tokens, i + 1);
  const none: Tail = { each: false, whole: false, next: i };
  const whole = (next: number): Tail => ({ each: false, whole: true, next });
  if (word === 'each' || word === 'apiece' || word === 'ea')
    return {
      each: true,
      whole: false,
      next:
        tokens[i + 1]?.w === '.' && tokens[i + 1]!.glued && word === 'ea' && tokens[i + 2] ? i + 1 : i + 1,
    };
  if (
    word === 'a' &&
    /^(piece|pop|throw|time|go|can|tin|bottle|tube|jar|bag|card|hank|pair|set|sheet)$/.test(after)
  )
    return { each: true, whole: false, next: i + 2 };
  if (
    word === 'a' ||
    word === 'an' ||
    word === 'per' ||
    word === '/' ||
    (word === 'the' && Object.hasOwn(UNIT_WORDS, after) && !SETS.test(after))
  ) {
    const unit = readUnit(tokens, i + 1, true);
    if (unit) return { each: true, whole: false, next: unit.next, unit: unit.unit };
    if (word === 'per' || word === '/') return { each: true, whole: false, next: i + 2 };
    return none;
  }
  // "seven dollars for the whole bunch", "9 the whole lot"
  const bunch = word === 'for' ? i + 1 : i;
  if (w(tokens, bunch) === 'the' && /^(?:whole|entire|full)$/.test(w(tokens, bunch + 1)))
    return BUNCH.test(w(tokens, bunch + 2)) && w(tokens, bunch + 3) !== 'of' ? whole(bunch + 3) : none;
  if (word === 'the' && (SETS.test(after) || BUNCH.test(after) || after === 'both')) return whole(i + 2);
  if (word === 'for' && /^(the|both|all|them|everything)$/.test(after)) {
    // "for the two", but "for the three yards"
    if (after === 'the')
      return (SETS.test(w(tokens, i + 2)) || BUNCH.test(w(tokens, i + 2))) &&
        !Object.hasOwn(UNIT_WORDS, w(tokens, i + 3))
        ? whole(i + 3)
        : none;
    // "for all five"
    if (after === 'all' && readCount(tokens, i + 2) && !Object.hasOwn(UNIT_WORDS, w(tokens, i + 3)))
      return whole(i + 3);
    return whole(
      /^(the|of|three|four|five|six)$/.test(w(tokens, i + 2)) &&
        SETS.test(w(tokens, i + 3) || w(tokens, i + 2))
        ? i + 3
        : i + 2,
    );
  }
  if (word === 'all' && /^(in|told|together|up)$/.test(after)) return whole(i + 2);
  if (word === 'in' && /^(all|total)$/.test(after)) return whole(i + 2);
  if (/^(together|total|altogether|tog|tot|both|incl|inclusive)$/.test(word)) return whole(i + 1);
  return none;
}

/** Digits of a price: "3.50", "8,75", "18". */
function priceDigits(tokens: Token[], i: number): { amount: number; next: number } | undefined {
  const t = tokens[i];
  if (t?.kind !== 'number' || t.w.includes(':') || t.w.includes('/') || (t.w.match(/\./g)?.length ?? 0) > 1)
    return undefined;
  const comma = tokens[i + 1];
  const cents = tokens[i + 2];
  if (
    comma?.w === ',' &&
    comma.glued &&
    cents?.glued &&
    cents.kind === 'number' &&
    /^\d\d$/.test(cents.w) &&
    /^\d+$/.test(t.w)
  )
    return { amount: t.value! + cents.value! / 100, next: i + 3 };
  return { amount: t.value!, next: i + 1 };
}

const PARTS_OF_MONEY: Record<string, number | undefined> = {
  'a half': 0.5,
  'a quarter': 0.25,
  'three quarters': 0.75,
};

/** Besides numbers, what a price begins with. */
const PRICE_HEADS = new Set([
  ...CURRENCY_SIGNS,
  '@',
  'at',
  'for',
  'cost',
  'paid',
  'spent',
  'back',
  '=',
  'costing',
]);

/**
 * "£3.50", "$9.20 a yard", "€14.20/m", "3 pound 50", "three pound fifty the lot", "a dollar ten each", "forty pence",
 * "@ 1.80", "at five ninety nine a yard", "for four seventy five", "24 the lot".
 */
export function findCost(tokens: Token[], i: number, commerce: boolean): CostFound | undefined {
  const t = tokens[i]!;
  if (!beginsNumber(t) && !PRICE_HEADS.has(t.w)) return undefined;
  const finish = (amount: number, next: number, rule: string): CostFound => {
    const tail = priceTail(tokens, next);
    return {
      amount: Math.round(amount * 1000) / 1000,
      each: tail.each,
      ...(tail.whole ? { whole: true } : {}),
      ...(tail.unit ? { unit: tail.unit } : {}),
      next: tail.next,
      rule,
    };
  };
  const sign = (j: number): boolean =>
    CURRENCY_SIGNS.has(w(tokens, j)) &&
    (tokens[j + 1]?.kind === 'number' || (w(tokens, j + 1) === '.' && tokens[j + 2]?.kind === 'number'));
  if (sign(i)) {
    // "Rs. 140"
    const digits = priceDigits(tokens, w(tokens, i + 1) === '.' ? i + 2 : i + 1);
    return digits ? finish(digits.amount, digits.next, 'cost.sign') : undefined;
  }
  const wordsAt = (j: number): CostFound | undefined => {
    // "a dollar ten", "three pound fifty", "twelve euros", "forty pence", "two dollars and a quarter"
    let start: { value: number; next: number } | undefined;
    // "for a fiver", "a tenner each"
    const note = w(tokens, j) === 'a' ? BANKNOTES[w(tokens, j + 1)] : undefined;
    if (note) return finish(note, j + 2, 'cost.words');
    if ((w(tokens, j) === 'a' || w(tokens, j) === 'one') && Object.hasOwn(CURRENCY_WORDS, w(tokens, j + 1)))
      start = { value: 1, next: j + 1 };
    else {
      const digits = priceDigits(tokens, j);
      start = digits ? { value: digits.amount, next: digits.next } : readNumber(tokens, j);
      if (start && w(tokens, start.next) === '-') start = undefined;
    }
    if (!start) return undefined;
    const unit = w(tokens, start.next);
    // "85c ea", and no column
    if (unit === 'c' && tokens[start.next]!.glued && tokens[start.next + 1]?.kind !== 'number')
      return finish(start.value / 100, start.next + 1, 'cost.pence');
    if (unit === '€' || unit === '£') return finish(start.value, start.next + 1, 'cost.sign-after');
    if (Object.hasOwn(SMALL_MONEY_WORDS, unit))
      return finish(start.value * SMALL_MONEY_WORDS[unit]!, start.next + 1, 'cost.pence');
    // "seven pound of old wool" is a weight
    if (
      !Object.hasOwn(CURRENCY_WORDS, unit) ||
      (/^pounds?$/.test(unit) && w(tokens, start.next + 1) === 'of')
    )
      return undefined;
    let next = start.next + 1;
    let amount = start.value;
    const k = w(tokens, next) === 'and' ? next + 1 : next;
    // "eleven dollars and a quarter", "two pounds and three quarters"
    const part = k > next ? PARTS_OF_MONEY[`${w(tokens, k)} ${w(tokens, k + 1)}`] : undefined;
    if (part) {
      amount += part;
      next = k + 2;
    } else {
      const small = readCount(tokens, k);
      if (
        small &&
        small.value < 100 &&
        (Object.hasOwn(SMALL_MONEY_WORDS, w(tokens, small.next)) ||
          (k === next &&
            !Object.hasOwn(UNIT_WORDS, w(tokens, small.next)) &&
            !['minutes', 'minute', 'blocks', 'pins', 'balls'].includes(w(tokens, small.next))))
      ) {
        amount += small.value / 100;
        next = Object.hasOwn(SMALL_MONEY_WORDS, w(tokens, small.next)) ? small.next + 1 : small.next;
      }
    }
    return finish(amount, next, 'cost.words');
  };
  const money = wordsAt(i);
  if (money) return money;
  if (!commerce) return undefined;
  // "@ 1.80", "at five ninety nine a yard", "for four seventy five", "came to 24"
  if (t.w === 'back' && !isSetBack(tokens, i)) return undefined;
  // "and at 14.15 I laid down the pen": the hour
  if (
    t.w === 'at' &&
    /^(?:[01]?\d|2[0-3])\.[0-5]\d$/.test(w(tokens, i + 1)) &&
    /^(?:i|we|started|stopped|finished|began)$/.test(w(tokens, i + 2))
  )
    return undefined;
  const lead =
    t.w === 'back' ||
    t.w === '@' ||
    t.w === 'at' ||
    t.w === 'for' ||
    t.w === 'cost' ||
    t.w === 'paid' ||
    t.w === 'spent' ||
    t.w === '=' ||
    t.w === 'costing';
  const j = lead ? i + 1 : i;
  if (lead) {
    const k = ['only', 'about', 'just', 'a', 'me'].includes(w(tokens, j)) ? j + 1 : j;
    if (sign(k)) return undefined;
    const worded = wordsAt(k);
    if (worded) return worded;
    const spoken = spokenPrice(tokens, k);
    // "cost me half an hour"
    if (
      spoken &&
      /^(minutes?|mins?|an?|hours?|hrs?|evenings?|days?)$/.test(w(tokens, spoken.next)) &&
      /^(cost|costing|took)$/.test(t.w) &&
      !readUnit(tokens, spoken.next + 1, false)
    )
      return undefined;
    // "strips @ 2.5 in": a length
    const long = spoken && /^(@|at)$/.test(t.w) ? readUnit(tokens, spoken.next, true)?.unit : undefined;
    if (long === 'in' || long === 'cm' || long === 'mm') return undefined;
    // "strips @ 2 1/4 in"
    if (spoken && /^(@|at)$/.test(t.w) && /^(?:in|cm|mm)$/.test(findQuantity(tokens, k)?.unit ?? ''))
      return undefined;
    // "spent twenty on the paperwork" is time; "spent twenty two fifty on thread" is money
    if (spoken && (t.w !== 'spent' || spoken.cents)) {
      const tail = priceTail(tokens, spoken.next);
      if (
        t.w === '@' ||
        t.w === 'back' ||
        t.w === 'cost' ||
        t.w === 'paid' ||
        t.w === 'spent' ||
        t.w === 'costing' ||
        tail.next > spoken.next ||
        spoken.cents ||
        t.w === '=' ||
        // "2 yards at 11"
        (t.w === 'at' && Object.hasOwn(UNIT_WORDS, w(tokens, i - 1)) && isEnd(tokens, spoken.next)) ||
        (t.w === 'for' && !Object.hasOwn(UNIT_WORDS, w(tokens, spoken.next)) && isEnd(tokens, spoken.next))
      ) {
        if (
          spoken.looksLikePlace &&
          tail.next === spoken.next &&
          t.w !== '@' &&
          t.w !== 'cost' &&
          t.w !== 'paid'
        )
          return undefined;
        return finish(spoken.amount, spoken.next, 'cost.spoken');
      }
    }
    return undefined;
  }
  // bare: "9.50 the lot", "24 the lot", "4.50 each", "11.40"
  const spoken = spokenPrice(tokens, i);
  if (!spoken) return undefined;
  const tail = priceTail(tokens, spoken.next);
  if (tail.next > spoken.next && w(tokens, spoken.next) !== 'a')
    return finish(spoken.amount, spoken.next, 'cost.tail');
  if (tail.next > spoken.next && spoken.cents) return finish(spoken.amount, spoken.next, 'cost.tail');
  // "six yards, nine a yard"
  if (tail.each && tail.unit && tail.unit !== 'in' && (i === 0 || /^(,|-|=|:)$/.test(w(tokens, i - 1))))
    return finish(spoken.amount, spoken.next, 'cost.tail');
  if (
    t.kind === 'number' &&
    /^\d+\.\d\d$/.test(t.w) &&
    !Object.hasOwn(UNIT_WORDS, w(tokens, spoken.next)) &&
    // "the batting 31.50 for two yards"
    (isEnd(tokens, spoken.next) ||
      w(tokens, spoken.next) === 'for' ||
      // "47.50 with postage"
      (w(tokens, spoken.next) === 'with' &&
        /^(postage|delivery|shipping|carriage|tax|vat|discount)$/.test(w(tokens, spoken.next + 1))))
  )
    return finish(spoken.amount, spoken.next, 'cost.decimal');
  if (t.kind === 'number' && spoken.next === i + 3)
    return finish(spoken.amount, spoken.next, 'cost.decimal-comma');
  // "a roll of batting twenty two fifty", "the reel was one eighty", "tulle four fifty for it"
  if (
    spoken.cents &&
    t.kind === 'word' &&
    (isEnd(tokens, spoken.next) ||
      (w(tokens, spoken.next) === 'for' && /^(it|them|that|those)$/.test(w(tokens, spoken.next + 1)))) &&
    (!/^(row|rows|block|blocks|road|rose|to|and|from|at|past|since|till|until)$/.test(w(tokens, i - 1)) ||
      // "which came to five sixty"
      (w(tokens, i - 1) === 'to' && /^(came|comes|come)$/.test(w(tokens, i - 2))))
  )
    return finish(spoken.amount, spoken.next, 'cost.spoken');
  return undefined;
}

/** "set me back six fifty": what was paid. */
export const isSetBack = (tokens: Token[], i: number): boolean =>
  w(tokens, i) === 'back' && /^(me|us)$/.test(w(tokens, i - 1)) && w(tokens, i - 2) === 'set';

const isEnd = (tokens: Token[], i: number): boolean => {
  const word = w(tokens, i);
  return (
    word === '' ||
    [
      ',',
      '.',
      ';',
      '\n',
      'and',
      '&',
      '+',
      'plus',
      ')',
      'then',
      '(',
      '-',
      'so',
      'but',
      'from',
      'even',
      'exactly',
      'flat',
      'incl',
      'including',
      'bought',
      // "the yarn was five fifty sorry"
      'sorry',
      'actually',
      'not',
      // "a spool of black thread three fifty oh and that's the mail"
      'oh',
      'ah',
      'hang',
      'hold',
      'wait',
    ].includes(word)
  );
};

/** A price without its currency: "5.99", "five ninety nine", "two twenty five", "four seventy five", "three fifty". */
function spokenPrice(
  tokens: Token[],
  i: number,
): { amount: number; next: number; cents: boolean; looksLikePlace: boolean } | undefined {
  const digits = priceDigits(tokens, i);
  if (digits) {
    // "2 25" as two numbers is two twenty-five
    const cents = tokens[digits.next];
    if (
      /^\d+$/.test(tokens[i]!.w) &&
      cents?.kind === 'number' &&
      /^\d\d$/.test(cents.w) &&
      digits.next === i + 1
    )
      return {
        amount: digits.amount + cents.value! / 100,
        next: digits.next + 1,
        cents: true,
        looksLikePlace: false,
      };
    if (
      tokens[digits.next]?.w === '-' ||
      (tokens[digits.next]?.w === '/' && tokens[digits.next + 1]?.kind === 'number')
    )
      return undefined;
    return {
      amount: digits.amount,
      next: digits.next,
      cents: /\.\d\d$/.test(tokens[i]!.w) || digits.next > i + 1,
      looksLikePlace: false,
    };
  }
  const whole = readCount(tokens, i);
  if (!whole) {
    const number = readNumber(tokens, i);
    return number
      ? { amount: number.value, next: number.next, cents: false, looksLikePlace: false }
      : undefined;
  }
  if (tokens[whole.next]?.w === 'hundred') {
    const number = readNumber(tokens, i)!;
    return { amount: number.value, next: number.next, cents: false, looksLikePlace: false };
  }
  // "four-fifty a yard", as it is typed
  const joined = w(tokens, whole.next) === '-' && startsNumber(w(tokens, whole.next + 1)) ? 1 : 0;
  const cents = readCount(tokens, whole.next + joined);
  if (joined && !(cents && cents.value > 10)) return undefined;
  if (cents && cents.value >= 10 && cents.value < 100)
    return { amount: whole.value + cents.value / 100, next: cents.next, cents: true, looksLikePlace: false };
  if (cents && w(tokens, whole.next) !== 'oh')
    return { amount: whole.value, next: whole.next, cents: false, looksLikePlace: true };
  if (w(tokens, whole.next) === 'oh' || w(tokens, whole.next) === 'o') {
    const small = readCount(tokens, whole.next + 1);
    if (small && small.value < 10)
      return {
        amount: whole.value + small.value / 100,
        next: small.next,
        cents: true,
        looksLikePlace: false,
      };
  }
  const number = readNumber(tokens, i)!;
  return { amount: number.value, next: number.next, cents: false, looksLikePlace: false };
}
