import { AutoModelForSpeechSeq2Seq, AutoProcessor, AutoTokenizer, env } from '@xenova/transformers';
import type { Tensor } from 'onnxruntime-node';
import { BoostContinuations } from './boost-continuations.ts';
import type { RecognitionContext } from './build-prompt.ts';
import { findTokenLoop } from './find-token-loop.ts';
import { echoesPrompt, isInventedSpeech, loudestDb } from './is-invented-speech.ts';
import { createLogMel } from './log-mel.ts';
import { onnx } from './onnx-runtime.ts';
import { readTradePhrases } from './read-trade-phrases.ts';
import { repeatsItself } from './repeats-itself.ts';
import { SEARCH_WIDTH } from './search-width.ts';
import type { TradePhrases } from './trade-phrases.ts';

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

const START = 50258;
const END = 50257;
const NO_SPEECH = 50362;
const PREVIOUS = 50361;
/** Start, English, transcribe, no timestamps. */
const PREFIX = [START, 50259, 50359, 50363];
const SPACE = 220;
const MOST_PROMPT_TOKENS = 223;
const MOST_POSITIONS = 448;
const LONGEST_FRAMES = 1500;
const SHORTEST_FRAMES = 500;
const BOOST = 4;
/** How many next tokens a search looks at behind each of its readings. */
const CANDIDATES = 12;
/** Under this mean log-probability a second reading is worth its time: two notes of five in a synthetic voice, fewer of a person near a microphone. */
const DOUBTFUL = -0.3;
/** A processor slower than this share of real time gets no second readings. */
const TOO_SLOW = 0.3;
/** Below this nothing a microphone hears is speech; dB below full scale. */
const SILENT_DB = -60;

type Past = Record<string, Tensor>;
type Step = { logits: Float32Array; positions: number; past: Past };
type Reading = {
  tokens: number[];
  logProbs: number[];
  endLogProb: number;
  noSpeech: number;
  looped: boolean;
};

/** A reading of a search, with its mean natural-log probability a token, the trade's phrases weighed in. */
type ScoredReading = Reading & { score: number };

/** What is likelier to be said here than the sound alone tells. */
type Expected = { boosts?: BoostContinuations | undefined; phrases?: TradePhrases | undefined };

/** Called before each run of the network: lets live speech go first, and throws when the work was called off. */
export type Turn = () => Promise<void>;

export type Whisper = {
  recognise(
    pcm: Float32Array,
    context: RecognitionContext,
    options: { beam?: number; turn: Turn },
  ): Promise<Recognition>;
};

type Session = {
  run(feeds: Record<string, unknown>, fetches?: string[]): Promise<Record<string, Tensor>>;
  outputNames: string[];
};

/**
 * Loads a Whisper folder of the library's layout and reads with it by a loop of our own, because the library's pipeline gives
 * no scores, prompts, abort or short context. ORT blocks its thread while it runs: use in a process of its own.
 */
