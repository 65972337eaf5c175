import { loadSileroVad, type SileroVad, VAD_FRAME } from './silero-vad.ts';

export type ListeningRequest =
  | { type: 'frames'; id: number; stream: number; pcm: Float32Array }
  | { type: 'close'; stream: number };
export type ListeningReply =
  | { type: 'ready' }
  | { type: 'unusable'; message: string }
  | { type: 'probabilities'; id: number; values: Float32Array }
  | { type: 'failed'; id: number; message: string };

/**
 * The process that hears whether anyone speaks, for all open microphones. Apart from the recogniser, so that a pause is
 * noticed at once even while a long recognition is at work; two processes are not two runtimes in one.
 */
const [modelsDir] = process.argv.slice(2) as [string];
const send = (reply: ListeningReply) => process.send?.(reply);
process.on('disconnect', () => process.exit(0));

try {
  const vad = await loadSileroVad(modelsDir);
  const streams = new Map<number, ReturnType<SileroVad['open']>>();
  // One after the other: frames of a stream build on the ones before.
  let queue: Promise<void> = Promise.resolve();
  process.on('message', (request: ListeningRequest) => {
    queue = queue.then(async () => {
      if (request.type === 'close') {
        streams.delete(request.stream);
        return;
      }
      let stream = streams.get(request.stream);
      if (!stream) {
        stream = vad.open();
        streams.set(request.stream, stream);
      }
      try {
        const values = new Float32Array(request.pcm.length / VAD_FRAME);
        for (let i = 0; i < values.length; i++) {
          values[i] = await stream.probability(request.pcm.subarray(i * VAD_FRAME, (i + 1) * VAD_FRAME));
        }
        send({ type: 'probabilities', id: request.id, values });
      } catch (error) {
        send({ type: 'failed', id: request.id, message: String((error as Error)?.message ?? error) });
      }
    });
  });
  send({ type: 'ready' });
} catch (error) {
  send({ type: 'unusable', message: String((error as Error)?.message ?? error) });
  process.exitCode = 1;
  process.disconnect?.();
}
