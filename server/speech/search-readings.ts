import type { Tensor } from 'onnxruntime-node';
import { findTokenLoop } from './find-token-loop.ts';
import type { ScoredReading, Turn } from './reading.ts';
import type { TradePhrases } from './trade-phrases.ts';
import type { Past, WhisperNetwork } from './whisper-network.ts';
import { END } from './whisper-tokens.ts';

/** How many next tokens a search looks at behind each of its readings. */
const CANDIDATES = 12;

/**
 * A search that keeps several readings at once, and weighs the trade's phrases in.
 *
 * @param width how many readings are kept
 * @param cap tokens at most
 * @returns the likeliest first
 */
export async function searchReadings(
  network: WhisperNetwork,
  encoded: Tensor,
  prompt: string,
  width: number,
  phrases: TradePhrases | undefined,
  cap: number,
  turn: Turn,
): Promise<[ScoredReading, ...ScoredReading[]]> {
  type Beam = { tokens: number[]; logProbs: number[]; sum: number; logits: Float32Array; past: Past };
  const start = await network.begin(encoded, prompt);
  const most = Math.min(cap, start.room - 1);
  let beams: Beam[] = [{ tokens: [], logProbs: [], sum: 0, logits: start.logits, past: start.past }];
  const finished: ScoredReading[] = [];
  const finish = ({ tokens, logProbs }: Beam, endLogProb: number, sum: number): void => {
    const { noSpeech } = start;
    finished.push({
      tokens,
      logProbs,
      endLogProb,
      noSpeech,
      looped: false,
      score: sum / (tokens.length + 1),
    });
  };
  for (let length = 0; length < most && beams.length > 0 && finished.length < width; length++) {
    const candidates: { beam: Beam; id: number; logProb: number; sum: number }[] = [];
    for (const beam of beams) {
      const total = network.prepare(beam.logits, length === 0);
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
        finish(beam, logProb, sum);
        continue;
      }
      const tokens = [...beam.tokens, id];
      if (findTokenLoop(tokens)) continue;
      await turn();
      const { logits, past } = await network.step(encoded, [id], beam.past);
      next.push({ tokens, logProbs: [...beam.logProbs, logProb], sum, logits, past });
    }
    beams = next;
  }
  // What the search broke off is closed with the end's own probability: "… with the dimity. Patch" has begun the first words again.
  for (const beam of beams) {
    const endLogProb = beam.logits[END]! - network.prepare(beam.logits, false);
    finish(beam, endLogProb, beam.sum + endLogProb);
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
