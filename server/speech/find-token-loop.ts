export type TokenLoop = {
  /** Number of tokens that come again and again. */
  period: number;
  /** How many tokens to keep so that one copy stands. */
  keep: number;
};

/**
 * Looks at the end of the tokens so far for the two ways in which a decoder gets stuck:
 * - short: the last 12 or more tokens have a period of 1 to 4 ("so so so so");
 * - long: the last p tokens, 7 to 80, equal the p before them (a whole sentence said again).
 */
export function findTokenLoop(tokens: readonly number[]): TokenLoop | undefined {
  const end = tokens.length;
  for (let period = 1; period <= 4; period++) {
    let run = period;
    while (run < end && tokens[end - 1 - run] === tokens[end - 1 - run + period]) run++;
    if (run >= 12) return { period, keep: end - run + period };
  }
  for (let period = 7; period <= 80 && period * 2 <= end; period++) {
    let same = 0;
    while (same < period && tokens[end - 1 - same] === tokens[end - 1 - same - period]) same++;
    if (same === period) return { period, keep: end - period };
  }
  return undefined;
}
