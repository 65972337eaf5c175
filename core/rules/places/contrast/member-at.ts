import { readCount, readOrdinal } from '../../../text/read-number.ts';
import type { Token } from '../../../text/tokenise.ts';
import { wordAt as w } from '../../../text/word-at.ts';
import { cornerPhrase } from '../find-corner.ts';
import { cornerBlocks, liesInLines, splitBlock } from '../grid.ts';
import { lineAt } from '../line/line-at.ts';
import type { PlaceContext } from '../place-found.ts';
import { BLOCK_NOUNS } from '../place-tokens.ts';
import { isSetAgainst, standsAlone } from './stands-alone.ts';
import { thingAt, toldSo } from './told-of-units.ts';

export type Member = { unit: string[]; next: number };

const only = (units: string[][], next: number, all: string[][]): Member | undefined =>
  units.length === 1 && all.length > 1 ? { unit: units[0]!, next } : undefined;

/**
 * One of several things told of together, told by its row or column, its side, its order, its corner, or what was found there:
 * "the row two one", "the one in the bottom row", "the upper", "the second", "the corner one", "the torn one". `i` is the
 * index of "the", or of the word before which it was left out.
 */
export function memberAt(
  tokens: Token[],
  i: number,
  units: string[][],
  ctx: PlaceContext,
): Member | undefined {
  const the = /^(the|that)$/.test(w(tokens, i));
  const k = the ? i + 1 : i;
  // "more faded than the top"
  if (w(tokens, i - 1) === 'than') return undefined;
  const led = w(tokens, i) === 'the';
  const bare = !the && begins(tokens, i);
  if (units.length < 2)
    return the && !LIES_BY.test(w(tokens, i - 1)) ? toldSo(tokens, k, units, ctx) : undefined;
  return (
    lineOne(tokens, k, units, ctx) ??
    oneInLine(tokens, k, units, ctx) ??
    (the ? thingInLine(tokens, k, units, ctx) : undefined) ??
    cornerOne(tokens, k, units, ctx) ??
    ((the && !LIES_BY.test(w(tokens, i - 1))) || bare ? toldSo(tokens, k, units, ctx) : undefined) ??
    (led || bare
      ? (atSide(tokens, k, units, bare) ?? inOrder(tokens, k, units, bare) ?? byOrderOfLie(tokens, k, units))
      : undefined) ??
    thisOrThat(tokens, i, units)
  );
}

/** "the block below the torn one" is read with its neighbour. */
const LIES_BY = /^(below|above|beneath|under|beside|to|of|by|near|from|between)$/;

