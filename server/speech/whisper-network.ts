import { AutoModelForSpeechSeq2Seq, AutoProcessor, AutoTokenizer, env } from '@xenova/transformers';
import type { Tensor } from 'onnxruntime-node';
import { createLogMel } from './log-mel.ts';
import { onnx } from './onnx-runtime.ts';
import {
  END,
  MOST_POSITIONS,
  MOST_PROMPT_TOKENS,
  NO_SPEECH,
  PREFIX,
  PREVIOUS,
  SPACE,
} from './whisper-tokens.ts';

export type Past = Record<string, Tensor>;
export type Step = { logits: Float32Array; positions: number; past: Past };
/** What a prompt and the prefix leave to go on from. */
export type Beginning = { logits: Float32Array; past: Past; noSpeech: number; room: number };

export type WhisperNetwork = {
  /** The recogniser's tokens by their number, special ones left out. */
  vocabulary: readonly string[];
  encodeText(text: string): number[];
  decodeText(tokens: readonly number[]): string;
  /** @param pcm 16 kHz mono @param frames of the encoder, 20 ms each, 1500 at most */
  encode(pcm: Float32Array, frames: number): Promise<Tensor>;
  begin(encoded: Tensor, prompt: string): Promise<Beginning>;
  step(encoded: Tensor, tokens: number[], past: Past | undefined): Promise<Step>;
  /** Sets what must not be said to −∞ and returns the log of the sum of exponentials of the rest. */
  prepare(logits: Float32Array, first: boolean): number;
};

type Session = {
  run(feeds: Record<string, unknown>, fetches?: string[]): Promise<Record<string, Tensor>>;
  outputNames: string[];
};

/**
 * Loads a Whisper folder of the library's layout and gives its single steps, because the library's pipeline gives no scores,
 * prompts, abort or short context. ORT blocks its thread while it runs: use in a process of its own.
 */
export async function loadNetwork(modelsDir: string, model: string): Promise<WhisperNetwork> {
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

  const encodeText = (text: string): number[] => tokenizer.encode(text, null, { add_special_tokens: false });
  const decodeText = (tokens: readonly number[]): string =>
    tokenizer.decode([...tokens], { skip_special_tokens: true });

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

  async function begin(encoded: Tensor, prompt: string): Promise<Beginning> {
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

  return { vocabulary, encodeText, decodeText, encode, begin, step, prepare };
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
