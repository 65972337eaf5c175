import type { ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { AudioFileError } from './audio-file-error.ts';
import type { EndpointerSettings } from './endpointer.ts';
import { forkTypeScript } from './fork-typescript.ts';
import { RecogniserError } from './recogniser.ts';
import type { RecordingReply, RecordingRequest } from './recording-process.ts';

export type RecordingPart = Extract<RecordingReply, { type: 'utterance' | 'progress' | 'done' }>;

/** One recording on its way through the process. */
export type OpenRecording = {
  /**
   * The next part; the last is `done`.
   * @throws AudioFileError, RecogniserError; AbortError when called off
   */
  next(): Promise<RecordingPart>;
  /** An utterance is behind us: the process may read on. */
  taken(): void;
  /** Ends the reading; what was not read of the file stays unread. */
  end(): Promise<void>;
};

export type RecordingReader = {
  /** Begins with a file; one at a time. */
  open(path: string, settings: Partial<EndpointerSettings>, signal?: AbortSignal): OpenRecording;
  close(): Promise<void>;
};

/**
 * Reads recordings one after the other in one process, started with the first and kept for those that follow: a start costs
 * more than reading a short note. A file that takes the process down, or that is left in the middle, costs a new start.
 */
export function createRecordingReader(modelsDir: string): RecordingReader {
  let child: ChildProcess | undefined;
  let isBusy = false;

  function start(): ChildProcess {
    const started = forkTypeScript(new URL('./recording-process.ts', import.meta.url), [modelsDir]);
    started.stderr?.setEncoding('utf8');
    // Every time: a message to a process that is just going ends here too.
    started.on('error', () => {});
    started.once('close', () => {
      if (child === started) child = undefined;
    });
    return started;
  }

  async function stop(): Promise<void> {
    const leaving = child;
    child = undefined;
    if (!leaving || leaving.exitCode !== null || leaving.signalCode !== null) return;
    const gone = once(leaving, 'close').catch(() => {});
    leaving.kill('SIGKILL');
    await gone;
  }

  return {
    open(path, settings, signal) {
      if (isBusy) throw new Error('Expected the recording before this one to be ended first.');
      isBusy = true;
      child ??= start();
      const reading = child;
      const replies: (RecordingReply | { type: 'gone' })[] = [];
      let wake: (() => void) | undefined;
      let lastWords = '';
      let isDone = false;
      const take = (reply: RecordingReply | { type: 'gone' }) => {
        replies.push(reply);
        wake?.();
      };
      const onGone = () => take({ type: 'gone' });
      const onWords = (piece: string) => {
        lastWords = (lastWords + piece).slice(-500);
      };
      const onAbort = () => wake?.();
      reading.on('message', take);
      reading.once('close', onGone);
      reading.once('error', onGone);
      reading.stderr?.on('data', onWords);
      signal?.addEventListener('abort', onAbort);
      reading.send({ type: 'read', path, settings } satisfies RecordingRequest);

      return {
        async next() {
          for (;;) {
            signal?.throwIfAborted();
            const reply = replies.shift();
            if (!reply) {
              await new Promise<void>((resolve) => {
                wake = resolve;
              });
              continue;
            }
            if (reply.type === 'gone') {
              throw new AudioFileError(
                'damaged',
                `${path} stopped the reader of recordings (${lastWords.trim().split('\n').at(-1) || 'no reason given'}). What came before is kept; convert the file to WAV and try the rest.`,
              );
            }
            if (reply.type === 'failed') {
              isDone = true;
              if (reply.reason) throw new AudioFileError(reply.reason, reply.message);
              throw new RecogniserError(
                `The reader of recordings failed (${reply.message}). The file is untouched; check the models with: npm run models:check`,
              );
            }
            isDone ||= reply.type === 'done';
            return reply;
          }
        },
        taken() {
          if (reading.connected) reading.send({ type: 'taken' } satisfies RecordingRequest);
        },
        async end() {
          signal?.removeEventListener('abort', onAbort);
          reading.off('message', take);
          reading.off('close', onGone);
          reading.off('error', onGone);
          reading.stderr?.off('data', onWords);
          reading.stderr?.resume();
          if (!isDone && child === reading) await stop();
          isBusy = false;
        },
      };
    },
    close: stop,
  };
}
