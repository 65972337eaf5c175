import type { ChildProcess } from 'node:child_process';
import { RECOGNISER_MODEL } from '../../shared/recogniser-model.ts';
import type { RecognitionContext } from './build-prompt.ts';
import { forkTypeScript } from './fork-typescript.ts';
import { checkModelFolder, ModelFileError } from './model-files.ts';
import type { RecogniserReply, RecogniserRequest } from './recogniser-process.ts';
import type { Recognition } from './whisper.ts';

export type { RecognitionContext } from './build-prompt.ts';
export type { OtherHearing, RecognisedWord, Recognition } from './whisper.ts';

/** `live` goes before `partial` (words shown while she speaks), and both before `recording`. */
export type RecognitionPriority = 'live' | 'partial' | 'recording';

export type RecogniserState = 'asleep' | 'starting' | 'ready' | 'working' | 'unusable' | 'closed';

/** The recogniser cannot do what was asked. `message` is one line fit to be shown; the audio is still the caller's to keep. */
export class RecogniserError extends Error {
  override name = 'RecogniserError';
}

export type Recogniser = {
  /** Starts the process if need be. Rejects with ModelFileError or RecogniserError when it cannot work. */
  ready(): Promise<void>;
  state(): { state: RecogniserState; waiting: number; problem?: string };
  /**
   * @param pcm 16 kHz mono, −1 to 1, at most 30 s
   * @returns the words; rejects with AbortError when called off, else with ModelFileError or RecogniserError
   */
  recognise(
    pcm: Float32Array,
    context: RecognitionContext,
    options: {
      priority: RecognitionPriority;
      signal?: AbortSignal | undefined;
      /** Beam width; 1 is greedy with no second reading. Left out: greedy, and a second reading where the first is doubtful. */
      beam?: number | undefined;
    },
  ): Promise<Recognition>;
  /** The operating system's number of the process, while there is one. */
  processId(): number | undefined;
  close(): Promise<void>;
};

type Job = {
  id: number;
  pcm: Float32Array;
  context: RecognitionContext;
  priority: RecognitionPriority;
  beam: number | undefined;
  tries: number;
  settle: (outcome: { recognition: Recognition } | { error: Error }) => void;
};

const RANK: Record<RecognitionPriority, number> = { live: 0, partial: 1, recording: 2 };
const TRIES = 2;
/** Loading takes two seconds, or a minute from a slow disk on a busy machine. */
const LONGEST_LOAD_MS = 120_000;

/**
 * One recogniser in a process of its own: it never blocks the server, and a crash or a hang takes nothing else with it. The
 * process starts with the first use, is started again after a crash or a hang, and gets the work at hand once more.
 *
 * @param options.model folder under `modelsDir`
 * @param options.hangAfterMs silence of a working process after which it is taken for hung
 */
