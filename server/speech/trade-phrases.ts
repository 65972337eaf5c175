import { NOTE_BEGINS, type PhraseCounts, sayingOf, sayingsOf } from './phrase-counts.ts';

/** How much the trade's phrases weigh beside the sound, as the exponent of their probability. */
const WEIGHT = 0.5;
/** The same where several readings are kept: there they decide more often. */
const WEIGHT_IN_SEARCH = 0.3;
/** Only words that the sound itself leaves within so many nats of its best are weighed. */
const NEARLY_AS_LIKELY = 2;
/** The share of a word that no note has, of which the recogniser knows some twenty thousand. */
const UNHEARD = 0.03 / 20_000;

type Followers = { counts: Map<string, number>; total: number };

/**
 * Where the sound leaves the recogniser torn between two words, the one that the trade's notes would go on with is taken:
 * "the border" and not "the barter" after "how wide". One number is never preferred to another, and marks and the end of
 * what was said are the sound's to decide.
 */
export class TradePhrases {
  readonly #single: Followers = { counts: new Map(), total: 0 };
  readonly #afterOne = new Map<string, Followers>();
  readonly #afterTwo = new Map<string, Followers>();
  readonly #vocabulary: readonly string[];
  readonly #sayings: (string | undefined)[] = [];

  /**
   * @param counts of the trade's notes
   * @param vocabulary the recogniser's tokens by their number
   */
  constructor({ tokens, triples }: PhraseCounts, vocabulary: readonly string[]) {
    this.#vocabulary = vocabulary;
    for (let i = 0; i < triples.length; i += 4) {
      const [first, second, third] = [
        tokens[triples[i]!]!,
        tokens[triples[i + 1]!]!,
        tokens[triples[i + 2]!]!,
      ];
      const count = triples[i + 3]!;
      addTo(this.#single, third, count);
      addTo(at(this.#afterOne, second), third, count);
      addTo(at(this.#afterTwo, `${first} ${second}`), third, count);
    }
  }

  /**
   * @param said the tokens so far
   * @param logits one score for each token; boosts are in it already
   * @param best the token that the scores alone would take
   * @returns the token to take
   */
  choose(said: readonly number[], logits: ArrayLike<number>, best: number): number {
    const saying = this.#sayingOf(best);
    if (saying === undefined) return best;
    const rivals: number[] = [];
    const least = logits[best]! - NEARLY_AS_LIKELY;
    for (let id = 0; id < this.#vocabulary.length; id++)
      if (logits[id]! >= least && id !== best) rivals.push(id);
    if (rivals.length === 0) return best;

    const [first, second] = this.#lastTwo(said);
    const scoreOf = (id: number, word: string) =>
      logits[id]! + WEIGHT * Math.log(this.#likely(first, second, word));
    let chosen = best;
    let highest = scoreOf(best, saying);
    for (const id of rivals) {
      const word = this.#sayingOf(id);
      if (word === undefined || word === saying) continue;
      const score = scoreOf(id, word);
      if (score > highest) {
        highest = score;
        chosen = id;
      }
    }
    return chosen;
  }

  /**
   * The same for a search that keeps several readings: what the words among its candidates have together is shared out among
   * them anew, by their sound and by how the notes would go on. Marks and the end keep what the sound gives them, so that
   * longer and shorter readings stay comparable.
   *
   * @param said the tokens so far
   * @param candidates the likeliest next tokens, with their natural-log probability by the sound
   * @returns one natural-log probability for each candidate
   */
  weigh(said: readonly number[], candidates: readonly { id: number; logProb: number }[]): number[] {
    const sayings = candidates.map(({ id }) => this.#sayingOf(id));
    const words = candidates.filter((_, k) => sayings[k] !== undefined);
    if (words.length < 2) return candidates.map(({ logProb }) => logProb);
    const [first, second] = this.#lastTwo(said);
    const weighed = candidates.map(({ logProb }, k) =>
      sayings[k] === undefined
        ? logProb
        : logProb + WEIGHT_IN_SEARCH * Math.log(this.#likely(first, second, sayings[k])),
    );
    const shift =
      logOfSum(words.map(({ logProb }) => logProb)) -
      logOfSum(weighed.filter((_, k) => sayings[k] !== undefined));
    return weighed.map((value, k) => (sayings[k] === undefined ? value : value + shift));
  }

  /** The last two words said, or the note's beginning. */
  #lastTwo(said: readonly number[]): [first: string, second: string] {
    const before = sayingsOf(said.map((id) => this.#vocabulary[id] ?? ''));
    return [before.at(-2) ?? NOTE_BEGINS, before.at(-1) ?? NOTE_BEGINS];
  }

  #sayingOf(id: number): string | undefined {
    if (!(id in this.#sayings)) this.#sayings[id] = sayingOf(this.#vocabulary[id] ?? '');
    return this.#sayings[id];
  }

  /** Probability of a word after two others: shares of longer phrases fall back on those of shorter ones (Witten and Bell 1991). */
  #likely(first: string, second: string, word: string): number {
    const alone = 0.97 * shareOf(this.#single, word) + UNHEARD;
    const pair = fallBack(this.#afterOne.get(second), word, alone);
    return fallBack(this.#afterTwo.get(`${first} ${second}`), word, pair);
  }
}

function logOfSum(logs: readonly number[]): number {
  const most = Math.max(...logs);
  return most + Math.log(logs.reduce((sum, value) => sum + Math.exp(value - most), 0));
}

function at(followers: Map<string, Followers>, key: string): Followers {
  let found = followers.get(key);
  if (!found) {
    found = { counts: new Map(), total: 0 };
    followers.set(key, found);
  }
  return found;
}

function addTo(followers: Followers, word: string, count: number): void {
  followers.counts.set(word, (followers.counts.get(word) ?? 0) + count);
  followers.total += count;
}

const shareOf = ({ counts, total }: Followers, word: string): number =>
  total === 0 ? 0 : (counts.get(word) ?? 0) / total;

function fallBack(followers: Followers | undefined, word: string, shorter: number): number {
  if (!followers) return shorter;
  const { counts, total } = followers;
  return ((counts.get(word) ?? 0) + counts.size * shorter) / (total + counts.size);
}