export async function loadWhisper(modelsDir: string, model: string): Promise<Whisper> {
  env.allowRemoteModels = false;
  env.localModelPath = modelsDir;
  env.useFSCache = false;
  env.useBrowserCache = false;

  const network = await AutoModelForSpeechSeq2Seq.from_pretrained(model, { quantized: true });
  const tokenizer = await AutoTokenizer.from_pretrained(model);
  const processor = await AutoProcessor.from_pretrained(model);
  // biome-ignore lint/suspicious/noExplicitAny: the library's types leave these out
  const parts = network as any;
  const encoder = parts.session as Session;
  const decoder = parts.decoder_merged_session as Session;
  const extractor = processor.feature_extractor as unknown as {
    config: { mel_filters: number[][] };
    window: Float64Array;
  };
  const logMel = createLogMel(extractor.config.mel_filters, extractor.window);
  const suppressed: number[] = [...(parts.generation_config.suppress_tokens ?? [])].filter(
    (id: number) => id < END,
  );
  const stepOutputs = decoder.outputNames.filter((name) => !name.includes('.encoder.'));
  const vocabulary = (tokenizer as unknown as { model: { vocab: string[] } }).model.vocab.slice(0, END);
  const phrases = await readTradePhrases(modelsDir, vocabulary);
  let realTimeFactor = 0.1;

  const encodeText = (text: string): number[] => tokenizer.encode(text, null, { add_special_tokens: false });
  const decodeText = (tokens: number[]): string => tokenizer.decode(tokens, { skip_special_tokens: true });

  async function encode(pcm: Float32Array, frames: number): Promise<Tensor> {
    const mel = logMel(pcm, frames);
    const output = await encoder.run({
      input_features: new onnx.Tensor('float32', mel, [1, 80, frames * 2]),
    });
    return output.last_hidden_state as Tensor;
  }

  async function step(encoded: Tensor, tokens: number[], past: Past | undefined): Promise<Step> {
    const feeds: Record<string, unknown> = {
      input_ids: new onnx.Tensor('int64', BigInt64Array.from(tokens, BigInt), [1, tokens.length]),
      encoder_hidden_states: encoded,
      use_cache_branch: new onnx.Tensor('bool', [past !== undefined], [1]),
    };
    if (past) Object.assign(feeds, past);
    else {
      // No past yet: tensors of length nought in the shapes that the model's head counts ask for.
      const heads = parts.num_decoder_heads as number;
      const width = parts.decoder_dim_kv as number;
      for (let layer = 0; layer < parts.num_decoder_layers; layer++) {
        for (const side of ['encoder', 'decoder']) {
          for (const part of ['key', 'value']) {
            feeds[`past_key_values.${layer}.${side}.${part}`] = new onnx.Tensor(
              'float32',
              new Float32Array(0),
              [1, heads, 0, width],
            );
          }
        }
      }
    }
    // After the first step the encoder's keys and values stay as they are, so only the decoder's are fetched: a fifth faster.
    const outputs = past ? await runFor(decoder, feeds, stepOutputs) : await decoder.run(feeds);
    const next: Past = { ...past };
    for (const [name, tensor] of Object.entries(outputs)) {
      if (name.startsWith('present')) next[name.replace('present', 'past_key_values')] = tensor;
    }
    return { logits: outputs.logits!.data as Float32Array, positions: tokens.length, past: next };
  }

  /** Sets what must not be said to −∞ and returns the log of the sum of exponentials of the rest. */
  function prepare(logits: Float32Array, first: boolean): number {
    for (const id of suppressed) logits[id] = Number.NEGATIVE_INFINITY;
    if (first) {
      logits[END] = Number.NEGATIVE_INFINITY;
      logits[SPACE] = Number.NEGATIVE_INFINITY;
    }
    return logSumExp(logits.subarray(0, END + 1));
  }

  function promptTokens(prompt: string): number[] {
    return prompt === '' ? [] : [PREVIOUS, ...encodeText(` ${prompt}`).slice(-MOST_PROMPT_TOKENS)];
  }

  async function begin(encoded: Tensor, prompt: string) {
    const prefix = [...promptTokens(prompt), ...PREFIX];
    const start = await step(encoded, prefix, undefined);
    const vocabulary = start.logits.length / start.positions;
    const row = (index: number) => start.logits.subarray(index * vocabulary, (index + 1) * vocabulary);
    const atStart = row(prefix.length - PREFIX.length);
    const noSpeech = Math.exp(atStart[NO_SPEECH]! - logSumExp(atStart));
    return {
      logits: row(prefix.length - 1).slice(0, END + 1),
      past: start.past,
      noSpeech,
      room: MOST_POSITIONS - prefix.length,
    };
  }

  async function readGreedily(
    encoded: Tensor,
    prompt: string,
    { boosts, phrases }: Expected,
    cap: number,
    turn: Turn,
  ): Promise<Reading> {
    const start = await begin(encoded, prompt);
    const { noSpeech, room } = start;
    let logits: Float32Array = start.logits;
    let past = start.past;
    const tokens: number[] = [];
    const logProbs: number[] = [];
    const most = Math.min(cap, room - 1);
    for (;;) {
      const total = prepare(logits, tokens.length === 0);
      let best = END;
      for (let id = 0; id < END; id++) if (logits[id]! > logits[best]!) best = id;
      let bestScore = logits[best]!;
      const begun = boosts?.after(tokens) ?? [];
      for (const id of begun) {
        if (logits[id]! + BOOST > bestScore) {
          best = id;
          bestScore = logits[id]! + BOOST;
        }
      }
      if (phrases && !begun.includes(best)) best = phrases.choose(tokens, logits, best);
      const logProb = logits[best]! - total;
      if (best === END) return { tokens, logProbs, endLogProb: logProb, noSpeech, looped: false };
      tokens.push(best);
      logProbs.push(logProb);
      const loop = findTokenLoop(tokens);
      if (loop) {
        return {
          tokens: tokens.slice(0, loop.keep),
          logProbs: logProbs.slice(0, loop.keep),
          endLogProb: 0,
          noSpeech,
          looped: true,
        };
      }
      if (tokens.length >= most) return { tokens, logProbs, endLogProb: 0, noSpeech, looped: false };
      await turn();
      ({ logits, past } = await step(encoded, [best], past));
    }
  }

  async function readWithBeam(
    encoded: Tensor,
    prompt: string,
    width: number,
    phrases: TradePhrases | undefined,
    cap: number,
    turn: Turn,
  ): Promise<[ScoredReading, ...ScoredReading[]]> {
    type Beam = { tokens: number[]; logProbs: number[]; sum: number; logits: Float32Array; past: Past };
    const start = await begin(encoded, prompt);
    const most = Math.min(cap, start.room - 1);
    let beams: Beam[] = [{ tokens: [], logProbs: [], sum: 0, logits: start.logits, past: start.past }];
    const finished: ScoredReading[] = [];
    for (let length = 0; length < most && beams.length > 0 && finished.length < width; length++) {
      const candidates: { beam: Beam; id: number; logProb: number; sum: number }[] = [];
      for (const beam of beams) {
        const total = prepare(beam.logits, length === 0);
        const likely = highest(beam.logits, CANDIDATES).map((id) => ({
          id,
          logProb: beam.logits[id]! - total,
        }));
        const weighed = phrases?.weigh(beam.tokens, likely) ?? likely.map(({ logProb }) => logProb);
        likely.forEach(({ id, logProb }, k) => {
          candidates.push({ beam, id, logProb, sum: beam.sum + weighed[k]! });
        });
      }
      candidates.sort((a, b) => b.sum - a.sum);
      const next: Beam[] = [];
      for (const { beam, id, logProb, sum } of candidates) {
        if (next.length >= width) break;
        if (id === END) {
          finished.push({
            tokens: beam.tokens,
            logProbs: beam.logProbs,
            endLogProb: logProb,
            noSpeech: start.noSpeech,
            looped: false,
            score: sum / (beam.tokens.length + 1),
          });
          continue;
        }
        const tokens = [...beam.tokens, id];
        if (findTokenLoop(tokens)) continue;
        await turn();
        const { logits, past } = await step(encoded, [id], beam.past);
        next.push({ tokens, logProbs: [...beam.logProbs, logProb], sum, logits, past });
      }
      beams = next;
    }
    // What the search broke off has begun to say the first words again ("… with the dimity. Patch"): taken only where nothing ended.
    for (const beam of finished.length > 0 ? [] : beams) {
      finished.push({
        ...beam,
        endLogProb: 0,
        noSpeech: start.noSpeech,
        looped: false,
        score: beam.sum / (beam.tokens.length + 1),
      });
    }
    finished.sort((a, b) => b.score - a.score);
    const [best, ...others] = finished;
    return [
      best ?? {
        tokens: [],
        logProbs: [],
        endLogProb: 0,
        noSpeech: start.noSpeech,
        looped: true,
        score: Number.NEGATIVE_INFINITY,
      },
      ...others,
    ];
  }

  const textOf = (tokens: number[]): string => decodeText(tokens).replace(/\s+/g, ' ').trim();

  /** A reading beside the one that was taken, whose score is `best`. */
  const otherHearing = (other: ScoredReading, best: number): OtherHearing => ({
    text: textOf(other.tokens),
    words: wordsOf(other),
    confidence: Math.exp(meanOf(other)),
    behind: Math.max(0, best - other.score) * (other.tokens.length + 1),
  });

  const meanOf = (reading: Reading) =>
    (reading.logProbs.reduce((sum, value) => sum + value, 0) + reading.endLogProb) /
    (reading.logProbs.length + 1);

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
    const frames = Math.min(LONGEST_FRAMES, Math.max(SHORTEST_FRAMES, Math.ceil(50 * seconds + 64)));
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
    const readOnce = () => readGreedily(encoded, prompt, { boosts, phrases: expected }, cap, turn);
    let others: OtherHearing[] = [];
    if (forced) {
      const [best, ...rest] = await readWithBeam(encoded, prompt, beam, expected, cap, turn);
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
      reading = await readGreedily(whole, '', {}, cap, turn);
    } else if (beam === undefined && realTimeFactor < TOO_SLOW && isDoubtful(reading)) {
      await turn();
      const [second, ...rest] = await readWithBeam(encoded, prompt, SEARCH_WIDTH, expected, cap, turn);
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
      const unprompted = await readGreedily(encoded, '', {}, cap, turn);
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
  await begin(warm, '');
  return { recognise };
}

/**
 * Runs a session for some of its outputs. onnxruntime-node 1.14.0 then files the tensors under the wrong names (the first
 * names of the whole list, in order), so they are put right here; a version that names them well is left alone.
 */
async function runFor(
  session: Session,
  feeds: Record<string, unknown>,
  wanted: string[],
): Promise<Record<string, Tensor>> {
  const outputs = await session.run(feeds, wanted);
  if (wanted.every((name) => name in outputs)) return outputs;
  const named: Record<string, Tensor> = {};
  wanted.forEach((name, index) => {
    named[name] = outputs[session.outputNames[index]!]!;
  });
  return named;
}

function logSumExp(values: Float32Array): number {
  let highest = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < values.length; i++) if (values[i]! > highest) highest = values[i]!;
  let sum = 0;
  for (let i = 0; i < values.length; i++) {
    const below = values[i]! - highest;
    if (below > -20) sum += Math.exp(below);
  }
  return highest + Math.log(sum);
}

/** Indices of the `count` largest values, in no particular order. */
function highest(values: Float32Array, count: number): number[] {
  const best: number[] = [];
  let lowest = Number.NEGATIVE_INFINITY;
  for (let id = 0; id <= END; id++) {
    const value = values[id]!;
    if (best.length === count && value <= lowest) continue;
    best.push(id);
    best.sort((a, b) => values[b]! - values[a]!);
    if (best.length > count) best.pop();
    lowest = values[best.at(-1)!]!;
  }
  return best.filter((id) => values[id] !== Number.NEGATIVE_INFINITY);
}
