import type { Token } from '../../text/tokenise.ts';
import { wordSet } from '../../text/word-set.ts';

const NEW = wordSet('new fresh replacement');
/** What patchwork is pieced from, by its shape (common practice, no source). */
const SHAPES = new Map(
  'hex hexagon hexie triangle diamond petal wedge log kite rosette blade crescent arc point'
    .split(' ')
    .flatMap((shape) => [
      [shape, 'piece'] as const,
      [shape === 'hex' ? 'hexes' : `${shape}s`, 'pieces'] as const,
    ]),
);

/** "new hexes in", "pieced a fresh wedge in": a new piece, by its shape. */
export function withPiecesByShape(tokens: Token[]): Token[] {
  // "pieced six new hexagons together" makes them, and lets them in nowhere
  if (!tokens.some((t) => SHAPES.has(t.w)) || tokens.some((t) => t.w === 'together')) return tokens;
  return tokens.map((t, k) => {
    const piece = SHAPES.get(t.w);
    const said = [tokens[k - 1], tokens[k - 2]].some((before) => NEW.has(before?.w ?? ''));
    return piece && said ? { ...t, w: piece } : t;
  });
}
