import type { QuiltGrid } from '../../../shared/quilt.ts';
import type { Token } from '../../text/tokenise.ts';

/** Where a slip is looked for: the words as heard from `i` on, and those before as they have been put right. */
export type HeardAt = {
  tokens: readonly Token[];
  i: number;
  before: readonly Token[];
  /** Words that this user has taught: as heard, and as meant. */
  lessons: readonly (readonly [heard: string[], meant: string[]])[];
  /** The quilt's fabrics and place names. */
  names: object | undefined;
  /** It was said aloud and recognised, and not typed. */
  spoken: boolean;
  /** The blocks of the quilt, where they are known. */
  grid?: QuiltGrid | undefined;
};

/** What the words are read as. */
type Mend = {
  tokens: Token[];
  /** How many of the words as heard it is for. */
  took: number;
  /** How many of the words before, already put right, it stands for as well. */
  tookBack?: number;
  /** The rule under which the entry keeps what was heard; left out where only a sign was read as another. */
  rule?: string;
};

export type SlipRule = (at: HeardAt) => Mend | undefined;

/** One word read as another. */
export const readAs = (token: Token, w: string, rule?: string): Mend => ({
  tokens: [{ ...token, w, heard: token.w }],
  took: 1,
  ...(rule ? { rule } : {}),
});

/** Several words from `i` on read as others. */
export function readPhraseAs(
  { tokens, i }: HeardAt,
  length: number,
  meant: readonly string[],
  rule: string,
): Mend {
  const first = tokens[i]!;
  const last = tokens[i + length - 1]!;
  const heard = wordsOf(tokens.slice(i, i + length));
  return {
    tokens: meant.map((w, k) => ({
      ...first,
      kind: 'word',
      w,
      to: last.to,
      heard,
      glued: k === 0 && first.glued,
    })),
    took: length,
    rule,
  };
}

/** The words as they stand, with no blank where none was. */
export const wordsOf = (tokens: readonly Token[]): string =>
  tokens.map(({ w, glued }, k) => (k > 0 && !glued ? ` ${w}` : w)).join('');
