import type { Token } from '../text/tokenise.ts';

/** "top R + bottom L corner blocks", "spot cleaned bot R one": sides written by their first letter beside a side in full. */
export function nameShortSides(tokens: Token[]): Token[] {
  if (!tokens.some((_t, k) => isShort(tokens, k))) return tokens;
  return tokens.map((t, k) => (isShort(tokens, k) ? { ...t, w: t.w === 'r' ? 'right' : 'left' } : t));
}

const isShort = (tokens: Token[], k: number): boolean =>
  /^[rl]$/.test(tokens[k]!.w) &&
  /^(top|bottom|upper|lower|bot|btm)$/.test(tokens[k - 1]?.w ?? '') &&
  tokens[k + 1]?.kind !== 'number' &&
  !(tokens[k + 1]?.w === '/' && tokens[k + 1]!.glued);
