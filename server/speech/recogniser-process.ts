import type { RecognitionContext } from './build-prompt.ts';
import type { Turn } from './reading.ts';
import { loadWhisper, type Recognition } from './whisper.ts';

export type RecogniserRequest =
  | {
      type: 'recognise';
      id: number;
      pcm: Float32Array;
      context: RecognitionContext;
      /** 0 goes first: the others wait while a lower number is at work. */
      rank: number;
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
 * The process that holds the recogniser. It takes one request of each rank at a time; before each run of the network a request
 * waits while one of a lower rank is at work, so a recording never holds up live speech by more than one run.
 */
const [modelsDir, model] = process.argv.slice(2) as [string, string];
const send = (reply: RecogniserReply) => process.send?.(reply);
process.on('disconnect', () => process.exit(0));
// The library warns on standard output and error about trifles; a crash is told by the exit, not by these.
console.warn = () => {};

const aborted = new Set<number>();
class Aborted extends Error {}
const ranksAtWork: number[] = [];
let free: (() => void)[] = [];
let lastAlive = 0;

function wakeAll(): void {
  const waiting = free;
  free = [];
  for (const wake of waiting) wake();
}

const turnFor = (id: number, rank: number): Turn => {
  return async () => {
    const now = Date.now();
    if (now - lastAlive > 500) {
      lastAlive = now;
      send({ type: 'alive' });
    }
    // Gives the message channel its chance, or an abort would only be read when the work is done.
    await new Promise((resolve) => setImmediate(resolve));
    for (;;) {
      if (aborted.delete(id)) throw new Aborted();
      if (!ranksAtWork.some((other) => other < rank)) return;
      await new Promise<void>((resolve) => free.push(resolve));
    }
  };
};

try {
  const began = performance.now();
  const whisper = await loadWhisper(modelsDir, model);
  process.on('message', async (request: RecogniserRequest) => {
    if (request.type === 'abort') {
      aborted.add(request.id);
      wakeAll();
      return;
    }
    const { id, pcm, context, rank, beam } = request;
    ranksAtWork.push(rank);
    try {
      const recognition = await whisper.recognise(pcm, context, { beam, turn: turnFor(id, rank) });
      send({ type: 'recognised', id, recognition });
    } catch (error) {
      if (error instanceof Aborted) send({ type: 'aborted', id });
      else send({ type: 'failed', id, message: String((error as Error)?.message ?? error) });
    } finally {
      aborted.delete(id);
      // Without this the keys and values of past utterances pile up: 800 MB in place of 700 after a few long ones.
      globalThis.gc?.();
      ranksAtWork.splice(ranksAtWork.indexOf(rank), 1);
      wakeAll();
    }
  });
  send({ type: 'ready', loadMs: performance.now() - began });
} catch (error) {
  send({ type: 'unusable', message: String((error as Error)?.message ?? error) });
  process.exitCode = 1;
  process.disconnect?.();
}
