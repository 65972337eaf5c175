import { readCount, readOrdinal } from '../../../text/read-number.ts';
import type { Token } from '../../../text/tokenise.ts';
import { wordAt as w } from '../../../text/word-at.ts';
import { countUp, unique } from '../grid.ts';
import { BLOCK_NOUNS } from '../place-tokens.ts';
import type { Counting } from './axis-of.ts';
import { axisOf } from './axis-of.ts';
import { countedAtEnd, ENDS, fits } from './ends-of-line.ts';

export type Choice = {
  of: (total: number, counting: Counting) => number[] | undefined;
  next: number;
  counted: boolean;
  ordinal: boolean;
  /** Counted back from an end that is named: "third from bottom". */
  back?: true;
};

/** Several choices before one noun: "first and third", "top and bottom", "left-hand and right-hand", "2nd, 4th & 5th". */
export function choicesAt(tokens: Token[], i: number): { list: Choice[]; next: number } | undefined {
  const first = choiceAt(tokens, i);
  if (!first) return undefined;
  const list = [first];
  let j = first.next;
  for (;;) {
    let k = j;
    while (/^(,|and|&|\+|the|\/)$/.test(w(tokens, k)) && k < j + 3) k++;
    const more = k > j ? choiceAt(tokens, k) : undefined;
    // nobody picks more one by one, and a note that says "left the left the …" for ever must not take for ever
    if (!more || list.length >= MOST_CHOICES) return { list, next: j };
    // "204 on the right, the two right-hand columns": a side, and then columns
    const before = list.at(-1)!;
    if (w(tokens, j) === ',' && more.counted && !before.counted && !before.ordinal) return { list, next: j };
    list.push(more);
    j = more.next;
  }
}

/** How many choices are listed at the most. */
const MOST_CHOICES = 12;

export const chosen = (list: Choice[], total: number, counting: Counting): number[] | undefined => {
  const picked = list.map((c) => c.of(total, counting));
  return picked.some((p) => p === undefined) ? undefined : unique(picked.flatMap((p) => p!));
};

/** One choice before a noun: "third", "top", "bottom two", "two left-hand", "second to last", "last couple of", "odd". */
export function choiceAt(tokens: Token[], i: number): Choice | undefined {
  const word = w(tokens, i);
  const after = w(tokens, i + 1);
  // "every last block of it": all of them
  if (word === 'last' && /^(every|each)$/.test(w(tokens, i - 1))) return undefined;
  if (word === 'odd' || word === 'even')
    return {
      of: (total) => countUp(1, total).filter((k) => k % 2 === (word === 'odd' ? 1 : 0)),
      next: /^(numbered|number)$/.test(after) ? i + 2 : i + 1,
      counted: true,
      ordinal: false,
    };
  // "second to last", "next to last", "third from last", "second last", "last but one", "penultimate"
  const back = backFromEnd(tokens, i);
  if (back)
    return {
      of: (total, counting) =>
        fits(back.way, counting) && total - back.steps >= 1
          ? [back.start ? 1 + back.steps : total - back.steps]
          : undefined,
      next: back.next,
      counted: false,
      ordinal: true,
      back: true,
    };
  const nth = readOrdinal(tokens, i);
  const led = word === 'both' ? { value: 2, next: i + 1 } : nth ? undefined : readSome(tokens, i);
  let j = led ? led.next : i;
  // "both of the right-hand columns"
  if (word === 'both' && w(tokens, j) === 'of') j++;
  if (word === 'both' && w(tokens, j) === 'the') j++;
  if (w(tokens, j) === 'very' || w(tokens, j) === 'far') j++;
  // "start row five" begins the work there
  const end =
    /^(start|beginning)$/.test(w(tokens, j)) && w(tokens, j + 1) !== 'of'
      ? undefined
      : ENDS.get(w(tokens, j));
  if (end && !(led && led.value < 2)) {
    j++;
    while (/^(hand|most)$/.test(w(tokens, j))) j++;
    const counted = led ? undefined : readSome(tokens, j);
    // "the first of the rows", "left 3-2" are none
    if (counted && counted.value > 12) return undefined;
    const count = led?.value ?? counted?.value ?? 1;
    const pairOfEnds = end.end === 'end' && w(tokens, j - 1) === 'end' && count === 2;
    return {
      of: (total, counting) =>
        fits(end.way, counting) ? countedAtEnd(pairOfEnds ? 'both' : end.end, count, total) : undefined,
      next: counted ? counted.next : j,
      counted: Boolean(led || counted) || end.end === 'both' || end.end === 'inner',
      ordinal: false,
    };
  }
  if (led) return undefined;
  return nth && { of: () => [nth.value], next: nth.next, counted: false, ordinal: true };
}

