import type { CutPiece } from './cutting/lay-out.ts';
import { type Exact, exact } from './exact.ts';
import type { Working } from './working.ts';

interface PieceSpec {
  width?: number | undefined;
  length?: number | undefined;
  count?: number | undefined;
  name?: string | undefined;
  turn?: boolean | undefined;
}

/** Pieces at the size they are cut, `wider` than given both ways; one that lacks a size is asked for and left out. */
export const piecesToCut = (
  pieces: readonly PieceSpec[] | undefined,
  wider: Exact,
  turn: boolean,
  working: Working,
): CutPiece[] => {
  if (pieces === undefined) {
    working.ask('Which pieces are to be cut: how wide, how long, and how many?');
    return [];
  }
  return pieces.flatMap(({ width, length, count, name, turn: own }, i) => {
    if (width === undefined || length === undefined) {
      const missing = width === undefined ? (length === undefined ? 'wide and how long' : 'wide') : 'long';
      working.ask(`How ${missing} is ${name ?? `piece ${i + 1}`}? It is left out until then.`);
      return [];
    }
    return [
      {
        width: exact(width).add(wider),
        length: exact(length).add(wider),
        count: count ?? 1,
        turnable: own ?? turn,
        piece: i,
        name,
      },
    ];
  });
};
