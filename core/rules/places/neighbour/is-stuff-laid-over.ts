import type { Token } from '../../../text/tokenise.ts';
import { wordAt as w } from '../../../text/word-at.ts';

/** "put a new piece over 2-3": stuff that covers it, and no block above it. */
export const isStuffLaidOver = (tokens: Token[], i: number): boolean =>
  /^(?:piece|square)$/.test(w(tokens, i)) &&
  w(tokens, i + 1) === 'over' &&
  /^(?:a|another|new|fresh|clean|little|small|big|bigger)$/.test(w(tokens, i - 1));
