import { BoostContinuations } from './boost-continuations.ts';
import type { RecognitionContext } from './build-prompt.ts';
import { echoesPrompt, isInventedSpeech, loudestDb } from './is-invented-speech.ts';
import { readGreedily } from './read-greedily.ts';
import { readTradePhrases } from './read-trade-phrases.ts';
import { meanOf, type Reading, type ScoredReading, type Turn } from './reading.ts';
import { repeatsItself } from './repeats-itself.ts';
import { searchReadings } from './search-readings.ts';
import { SEARCH_WIDTH } from './search-width.ts';
import { loadNetwork } from './whisper-network.ts';
import { framesFor, LONGEST_FRAMES, SHORTEST_FRAMES } from './whisper-tokens.ts';

export type RecognisedWord = { text: string; confidence: number };

export type Recognition = {
  /** The words as recognised; empty when nothing was said. */
  text: string;
  /** Each word with the probability of its least certain token, 0–1. */
  words: RecognisedWord[];
  /** e to the mean log-probability of the tokens, 0–1; 0 for no words. */
  confidence: number;
  /** Probability that nothing was said, at the start token, 0–1. */
  noSpeech: number;
  /** Mean natural-log probability per token, the end token included. */
  meanLogProb: number;
  /** True when the decoder got stuck and the words come from a second reading or a cut one. */
  looped: boolean;
  /** What else may have been said, likeliest first, where a search kept several readings. */
  others: OtherHearing[];
  /** Time the recognition took in the process, ms. */
  ms: number;
};

export type OtherHearing = Pick<Recognition, 'text' | 'words' | 'confidence'> & {
  /** How much less likely than the words taken, the trade's phrases counted: nats over the whole of it. */
  behind: number;
};

/** Under this mean log-probability a second reading is worth its time: two notes of five in a synthetic voice, fewer of a person near a microphone. */
const DOUBTFUL = -0.3;
/** A processor slower than this share of real time gets no second readings. */
const TOO_SLOW = 0.3;
/** Below this nothing a microphone hears is speech; dB below full scale. */
const SILENT_DB = -60;

export type Whisper = {
  recognise(
    pcm: Float32Array,
    context: RecognitionContext,
    options: { beam?: number; turn: Turn },
  ): Promise<Recognition>;
};

