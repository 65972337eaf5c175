import type { Token } from '../../text/tokenise.ts';

export const SMALL_NUMBERS = ['one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'];

export const isNumberWord = (token: Token | undefined): boolean =>
  token !== undefined && SMALL_NUMBERS.includes(token.w);

/** "four" or "4" */
export const isSmallNumber = (token: Token | undefined): boolean =>
  token !== undefined && (isNumberWord(token) || /^\d$/.test(token.w));
