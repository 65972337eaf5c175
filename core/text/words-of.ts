import type { Token } from './tokenise.ts';

/** The words with one blank between any two. */
export const wordsOf = (tokens: readonly Token[]): string => tokens.map((t) => t.w).join(' ');
