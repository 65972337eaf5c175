import { BLOCK_SLIPS, COLUMN_WORDS, LINE_SLIPS } from '../../lexicon/place-words.ts';
import { readCount, readOrdinal } from '../../text/read-number.ts';
import type { Token } from '../../text/tokenise.ts';
import { wordAt as w } from '../../text/word-at.ts';
import { blockAt, columnOf, countUp, gridOfRow, rowOf, splitBlock, unique } from './grid.ts';
import { linesSpokenAt } from './line-spoken.ts';
import type { PlaceContext, PlaceFound } from './place-found.ts';
import { BLOCK_NOUNS } from './place-tokens.ts';
import { readIndex, readIndexList } from './read-index.ts';

/**
 * Places told as lines of the grid and what is picked from them: "the fourth block down in the third column", "row five,
 * second from the right", "the bottom two in column four". A line is a row or a column or several of one kind; a pick is
 * which of its blocks are meant. Either may be said first.
 */

type Axis = 'row' | 'column';
/** `named`: the lines were told by number, not by "top", "last" and the like. */
type Line = {
  axis: Axis;
  lines: number[];
  next: number;
  how: 'said' | 'implied';
  named: boolean;
  /** Half of the quilt, or of what was spoken of. */
  half?: boolean;
};
/** Which of `total` blocks along a line are meant; undefined where the words don't fit that kind of line. */
type Pick = { of: (total: number, axis: Axis) => number[] | undefined; next: number; noun: boolean };

const ROW_NOUNS = new Set(['row', 'rows', ...LINE_SLIPS]);
const COLUMN_NOUNS = new Set(COLUMN_WORDS.filter((x) => x !== 'c'));
const ROW_PREFIX = new Set(['row', 'rows']);
const axisOf = (noun: string): Axis | undefined =>
  ROW_NOUNS.has(noun) ? 'row' : COLUMN_NOUNS.has(noun) ? 'column' : undefined;
const totalOf = (ctx: PlaceContext, axis: Axis): number => (axis === 'row' ? ctx.grid.rows : ctx.grid.blocks);
/** How many blocks can be counted along a line. */
const lengthOf = (ctx: PlaceContext, { axis, lines }: Line): number =>
  axis === 'column' ? ctx.grid.rows : Math.max(0, ...lines.map((row) => gridOfRow(ctx.grid, row).blocks));

type End = 'start' | 'end' | 'middle' | 'both' | 'inner';
/** Words for an end of a line, and the kind of counting that they fit: rows are counted downwards, blocks in a row across. */
const ENDS = new Map<string, { end: End; way: 'down' | 'across' | 'any' }>(
  Object.entries({
    top: { end: 'start', way: 'down' },
    topmost: { end: 'start', way: 'down' },
    upper: { end: 'start', way: 'down' },
    uppermost: { end: 'start', way: 'down' },
    highest: { end: 'start', way: 'down' },
    head: { end: 'start', way: 'down' },
    bottom: { end: 'end', way: 'down' },
    btm: { end: 'end', way: 'down' },
    bottommost: { end: 'end', way: 'down' },
    lower: { end: 'end', way: 'down' },
    lowest: { end: 'end', way: 'down' },
    lowermost: { end: 'end', way: 'down' },
    left: { end: 'start', way: 'across' },
    leftmost: { end: 'start', way: 'across' },
    lh: { end: 'start', way: 'across' },
    right: { end: 'end', way: 'across' },
    rightmost: { end: 'end', way: 'across' },
    rh: { end: 'end', way: 'across' },
    first: { end: 'start', way: 'any' },
    '1st': { end: 'start', way: 'any' },
    opening: { end: 'start', way: 'any' },
    start: { end: 'start', way: 'any' },
    beginning: { end: 'start', way: 'any' },
    last: { end: 'end', way: 'any' },
    final: { end: 'end', way: 'any' },
    end: { end: 'end', way: 'any' },
    endmost: { end: 'end', way: 'any' },
    middle: { end: 'middle', way: 'any' },
    centre: { end: 'middle', way: 'any' },
    center: { end: 'middle', way: 'any' },
    central: { end: 'middle', way: 'any' },
    mid: { end: 'middle', way: 'any' },
    outer: { end: 'both', way: 'any' },
    outside: { end: 'both', way: 'any' },
    outermost: { end: 'both', way: 'any' },
    inner: { end: 'inner', way: 'any' },
    inside: { end: 'inner', way: 'any' },
  } as const),
);

