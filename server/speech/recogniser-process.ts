import type { RecognitionContext } from './build-prompt.ts';
import { loadWhisper, type Recognition, type Turn } from './whisper.ts';

export type RecogniserRequest =
  | {
      type: 'recognise';
      id: number;
      pcm: Float32Array;
      context: RecognitionContext;
      urgent: boolean;
      beam: number | undefined;
    }
  | { type: 'abort'; id: number };

export type RecogniserReply =
  | { type: 'ready'; loadMs: number }
  | { type: 'unusable'; message: string }
  | { type: 'alive' }
  | { type: 'recognised'; id: number; recognition: Recognition }
  | { type: 'aborted'; id: number }
  | { type: 'failed'; id: number; message: string };

/**
 * The process that holds the recogniser. It takes several requests at a time; before each run of the network a request that
 * is not urgent waits while an urgent one is at work, so a recording never holds up live speech by more than one run.
 */
const [modelsDir, model] = process.argv.slice(2) as [string, string];
const send = (reply: RecogniserReply) => process.send?.(reply);
process.on('disconnect', () => process.exit(0));
// The library warns on standard output and error about trifles; a crash is told by the exit, not by these.
console.warn = () => {};

const aborted = new Set<number>();
class Aborted extends Error {}
let urgentAtWork = 0;
let free: (() => void)[] = [];
let lastAlive = 0;

const turnFor = (id: number, urgent: boolean): Turn => {
  return async () => {
    const now = Date.now();
    if (now - lastAlive > 500) {
      lastAlive = now;
      send({ type: 'alive' });
    }
    // Gives the message channel its chance, or an abort would only be read when the work is done.
    await new Promise((resolve) => setImmediate(resolve));
    while (!urgent && urgentAtWork > 0) await new Promise<void>((resolve) => free.push(resolve));
    if (aborted.delete(id)) throw new Aborted();
  };
};

try {
  const began = performance.now();
  const whisper = await loadWhisper(modelsDir, model);
  process.on('message', async (request: RecogniserRequest) => {
    if (request.type === 'abort') {
      aborted.add(request.id);
      return;
    }
    const { id, pcm, context, urgent, beam } = request;
    if (urgent) urgentAtWork++;
    try {
      const recognition = await whisper.recognise(pcm, context, { beam, turn: turnFor(id, urgent) });
      send({ type: 'recognised', id, recognition });
    } catch (error) {
      if (error instanceof Aborted) send({ type: 'aborted', id });
      else send({ type: 'failed', id, message: String((error as Error)?.message ?? error) });
    } finally {
      aborted.delete(id);
      // Without this the keys and values of past utterances pile up: 800 MB in place of 700 after a few long ones.
      globalThis.gc?.();
      if (urgent && --urgentAtWork === 0) {
        const waiting = free;
        free = [];
        for (const wake of waiting) wake();
      }
    }
  });
  send({ type: 'ready', loadMs: performance.now() - began });
} catch (error) {
  send({ type: 'unusable', message: String((error as Error)?.message ?? error) });
  process.exitCode = 1;
  process.disconnect?.();
}
