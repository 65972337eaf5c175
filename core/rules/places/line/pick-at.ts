import { BLOCK_SLIPS } from '../../../lexicon/place-words.ts';
import { readCount, readOrdinal } from '../../../text/read-number.ts';
import type { Token } from '../../../text/tokenise.ts';
import { wordAt as w } from '../../../text/word-at.ts';
import { countUp } from '../grid.ts';
import type { PlaceContext } from '../place-found.ts';
import { BLOCK_NOUNS } from '../place-tokens.ts';
import { readIndexList } from '../read-index.ts';
import { type Axis, axisOf, countingAlong } from './axis-of.ts';
import { choicesAt, chosen, fromEnd } from './choices-at.ts';
import { countedAtEnd, ENDS, fits } from './ends-of-line.ts';
import { lineAt } from './line-at.ts';

/** Which of `total` blocks along a line are meant; undefined where the words don't fit that kind of line. */
type Pick = { of: (total: number, axis: Axis) => number[] | undefined; next: number; noun: boolean };

/** Which blocks of a line: "block three", "the fourth one down", "second from the right", "both ends", "the first half", "last two". */
export function pickAt(tokens: Token[], i: number, ctx: PlaceContext, afterLine: boolean): Pick | undefined {
  let j = i;
  if (/^(the|its|only|just)$/.test(w(tokens, j))) j++;
  const word = w(tokens, j);
  // "the bottom row is mildewed end to end": all along it
  if (word === 'end' && w(tokens, j + 1) === 'to' && w(tokens, j + 2) === 'end') return undefined;
  // "block three", "blocks two to five", "no. 3", "number three"
  // "third row, no fourth row" puts right, and "row 3 no 4" counts
  const numbered =
    word === 'number' ||
    word === '#' ||
    (word === 'no' && !readOrdinal(tokens, j + 1) && !readOrdinal(tokens, j + 2));
  const lead = /^(from|up|as|down|along|across)$/.test(word) ? leadIn(tokens, j) : undefined;
  const at = lead?.at ?? j;
  const nounFirst =
    BLOCK_NOUNS.has(w(tokens, at)) || (BLOCK_SLIPS.includes(w(tokens, at)) && afterLine && !lead);
  if (nounFirst || numbered || (w(tokens, at) === 'b' && readCount(tokens, at + 1))) {
    let k = (lead?.at ?? j) + 1;
    if (numbered && w(tokens, k) === '.') k++;
    const list = readIndexList(tokens, k, {
      prefix: BLOCK_PREFIX,
      homophones: BLOCK_NOUNS.has(w(tokens, at)),
      max: Math.max(ctx.grid.blocks, ctx.grid.rows),
      plural: w(tokens, at).endsWith('s'),
    });
    if (!list) return undefined;
    if (!BLOCK_NOUNS.has(w(tokens, at)) && nounFirst && list.values.length > 1) return undefined;
    if (lead?.to) return { of: () => countUp(1, list.values.at(-1)!), next: list.next, noun: true };
    const end = openEnd(tokens, list.next, Boolean(lead));
    if (end) return { of: (total) => countUp(list.values.at(-1)!, total), next: end, noun: true };
    return { of: () => list.values, next: list.next, noun: true };
  }
  if (lead) {
    const nth = readOrdinal(tokens, w(tokens, lead.at) === 'the' ? lead.at + 1 : lead.at);
    const named =
      nth && (BLOCK_NOUNS.has(w(tokens, nth.next)) || (afterLine && w(tokens, nth.next) === 'one'));
    if (lead.to)
      return nth && named ? { of: () => countUp(1, nth.value), next: nth.next + 1, noun: true } : undefined;
    // "column four from the third block down"
    const onward = nth && named ? openEnd(tokens, nth.next + 1, true) : undefined;
    if (nth && onward) return { of: (total) => countUp(nth.value, total), next: onward, noun: true };
  }
  // "both ends", "either end", "the two ends"
  const led = /^(both|either|each|two)$/.test(word) ? j + 1 : j;
  if (
    (led > j || word === 'ends') &&
    /^(ends?)$/.test(w(tokens, led)) &&
    !BLOCK_NOUNS.has(w(tokens, led + 1))
  )
    return { of: (total) => [1, total], next: led + 1, noun: true };
  // "the first half", "left half"
  const half = ENDS.get(word);
  if (half && w(tokens, j + (w(tokens, j + 1) === 'hand' ? 2 : 1)) === 'half') {
    const next = j + (w(tokens, j + 1) === 'hand' ? 3 : 2);
    return {
      of: (total, axis) =>
        fits(half.way, countingAlong(axis)) && total % 2 === 0
          ? countedAtEnd(half.end, total / 2, total)
          : undefined,
      next,
      noun: true,
    };
  }
  // "two to five": after the line or before it
  const range = readCount(tokens, j);
  if (range && /^(to|through|thru|-)$/.test(w(tokens, range.next))) {
    const last = readCount(tokens, range.next + 1);
    if (
      last &&
      last.value > range.value &&
      last.value <= Math.max(ctx.grid.blocks, ctx.grid.rows) &&
      !UNITS_AFTER.test(w(tokens, last.next))
    )
      return { of: () => countUp(range.value, last.value), next: last.next, noun: false };
  }
  const several = severalAtEnd(tokens, range ?? pairAt(tokens, j));
  if (several) return several;
  const choices = choicesAt(tokens, j);
  if (!choices) return undefined;
  let next = choices.next;
  const only = choices.list.length === 1 ? choices.list[0]! : undefined;
  let noun = false;
  if (BLOCK_NOUNS.has(w(tokens, next)) || /^(ones?|patch|patches)$/.test(w(tokens, next))) {
    next++;
    noun = true;
  } else if (w(tokens, next) === 'end' && only && !only.ordinal) {
    // "the right-hand end", "far end"
    next++;
    noun = true;
  } else if (
    /^(end|start|beginning)$/.test(w(tokens, next - 1)) &&
    only &&
    !only.counted &&
    w(tokens, next) === 'of'
  )
    noun = true;
  let of: Pick['of'] = (total, axis) => chosen(choices.list, total, countingAlong(axis));
  // "the end blocks of rows two and three": at both ends of each
  if (only && !only.counted && word === 'end' && next === j + 2 && w(tokens, j + 1).endsWith('s'))
    return { of: (total) => [1, total], next, noun: true };
  // "the last block but one"
  const less = word === 'last' && noun && w(tokens, next) === 'but' ? readCount(tokens, next + 1) : undefined;
  if (less && less.value < 4) return { of: (total) => [total - less.value], next: less.next, noun: true };
  if (only?.ordinal || choices.list.every((c) => c.ordinal)) {
    const from = fromEnd(tokens, next);
    if (from) {
      next = from.next;
      noun = true;
      of = (total, axis) => {
        const picked = fits(from.way, countingAlong(axis))
          ? chosen(choices.list, total, countingAlong(axis))
          : undefined;
        return from.end === 'end' ? picked?.map((k) => total + 1 - k) : picked;
      };
    } else if (
      (/^(along|across|over|down|up)$/.test(w(tokens, next)) && !lineAfter(tokens, next, ctx)) ||
      (w(tokens, next) === 'in' &&
        !/^(the|rows?|that|columns?|cols?|this|each|every|all|both)$/.test(w(tokens, next + 1)))
    ) {
      const way = w(tokens, next);
      next++;
      noun = true;
      of = (total, axis) => {
        const picked = chosen(choices.list, total, countingAlong(axis));
        if (countingAlong(axis) === 'across' && (way === 'down' || way === 'up')) return undefined;
        if (countingAlong(axis) === 'down' && (way === 'across' || way === 'over')) return undefined;
        return way === 'up' ? picked?.map((k) => total + 1 - k) : picked;
      };
    }
  }
  // "the last two" and "the end" may stand alone; "the third", "top" may not
  const atEnd = w(tokens, next - 1) === 'end' && !(w(tokens, j - 1) === 'the' && w(tokens, j - 2) === 'in');
  // "row two: the first and the last are torn"
  const bothEnds = choices.list.length === 2 && word === 'first' && w(tokens, next - 1) === 'last';
  // "third from bottom in column four"
  const back = only?.back && /^(of|in|on)$/.test(w(tokens, next));
  // "the fourth in each of rows one and two"
  const ofEach = only && /^(of|in)$/.test(w(tokens, next)) && /^(each|every)$/.test(w(tokens, next + 1));
  if (!noun && !bothEnds && !back && !ofEach && !(only && (only.counted || atEnd))) return undefined;
  if (axisOf(w(tokens, next)) || /^(column|corner|border|edge|side)/.test(w(tokens, next))) return undefined;
  return { of, next, noun };
}

