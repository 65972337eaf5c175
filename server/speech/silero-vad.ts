import { join } from 'node:path';
import { onnx } from './onnx-runtime.ts';

/** Samples of one frame of voice activity: 32 ms at 16 kHz. */
export const VAD_FRAME = 512;
const CONTEXT = 64;

export type SileroVad = {
  /** Opens a stream of its own memory; the network is shared. */
  open(): {
    /** @param frame 512 samples, 16 kHz. Returns the probability that someone speaks, 0–1. */
    probability(frame: Float32Array): Promise<number>;
  };
};

/** Loads the Silero voice-activity network. Use outside the server's own process: the runtime blocks its thread. */
export async function loadSileroVad(modelsDir: string): Promise<SileroVad> {
  const session = await onnx.InferenceSession.create(
    join(modelsDir, 'silero-vad', 'silero_vad_16k_op15.onnx'),
    {
      intraOpNumThreads: 1,
      interOpNumThreads: 1,
      // Errors only: what it removes of the network while it loads it is nobody's concern.
      logSeverityLevel: 3,
    },
  );
  const rate = new onnx.Tensor('int64', BigInt64Array.of(16_000n), []);
  return {
    open() {
      let state = new onnx.Tensor('float32', new Float32Array(256), [2, 1, 128]);
      // The last 64 samples of the frame before: without them the network is deaf.
      const tail = new Float32Array(CONTEXT);
      return {
        async probability(frame) {
          const input = new Float32Array(CONTEXT + VAD_FRAME);
          input.set(tail);
          input.set(frame, CONTEXT);
          tail.set(frame.subarray(VAD_FRAME - CONTEXT));
          const outputs = await session.run({
            input: new onnx.Tensor('float32', input, [1, CONTEXT + VAD_FRAME]),
            state,
            sr: rate,
          });
          state = outputs.stateN as typeof state;
          return (outputs.output!.data as Float32Array)[0]!;
        },
      };
    },
  };
}
