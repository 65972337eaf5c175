import { wordsNeeded } from './words-needed.ts';

/** The plain words of a text: runs of small letters. "'s" is an "s" of its own. */
export const plainWordsOf = (text: string): Set<string> => new Set(text.split(/[^a-z]+/));

/**
 * Several patterns over a note's words joined by blanks, of which hardly one can match in a given note. Each is looked for only
 * where one of the words stands that it cannot do without: a note of a dozen words has none of most, and a look at each word
 * costs less than a run of one pattern.
 */
export class PatternSet {
  private readonly byWord = new Map<string, RegExp[]>();
  /** Those that need no word in particular. */
  private readonly always: RegExp[] = [];

  constructor(patterns: readonly RegExp[]) {
    for (const pattern of patterns) {
      const words = wordsNeeded(pattern);
      if (!words) this.always.push(pattern);
      else for (const word of words) this.byWord.set(word, [...(this.byWord.get(word) ?? []), pattern]);
    }
  }

  /** Does one of them match? `words` are the plain words of the text, where the caller has several sets to ask. */
  test(text: string, words: Set<string> = plainWordsOf(text)): boolean {
    for (const pattern of this.always) if (pattern.test(text)) return true;
    for (const word of words) {
      const patterns = this.byWord.get(word);
      if (patterns) for (const pattern of patterns) if (pattern.test(text)) return true;
    }
    return false;
  }
}
