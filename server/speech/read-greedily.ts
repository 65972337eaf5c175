import type { Tensor } from 'onnxruntime-node';
import type { BoostContinuations } from './boost-continuations.ts';
import { findTokenLoop } from './find-token-loop.ts';
import type { Reading, Turn } from './reading.ts';
import type { TradePhrases } from './trade-phrases.ts';
import type { WhisperNetwork } from './whisper-network.ts';
import { END } from './whisper-tokens.ts';

/** What a known term's continuing tokens are favoured by, in logits. */
const BOOST = 4;

/** What is likelier to be said here than the sound alone tells. */
export type Expected = { boosts?: BoostContinuations | undefined; phrases?: TradePhrases | undefined };

/**
 * Takes the likeliest token each time: the fastest reading.
 *
 * @param cap tokens at most
 */
export async function readGreedily(
  network: WhisperNetwork,
  encoded: Tensor,
  prompt: string,
  { boosts, phrases }: Expected,
  cap: number,
  turn: Turn,
): Promise<Reading> {
  const start = await network.begin(encoded, prompt);
  const { noSpeech, room } = start;
  let logits: Float32Array = start.logits;
  let past = start.past;
  const tokens: number[] = [];
  const logProbs: number[] = [];
  const most = Math.min(cap, room - 1);
  for (;;) {
    const total = network.prepare(logits, tokens.length === 0);
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
    ({ logits, past } = await network.step(encoded, [best], past));
  }
}
