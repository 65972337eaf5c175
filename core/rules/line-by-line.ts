import type { QuiltGrid } from '../../shared/quilt.ts';
import { readCount } from '../text/read-number.ts';
import type { Token } from '../text/tokenise.ts';
import { LEXICON } from './lexicon-index.ts';
import { columnOf, rowOf } from './places/grid.ts';

/** Which way she goes, between the line and what is found in it. */
const WAY =
  /^(?:(?:from|the|left|right|top|bottom|to|l|r|along|across|down|in|order|going|over|and|on|straight|reading|,) )*(?::|,|-|--) $/;
const LONGEST = 5;

/**
 * "col 1 top to bottom: hole, sound, tear, sound, mildew": as many findings as the line has blocks, told one after the other. Each
 * is given the name of its block, so that it is read as if that had been said.
 */
export function nameLineByLine(tokens: Token[], grid: QuiltGrid): Token[] {
  for (let i = 0; i < tokens.length - 6; i++) {
    if (!/^(?:row|col|column)$/.test(tokens[i]!.w)) continue;
    const n = readCount(tokens, i + 1);
    if (!n) continue;
    const line = tokens[i]!.w === 'row' ? rowOf(grid, n.value) : columnOf(grid, n.value);
    let from = n.next;
    let way = '';
    for (let k = from, said = ''; k < Math.min(tokens.length, n.next + 9); k++) {
      said += `${tokens[k]!.w} `;
      if (!WAY.test(said)) continue;
      way = said;
      from = k + 1;
    }
    if (line.length < 3 || !way) continue;
    const pieces = piecesFrom(tokens, from);
    if (pieces.length !== line.length || !pieces.every((p) => isFound(p))) continue;
    const end = from + pieces.reduce((sum, p) => sum + p.length, 0) + pieces.length - 1;
    const backwards = /^(?:, )?(?:from )?(?:the )?(?:right|bottom) /.test(way);
    const named = pieces.flatMap((piece, k) => [
      ...(k ? [{ ...piece[0]!, w: ',', kind: 'mark' as const, to: piece[0]!.from }] : []),
      ...nameOf(backwards ? line.at(-1 - k)! : line[k]!, piece[0]!),
      ...piece,
    ]);
    return [...tokens.slice(0, i), ...named, ...tokens.slice(end)];
  }
  return tokens;
}

/** The stretches between commas, up to the end of the sentence. */
function piecesFrom(tokens: Token[], from: number): Token[][] {
  const pieces: Token[][] = [[]];
  for (let k = from; k < tokens.length && !/^[.;!?\n]$/.test(tokens[k]!.w); k++)
    if (tokens[k]!.w === ',') pieces.push([]);
    else pieces.at(-1)!.push(tokens[k]!);
  return pieces;
}

const isFound = (piece: Token[]): boolean =>
  piece.length > 0 &&
  piece.length <= LONGEST &&
  !piece.some((t) => t.kind === 'number') &&
  piece.some((_t, k) => LEXICON.longestAt(piece, k)?.payloads.some((s) => s.k === 'finding'));

/** "2-1" as it would have been typed before the token. */
export const nameOf = (place: string, before: Token): Token[] =>
  nameAt(place, { ...before, to: before.from });

/** "2-1" as it would have been typed, of the words of a token. */
export function nameAt(place: string, at: Token): Token[] {
  return place
    .split('-')
    .flatMap((number, k) => [
      ...(k ? [{ ...at, w: '-', kind: 'mark' as const, glued: true, value: undefined } as Token] : []),
      { ...at, w: number, kind: 'number' as const, value: Number(number), glued: k > 0 },
    ]);
}
