import { COUNT_WORDS } from '../../text/number-words.ts';
import type { Token } from '../../text/tokenise.ts';

export const SMALL_NUMBERS = COUNT_WORDS.slice(1, 10);

export const isNumberWord = (token: Token | undefined): boolean =>
  token !== undefined && SMALL_NUMBERS.includes(token.w);

/** "four" or "4" */
export const isSmallNumber = (token: Token | undefined): boolean =>
  token !== undefined && (isNumberWord(token) || /^\d$/.test(token.w));

/** 4 for "four" and "4"; undefined for what is no number from one to nine. */
export function smallValue(token: Token | undefined): number | undefined {
  if (!token) return undefined;
  if (/^[1-9]$/.test(token.w)) return Number(token.w);
  const at = SMALL_NUMBERS.indexOf(token.w);
  return at < 0 ? undefined : at + 1;
}