/** Does a statement begin at `i`? */
export const begins = (tokens: Token[], i: number): boolean =>
  i === 0 || /^([.,;:!?\n(]|--|-|and|but|then|so|ok|okay|right|while)$/.test(w(tokens, i - 1));

/** Those that lie in a line. */
const inside = (units: string[][], axis: 'row' | 'column', lines: number[]): string[][] =>
  units.filter((unit) => unit.every((p) => liesInLines(p, axis, lines)));

/** "(the) row two one", "the top row one", "the column 3 one", "the block four one". */
function lineOne(tokens: Token[], k: number, units: string[][], ctx: PlaceContext): Member | undefined {
  const word = w(tokens, k);
  const block = /^(block|b)$/.test(word) ? readCount(tokens, k + 1) : undefined;
  const line = block
    ? { axis: 'column' as const, lines: [block.value], next: block.next }
    : lineAt(tokens, k, ctx);
  if (!line || w(tokens, line.next) !== 'one' || line.lines.length !== 1) return undefined;
  // "row two one to three" are its blocks
  if (/^(to|through|thru|and|,|-)$/.test(w(tokens, line.next + 1)) && readCount(tokens, line.next + 2))
    return undefined;
  const found = only(inside(units, line.axis, line.lines), line.next + 1, units);
  if (!found) return undefined;
  // bare "row two one" is a block, unless one is set against it: "row two one gets net, the other I leave"
  return w(tokens, k - 1) === 'the' || w(tokens, k - 1) === 'that' || goesOn(tokens, line.next + 1)
    ? found
    : undefined;
}

/** Does another of them come behind? */
const goesOn = (tokens: Token[], k: number): boolean =>
  tokens.slice(k, k + 25).some((t, n, all) => /^(other|remaining)$/.test(t.w) && all[n + 1]?.w !== 'side');

/** "the one in row five", "one in the left-hand column", "that in the top row". */
function oneInLine(tokens: Token[], k: number, units: string[][], ctx: PlaceContext): Member | undefined {
  const that = w(tokens, k - 1) === 'that' && w(tokens, k) !== 'one';
  let j = that ? k : k + 1;
  if (!that && w(tokens, k - 1) !== 'the' && !begins(tokens, k)) return undefined;
  if (!that && w(tokens, k) !== 'one' && !(BLOCK_NOUNS.has(w(tokens, k)) && w(tokens, k - 1) === 'the'))
    return undefined;
  if (w(tokens, j) === 'down') j++;
  if (!/^(in|on|from|of|along|at)$/.test(w(tokens, j))) return undefined;
  const line = lineAt(tokens, w(tokens, j + 1) === 'the' ? j + 2 : j + 1, ctx);
  if (line?.how !== 'said' || line.lines.length !== 1) return undefined;
  return only(inside(units, line.axis, line.lines), line.next, units);
}

/** "the corner one", "the one in the corner": of those told the only one in a corner of the quilt. */
function cornerOne(tokens: Token[], k: number, units: string[][], ctx: PlaceContext): Member | undefined {
  // "the corner block, bottom right, has a piece missing": of the quilt, and told which
  if (w(tokens, k) === 'corner' && cornerPhrase(tokens, k, ctx)) return undefined;
  const { grid } = ctx;
  const next =
    w(tokens, k) === 'corner' && /^(one|block)$/.test(w(tokens, k + 1))
      ? k + 2
      : w(tokens, k) === 'one' &&
          /^(in|at)$/.test(w(tokens, k + 1)) &&
          w(tokens, k + 2) === 'the' &&
          w(tokens, k + 3) === 'corner'
        ? k + 4
        : undefined;
  if (!next || w(tokens, next) === 'of') return undefined;
  const corners = cornerBlocks(grid);
  return only(
    units.filter((unit) => unit.every((p) => corners.includes(p))),
    next,
    units,
  );
}

/** By which of its two numbers a block lies at a side, and whether it is the greatest or the least. */
const SIDE: Record<string, ['row' | 'block', 1 | -1]> = {
  upper: ['row', -1],
  top: ['row', -1],
  higher: ['row', -1],
  uppermost: ['row', -1],
  topmost: ['row', -1],
  lower: ['row', 1],
  bottom: ['row', 1],
  btm: ['row', 1],
  lowermost: ['row', 1],
  left: ['block', -1],
  leftmost: ['block', -1],
  lh: ['block', -1],
  right: ['block', 1],
  rightmost: ['block', 1],
  rh: ['block', 1],
};
const PART_SIDE: Record<string, string> = {
  upper: 'top',
  lower: 'bottom',
  btm: 'bottom',
  lh: 'left',
  rh: 'right',
};

/** Of several things the one that lies furthest to a side. */
function furthest(units: string[][], word: string): string[][] {
  if (units.some((u) => !splitBlock(u[0]!)))
    return units.filter((u) =>
      u[0]!
        .split('-')
        .slice(1)
        .includes(PART_SIDE[word] ?? word),
    );
  const [number, sign] = SIDE[word]!;
  const far = units.map((u) => sign * splitBlock(u[0]!)![number]);
  return units.filter((_u, n) => far[n] === Math.max(...far));
}

/** "the upper one", "the left-hand block", "the bottom", "the right corner one"; "the one on the left", "the one at the top end". */
function atSide(tokens: Token[], k: number, units: string[][], bare: boolean): Member | undefined {
  let j = k;
  const led = w(tokens, k) === 'one' && /^(on|at|to|towards|nearest|nearer)$/.test(w(tokens, k + 1));
  if (led) {
    j = k + 2;
    while (/^(the|far|very)$/.test(w(tokens, j))) j++;
  }
  const word = w(tokens, j);
  if (!Object.hasOwn(SIDE, word)) return undefined;
  let next = j + 1;
  while (/^(-|hand|most)$/.test(w(tokens, next))) next++;
  if (led) {
    const blocks = units.every((u) => splitBlock(u[0]!));
    while (/^(side|end)$/.test(w(tokens, next)) || (blocks && /^(edge|border)$/.test(w(tokens, next))))
      next++;
    return standsAlone(tokens, next) ? only(furthest(units, word), next, units) : undefined;
  }
  if (/^(corner|end|edge)$/.test(w(tokens, next)) && w(tokens, next + 1) === 'one') next++;
  const cornered = w(tokens, next - 1) !== word && /^(corner|end|edge)$/.test(w(tokens, next - 1));
  const noun = w(tokens, next) === 'one';
  // "the upper one" of single blocks is read where one of them is picked
  if (noun && !cornered && !bare && units.every((u) => u.length === 1)) return undefined;
  if (bare && !noun && !(isSetAgainst(tokens, j) && tellsOf(tokens, next))) return undefined;
  if (
    noun ? /^(of|along|from)$/.test(w(tokens, next + 1)) : !(standsAlone(tokens, next) && isClear(tokens, j))
  )
    return undefined;
  // "bound the top, the left and the right": sides told by name
  if (!noun && !units.every((u) => splitBlock(u[0]!)) && (word === 'top' || !isOneOfSides(tokens, j, units)))
    return undefined;
  return only(furthest(units, word), noun ? next + 1 : next, units);
}

/** "upper torn, lower stained": does what follows a word without article and noun tell of a thing? */
const tellsOf = (tokens: Token[], k: number): boolean =>
  w(tokens, k) !== '' &&
  !/^([.,;:!?&+()\n-]|and|but|i|we|as|alone|it|they|then|so|over|for)$/.test(w(tokens, k)) &&
  standsAlone(tokens, k);

/** "dabbed the left, patching the bottom": another of the sides that were told stands in the note as well, and no list of them. */
const isOneOfSides = (tokens: Token[], j: number, units: string[][]): boolean =>
  isSetAgainst(tokens, j) ||
  tokens.some(
    (t, m) =>
      Math.abs(m - j) > 2 &&
      t.w !== w(tokens, j) &&
      w(tokens, m - 1) === 'the' &&
      units.some((u) => u[0]!.endsWith(`-${t.w}`)) &&
      standsAlone(tokens, w(tokens, m + 1) === 'one' ? m + 2 : m + 1),
  );

/** "upper" and "lower" are told of things alone; "top", "left" need what they are set against. */
const isClear = (tokens: Token[], j: number): boolean =>
  /^(upper|lower|higher)$/.test(w(tokens, j)) || isSetAgainst(tokens, j);

/** "the first by hand, the second by machine", "the former", "the last I left". */
function inOrder(tokens: Token[], k: number, units: string[][], bare: boolean): Member | undefined {
  const word = w(tokens, k);
  if (/^(former|latter)$/.test(word) && units.length === 2)
    return {
      unit: units[word === 'former' ? 0 : 1]!,
      next: /^(one|block)$/.test(w(tokens, k + 1)) ? k + 2 : k + 1,
    };
  const both = endsInOrder(tokens, k, units, bare);
  if (both) return both;
  const nth = word === 'last' ? { value: units.length, next: k + 1 } : readOrdinal(tokens, k);
  if (!nth || nth.value > units.length || units.length > 4) return undefined;
  // "the first one" is read where single blocks are picked
  const one = w(tokens, nth.next) === 'one';
  if (one && /^(in|of|along|from|down|up|to)$/.test(w(tokens, nth.next + 1))) return undefined;
  if (!one && !(standsAlone(tokens, nth.next) && isSetAgainst(tokens, k))) return undefined;
  // "first: darn, second: patch"
  if (bare && !one && w(tokens, nth.next) !== ':' && !tellsOf(tokens, nth.next)) return undefined;
  return { unit: units[nth.value - 1]!, next: one ? nth.next + 1 : nth.next };
}

/** "the middle one", "the outer two", "the end ones" of three, as they lie. */
function byOrderOfLie(tokens: Token[], k: number, units: string[][]): Member | undefined {
  const word = w(tokens, k);
  if (units.length !== 3 || !/^(middle|centre|center|central|outer|outside|end)$/.test(word))
    return undefined;
  const at = units.map((u) => splitBlock(u[0]!));
  if (at.some((p) => !p)) return undefined;
  const rows = new Set(at.map((p) => p!.row)).size === 3;
  if (!rows && new Set(at.map((p) => p!.block)).size < 3) return undefined;
  const lie = (u: string[]): number => (rows ? splitBlock(u[0]!)!.row : splitBlock(u[0]!)!.block);
  const sorted = [...units].sort((a, b) => lie(a) - lie(b));
  if (/^(middle|centre|center|central)$/.test(word))
    return w(tokens, k + 1) === 'one' && !/^(of|in)$/.test(w(tokens, k + 2))
      ? { unit: sorted[1]!, next: k + 2 }
      : undefined;
  const two = /^(two|pair|ones|2)$/.test(w(tokens, k + 1));
  return two && !/^(rows|columns|of|in)$/.test(w(tokens, k + 2))
    ? { unit: [...sorted[0]!, ...sorted[2]!], next: k + 2 }
    : undefined;
}

/** "this one gets net, that one comes out": of two the first told and the second. */
function thisOrThat(tokens: Token[], i: number, units: string[][]): Member | undefined {
  const word = w(tokens, i);
  if (units.length !== 2 || !/^(this|that)$/.test(word) || w(tokens, i + 1) !== 'one') return undefined;
  const other = word === 'this' ? 'that' : 'this';
  const paired = tokens.some(
    (t, m) => t.w === other && w(tokens, m + 1) === 'one' && (word === 'this' ? m > i : m < i),
  );
  return paired ? { unit: units[word === 'this' ? 0 : 1]!, next: i + 2 } : undefined;
}

/** "the hole in row five", "the row two tear": where such damage was told of several blocks, the one that lies there. */
function thingInLine(tokens: Token[], k: number, units: string[][], ctx: PlaceContext): Member | undefined {
  const ahead = lineAt(tokens, k, ctx);
  const thing = thingAt(tokens, ahead?.next ?? k, units, ctx);
  if (!thing) return undefined;
  let { next } = thing;
  let line = ahead;
  if (!line) {
    if (!/^(in|on|along)$/.test(w(tokens, next))) return undefined;
    line = lineAt(tokens, w(tokens, next + 1) === 'the' ? next + 2 : next + 1, ctx);
    next = line?.next ?? next;
  }
  return line?.how === 'said' && line.lines.length === 1
    ? only(inside(thing.units, line.axis, line.lines), next, units)
    : undefined;
}

/** "(patched) the first and the last", "first two patched": of three or more, in the order told. */
function endsInOrder(tokens: Token[], k: number, units: string[][], bare: boolean): Member | undefined {
  const word = w(tokens, k);
  if (units.length < 3 || !/^(first|last)$/.test(word)) return undefined;
  const n = bare ? readCount(tokens, k + 1) : undefined;
  if (n && n.value > 1 && n.value < units.length && tellsOf(tokens, n.next))
    return {
      unit: (word === 'first' ? units.slice(0, n.value) : units.slice(-n.value)).flat(),
      next: n.next,
    };
  if (word !== 'first' || !/^(and|&)$/.test(w(tokens, k + 1)) || w(tokens, k - 2) === 'between')
    return undefined;
  const at = w(tokens, k + 2) === 'the' ? k + 3 : k + 2;
  const other = w(tokens, at) === 'last' ? { value: units.length, next: at + 1 } : readOrdinal(tokens, at);
  if (!other || other.value < 2 || other.value > units.length) return undefined;
  const next = /^ones?$/.test(w(tokens, other.next)) ? other.next + 1 : other.next;
  return standsAlone(tokens, next) && !/^(of|in|row|column)$/.test(w(tokens, next))
    ? { unit: [...units[0]!, ...units[other.value - 1]!], next }
    : undefined;
}
