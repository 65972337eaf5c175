const NUMBERS: Record<string, string> = {
  '8': 'eight',
  '1813': 'eighteen thirteen',
  mr: 'mister',
  mrs: 'missus',
  dr: 'doctor',
};

/** Lower case, no punctuation, numbers and titles of the test sentences spelled out: levelled before scoring. */
export function levelWords(text: string): string[] {
  return text
    .toLowerCase()
    .replace(/[^\p{L}\p{N}' ]+/gu, ' ')
    .split(/\s+/)
    .filter(Boolean)
    .flatMap((word) => (NUMBERS[word] ?? word).split(' '));
}

/** Substitutions, deletions and insertions by Levenshtein's distance over words. */
export function countWordErrors(reference: string, heard: string): { errors: number; words: number } {
  const wanted = levelWords(reference);
  const got = levelWords(heard);
  let row = Array.from({ length: got.length + 1 }, (_, j) => j);
  for (let i = 1; i <= wanted.length; i++) {
    const next = [i];
    for (let j = 1; j <= got.length; j++) {
      next[j] = Math.min(row[j]! + 1, next[j - 1]! + 1, row[j - 1]! + (wanted[i - 1] === got[j - 1] ? 0 : 1));
    }
    row = next;
  }
  return { errors: row[got.length]!, words: wanted.length };
}
