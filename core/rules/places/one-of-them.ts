import { readCount, readOrdinal } from '../../text/read-number.ts';
import type { Token } from '../../text/tokenise.ts';
import { wordAt as w } from '../../text/word-at.ts';
import { blockFrom, gridOfRow, liesInLines, middleOf, rowOf, splitBlock } from './grid.ts';
import { pickedFrom, spokenTogether } from './group-spoken-of.ts';
import { lineAt } from './line/line-at.ts';
import { areSides, outermost, outermostOf } from './outermost.ts';
import type { PlaceContext, PlaceFound } from './place-found.ts';
import { blocksPicked } from './place-found.ts';
import { BLOCK_NOUNS } from './place-tokens.ts';
import { tellsHow } from './tells-how.ts';

/**
 * "the second one", "the lower of the two", "the latter", "the left-hand one", "the first two": one or some of the blocks
 * last spoken of together, in the order said or as they lie.
 */
export function oneOfThem(tokens: Token[], i: number, ctx: PlaceContext): PlaceFound | undefined {
  if (w(tokens, i) !== 'the') {
    // "lower one next", "right hand one tomorrow"
    if (!beginsBare(tokens, i, ctx.cloth !== undefined || tokens.slice(0, i).some((t) => t.w === ':')))
      return undefined;
    i--;
  }
  const word = w(tokens, i + 1);
  const group = toldBeforeCloth(tokens, i, ctx) ?? pickedFrom(word, ctx) ?? spokenTogether(ctx);
  if (!group) return undefined;
  // "the bottom one" of borders is told by its side
  if (areSides(group) && !/^(former|latter|last)$/.test(word) && !readOrdinal(tokens, i + 1))
    return undefined;
  const found = (places: (string | undefined)[], next: number): PlaceFound | undefined =>
    places.length && places.every((p) => p !== undefined)
      ? {
          next,
          places: places as string[],
          how: 'implied',
          rule: 'place.one-of-them',
          kind: 'pointer',
          // so that "the latter" is still the second of the two; more are a line, and its second one may be the next
          ...(group.length === 2 ? { among: group } : {}),
        }
      : undefined;
  if (word === 'former' && group.length === 2) return found([group[0]], i + 2);
  if (word === 'latter' && group.length === 2) return found([group[1]], i + 2);
  let j = i + 2;
  while (/^(hand|most)$/.test(w(tokens, j))) j++;
  const between =
    word === 'one' || BLOCK_NOUNS.has(word) ? betweenThem(tokens, i + 2, group, ctx) : undefined;
  if (between) return between;
  // "the one on the right", "the one at the top"
  if (word === 'one' && /^(on|at|to|in)$/.test(w(tokens, i + 2)) && w(tokens, i + 3) === 'the') {
    const far = /^(far|very)$/.test(w(tokens, i + 4)) ? i + 5 : i + 4;
    const side = w(tokens, far);
    if (side === 'end' && w(tokens, far + 1) !== 'of') return found([group.at(-1)], far + 1);
    if (/^(middle|centre|center)$/.test(side))
      return group.length % 2 && !/^(of|row|column)$/.test(w(tokens, far + 1))
        ? found([middleOf(group, ctx.grid)], far + 1)
        : undefined;
    let next = far + 1;
    while (/^(hand|side|end)$/.test(w(tokens, next))) next++;
    if (/^(of|edge|border|corner|block|row|column)$/.test(w(tokens, next))) return undefined;
    return found([outermost(group, side)], next);
  }
  // "the one higher up", "the one further down", "the one lower down"
  const further = word === 'one' ? FURTHER.exec(`${w(tokens, i + 2)} ${w(tokens, i + 3)}`) : undefined;
  if (further) {
    const way = further[1] ?? further[2]!;
    const side = /^(up|higher)$/.test(way) ? 'top' : /^(down|lower)$/.test(way) ? 'bottom' : 'right';
    return found([outermost(group, side)], further[0].includes(' ') ? i + 4 : i + 3);
  }
  const n = readCount(tokens, j);
  // "dabbed the top two", "the lower ones are for tomorrow": those that lie furthest to that side
  const sided = n ? n.next : /^ones$/.test(w(tokens, j)) ? j + 1 : undefined;
  if (
    sided &&
    !isNounOfLine(w(tokens, sided)) &&
    !/^(along|on|down|from|row|corners?|edges?|sides?|borders?|strips?|layers?|skeins?|inches|thirds|pieces|of|seams?)$/.test(
      w(tokens, sided),
    )
  ) {
    const row = /^ones$/.test(w(tokens, sided)) ? sided + 1 : sided;
    // "only over the upper two. The lower two I shall leave": of the four that those were picked from
    const within =
      n && n.value >= group.length
        ? ctx.earlier.findLast(
            (g) =>
              g.length > group.length && g.length <= 6 && group.every((p) => g.includes(p) && splitBlock(p)),
          )
        : undefined;
    const whole = within ? outermostOf(within, word, n?.value) : undefined;
    if (whole && whole.length === n!.value) return found(whole, row);
    const outer = outermostOf(group, word, n?.value);
    if (outer && outer.length < group.length && (n ? outer.length === n.value : outer.length > 1))
      return found(outer, row);
  }
  const many = n && n.value > 1 && n.value < group.length ? n : undefined;
  // "(sewed up the two in row two,) the two in row five are still to do": of the four that were told
  const inLine =
    theseInLine(tokens, i + 1, group, ctx) ??
    [...ctx.earlier]
      .reverse()
      .filter((g) => g.length > 2 && g.length < 9 && group.every((p) => g.includes(p) && splitBlock(p)))
      .map((g) => theseInLine(tokens, i + 1, g, ctx))
      .find((x) => x);
  // "put net on the outside two of those", "the outer two"
  const both =
    /^(outside|outer|end|outermost)$/.test(word) && n?.value === 2 && group.length > 2 && areOneLine(group);
  if (both) {
    const of = w(tokens, n.next) === 'of' && /^(them|those|these)$/.test(w(tokens, n.next + 1));
    if (of || !isNounOfLine(w(tokens, n.next)))
      return found([group[0], group.at(-1)], of ? n.next + 2 : n.next);
  }
  if (inLine) return found(inLine.places, inLine.next);
  // "the first three of row two", then "the last two by hand": of the row
  const row = many && word === 'last' ? endOfRow(group, ctx) : undefined;
  if (
    many &&
    row?.end === 'first' &&
    !isNounOfLine(w(tokens, many.next)) &&
    group.length + many.value === gridOfRow(ctx.grid, row.row).blocks
  )
    return found(rowOf(ctx.grid, row.row).slice(group.length), many.next);
  // "the first two of those"
  const ofThem =
    many && w(tokens, many.next) === 'of' && /^(them|those|these)$/.test(w(tokens, many.next + 1));
  if (many && (word === 'first' || word === 'last') && (ofThem || !isNounOfLine(w(tokens, many.next))))
    return found(
      word === 'first' ? group.slice(0, many.value) : group.slice(-many.value),
      ofThem ? many.next + 2 : many.next,
    );
  const nth = word === 'last' ? { value: group.length, next: j } : readOrdinal(tokens, i + 1);
  // "the left-hand one of those"
  const end = nth?.next ?? j;
  const at = w(tokens, end) === 'one' && w(tokens, end + 1) === 'of' ? end + 1 : end;
  let next: number | undefined;
  // "the lower block's stained as well", of two
  const named =
    w(tokens, at) === 'one' ||
    (BLOCK_NOUNS.has(w(tokens, at)) && group.length === 2 && !/^(block|square)s$/.test(w(tokens, at)));
  // "sewed the first one up", "tacked the lower one down"
  const particle =
    /^(up|down|in)$/.test(w(tokens, at + 1)) &&
    /^(|[.,;!]|and|by|with|again|now|too|then|tight|last|myself|yesterday|this)$/.test(w(tokens, at + 2));
  // "darned the top one in white thread"
  const within =
    w(tokens, at + 1) === 'in' &&
    !/^(|the|row|rows|column|columns|col|that|this|its|it|a|first|last|top|bottom|second|third|fourth|fifth|middle|there)$/.test(
      w(tokens, at + 2),
    );
  if (named && (particle || within || !/^(in|of|along|from|down|up|to)$/.test(w(tokens, at + 1))))
    next = at + 1;
  else if (
    w(tokens, at) === 'of' &&
    /^(the|those|these)$/.test(w(tokens, at + 1)) &&
    /^(two|pair|three|four)$/.test(w(tokens, at + 2))
  )
    next = at + 3;
  else if (w(tokens, at) === 'of' && /^(them|those|these)$/.test(w(tokens, at + 1))) next = at + 2;
  else if (
    nth &&
    group.length <= 3 &&
    (/^(is|'s|has|had|needs|wants|gets|i|it|there|was|can|could|will|'ll|should|must|might|off|,|\.|;|)$/.test(
      w(tokens, at),
    ) ||
      // "the first gets net, the second left (alone)"
      (w(tokens, at) === 'left' && /^(|[.,;!]|alone|as|be)$/.test(w(tokens, at + 1))) ||
      tellsHow(tokens, at) ||
      // "darned the first and the second with a running stitch"
      (w(tokens, at) === 'and' &&
        w(tokens, at + 1) === 'the' &&
        /^(second|third|last)$/.test(w(tokens, at + 2)) &&
        tellsHow(tokens, at + 3)) ||
      // "patched the first and left the other"
      (group.length === 2 &&
        w(tokens, at) === 'and' &&
        !/^(last|second|third|fourth|the|\d+)$/.test(w(tokens, at + 1))) ||
      (group.length === 2 &&
        w(tokens, at) === 'and' &&
        w(tokens, at + 1) === 'the' &&
        w(tokens, at + 2) === 'other')) &&
    (word !== 'last' || endOfRow(group, ctx)?.end === 'first' || pickedFrom(word, ctx) !== undefined)
  )
    next = at;
  // "the upper of the two has lost a corner, the lower has a stain", "of the rosebud ones the top has a hole"
  // "the leftmost is sewn up now", "the bottommost has a hole as well"
  if (
    next === undefined &&
    /^(left|right|top|bottom|upper|lower|outer)most$/.test(word) &&
    /^(|[.,;]|is|'s|has|had|needs|wants|gets|was|i|one|block)$/.test(w(tokens, at))
  )
    next = /^(one|block)$/.test(w(tokens, at)) ? at + 1 : at;
  if (
    next === undefined &&
    group.length <= 3 &&
    /^(is|'s|has|had|needs|wants|gets|was)$/.test(w(tokens, at)) &&
    (/^(upper|lower)$/.test(word) ||
      (ctx.cloth && opensWithOf(tokens, i) && /^(top|bottom|middle)$/.test(word)))
  )
    next = at;
  if (next === undefined) return undefined;
  // "the last three blocks of the row have faded, and the first is tender": of the row
  const line = nth && w(tokens, next - 2) !== 'of' ? endOfRow(group, ctx) : undefined;
  if (line && ((line.end === 'last' && word === 'first') || (line.end === 'first' && word === 'last')))
    return found([word === 'first' ? `${line.row}-1` : `${line.row}-${ctx.grid.blocks}`], next);
  if (nth) return found([group[nth.value - 1]], next);
  if (/^(middle|centre|center)$/.test(word))
    return group.length === 3 ? found([middleOf(group, ctx.grid)], next) : undefined;
  return found([outermost(group, word)], next);
}

/** "2-3 and 4-2 have holes, and the lovat check in the second is tender": of the two that were told of, and not of the cloth's blocks. */
function toldBeforeCloth(
  tokens: Token[],
  i: number,
  { cloth, focus, earlier }: PlaceContext,
): string[] | undefined {
  if (w(tokens, i - 1) !== 'in' || !cloth) return undefined;
  const last = earlier.at(-1);
  const told =
    focus.length === 1 && last?.length === 1 && last[0] !== focus[0]
      ? [last[0]!, focus[0]!]
      : [focus, ...[...earlier].reverse()].find((g) => g.join() !== cloth.join() && g.length > 1);
  return told && told.length < 4 && told.every((p) => splitBlock(p)) && told.some((p) => cloth.includes(p))
    ? told
    : undefined;
}

/** Do they lie in one row or one column, told in their order? */
const areOneLine = (group: string[]): boolean => {
  const at = group.map((p) => splitBlock(p));
  const [first] = at;
  return (
    first !== undefined &&
    (at.every((p, k) => p?.row === first.row && (k === 0 || p.block > at[k - 1]!.block)) ||
      at.every((p, k) => p?.block === first.block && (k === 0 || p.row > at[k - 1]!.row)))
  );
};

/** "(holes in 2-1, 2-3 and 5-5,) darned the two in row two", "the one in row five": those of the group that lie in that line. */
function theseInLine(
  tokens: Token[],
  k: number,
  group: string[],
  ctx: PlaceContext,
): { places: string[]; next: number } | undefined {
  const n = readCount(tokens, k);
  if (!n || ctx.cloth || group.length < 3 || !/^(in|on|along)$/.test(w(tokens, n.next))) return undefined;
  const at = n.next;
  const line = lineAt(tokens, w(tokens, at + 1) === 'the' ? at + 2 : at + 1, ctx);
  if (line?.how !== 'said') return undefined;
  const places = group.filter((p) => liesInLines(p, line.axis, line.lines));
  return places.length === n.value && places.length < group.length ? { places, next: line.next } : undefined;
}

const FURTHER = /^(?:further (up|down|along|over)|(higher|lower)(?: (?:up|down))?\b)/;

/** "the one between them", "the block in between", after two of one row or column with one between. */
function betweenThem(
  tokens: Token[],
  k: number,
  group: string[],
  { grid }: PlaceContext,
): PlaceFound | undefined {
  if (group.length !== 2) return undefined;
  let j = w(tokens, k) === 'in' ? k + 1 : k;
  // "the one in the middle of them"
  if (w(tokens, j) === 'the' && w(tokens, j + 1) === 'middle' && w(tokens, j + 2) === 'of') j += 3;
  else if (w(tokens, j) === 'between') j++;
  else return undefined;
  if (w(tokens, j) === 'the' && /^(two|pair)$/.test(w(tokens, j + 1))) j += 2;
  else if (/^(them|those|these)$/.test(w(tokens, j))) j += /^(two|2)$/.test(w(tokens, j + 1)) ? 2 : 1;
  else if (!/^(|[.,;!]|is|'s|has|needs|wants|gets|was|looks|i|too)$/.test(w(tokens, j))) return undefined;
  const [a, b] = group.map((p) => splitBlock(p));
  if (!a || !b || (a.row !== b.row && a.block !== b.block)) return undefined;
  if (Math.abs(a.row - b.row) + Math.abs(a.block - b.block) !== 2) return undefined;
  const place = blockFrom(grid, group[0]!, (b.row - a.row) / 2, (b.block - a.block) / 2);
  return place ? blocksPicked(j, [place]) : undefined;
}

/** Does the sentence begin with those that one is picked from: "of the rosebud ones …"? */
const opensWithOf = (tokens: Token[], i: number): boolean =>
  tokens[tokens.slice(0, i).findLastIndex((t) => /^[.;!?\n]$/.test(t.w)) + 1]?.w === 'of';

/** A side and "one" with no article, where something begins. */
const beginsBare = (tokens: Token[], i: number, cloth: boolean): boolean =>
  /^(upper|lower|top|bottom|left|right|first|second|third|last)$/.test(w(tokens, i)) &&
  (i === 0 ||
    /^(and|but|\.)$/.test(w(tokens, i - 1)) ||
    // "…, first one's darned now"; "…, bottom one stays on" is of sides
    (/^(first|second|third)$/.test(w(tokens, i)) && /^(then|so|ok|okay|[,;])$/.test(w(tokens, i - 1))) ||
    // "plum silk: left one shattered, right one only thin"
    (cloth && /^[,:]$/.test(w(tokens, i - 1)))) &&
  (w(tokens, w(tokens, i + 1) === 'hand' ? i + 2 : i + 1) === 'one' || tellsNth(tokens, i));

/** "third's fine", "second I darned", "last will have to wait"; "first I pressed it" tells of a time. */
const tellsNth = (tokens: Token[], i: number): boolean =>
  /^(first|second|third|last)$/.test(w(tokens, i)) &&
  (/^('s|is|has|needs|wants|gets|will|'ll)$/.test(w(tokens, i + 1)) ||
    (/^(second|third)$/.test(w(tokens, i)) && w(tokens, i + 1) === 'i') ||
    // "darned the first, second left alone"
    (w(tokens, i + 1) === 'left' && /^(alone|as|be)$/.test(w(tokens, i + 2))));

/** The row of which a group is the first or the last few blocks, but not all. */
function endOfRow(group: string[], ctx: PlaceContext): { row: number; end: 'first' | 'last' } | undefined {
  if (areSides(group)) return undefined;
  const at = group.map((p) => splitBlock(p)!);
  const row = at[0]!.row;
  const { blocks } = ctx.grid;
  if (
    at.length >= blocks ||
    !at.every((p, k) => p.row === row && (k === 0 || p.block === at[k - 1]!.block + 1))
  )
    return undefined;
  if (at.at(-1)!.block === blocks && at[0]!.block > 1) return { row, end: 'last' };
  return at[0]!.block === 1 && at.at(-1)!.block < blocks - 1 ? { row, end: 'first' } : undefined;
}

const isNounOfLine = (word: string): boolean =>
  /^(rows?|columns?|cols?|blocks?|squares?|minutes?|hours?|inches|yards?|metres?|of|in)$/.test(word);
