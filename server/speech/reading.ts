/** What a decoder made of one utterance. */
export type Reading = {
  tokens: number[];
  /** Natural-log probability of each token. */
  logProbs: number[];
  endLogProb: number;
  /** Probability that nothing was said, 0–1. */
  noSpeech: number;
  /** True when the decoder got stuck. */
  looped: boolean;
};

/** A reading of a search, with its mean natural-log probability a token, the trade's phrases weighed in. */
export type ScoredReading = Reading & { score: number };

/** Called before each run of the network: lets live speech go first, and throws when the work was called off. */
export type Turn = () => Promise<void>;

/** Mean natural-log probability a token, the end token included. */
export const meanOf = (reading: Reading): number =>
  (reading.logProbs.reduce((sum, value) => sum + value, 0) + reading.endLogProb) /
  (reading.logProbs.length + 1);
