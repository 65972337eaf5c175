/** The phrases of a list written with commas between, over as many lines as it takes. */
export const phrases = (list: string): string[] =>
  list
    .split(',')
    .map((phrase) => phrase.trim())
    .filter(Boolean);
