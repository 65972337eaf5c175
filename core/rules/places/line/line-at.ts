import { readCount } from '../../../text/read-number.ts';
import type { Token } from '../../../text/tokenise.ts';
import { wordAt as w } from '../../../text/word-at.ts';
import { countUp, splitBlock, unique } from '../grid.ts';
import { wholeLines } from '../line-spoken.ts';
import type { PlaceContext } from '../place-found.ts';
import { COLUMN_NOUNS } from '../place-tokens.ts';
import { readIndex, readIndexList } from '../read-index.ts';
import { type Axis, axisOf, countingLines, type Line, ROW_PREFIX, totalOf } from './axis-of.ts';
import { type Choice, choiceAt, choicesAt, chosen, fromEnd } from './choices-at.ts';
import { countedAtEnd, ENDS, fits } from './ends-of-line.ts';
import { WAYS } from './lines-beside.ts';
import { reaching } from './reaching.ts';

/** A row, a column or several at token `i`. */
export function lineAt(tokens: Token[], i: number, ctx: PlaceContext): Line | undefined {
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
    let lines = chosen(choices.list, total, countingLines(kind));
    if (!lines) return undefined;
    if (only?.ordinal) {
      const from = fromEnd(tokens, next);
      if (from && fits(from.way, countingLines(kind))) {
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

/** "the row it's in", "the row that it sits in": the index after such words. */
function linePointedAt(tokens: Token[], i: number): number {
  const k = /^(that|which)$/.test(w(tokens, i)) ? i + 1 : i;
  return /^(it|they)$/.test(w(tokens, k)) &&
    /^('s|is|'re|are|sits?|lies?|belongs?|was|came)$/.test(w(tokens, k + 1)) &&
    /^(in|to|on|from)$/.test(w(tokens, k + 2))
    ? k + 3
    : i;
}

const PARTS: Record<string, number> = { half: 2, third: 3, quarter: 4 };

/** "the top half", "the top third of it", "bottom half of the quilt", "left-hand half": the lines of it, where it can be halved. */
function halfAt(
  tokens: Token[],
  i: number,
  ctx: PlaceContext,
  { list, next }: { list: Choice[]; next: number },
): Line | undefined {
  const parts = PARTS[w(tokens, next)];
  if (!parts) return undefined;
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
  if (total % parts) return undefined;
  return {
    axis,
    lines: countedAtEnd(end.end, total / parts, total),
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
    const counting = countingLines(axis);
    if (end && fits(end.way, counting)) {
      k++;
      while (/^(hand|most|side|end)$/.test(w(tokens, k))) k++;
      // "both the rows at the bottom", "the two columns on the left"
      const many = w(tokens, j).endsWith('s') ? countBefore(tokens, j) : 1;
      const lines = countedAtEnd(end.end, many, total);
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
    // "the row above the bottom one": its "one" may have been read as a count
    const one = other && (w(tokens, other.next) === 'one' ? other.next : other.next - 1);
    if (other && one !== undefined && w(tokens, one) === 'one') {
      base = other.of(totalOf(ctx, axis), countingLines(axis))?.[0];
      k = one + 1;
      how = 'said';
    } else {
      base = focusLine(ctx, axis, way.step);
      if (/^(it|that|this|them|those|these)$/.test(w(tokens, k))) k++;
      if (/^(one|row|column)$/.test(w(tokens, k)) && /^(that|this)$/.test(w(tokens, k - 1))) k++;
    }
  }
  if (base === undefined) return undefined;
  const line = base + way.step;
  return line < 1 || line > totalOf(ctx, axis)
    ? undefined
    : { axis, lines: [line], next: k, how, named: true };
}

/** The one line that the places spoken of lie in; of several that lie side by side ("tied rows one and two", "the row below") the outer one. */
function focusLine(ctx: PlaceContext, axis: Axis, step?: 1 | -1): number | undefined {
  for (const group of [ctx.focus, ...ctx.earlier.slice(-3).reverse()]) {
    const at = unique(
      group.map((p) => splitBlock(p)).flatMap((p) => (p ? [axis === 'row' ? p.row : p.block] : [])),
    );
    if (at.length === 1) return at[0];
    if (at.length > 1) {
      const [least, most] = [Math.min(...at), Math.max(...at)];
      const whole = wholeLines(ctx.grid, group);
      return step && whole?.axis === axis && most - least === at.length - 1
        ? step > 0
          ? most
          : least
        : undefined;
    }
  }
  return undefined;
}