/** Loads a Whisper folder of the library's layout. ORT blocks its thread while it runs: use in a process of its own. */
export async function loadWhisper(modelsDir: string, model: string): Promise<Whisper> {
  const network = await loadNetwork(modelsDir, model);
  const phrases = await readTradePhrases(modelsDir, network.vocabulary);
  const { encode, encodeText, decodeText } = network;
  let realTimeFactor = 0.1;

  const textOf = (tokens: number[]): string => decodeText(tokens).replace(/\s+/g, ' ').trim();

  /** A reading beside the one that was taken, whose score is `best`. */
  const otherHearing = (other: ScoredReading, best: number): OtherHearing => ({
    text: textOf(other.tokens),
    words: wordsOf(other),
    confidence: Math.exp(meanOf(other)),
    behind: Math.max(0, best - other.score) * (other.tokens.length + 1),
  });

  const isDoubtful = (reading: Reading) =>
    meanOf(reading) < DOUBTFUL && !isInventedSpeech(decodeText(reading.tokens), figuresOf(reading));
  const needsSecondHearing = (reading: Reading) => reading.noSpeech > 0.05 || meanOf(reading) < -0.55;

  function wordsOf(reading: Reading): RecognisedWord[] {
    const words: { tokens: number[]; lowest: number }[] = [];
    reading.tokens.forEach((token, index) => {
      const logProb = reading.logProbs[index]!;
      const opens = words.length === 0 || /^\s/.test(decodeToken(token));
      if (opens) words.push({ tokens: [token], lowest: logProb });
      else {
        const word = words.at(-1)!;
        word.tokens.push(token);
        word.lowest = Math.min(word.lowest, logProb);
      }
    });
    return words
      .map(({ tokens, lowest }) => ({ text: decodeText(tokens).trim(), confidence: Math.exp(lowest) }))
      .filter((word) => word.text !== '');
  }
  const decodeToken = (token: number): string => decodeText([token]);

  async function recognise(
    pcm: Float32Array,
    context: RecognitionContext,
    { beam, turn }: { beam?: number; turn: Turn },
  ): Promise<Recognition> {
    const began = performance.now();
    const nothing = (noSpeech: number, meanLogProb = 0): Recognition => ({
      text: '',
      words: [],
      confidence: 0,
      noSpeech,
      meanLogProb,
      looped: false,
      others: [],
      ms: performance.now() - began,
    });
    if (pcm.length === 0 || loudestDb(pcm) < SILENT_DB) return nothing(1);

    const seconds = pcm.length / 16_000;
    const frames = framesFor(seconds);
    const cap = Math.ceil(10 * seconds) + 12;
    const lastNote = context.lastNote?.trim().split(/\s+/).slice(-60).join(' ');
    const prompt = [context.sentence, lastNote].filter(Boolean).join(' ').trim();
    let boosts: BoostContinuations | undefined;
    if (context.boostTerms?.length) {
      boosts = new BoostContinuations();
      for (const term of context.boostTerms) boosts.add(encodeText(` ${term}`));
    }

    await turn();
    const encoded = await encode(pcm, frames);
    await turn();
    const expected = context.sentence ? phrases : undefined;
    let reading: Reading;
    const forced = beam !== undefined && beam > 1;
    const readOnce = () => readGreedily(network, encoded, prompt, { boosts, phrases: expected }, cap, turn);
    let others: OtherHearing[] = [];
    if (forced) {
      const [best, ...rest] = await searchReadings(network, encoded, prompt, beam, expected, cap, turn);
      if (repeatsItself(decodeText(best.tokens))) reading = await readOnce();
      else {
        reading = best;
        others = rest.map((other) => otherHearing(other, best.score));
      }
    } else reading = await readOnce();
    let looped = reading.looped;

    if (looped) {
      await turn();
      const whole = frames === LONGEST_FRAMES ? encoded : await encode(pcm, LONGEST_FRAMES);
      reading = await readGreedily(network, whole, '', {}, cap, turn);
    } else if (beam === undefined && realTimeFactor < TOO_SLOW && isDoubtful(reading)) {
      await turn();
      const [second, ...rest] = await searchReadings(
        network,
        encoded,
        prompt,
        SEARCH_WIDTH,
        expected,
        cap,
        turn,
      );
      if (!second.looped && !repeatsItself(decodeText(second.tokens))) {
        const first: ScoredReading = { ...reading, score: meanOf(reading) };
        const taken = meanOf(second) > first.score ? second : first;
        others = [first, second, ...rest]
          .filter((other) => other !== taken)
          .map((other) => otherHearing(other, taken.score));
        reading = taken;
      }
    }
    if (
      prompt !== '' &&
      !looped &&
      (needsSecondHearing(reading) || echoesPrompt(decodeText(reading.tokens), prompt))
    ) {
      // On noise a prompted recogniser hands back words of its prompt, and is surer of itself than it should be (no-speech .1
      // to .6 where it gives .7 to .9 without; on speech under .03): only what is heard without the prompt too was said.
      await turn();
      const unprompted = await readGreedily(network, encoded, '', {}, cap, turn);
      if (unprompted.looped || isInventedSpeech(decodeText(unprompted.tokens), figuresOf(unprompted))) {
        return nothing(unprompted.noSpeech, meanOf(unprompted));
      }
      if (echoesPrompt(decodeText(reading.tokens), prompt) && meanOf(unprompted) < -1) reading = unprompted;
    }
    looped ||= reading.looped;

    const text = textOf(reading.tokens);
    const figures = figuresOf(reading);
    const ms = performance.now() - began;
    // Short utterances cost a fixed share, so the factor is learnt from a second upwards.
    if (seconds >= 1 && !looped) realTimeFactor += 0.2 * (ms / 1000 / Math.max(seconds, 3) - realTimeFactor);
    if (isInventedSpeech(text, figures)) return nothing(figures.noSpeech, figures.meanLogProb);
    return {
      text,
      words: wordsOf(reading),
      confidence: Math.exp(figures.meanLogProb),
      noSpeech: figures.noSpeech,
      meanLogProb: figures.meanLogProb,
      looped,
      others: looped ? [] : others.filter((other) => other.text !== text),
      ms,
    };
  }

  const figuresOf = (reading: Reading) => ({ noSpeech: reading.noSpeech, meanLogProb: meanOf(reading) });

  // The first run lays out memory; doing it on a breath of silence keeps that off the first note.
  const warm = await encode(new Float32Array(1600), SHORTEST_FRAMES);
  await network.begin(warm, '');
  return { recognise };
}