/** "two", "a couple of", "couple of", "pair of"; never more than a dozen. */
function readSome(tokens: Token[], i: number): { value: number; next: number } | undefined {
  const j = w(tokens, i) === 'a' ? i + 1 : i;
  if (/^(couple|pair)$/.test(w(tokens, j)))
    return { value: 2, next: w(tokens, j + 1) === 'of' ? j + 2 : j + 1 };
  if (/^(to|too)$/.test(w(tokens, i)) && /^(rows|columns|cols|blocks)$/.test(w(tokens, i + 1)))
    return { value: 2, next: i + 1 };
  const n = readCount(tokens, i);
  return n && n.value > 0 && n.value <= 12 ? { value: n.value, next: n.next } : undefined;
}

function backFromEnd(
  tokens: Token[],
  i: number,
): { steps: number; next: number; way: Counting | 'any'; start: boolean } | undefined {
  const word = w(tokens, i);
  if (word === 'penultimate') return { steps: 1, next: i + 1, way: 'any', start: false };
  if (word === 'last' && w(tokens, i + 1) === 'but') {
    const n = readCount(tokens, i + 2);
    return n && n.value < 4 ? { steps: n.value, next: n.next, way: 'any', start: false } : undefined;
  }
  const nth = word === 'next' ? { value: 2, next: i + 1 } : readOrdinal(tokens, i);
  if (!nth || nth.value < 2) return undefined;
  let j = nth.next;
  if (/^(to|from)$/.test(w(tokens, j))) j++;
  else if (w(tokens, j) !== 'last') return undefined;
  if (w(tokens, j) === 'the') j++;
  const end = ENDS.get(w(tokens, j));
  // "second to last", "third from bottom", but "second from the left" only where a noun follows it
  if (!end || (end.end !== 'end' && end.end !== 'start') || word === 'first') return undefined;
  return { steps: nth.value - 1, next: j + 1, way: end.way, start: end.end === 'start' };
}

/** "from the bottom", "up from the bottom", "in from the left", "from right": which end an ordinal was counted from. */
export function fromEnd(
  tokens: Token[],
  i: number,
): { end: 'start' | 'end'; next: number; way: Counting | 'any' } | undefined {
  let j = i;
  if (/^(up|down|in|over|along|across|back|out)$/.test(w(tokens, j))) j++;
  if (!/^(from|off)$/.test(w(tokens, j)) && !(w(tokens, j) === 'to' && w(tokens, j + 1) === 'the'))
    return undefined;
  if (w(tokens, j) === 'to') return undefined;
  j++;
  if (/^(the|its)$/.test(w(tokens, j))) j++;
  const end = ENDS.get(w(tokens, j));
  if (!end || (end.end !== 'start' && end.end !== 'end') || w(tokens, j) === 'first') {
    // "3rd from L"
    if (w(tokens, j) === 'l') return { end: 'start', next: j + 1, way: 'across' };
    if (w(tokens, j) === 'r' && !readCount(tokens, j + 1)) return { end: 'end', next: j + 1, way: 'across' };
    return undefined;
  }
  j++;
  if (w(tokens, j) === 'hand') j++;
  if (/^(side|end|edge)$/.test(w(tokens, j))) j++;
  // "from the top row" begins another line
  if (axisOf(w(tokens, j)) || BLOCK_NOUNS.has(w(tokens, j))) return undefined;
  return { end: end.end, next: j, way: end.way };
}
