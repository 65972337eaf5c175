import type { QuiltGrid } from '../../shared/quilt.ts';
import { readCount } from '../text/read-number.ts';
import type { Token } from '../text/tokenise.ts';
import { LEXICON } from './lexicon-index.ts';
import { nameOf } from './line-by-line.ts';
import { columnOf, rowOf } from './places/grid.ts';

type Line = { axis: 'row' | 'column'; value: number; next: number; headed: boolean };

const ROW = /^(?:r|row)$/;
const COLUMN = /^(?:c|col|column)$/;
const ACROSS = /^(?:b|bs|blk|blks|blocks)$/;
const DOWN = /^(?:r|row|rows)$/;
const STOP = /^(?:[.?!\n]|then)$/;
const OPENS_PIECE = /^(?:[,;:&+(]|--|and|but)$/;

/**
 * "r2: b1 torn, b4-5 stain", "c2: r1 torn, r3 ok": under a line that heads the list its blocks are told by the other number alone. The
 * line is said again before each that would otherwise be read as a block ("4-5") or as a whole row ("r3").
 */
export function nameUnderLine(tokens: Token[], grid: QuiltGrid): Token[] {
  if (!tokens.some((t) => ROW.test(t.w) || COLUMN.test(t.w))) return tokens;
  const out: Token[] = [];
  let line: Line | undefined;
  for (let i = 0; i < tokens.length; i++) {
    const t = tokens[i]!;
    if (STOP.test(t.w) && !(t.w === '.' && t.glued && tokens[i + 1]?.glued)) line = undefined;
    const opens = i > 0 && OPENS_PIECE.test(tokens[i - 1]!.w);
    const told: Line | undefined = lineAt(tokens, i, grid);
    if (told && !(line?.axis === 'column' && line.headed && told.axis === 'row')) line = told;
    else if (line && opens && tokens[i - 1]!.w !== ':' && isOfLine(tokens, i, line))
      out.push(...sayAgain(line, t));
    const rest = line && opens ? restAt(tokens, i, line, grid) : undefined;
    if (rest) {
      // a list of their own, and no more of those before
      if (out.at(-1)?.w === ',') out.push({ ...out.pop()!, w: ';' });
      out.push(...rest);
      i += t.w === 'the' ? 1 : 0;
      continue;
    }
    // "c2 - r1 torn": a heading, and no stretch from the one to the other
    const dash =
      t.w === '-' &&
      !t.glued &&
      line?.headed &&
      line.next === i &&
      (line.axis === 'column' ? DOWN : ACROSS).test(tokens[i + 1]?.w ?? '');
    out.push(dash ? { ...t, w: ':', kind: 'mark' } : t);
  }
  return out;
}

/** A single row or column, and whether it heads what follows. */
function lineAt(tokens: Token[], i: number, grid: QuiltGrid): Line | undefined {
  const axis = ROW.test(tokens[i]!.w) ? 'row' : COLUMN.test(tokens[i]!.w) ? 'column' : undefined;
  const n = axis && readCount(tokens, i + 1);
  if (!axis || !n || !Number.isInteger(n.value)) return undefined;
  if (n.value < 1 || n.value > (axis === 'row' ? grid.rows : grid.blocks)) return undefined;
  const next = tokens[n.next];
  if (
    next &&
    (next.kind === 'number' || /^(?:and|&|\+|to|\/|x)$/.test(next.w) || (next.w === '-' && next.glued))
  )
    return undefined;
  return { axis, value: n.value, next: n.next, headed: next?.w === ':' || next?.w === '-' };
}

/** Does a block told by the other number alone stand here, where it would be read as something else? */
function isOfLine(tokens: Token[], i: number, line: Line): boolean {
  const word = tokens[i]!.w;
  const n = readCount(tokens, i + 1);
  if (!n) return false;
  const range = tokens[i + 2]?.w === '-' && tokens[i + 3]?.kind === 'number';
  if (line.axis === 'column')
    return line.headed && DOWN.test(word) && !/^(?:b|blk|block)$/.test(tokens[n.next]?.w ?? '');
  return (
    range &&
    ACROSS.test(word) &&
    (word !== 'blocks' || (line.headed && !isPair(tokens, i + 4))) &&
    n.value < tokens[i + 3]!.value!
  );
}

/** "blocks 3-4 and 4-1": each with its row and its number. */
const isPair = (tokens: Token[], k: number): boolean =>
  /^(?:and|,|&|\+)$/.test(tokens[k]?.w ?? '') &&
  tokens[k + 1]?.kind === 'number' &&
  tokens[k + 2]?.w === '-' &&
  tokens[k + 3]?.kind === 'number';

/** "c2: r1 torn, rest ok", "r4 fraying b2+b3, others fine": the blocks of the line that were not told, by their names. */
function restAt(tokens: Token[], i: number, line: Line, grid: QuiltGrid): Token[] | undefined {
  const k = tokens[i]!.w === 'the' ? i + 1 : i;
  if (!/^(?:rest|others|remainder)$/.test(tokens[k]?.w ?? '') || !tellsOf(tokens, k + 1)) return undefined;
  const told = toldUnder(tokens, i, line);
  if (!told?.size) return undefined;
  const all = line.axis === 'row' ? rowOf(grid, line.value) : columnOf(grid, line.value);
  const left = all.filter((p) => !told.has(Number(p.split('-')[line.axis === 'row' ? 1 : 0])));
  if (!left.length || left.length === all.length) return undefined;
  const at = { ...tokens[k]!, from: tokens[i]!.from, to: tokens[k]!.to };
  return left.flatMap((p, n) => [
    ...(n ? [{ ...at, w: '&', kind: 'mark', glued: false } as Token] : []),
    ...nameOf(p, at),
  ]);
}

/** The numbers told under the line, where all that stand there are of its blocks. */
function toldUnder(tokens: Token[], to: number, line: Line): Set<number> | undefined {
  const told = new Set<number>();
  for (let k = line.next; k < to; k++) {
    if (!(line.axis === 'row' ? /^(?:b|bs|blk|blks|blocks?)$/ : DOWN).test(tokens[k]!.w)) {
      if (tokens[k]!.kind === 'number') return undefined;
      continue;
    }
    let n = readCount(tokens, k + 1);
    let from: number | undefined;
    while (n) {
      for (let v = from ?? n.value; v <= n.value && v < 100; v++) told.add(v);
      k = n.next - 1;
      const joint = tokens[n.next]?.w ?? '';
      if (!/^(?:-|to|\+|&|and|\/|,)$/.test(joint)) break;
      from = /^(?:-|to)$/.test(joint) ? n.value + 1 : undefined;
      n = readCount(tokens, n.next + 1);
    }
  }
  return told;
}

/** Is at once told what is so of them? */
function tellsOf(tokens: Token[], at: number): boolean {
  let k = at;
  while (/^(?:is|are|'s|'re|all|look|looks|just|:|-)$/.test(tokens[k]?.w ?? '')) k++;
  return LEXICON.longestAt(tokens, k)?.payloads.some((s) => s.k === 'finding') ?? false;
}

/** "r2" as it would have been typed before the token. */
function sayAgain(line: Line, before: Token): Token[] {
  const at = { ...before, to: before.from };
  return [
    { ...at, w: line.axis === 'row' ? 'r' : 'c', kind: 'word', value: undefined } as Token,
    { ...at, w: String(line.value), kind: 'number', value: line.value, glued: true } as Token,
  ];
}
