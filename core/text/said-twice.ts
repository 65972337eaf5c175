import type { Token } from './tokenise.ts';
import { wordSet } from './word-set.ts';

/** Small words that nobody says twice on purpose. "Two two" is a block, "no no" a denial, "had had" the past. */
const SMALL = wordSet(
  "the a an and or but of in on at by from with is was are were it i we they that this these those my her as so if then all be been got some 's 've 're",
);

/** The tokens with a word that was stammered or typed twice ("the the back", "an hour and a a half") taken once. */
export function withoutStammer(tokens: Token[]): Token[] {
  const twice = (t: Token, k: number): boolean => k > 0 && t.w === tokens[k - 1]!.w && SMALL.has(t.w);
  return tokens.some(twice) ? tokens.filter((t, k) => !twice(t, k)) : tokens;
}