const countedFrom = (end: End, count: number, total: number): number[] => {
  if (count > total) return [];
  if (end === 'start') return countUp(1, count);
  if (end === 'end') return countUp(total - count + 1, total);
  if (end === 'both') return total > 1 ? [1, total] : [1];
  if (end === 'inner') return total > 2 ? countUp(2, total - 1) : [];
  // the middle of an even number is two
  const n = count === 1 && total % 2 === 0 ? 0 : count;
  return n && (total - n) % 2 === 0 ? countUp((total - n) / 2 + 1, (total + n) / 2) : [];
};
/** Does an end told as "top" or "left" fit counting along this axis? Along a row it goes across, from row to row down. */
const fits = (way: 'down' | 'across' | 'any', counting: 'down' | 'across'): boolean =>
  way === 'any' || way === counting;

type Choice = {
  of: (total: number, counting: 'down' | 'across') => number[] | undefined;
  next: number;
  counted: boolean;
  ordinal: boolean;
  /** Counted back from an end that is named: "third from bottom". */
  back?: true;
};

/** One choice before a noun: "third", "top", "bottom two", "two left-hand", "second to last", "last couple of", "odd". */
function choiceAt(tokens: Token[], i: number): Choice | undefined {
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
        fits(end.way, counting) ? countedFrom(pairOfEnds ? 'both' : end.end, count, total) : undefined,
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
): { steps: number; next: number; way: 'down' | 'across' | 'any'; start: boolean } | undefined {
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

/** Several choices before one noun: "first and third", "top and bottom", "left-hand and right-hand", "2nd, 4th & 5th". */
const MOST_CHOICES = 12;

function choicesAt(tokens: Token[], i: number): { list: Choice[]; next: number } | undefined {
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

const chosen = (list: Choice[], total: number, counting: 'down' | 'across'): number[] | undefined => {
  const picked = list.map((c) => c.of(total, counting));
  return picked.some((p) => p === undefined) ? undefined : unique(picked.flatMap((p) => p!));
};

/** "from the bottom", "up from the bottom", "in from the left", "from right": which end an ordinal was counted from. */
function fromEnd(
  tokens: Token[],
  i: number,
): { end: 'start' | 'end'; next: number; way: 'down' | 'across' | 'any' } | undefined {
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

/** The one line that the places spoken of lie in. */
function focusLine(ctx: PlaceContext, axis: Axis): number | undefined {
  for (const group of [ctx.focus, ...ctx.earlier.slice(-3).reverse()]) {
    const at = unique(
      group.map((p) => splitBlock(p)).flatMap((p) => (p ? [axis === 'row' ? p.row : p.block] : [])),
    );
    if (at.length === 1) return at[0];
    if (at.length > 1) return undefined;
  }
  return undefined;
}

/** "the two rows above", "those two rows below it": counted from the rows last spoken of. */
export function linesBeside(tokens: Token[], i: number, ctx: PlaceContext): PlaceFound | undefined {
  const j = /^(the|those|these)$/.test(w(tokens, i)) ? i + 1 : i;
  const count = j > i ? readCount(tokens, j) : undefined;
  if (!count || count.value < 2 || !/^rows$/.test(w(tokens, count.next))) return undefined;
  const way = WAYS.get(w(tokens, count.next + 1));
  if (way?.axis !== 'row') return undefined;
  const next = /^(it|that|them|those|these)$/.test(w(tokens, count.next + 2))
    ? count.next + 3
    : count.next + 2;
  if (/^(row|rows|the|number|\d+)$/.test(w(tokens, next))) return undefined;
  const rows = ctx.focus.flatMap((p) => splitBlock(p)?.row ?? []);
  if (!rows.length) return undefined;
  const from = way.step < 0 ? Math.min(...rows) : Math.max(...rows);
  const lines = Array.from({ length: count.value }, (_, k) => from + way.step * (k + 1));
  const places = lines.flatMap((row) =>
    countUp(1, ctx.grid.blocks).flatMap((block) => blockAt(ctx.grid, row, block) ?? []),
  );
  return {
    next,
    places,
    how: 'implied',
    rule: 'place.rows-beside',
    kind: 'pointer',
    ...(lines.some((row) => row < 1 || row > ctx.grid.rows) ? { outside: true } : {}),
  };
}

/** "the row it's in", "the row that it sits in": the index after such words. */
function linePointedAt(tokens: Token[], i: number): number {
  const k = /^(that|which)$/.test(w(tokens, i)) ? i + 1 : i;
  return /^(it|they)$/.test(w(tokens, k)) &&
    /^('s|is|'re|are|sits?|lies?|belongs?|was|came)$/.test(w(tokens, k + 1)) &&
    /^(in|to|on|from)$/.test(w(tokens, k + 2))
    ? k + 3
    : i;
}

/** A row, a column or several at token `i`. */
function lineAt(tokens: Token[], i: number, ctx: PlaceContext): Line | undefined {
  let j = i;
  let pointed = false;
  let whole = false;
  if (w(tokens, j) === 'of') return undefined;
  // "the last block of every row", "the second one in each of the top three rows"
  if (/^(every|each|all)$/.test(w(tokens, j))) {
    const of = w(tokens, j + 1) === 'of' ? j + 2 : j + 1;
    const noun = w(tokens, w(tokens, of) === 'the' ? of + 1 : of);
    const all = axisOf(noun);
    const next = w(tokens, of) === 'the' ? of + 2 : of + 1;
    if (all && /^(rows?|columns?|cols?)$/.test(noun) && !readIndex(tokens, next, false))
      return { axis: all, lines: countUp(1, totalOf(ctx, all)), next, how: 'said', named: true };
    if (of === j + 2) j = of;
  }
  while (
    /^(the|whole|entire|full|complete|that|this|same|those|these|of|all)$/.test(w(tokens, j)) &&
    j < i + 4
  ) {
    if (/^(that|this|same)$/.test(w(tokens, j))) pointed = true;
    if (/^(whole|entire|full|complete)$/.test(w(tokens, j))) whole = true;
    j++;
  }
  const noun = w(tokens, j);
  const axis = axisOf(noun);
  if (axis && (ROW_PREFIX.has(noun) || axis === 'column')) {
    const told = toldLine(tokens, j, ctx, axis);
    if (told) return told;
    const line = focusLine(ctx, axis);
    const bare = /^(the|that|this|same|whole|entire)$/.test(w(tokens, j - 1)) && j > i;
    if (
      line !== undefined &&
      bare &&
      (pointed || whole || w(tokens, j - 1) === 'the') &&
      !/^(above|below|under|on|at|in|next|to)$/.test(w(tokens, j + 1))
    ) {
      const next = linePointedAt(tokens, j + 1);
      return { axis, lines: [line], next, how: 'implied', named: next > j + 1 };
    }
    return undefined;
  }
  const choices = choicesAt(tokens, j);
  if (choices) {
    const half = halfAt(tokens, j, ctx, choices);
    if (half) return half;
    const heard = w(tokens, choices.next) === 'rose' && ROSE_BEFORE.test(w(tokens, choices.next + 1));
    const kind = heard ? 'row' : axisOf(w(tokens, choices.next));
    // "the second road" only as the one row that it could be
    if (!kind) return undefined;
    const total = totalOf(ctx, kind);
    let next = choices.next + 1;
    const only = choices.list.length === 1 ? choices.list[0]! : undefined;
    let lines = chosen(choices.list, total, kind === 'row' ? 'down' : 'across');
    if (!lines) return undefined;
    if (only?.ordinal) {
      const from = fromEnd(tokens, next);
      if (from && fits(from.way, kind === 'row' ? 'down' : 'across')) {
        if (from.end === 'end') lines = lines.map((k) => total + 1 - k);
        next = from.next;
      } else if (
        /^(down|along|across|over|in)$/.test(w(tokens, next)) &&
        !/^(to|on|the|there)$/.test(w(tokens, next + 1)) &&
        w(tokens, next) !== 'in'
      )
        next++;
    }
    // "the bottom row but one"
    if (only && !only.counted && w(tokens, next) === 'but') {
      const n = readCount(tokens, next + 1);
      if (n && n.value < 4 && lines.length === 1) {
        lines = [lines[0] === 1 ? 1 + n.value : lines[0]! - n.value];
        next = n.next;
      }
    }
    if (lines.some((k) => k < 1 || k > total)) return undefined;
    return { axis: kind, lines, next, how: 'said', named: only?.ordinal ?? false };
  }
  return undefined;
}

/** "the top half", "bottom half of the quilt", "left-hand half": the lines of it, where it can be halved. */
function halfAt(
  tokens: Token[],
  i: number,
  ctx: PlaceContext,
  { list, next }: { list: Choice[]; next: number },
): Line | undefined {
  if (w(tokens, next) !== 'half') return undefined;
  const end = ENDS.get(w(tokens, i));
  const axis: Axis = end?.way === 'down' ? 'row' : 'column';
  if (list.length > 1 || !end || end.way === 'any') return undefined;
  const total = totalOf(ctx, axis);
  let k = next + 1;
  // "the top half of 2-3", "the bottom half of the border": of something else
  if (w(tokens, k) === 'of') {
    k += w(tokens, k + 1) === 'the' ? 2 : 1;
    if (!/^(quilt|top|it|patchwork|front|throw|coverlet|comforter)$/.test(w(tokens, k))) return undefined;
    k++;
  } else if (/^(inch|yard|metre|meter|row|block|column|border|an|a)$/.test(w(tokens, k))) return undefined;
  if (total % 2) return undefined;
  return {
    axis,
    lines: countedFrom(end.end, total / 2, total),
    next: k,
    how: 'said',
    named: false,
    half: true,
  };
}

/** "top rose tied" is "top row's tied"; "the first rose print" is none. */
const ROSE_BEFORE =
  /^(|tied|quilted|basted|tacked|pinned|pressed|vacuumed|cleaned|done|finished|is|'s|are|has|have|too|as|and|now|[,.])$/;

/** "rows two to four", "row one down to row three", "rows five and below", "the column on the far right", "the row below it". */
function toldLine(tokens: Token[], j: number, ctx: PlaceContext, axis: Axis): Line | undefined {
  const total = totalOf(ctx, axis);
  const prefix = axis === 'row' ? ROW_PREFIX : COLUMN_NOUNS;
  const list = readIndexList(tokens, j + 1, {
    prefix,
    homophones: true,
    max: total,
    plural: w(tokens, j).endsWith('s'),
  });
  if (list) {
    if (list.values.some((k) => k > total)) return undefined;
    let lines = list.values;
    let next = list.next;
    const onward = reaching(tokens, next, prefix, lines.at(-1)!, total, w(tokens, j - 1) === 'from');
    if (onward) {
      lines = unique([...lines, ...onward.lines]);
      next = onward.next;
    }
    return { axis, lines, next, how: 'said', named: true };
  }
  // "the column on the far right", "the row at the bottom", "the row in the middle"
  let k = j + 1;
  if (/^(on|at|in|along|down|nearest)$/.test(w(tokens, k))) {
    k++;
    while (/^(the|far|very)$/.test(w(tokens, k))) k++;
    const end = ENDS.get(w(tokens, k));
    const counting = axis === 'row' ? 'down' : 'across';
    if (end && fits(end.way, counting)) {
      k++;
      while (/^(hand|most|side|end)$/.test(w(tokens, k))) k++;
      // "both the rows at the bottom", "the two columns on the left"
      const many = w(tokens, j).endsWith('s') ? countBefore(tokens, j) : 1;
      const lines = countedFrom(end.end, many, total);
      if (lines.length === many) return { axis, lines, next: k, how: 'said', named: false };
    }
    return undefined;
  }
  return besideLine(tokens, j, ctx, axis);
}

/** "both of the rows", "the three rows": how many are told before the word at `j`. */
function countBefore(tokens: Token[], j: number): number {
  const before = w(tokens, j - 1);
  if (/^(the|those|these)$/.test(before))
    return w(tokens, j - 2) === 'both' || (w(tokens, j - 2) === 'of' && w(tokens, j - 3) === 'both') ? 2 : 1;
  return before === 'both' ? 2 : (readCount(tokens, j - 1)?.value ?? 1);
}

const WAYS = new Map<string, { axis: Axis; step: 1 | -1 }>(
  Object.entries({
    below: { axis: 'row', step: 1 },
    beneath: { axis: 'row', step: 1 },
    under: { axis: 'row', step: 1 },
    underneath: { axis: 'row', step: 1 },
    down: { axis: 'row', step: 1 },
    above: { axis: 'row', step: -1 },
    up: { axis: 'row', step: -1 },
    left: { axis: 'column', step: -1 },
    right: { axis: 'column', step: 1 },
  } as const),
);

/** "the row below", "the row above row three", "the column to the right of it", "the row below the top one". */
function besideLine(tokens: Token[], j: number, ctx: PlaceContext, axis: Axis): Line | undefined {
  let k = j + 1;
  while (/^(just|right|directly|immediately|to|on|the|its)$/.test(w(tokens, k)) && k < j + 5) {
    if (w(tokens, k) === 'right' && !WAYS.has(w(tokens, k + 1))) break;
    k++;
  }
  const way = WAYS.get(w(tokens, k));
  if (!way || way.axis !== axis) return undefined;
  k++;
  if (w(tokens, k) === 'hand') k++;
  if (w(tokens, k) === 'side') k++;
  if (/^(of|from)$/.test(w(tokens, k))) k++;
  let base: number | undefined;
  let how: 'said' | 'implied' = 'implied';
  const named = lineAt(tokens, k, ctx);
  if (named && named.axis === axis && named.lines.length === 1) {
    base = named.lines[0];
    k = named.next;
    how = named.how;
  } else {
    const other = choiceAt(tokens, w(tokens, k) === 'the' ? k + 1 : k);
    if (other && w(tokens, other.next) === 'one') {
      base = other.of(totalOf(ctx, axis), axis === 'row' ? 'down' : 'across')?.[0];
      k = other.next + 1;
      how = 'said';
    } else {
      base = focusLine(ctx, axis);
      if (/^(it|that|this|them)$/.test(w(tokens, k))) k++;
      if (/^(one|row|column)$/.test(w(tokens, k)) && /^(that|this)$/.test(w(tokens, k - 1))) k++;
    }
  }
  if (base === undefined) return undefined;
  const line = base + way.step;
  return line < 1 || line > totalOf(ctx, axis)
    ? undefined
    : { axis, lines: [line], next: k, how, named: true };
}

/** After a number: "down to row three", "and below", "on down", "to the bottom", "onwards", "and up". */
function reaching(
  tokens: Token[],
  i: number,
  prefix: ReadonlySet<string>,
  from: number,
  total: number,
  fromLed: boolean,
): { lines: number[]; next: number } | undefined {
  let j = i;
  if (/^(right|all|on|and)$/.test(w(tokens, j))) j++;
  if (/^(right|all|on)$/.test(w(tokens, j))) j++;
  if (/^(the|way)$/.test(w(tokens, j)) && w(tokens, j + 1) === 'way') j += 2;
  const word = w(tokens, j);
  const down = /^(down|downwards?|below|under|beneath|onwards?|along|across|out)$/.test(word);
  const up = /^(up|upwards?|above)$/.test(word);
  let k = down || up ? j + 1 : j;
  if (
    /^(to|until|till|through|thru)$/.test(w(tokens, k)) ||
    (w(tokens, k) === 'as' && w(tokens, k + 1) === 'far')
  ) {
    k += w(tokens, k) === 'as' ? 3 : 1;
    if (w(tokens, k) === 'and') k += 2;
    const bottom = w(tokens, k) === 'the' ? k + 1 : k;
    if (
      /^(end|bottom|edge|last|right)$/.test(w(tokens, bottom)) &&
      bottom > k &&
      !axisOf(w(tokens, bottom + 1)) &&
      !BLOCK_NOUNS.has(w(tokens, bottom + 1))
    )
      return {
        lines: countUp(from, total),
        next: /^(edge|end|one|side)$/.test(w(tokens, bottom + 1)) ? bottom + 2 : bottom + 1,
      };
    if (prefix.has(w(tokens, k))) {
      const last = readIndex(tokens, k + 1, true);
      if (last && last.value <= total && last.value !== from)
        return { lines: countUp(from, last.value), next: last.next };
    }
    return undefined;
  }
  const led = j > i && w(tokens, j - 1) !== 'right';
  if (!(down || up)) {
    // "from row three on"
    return fromLed && w(tokens, i) === 'on' ? { lines: countUp(from, total), next: i + 1 } : undefined;
  }
  const next = w(tokens, k);
  // "row five down" ends there; "row five down the left side", "row five up the middle" go on
  if (/^(the|by|at|with|from|one|two|a|left|right|there)$/.test(next) && !led) return undefined;
  if (/^(along|across|out|under)$/.test(word) && !(fromLed && /^(along|across)$/.test(word)))
    return undefined;
  if (!led && up) return undefined;
  return { lines: up ? countUp(1, from) : countUp(from, total), next: k };
}

/** Which blocks of a line: "block three", "the fourth one down", "second from the right", "both ends", "the first half", "last two". */
function pickAt(tokens: Token[], i: number, ctx: PlaceContext, afterLine: boolean): Pick | undefined {
  let j = i;
  if (/^(the|its|only|just)$/.test(w(tokens, j))) j++;
  const word = w(tokens, j);
  const counting = (axis: Axis): 'down' | 'across' => (axis === 'row' ? 'across' : 'down');
  // "block three", "blocks two to five", "no. 3", "number three"
  // "third row, no fourth row" puts right, and "row 3 no 4" counts
  const numbered =
    word === 'number' ||
    word === '#' ||
    (word === 'no' && !readOrdinal(tokens, j + 1) && !readOrdinal(tokens, j + 2));
  const lead = word === 'from' || word === 'up' || word === 'as' ? leadIn(tokens, j) : undefined;
  const at = lead?.at ?? j;
  const nounFirst =
    BLOCK_NOUNS.has(w(tokens, at)) || (BLOCK_SLIPS.includes(w(tokens, at)) && afterLine && !lead);
  if (nounFirst || numbered || (w(tokens, at) === 'b' && readCount(tokens, at + 1))) {
    let k = (lead?.at ?? j) + 1;
    if (numbered && w(tokens, k) === '.') k++;
    const list = readIndexList(tokens, k, {
      prefix: new Set([...BLOCK_NOUNS, 'b']),
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
  if (lead?.to) {
    const nth = readOrdinal(tokens, w(tokens, lead.at) === 'the' ? lead.at + 1 : lead.at);
    return nth && BLOCK_NOUNS.has(w(tokens, nth.next))
      ? { of: () => countUp(1, nth.value), next: nth.next + 1, noun: true }
      : undefined;
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
        fits(half.way, counting(axis)) && total % 2 === 0
          ? countedFrom(half.end, total / 2, total)
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
  const several = range && severalAtEnd(tokens, range);
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
  let of: Pick['of'] = (total, axis) => chosen(choices.list, total, counting(axis));
  // "the last block but one"
  const less = word === 'last' && noun && w(tokens, next) === 'but' ? readCount(tokens, next + 1) : undefined;
  if (less && less.value < 4) return { of: (total) => [total - less.value], next: less.next, noun: true };
  if (only?.ordinal || choices.list.every((c) => c.ordinal)) {
    const from = fromEnd(tokens, next);
    if (from) {
      next = from.next;
      noun = true;
      of = (total, axis) => {
        const picked = fits(from.way, counting(axis))
          ? chosen(choices.list, total, counting(axis))
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
        const picked = chosen(choices.list, total, counting(axis));
        if (counting(axis) === 'across' && (way === 'down' || way === 'up')) return undefined;
        if (counting(axis) === 'down' && (way === 'across' || way === 'over')) return undefined;
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
  if (!noun && !bothEnds && !back && !(only && (only.counted || atEnd))) return undefined;
  if (axisOf(w(tokens, next)) || /^(column|corner|border|edge|side)/.test(w(tokens, next))) return undefined;
  return { of, next, noun };
}

/** "the two blocks at the top (of column three)", "three at the right-hand end (of row two)". */
function severalAtEnd(tokens: Token[], n: { value: number; next: number }): Pick | undefined {
  let k = BLOCK_NOUNS.has(w(tokens, n.next)) || w(tokens, n.next) === 'ones' ? n.next + 1 : n.next;
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
      fits(told.way, axis === 'row' ? 'across' : 'down') && n.value < total
        ? countedFrom(told.end, n.value, total)
        : undefined,
    next: k,
    noun: true,
  };
}

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
  if (w(tokens, j) === 'up' && w(tokens, j + 1) === 'to')
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
  if (from && w(tokens, i) === 'along' && !/^(the|a|row|it)$/.test(w(tokens, i + 1))) return i + 1;
  let j = /^(right|along|across|out)$/.test(w(tokens, i)) ? i + 1 : i;
  if (w(tokens, j) !== 'to' || w(tokens, j + 1) !== 'the') return undefined;
  j += 2;
  if (w(tokens, j) === 'right' && w(tokens, j + 1) === 'hand') j += 2;
  return /^(end|edge|side)$/.test(w(tokens, j)) ? j + 1 : undefined;
}

function crossed(ctx: PlaceContext, line: Line, along: number[], next: number): PlaceFound {
  const named = line.lines.flatMap((k) =>
    along.map((b) => (line.axis === 'row' ? blockAt(ctx.grid, k, b) : blockAt(ctx.grid, b, k))),
  );
  const inside = named.filter((p): p is string => p !== undefined);
  return {
    next,
    places: unique(inside),
    how: line.how,
    rule: 'place.of-line',
    kind: 'blocks',
    ...(inside.length < named.length || !named.length ? { outside: true } : {}),
  };
}

/** A line with what is picked from it, in either order; or lines alone. */
export function linePhrase(tokens: Token[], i: number, ctx: PlaceContext): PlaceFound | undefined {
  const line = lineAt(tokens, i, ctx);
  // the article stays a word of its own, but for "the row" that points back
  if (line) return w(tokens, i) === 'the' && line.how === 'said' ? undefined : afterLine(tokens, line, ctx);
  const pick = w(tokens, i) === 'the' ? undefined : pickAt(tokens, i, ctx, false);
  if (!pick) return undefined;
  let j = pick.next;
  while (/^(of|in|on|along|at|from|,|down|across|up|over)$/.test(w(tokens, j)) && j < pick.next + 2) j++;
  if (j === pick.next && !pick.noun) return undefined;
  if (j === pick.next + 1 && w(tokens, pick.next) === ',' && !pick.noun) return undefined;
  const of = lineAt(tokens, j, ctx) ?? lineToldAsOne(tokens, j, ctx);
  // "the third block, row two": the comma joins it; "the last block. Row two" does not
  if (!of) return undefined;
  if (j === pick.next && !of.named) return undefined;
  const along = pick.of(lengthOf(ctx, of), of.axis);
  return along ? crossed(ctx, of, along, of.next) : undefined;
}

/** "the first three of the next", "the last two of that one": of the rows that the talk goes along. */
function lineToldAsOne(tokens: Token[], j: number, ctx: PlaceContext): Line | undefined {
  if (w(tokens, j - 1) !== 'of') return undefined;
  const told = linesSpokenAt(tokens, j, ctx, true);
  return told && { ...told, how: 'implied', named: true };
}

function afterLine(tokens: Token[], line: Line, ctx: PlaceContext): PlaceFound | undefined {
  const across = lengthOf(ctx, line);
  let j = line.next;
  while (
    /^(,|:|\/|\(|x|in|at|now|where|it|meets|crosses|is|right)$/.test(w(tokens, j)) &&
    j < line.next + 3
  ) {
    if (/^(is|right|it)$/.test(w(tokens, j)) && !/^(where|is)$/.test(w(tokens, j - 1))) break;
    j++;
  }
  const meeting = /^(meets|crosses)$/.test(w(tokens, j - 1));
  const comma = w(tokens, j - 1) === ',' && j > line.next;
  const other = lineAt(tokens, j, ctx);
  if (
    other &&
    other.axis !== line.axis &&
    (meeting || line.named || other.named || j === line.next) &&
    other.how === 'said'
  )
    return crossed(ctx, line, other.lines, other.next);
  const pick = meeting ? undefined : pickAt(tokens, j, ctx, true);
  // "row two, two inches in", "row two, the last two to do": a count alone must touch the line or end its phrase
  if (
    pick &&
    (pick.noun ||
      !comma ||
      /^(|,|\.|;|and|&|is|are|was|were|has|have|need|needs|got)$/.test(w(tokens, pick.next)))
  ) {
    // "row two, block three, row four": several rows take a pick only from a noun
    const along = line.lines.length > 1 && !pick.noun ? undefined : pick.of(across, line.axis);
    // "second from the left in row five": the pick belongs to the row that follows it
    const k = pick.next;
    const next = /^(of|in|on)$/.test(w(tokens, k)) ? lineAt(tokens, k + 1, ctx) : undefined;
    if (along && !next) return crossed(ctx, line, along, pick.next);
  }
  // "that row" alone is read as what points back
  if (line.how === 'implied' && !line.named) return undefined;
  const places = unique(
    line.lines.flatMap((k) => (line.axis === 'row' ? rowOf(ctx.grid, k) : columnOf(ctx.grid, k))),
  );
  return places.length
    ? {
        next: line.next,
        places,
        how: line.how,
        rule: line.half ? 'place.half' : line.axis === 'row' ? 'place.counted-rows' : 'place.counted-columns',
        kind: 'blocks',
      }
    : undefined;
}
