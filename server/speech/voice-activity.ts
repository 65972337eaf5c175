import type { ChildProcess } from 'node:child_process';
import { forkTypeScript } from './fork-typescript.ts';
import type { ListeningReply, ListeningRequest } from './listening-process.ts';
import { checkModelFolder } from './model-files.ts';
import { type Look, QuietGate } from './quiet-gate.ts';
import { RecogniserError } from './recogniser.ts';
import { VAD_FRAME } from './silero-vad.ts';

export type VoiceActivityStream = {
  /**
   * @param pcm whole frames of 512 samples, 16 kHz
   * @returns one probability a frame; 0 for those that are too quiet to be looked at. Frames in hand when the process is lost
   *   are asked again of the next one.
   */
  probabilities(pcm: Float32Array): Promise<Float32Array>;
  close(): void;
};

export type VoiceActivity = {
  ready(): Promise<void>;
  open(): VoiceActivityStream;
  processId(): number | undefined;
  close(): Promise<void>;
};

type Pending = {
  stream: number;
  pcm: Float32Array;
  tries: number;
  resolve: (values: Float32Array) => void;
  reject: (error: Error) => void;
};

/**
 * Voice activity for live microphones in one process of its own, started with the first use, and again after a crash or a
 * hang (silence of `hangAfterMs` with frames in hand).
 */
export function createVoiceActivity({
  modelsDir,
  hangAfterMs = 5000,
}: {
  modelsDir: string;
  hangAfterMs?: number;
}): VoiceActivity {
  let child: ChildProcess | undefined;
  let starting: Promise<void> | undefined;
  let isReady = false;
  let isClosed = false;
  let lastSign = 0;
  let nextId = 1;
  let nextStream = 1;
  const pending = new Map<number, Pending>();

  const watchdog = setInterval(
    () => {
      if (isReady && pending.size > 0 && Date.now() - lastSign > hangAfterMs) child?.kill('SIGKILL');
    },
    Math.min(1000, hangAfterMs / 4),
  );
  watchdog.unref();

  function start(): Promise<void> {
    starting ??= (async () => {
      await checkModelFolder(modelsDir, 'silero-vad');
      await new Promise<void>((resolve, reject) => {
        const spawned = forkTypeScript(new URL('./listening-process.ts', import.meta.url), [modelsDir]);
        child = spawned;
        let reason = 'no reason given';
        spawned.stderr?.resume();
        spawned.on('message', (reply: ListeningReply) => {
          lastSign = Date.now();
          if (reply.type === 'ready') {
            isReady = true;
            resolve();
            for (const [id, work] of pending) give(id, work);
          } else if (reply.type === 'unusable') reason = reply.message;
          else {
            const work = pending.get(reply.id);
            pending.delete(reply.id);
            if (reply.type === 'probabilities') work?.resolve(reply.values);
            else work?.reject(new RecogniserError(`Voice activity failed (${reply.message}).`));
          }
        });
        // Every time: a message to a process that is just going ends here too.
        spawned.on('error', (error) => {
          reason = error.message;
        });
        spawned.once('close', () => {
          const wasReady = isReady;
          child = undefined;
          isReady = false;
          starting = undefined;
          if (isClosed) return reject(new RecogniserError('Listening is closed.'));
          if (!wasReady) return reject(new RecogniserError(`Listening did not start (${reason}).`));
          for (const [id, work] of pending) {
            if (work.tries < 2) continue;
            pending.delete(id);
            work.reject(new RecogniserError('Listening stopped twice over the same sound.'));
          }
          if (pending.size > 0) start().catch(() => {});
        });
      });
    })();
    starting.catch((error: Error) => {
      starting = undefined;
      for (const work of pending.values()) work.reject(error);
      pending.clear();
    });
    return starting;
  }

  function give(id: number, work: Pending): void {
    work.tries++;
    lastSign = Date.now();
    child?.send({ type: 'frames', id, stream: work.stream, pcm: work.pcm } satisfies ListeningRequest);
  }

  return {
    ready: start,
    processId: () => child?.pid,
    open() {
      const stream = nextStream++;
      const gate = new QuietGate();
      const ask = (pcm: Float32Array): Promise<Float32Array> =>
        new Promise((resolve, reject) => {
          const id = nextId++;
          const work: Pending = { stream, pcm, tries: 0, resolve, reject };
          pending.set(id, work);
          if (isReady) give(id, work);
          else start().catch(() => {});
        });
      return {
        async probabilities(pcm) {
          if (isClosed) throw new RecogniserError('Listening is closed.');
          const values = new Float32Array(pcm.length / VAD_FRAME);
          const looks: { place: number; end: number; look: Look }[] = [];
          const frames: Float32Array[] = [];
          for (let place = 0; place < values.length; place++) {
            const look = gate.open(pcm.slice(place * VAD_FRAME, (place + 1) * VAD_FRAME));
            if (!look) continue;
            frames.push(...look.frames);
            looks.push({ place, end: frames.length - 1, look });
          }
          if (frames.length === 0) return values;
          const joined = new Float32Array(frames.length * VAD_FRAME);
          for (const [i, frame] of frames.entries()) joined.set(frame, i * VAD_FRAME);
          const told = await ask(joined);
          for (const { place, end, look } of looks) {
            values[place] = told[end]!;
            gate.heard(look, told[end]!);
          }
          return values;
        },
        close() {
          if (isReady) child?.send({ type: 'close', stream } satisfies ListeningRequest);
        },
      };
    },
    async close() {
      if (isClosed) return;
      isClosed = true;
      clearInterval(watchdog);
      for (const work of pending.values()) work.reject(new RecogniserError('Listening is closed.'));
      pending.clear();
      const leaving = child;
      if (leaving && leaving.exitCode === null && leaving.signalCode === null) {
        const gone = new Promise((resolve) => leaving.once('close', resolve));
        leaving.kill('SIGKILL');
        await gone;
      }
    },
  };
}