/** "the pair at the left end", "a couple of blocks at the top". */
function pairAt(tokens: Token[], i: number): { value: number; next: number } | undefined {
  const k = w(tokens, i) === 'a' ? i + 1 : i;
  if (!/^(pair|couple)$/.test(w(tokens, k))) return undefined;
  return { value: 2, next: w(tokens, k + 1) === 'of' && BLOCK_NOUNS.has(w(tokens, k + 2)) ? k + 2 : k + 1 };
}

/** "the two blocks at the top (of column three)", "three at the right-hand end (of row two)". */
function severalAtEnd(tokens: Token[], n: { value: number; next: number } | undefined): Pick | undefined {
  if (!n) return undefined;
  let k = BLOCK_NOUNS.has(w(tokens, n.next)) || w(tokens, n.next) === 'ones' ? n.next + 1 : n.next;
  // "three in the middle of the bottom row"
  const middle = /^(in|at) the (?:very )?(middle|centre|center) (of|in) $/.test(
    [0, 1, 2, 3].map((m) => `${w(tokens, k + m)} `).join(''),
  );
  if (middle && n.value > 1)
    return {
      of: (total) =>
        n.value < total && (total - n.value) % 2 === 0
          ? countUp((total - n.value) / 2 + 1, (total + n.value) / 2)
          : undefined,
      next: k + 3,
      noun: true,
    };
  if (n.value < 2 || !/^(at|on|to|along|down)$/.test(w(tokens, k))) return undefined;
  k++;
  while (/^(the|far|very)$/.test(w(tokens, k))) k++;
  const told = ENDS.get(w(tokens, k));
  if (!told) return undefined;
  k++;
  while (/^(-|hand|most|end|side)$/.test(w(tokens, k))) k++;
  if (!/^(of|in)$/.test(w(tokens, k))) return undefined;
  return {
    of: (total, axis) =>
      fits(told.way, countingAlong(axis)) && n.value < total
        ? countedAtEnd(told.end, n.value, total)
        : undefined,
    next: k,
    noun: true,
  };
}

