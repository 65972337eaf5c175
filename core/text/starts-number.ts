import { COUNT_WORDS, TEN_WORDS } from './number-words.ts';
import type { Token } from './tokenise.ts';

const NUMBER_STARTS = new Set([
  ...COUNT_WORDS.slice(1),
  ...TEN_WORDS,
  ...'fourty a an half quarter hundred couple dozen another hour hr inch yard metre meter'.split(' '),
]);

/** May an amount begin with this word? */
export const startsNumber = (word: string): boolean => NUMBER_STARTS.has(word);

/** Does a number, in figures or words, stand at an index? */
export const isNumberAt = (tokens: Token[], i: number): boolean =>
  tokens[i]?.kind === 'number' || startsNumber(tokens[i]?.w ?? '');
