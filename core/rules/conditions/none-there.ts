import type { Token } from '../../text/tokenise.ts';

/**
 * "stains on 2-2 and 2-3, none on 2-4", "moth in row two and none in row three": where there is none of it is told as where it is not. Read as
 * "…, not on 2-4".
 */
export function withNotForNone(tokens: Token[]): Token[] {
  if (!tokens.some((t) => t.w === 'none')) return tokens;
  return tokens.map((t, k) => {
    const after = tokens[k + 1]?.w ?? '';
    const noneThere =
      t.w === 'none' && k > 2 && /^(?:,|-|--|and|but)$/.test(tokens[k - 1]!.w) && PLACED.test(after);
    if (noneThere) return { ...t, w: 'not' };
    const joins = t.w === 'and' && tokens[k + 1]?.w === 'none' && PLACED.test(tokens[k + 2]?.w ?? '');
    return joins && k > 1 ? { ...t, w: ',', kind: 'mark' as const } : t;
  });
}
const PLACED = /^(?:in|on|at|along|under|round)$/;