const BLOCK_PREFIX = new Set([...BLOCK_NOUNS, 'b']);

const UNITS_AFTER =
  /^(in|inch|inches|cm|mm|m|yards?|yds?|minutes?|mins?|hours?|hrs?|ft|feet|oz|g|skeins?|spools?)$/;

/** "the second block up in the top row", "third one over on row four": how far away the line is, and no way of counting. */
const lineAfter = (tokens: Token[], i: number, ctx: PlaceContext): boolean =>
  /^(up|over)$/.test(w(tokens, i)) &&
  /^(in|on|at|along)$/.test(w(tokens, i + 1)) &&
  lineAt(tokens, w(tokens, i + 2) === 'the' ? i + 3 : i + 2, ctx) !== undefined;

/** "from block two", "up to block three", "as far as the third block". */
function leadIn(tokens: Token[], j: number): { at: number; to: boolean } | undefined {
  if (w(tokens, j) === 'from') return { at: j + 1, to: false };
  if (/^(up|down|along|across)$/.test(w(tokens, j)) && w(tokens, j + 1) === 'to')
    return { at: w(tokens, j + 2) === 'the' ? j + 3 : j + 2, to: true };
  if (w(tokens, j) === 'as' && w(tokens, j + 1) === 'far' && w(tokens, j + 2) === 'as')
    return { at: w(tokens, j + 3) === 'the' ? j + 4 : j + 3, to: true };
  return undefined;
}

/** "to the end", "on", "onwards", "to the right-hand edge": the rest of the line. */
function openEnd(tokens: Token[], i: number, from: boolean): number | undefined {
  if (/^(onwards?|rightwards?)$/.test(w(tokens, i))) return i + 1;
  if (
    w(tokens, i) === 'and' &&
    /^(onwards?|on)$/.test(w(tokens, i + 1)) &&
    !/^(the|a|row)$/.test(w(tokens, i + 2))
  )
    return i + 2;
  if (from && w(tokens, i) === 'on' && !/^(the|a|row|it)$/.test(w(tokens, i + 1))) return i + 1;
  if (from && /^(along|down|across)$/.test(w(tokens, i)) && !/^(the|a|row|it)$/.test(w(tokens, i + 1)))
    return i + 1;
  let j = /^(right|along|across|out)$/.test(w(tokens, i)) ? i + 1 : i;
  if (w(tokens, j) !== 'to' || w(tokens, j + 1) !== 'the') return undefined;
  j += 2;
  if (w(tokens, j) === 'right' && w(tokens, j + 1) === 'hand') j += 2;
  return /^(end|edge|side)$/.test(w(tokens, j)) ? j + 1 : undefined;
}