export function createRecogniser({
  modelsDir,
  model = RECOGNISER_MODEL,
  hangAfterMs = 30_000,
}: {
  modelsDir: string;
  model?: string;
  hangAfterMs?: number;
}): Recogniser {
  let child: ChildProcess | undefined;
  let starting: Promise<void> | undefined;
  let isReady = false;
  let isClosed = false;
  let problem: string | undefined;
  let lastSign = 0;
  let lastWords = '';
  let nextId = 1;
  const waiting: Job[] = [];
  const atWork = new Map<number, Job>();

  const watchdog = setInterval(
    () => {
      const silentMs = Date.now() - lastSign;
      const isHung = isReady ? atWork.size > 0 && silentMs > hangAfterMs : silentMs > LONGEST_LOAD_MS;
      if (isHung) child?.kill('SIGKILL');
    },
    Math.min(1000, hangAfterMs / 4),
  );
  watchdog.unref();

  function start(): Promise<void> {
    starting ??= (async () => {
      await checkModelFolder(modelsDir, model);
      if (isClosed) throw new RecogniserError('The recogniser is closed.');
      await new Promise<void>((resolve, reject) => {
        const spawned = forkTypeScript(new URL('./recogniser-process.ts', import.meta.url), [
          modelsDir,
          model,
        ]);
        child = spawned;
        lastSign = Date.now();
        lastWords = '';
        let reason: string | undefined;
        spawned.stderr?.on('data', (piece) => {
          lastWords = (lastWords + piece).slice(-2000);
        });
        spawned.on('message', (reply: RecogniserReply) => {
          lastSign = Date.now();
          if (reply.type === 'ready') {
            isReady = true;
            problem = undefined;
            resolve();
            pump();
          } else if (reply.type === 'unusable') reason = reply.message;
          else if (reply.type !== 'alive') finish(reply);
        });
        // Every time: a message to a process that is just going ends here too, and its work is given again after the close.
        spawned.on('error', (error) => {
          reason = error.message;
        });
        spawned.once('close', (code, signal) => {
          const wasReady = isReady && child === spawned;
          child = undefined;
          isReady = false;
          starting = undefined;
          if (isClosed) reject(new RecogniserError('The recogniser is closed.'));
          else if (!wasReady) {
            reject(
              new RecogniserError(
                `The recogniser did not start (${oneLine(reason ?? lastWords) || `exit ${signal ?? code}`}). Typed notes still work; check the model with: npm run models:check`,
              ),
            );
          } else afterLoss(signal ?? `exit ${code}`);
        });
      });
    })();
    starting.catch((error: Error) => {
      starting = undefined;
      problem = error.message;
      for (const job of [...waiting.splice(0), ...atWork.values()]) job.settle({ error });
      atWork.clear();
    });
    return starting;
  }

  /** The process is gone with work in hand: that work goes to the head of the queue, once. */
  function afterLoss(how: string): void {
    const lost = [...atWork.values()];
    atWork.clear();
    for (const job of lost.reverse()) {
      if (job.tries >= TRIES) {
        job.settle({
          error: new RecogniserError(
            `The recogniser stopped ${TRIES} times over the same speech (${how}). The audio is kept and can be tried again.`,
          ),
        });
      } else waiting.unshift(job);
    }
    if (waiting.length > 0) start().catch(() => {});
  }

  function finish(reply: Exclude<RecogniserReply, { type: 'ready' | 'unusable' | 'alive' }>): void {
    const job = atWork.get(reply.id);
    if (!job) return;
    atWork.delete(reply.id);
    if (reply.type === 'recognised') job.settle({ recognition: reply.recognition });
    else if (reply.type === 'aborted') job.settle({ error: abortError() });
    else
      job.settle({
        error: new RecogniserError(
          `The recogniser failed on this speech (${oneLine(reply.message)}). The audio is kept.`,
        ),
      });
    pump();
  }

  /** At most one request of each priority is at work; the process lets the first of them go first. */
  function pump(): void {
    if (!isReady || !child) return;
    waiting.sort((a, b) => RANK[a.priority] - RANK[b.priority] || a.id - b.id);
    for (const priority of ['live', 'partial', 'recording'] as const) {
      const busy = [...atWork.values()].some((job) => job.priority === priority);
      const index = waiting.findIndex((job) => job.priority === priority);
      if (busy || index < 0) continue;
      const [job] = waiting.splice(index, 1) as [Job];
      job.tries++;
      atWork.set(job.id, job);
      lastSign = Date.now();
      const { id, pcm, context, beam } = job;
      child.send({
        type: 'recognise',
        id,
        pcm,
        context,
        rank: RANK[priority],
        beam,
      } satisfies RecogniserRequest);
    }
  }

  return {
    ready: start,
    processId: () => child?.pid,
    state() {
      const state: RecogniserState = isClosed
        ? 'closed'
        : isReady
          ? atWork.size > 0
            ? 'working'
            : 'ready'
          : starting
            ? 'starting'
            : problem
              ? 'unusable'
              : 'asleep';
      return { state, waiting: waiting.length, ...(problem ? { problem } : {}) };
    },
    recognise(pcm, context, { priority, signal, beam }) {
      if (isClosed) return Promise.reject(new RecogniserError('The recogniser is closed.'));
      if (signal?.aborted) return Promise.reject(abortError());
      return new Promise((resolve, reject) => {
        const id = nextId++;
        const onAbort = () => {
          const index = waiting.findIndex((job) => job.id === id);
          if (index >= 0) {
            const [job] = waiting.splice(index, 1) as [Job];
            job.settle({ error: abortError() });
          } else if (atWork.has(id)) child?.send({ type: 'abort', id } satisfies RecogniserRequest);
        };
        const job: Job = {
          id,
          // A view would carry the whole of its buffer across; this copies only what is meant.
          pcm: pcm.byteLength === pcm.buffer.byteLength ? pcm : pcm.slice(),
          context,
          priority,
          beam,
          tries: 0,
          settle(outcome) {
            signal?.removeEventListener('abort', onAbort);
            if ('recognition' in outcome) resolve(outcome.recognition);
            else reject(outcome.error);
          },
        };
        signal?.addEventListener('abort', onAbort, { once: true });
        waiting.push(job);
        if (isReady) pump();
        else start().catch(() => {});
      });
    },
    async close() {
      if (isClosed) return;
      isClosed = true;
      clearInterval(watchdog);
      const error = new RecogniserError(
        'The recogniser was closed before this speech was read. The audio is kept.',
      );
      for (const job of [...waiting.splice(0), ...atWork.values()]) job.settle({ error });
      atWork.clear();
      const leaving = child;
      if (leaving && leaving.exitCode === null) {
        const gone = new Promise((resolve) => leaving.once('close', resolve));
        leaving.kill('SIGKILL');
        await gone;
      }
    },
  };
}

function abortError(): Error {
  return new DOMException('The recognition was called off.', 'AbortError');
}

function oneLine(text: string): string {
  const lines = text.trim().split('\n').filter(Boolean);
  return (lines.find((line) => /error/i.test(line)) ?? lines.at(-1))?.trim().slice(0, 200) ?? '';
}

export { ModelFileError };
