import type { QuiltGrid } from '../../../shared/quilt.ts';
import { readCount, readOrdinal } from '../../text/read-number.ts';
import type { Token } from '../../text/tokenise.ts';
import { wordAt as w } from '../../text/word-at.ts';
import { LEXICON } from '../lexicon-index.ts';
import { blocksOfLine, columnOf, countUp, rowOf, splitBlock, unique } from './grid.ts';
import type { PlaceContext, PlaceFound } from './place-found.ts';

export type LinesSpoken = { axis: 'row' | 'column'; lines: number[]; next: number };

/** Words after which "the second one" is a row that work has come to, and no block of the row before. */
const COMES_TO =
  /^(on|onto|to|into|at|doing|through|tying|quilting|basting|pressing|unpicking|did|finished|tied|quilted|basted|pressed|start|started|starting|begun|began)$/;

/** Whole rows, or whole columns, that were spoken of last: the numbers of them, in order. */
export function wholeLines(
  grid: QuiltGrid,
  places: string[],
): { axis: 'row' | 'column'; lines: number[] } | undefined {
  if (places.length < 2) return undefined;
  const at = places.map((p) => splitBlock(p));
  if (at.some((p) => !p)) return undefined;
  const rows = unique(at.map((p) => p!.row));
  if (rows.flatMap((r) => rowOf(grid, r)).length === places.length) return { axis: 'row', lines: rows };
  const columns = unique(at.map((p) => p!.block));
  return columns.flatMap((c) => columnOf(grid, c)).length === places.length
    ? { axis: 'column', lines: columns }
    : undefined;
}

/**
 * Rows told as "ones", where the talk goes from row to row: "that one's done and the first three of the next", "I'm on the
 * second one now", "all of the last one", "the next two". Undefined where no whole row or column was spoken of last.
 *
 * @param part whether blocks of the row are picked, "the first three of …", so that its own word may be left away
 */
export function linesSpokenAt(
  tokens: Token[],
  i: number,
  ctx: PlaceContext,
  part: boolean,
): LinesSpoken | undefined {
  const the = w(tokens, i) === 'the';
  const j = the ? i + 1 : i;
  const lead = w(tokens, i - 1);
  const word = w(tokens, j);
  const all = lead === 'of' && /^(whole|all|rest)$/.test(w(tokens, i - 2));
  const here = wholeLines(ctx.grid, ctx.focus);
  if (/^(next|following)$/.test(word)) {
    if (!here) return undefined;
    const n = readCount(tokens, j + 1);
    const one = w(tokens, j + 1) === 'one';
    const end = n && !one ? n.next : one ? j + 2 : j + 1;
    const bare = !one && !n;
    // "the next" alone only where blocks of it are picked, or work has come to it
    if (bare && !(part || (COMES_TO.test(lead) && ends(tokens, end)))) return undefined;
    if (n && !one && !(ends(tokens, end) || /^(are|is|'s|too|done)$/.test(w(tokens, end)))) return undefined;
    const last = Math.max(...here.lines);
    // "the first three of the next one down"
    const past = one && /^(down|along|over|across)$/.test(w(tokens, end)) && ends(tokens, end + 1);
    return {
      axis: here.axis,
      lines: countUp(last + 1, last + (one ? 1 : (n?.value ?? 1))),
      next: past ? end + 1 : end,
    };
  }
  if (part && /^(that|this)$/.test(w(tokens, i)) && w(tokens, i + 1) === 'one' && here?.lines.length === 1)
    return { ...here, next: i + 2 };
  // "there's mildew on the second one": of what was told, and no line that work has come to
  const found = /^(on|in|at)$/.test(lead) && tellsFinding(tokens[i - 2]);
  if (!the || !((COMES_TO.test(lead) && !found) || all || part)) return undefined;
  const axis = here?.axis ?? (all ? lineOf(ctx.focus) : undefined);
  if (!axis) return undefined;
  const total = axis === 'row' ? ctx.grid.rows : ctx.grid.blocks;
  const nth = readOrdinal(tokens, j);
  const end = nth?.next ?? j + 1;
  if (w(tokens, end) !== 'one' || /^(in|of|along|from)$/.test(w(tokens, end + 1))) return undefined;
  const line =
    nth?.value ?? (/^(last|bottom|final)$/.test(word) ? total : /^(top|first)$/.test(word) ? 1 : undefined);
  // "the second one", said while the second row itself is spoken of, is no row
  if (line === undefined || line > total || here?.lines.includes(line)) return undefined;
  return { axis, lines: [line], next: end + 1 };
}

const tellsFinding = (before: Token | undefined): boolean =>
  before !== undefined &&
  (LEXICON.longestAt([before], 0)?.payloads.some((s) => s.k === 'finding' || s.k === 'fail') ?? false);

const ends = (tokens: Token[], i: number): boolean =>
  i >= tokens.length ||
  /^([.,;!?&+\n]|and|but|then|now|too|as|also|tomorrow|today|tonight|later)$/.test(w(tokens, i));

/** The kind of line in which all the places spoken of lie. */
function lineOf(places: string[]): 'row' | 'column' | undefined {
  const at = places.map((p) => splitBlock(p));
  const [first] = at;
  if (!first || places.length < 2) return undefined;
  if (at.every((p) => p?.row === first.row)) return 'row';
  return at.every((p) => p?.block === first.block) ? 'column' : undefined;
}

/** "I'm on the second one now", "the whole of the last one", "all of the next": lines of the talk as a place. */
export function lineSpoken(tokens: Token[], i: number, ctx: PlaceContext): PlaceFound | undefined {
  let j = w(tokens, i) === 'the' && w(tokens, i + 1) === 'whole' ? i + 1 : i;
  if (/^(whole|all)$/.test(w(tokens, j))) {
    if (w(tokens, j + 1) !== 'of') return undefined;
    j += 2;
  }
  const told = linesSpokenAt(tokens, j, ctx, false);
  if (!told) return undefined;
  const { axis, lines, next } = told;
  const places = lines.flatMap((k) => blocksOfLine(ctx.grid, axis, k));
  return {
    next,
    places,
    how: 'implied',
    rule: axis === 'row' ? 'place.next-row' : 'place.next-column',
    kind: 'blocks',
    ...(places.length ? {} : { outside: true }),
  };
}
