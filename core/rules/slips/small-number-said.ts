import { COUNT_WORDS } from '../../text/number-words.ts';
import type { Token } from '../../text/tokenise.ts';

export const SMALL_NUMBERS = COUNT_WORDS.slice(1, 10);

export const isNumberWord = (token: Token | undefined): boolean =>
  token !== undefined && SMALL_NUMBERS.includes(token.w);

/** "four" or "4" */
export const isSmallNumber = (token: Token | undefined): boolean =>
  token !== undefined && (isNumberWord(token) || /^\d$/.test(token.w));
