import { once } from 'node:events';
import { AudioFileError } from './audio-file-error.ts';
import type { RecognitionContext } from './build-prompt.ts';
import { type DecodedAudio, probeAudio } from './decode-audio.ts';
import type { EndpointerSettings, Utterance } from './endpointer.ts';
import { forkTypeScript } from './fork-typescript.ts';
import { checkModelFolder } from './model-files.ts';
import {
  type RecognisedWord,
  type Recogniser,
  RecogniserError,
  type RecognitionPriority,
} from './recogniser.ts';
import type { RecordingReply, RecordingRequest } from './recording-process.ts';

export type RecordedUtterance = {
  /** Seconds from the start of the recording. */
  startS: number;
  endS: number;
  text: string;
  confidence: number;
  words: RecognisedWord[];
};

export type RecordingProgress = {
  /** Share of the file that has been read and recognised, 0–1. */
  share: number;
  /** Sound behind us, s. */
  doneS: number;
};

/** Nobody waits for a recording, so a pause may be longer before it cuts: whole sentences are heard better. */
const RECORDING_PAUSES: Partial<EndpointerSettings> = { endPauseMs: 1200, adaptPause: false };

/**
 * Recognises a recording of any length, cut at its pauses; each utterance is given as soon as it is ready. Silence and noise
 * give nothing.
 *
 * @param context what is known of the quilt, or a function of the text before, asked anew for each utterance
 * @param options.signal stops the reading and the recognition at hand
 * @param options.onUtterance is handed the sound of each utterance that gave words, to keep it playable
 * @returns (as the generator's result) kind, length, and whether the file is cut short
 * @throws AudioFileError, ModelFileError, RecogniserError; AbortError when called off
 */
export async function* transcribeRecording(
  path: string,
  {
    recogniser,
    modelsDir,
    context = {},
    endpointer = {},
    priority = 'recording',
    beam,
    signal,
    onProgress,
    onUtterance,
  }: {
    recogniser: Recogniser;
    modelsDir: string;
    context?: RecognitionContext | ((before: string | undefined) => RecognitionContext);
    endpointer?: Partial<EndpointerSettings>;
    priority?: RecognitionPriority;
    beam?: number;
    signal?: AbortSignal;
    onProgress?: (progress: RecordingProgress) => void;
    onUtterance?: (utterance: Utterance) => void;
  },
): AsyncGenerator<RecordedUtterance, DecodedAudio, undefined> {
  signal?.throwIfAborted();
  await probeAudio(path);
  await checkModelFolder(modelsDir, 'silero-vad');
  await recogniser.ready();
  signal?.throwIfAborted();

  const child = forkTypeScript(new URL('./recording-process.ts', import.meta.url), [
    modelsDir,
    path,
    JSON.stringify({ ...RECORDING_PAUSES, ...endpointer }),
  ]);
  const replies: (RecordingReply | { type: 'gone' })[] = [];
  let wake: (() => void) | undefined;
  const take = (reply: RecordingReply | { type: 'gone' }) => {
    replies.push(reply);
    wake?.();
  };
  let lastWords = '';
  child.stderr?.on('data', (piece) => {
    lastWords = (lastWords + piece).slice(-500);
  });
  child.on('message', take);
  child.once('close', () => take({ type: 'gone' }));
  child.on('error', () => take({ type: 'gone' }));
  const onAbort = () => wake?.();
  signal?.addEventListener('abort', onAbort);

  try {
    let before: string | undefined;
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
        if (reply.reason) throw new AudioFileError(reply.reason, reply.message);
        throw new RecogniserError(
          `The reader of recordings failed (${reply.message}). The file is untouched; check the models with: npm run models:check`,
        );
      }
      if (reply.type === 'done') {
        onProgress?.({ share: 1, doneS: reply.audio.seconds });
        return reply.audio;
      }
      if (reply.type === 'progress') {
        // Progress reported while utterances wait would run ahead of what is recognised; this one came in its turn.
        onProgress?.({ share: reply.share, doneS: reply.decodedS });
        continue;
      }
      const { utterance } = reply;
      const heard = await recogniser.recognise(
        utterance.pcm,
        typeof context === 'function' ? context(before) : context,
        { priority, signal, beam },
      );
      if (child.connected) child.send({ type: 'taken' } satisfies RecordingRequest);
      onProgress?.({ share: reply.share, doneS: utterance.endSample / 16_000 });
      if (heard.text === '' || (heard.text === before && heard.confidence < 0.5)) continue;
      before = heard.text;
      onUtterance?.(utterance);
      yield {
        startS: round(utterance.startSample / 16_000),
        endS: round(utterance.endSample / 16_000),
        text: heard.text,
        confidence: heard.confidence,
        words: heard.words,
      };
    }
  } finally {
    signal?.removeEventListener('abort', onAbort);
    if (child.exitCode === null && child.signalCode === null) {
      child.kill('SIGKILL');
      await once(child, 'close').catch(() => {});
    }
  }
}

const round = (seconds: number) => Math.round(seconds * 1000) / 1000;
