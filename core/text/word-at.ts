import type { Token } from './tokenise.ts';

/** The word at an index, and nothing before the first and behind the last. */
export const wordAt = (tokens: readonly Token[], i: number): string => tokens[i]?.w ?? '';
