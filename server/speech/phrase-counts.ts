import { z } from 'zod';

/**
 * How often the trade's notes go on with one token after two others, as the recogniser spells its tokens ("Ġrow": a word's
 * beginning has a Ġ), in lower case and without marks. Counts of two tokens and of one are sums over these.
 */
export const PhraseCounts = z.object({
  /** The first two stand for a note's beginning and for any number. */
  tokens: z.array(z.string()),
  /** Four at a time: the indices of three tokens that followed each other, and how often they did. */
  triples: z.array(z.number().int()),
});
export type PhraseCounts = z.infer<typeof PhraseCounts>;

export const NOTE_BEGINS = '<';
const ANY_NUMBER = '#';

const NUMBER_WORDS = new Set(
  'one two three four five six seven eight nine ten eleven twelve thirteen fifteen twenty thirty forty fifty'.split(
    ' ',
  ),
);

/**
 * What a token of the recogniser says, for counting: lower case, one name for every number so that none is ever expected more
 * than another, and undefined for marks, which the counts leave out.
 */
export function sayingOf(token: string): string | undefined {
  const begins = token.startsWith('Ġ');
  const letters = (begins ? token.slice(1) : token).toLowerCase();
  if (!/[a-z0-9]/.test(letters)) return undefined;
  if (/^\d+$/.test(letters) || NUMBER_WORDS.has(letters)) return ANY_NUMBER;
  return begins ? `Ġ${letters}` : letters;
}

/** The sayings of a line of tokens; the further figures of a number are no saying of their own. */
export function sayingsOf(tokens: readonly string[]): string[] {
  const sayings: string[] = [];
  for (const token of tokens) {
    const saying = sayingOf(token);
    if (saying === undefined) continue;
    if (saying === ANY_NUMBER && sayings.at(-1) === ANY_NUMBER && !token.startsWith('Ġ')) continue;
    sayings.push(saying);
  }
  return sayings;
}

/** Counts notes that are given as lines of the recogniser's tokens. */
export function countPhrases(notes: Iterable<readonly string[]>): PhraseCounts {
  const indices = new Map([NOTE_BEGINS, ANY_NUMBER].map((token, index) => [token, index]));
  const indexOf = (saying: string): number => {
    let index = indices.get(saying);
    if (index === undefined) {
      index = indices.size;
      indices.set(saying, index);
    }
    return index;
  };
  const counts = new Map<string, number>();
  for (const note of notes) {
    const line = [0, 0, ...sayingsOf(note).map(indexOf)];
    for (let i = 2; i < line.length; i++) {
      const triple = line.slice(i - 2, i + 1).join(' ');
      counts.set(triple, (counts.get(triple) ?? 0) + 1);
    }
  }
  const triples = [...counts].flatMap(([triple, count]) => [...triple.split(' ').map(Number), count]);
  return { tokens: [...indices.keys()], triples };
}
