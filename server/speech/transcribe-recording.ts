import type { RecognitionContext } from './build-prompt.ts';
import { type DecodedAudio, probeAudio } from './decode-audio.ts';
import type { EndpointerSettings, Utterance } from './endpointer.ts';
import { checkModelFolder } from './model-files.ts';
import type { OtherHearing, RecognisedWord, Recogniser, RecognitionPriority } from './recogniser.ts';
import { createRecordingReader, type RecordingReader } from './recording-reader.ts';

export type RecordedUtterance = {
  /** Seconds from the start of the recording. */
  startS: number;
  endS: number;
  text: string;
  confidence: number;
  words: RecognisedWord[];
  /** What else may have been said, likeliest first, where several readings were kept. */
  others: OtherHearing[];
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
 * @param options.reader where several files are read in a row; left out, a process is started for this one
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
    reader,
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
    reader?: RecordingReader;
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
  const own = reader ? undefined : createRecordingReader(modelsDir);
  // Opened before the recogniser is ready: both take a while to start.
  const recording = (reader ?? own)!.open(path, { ...RECORDING_PAUSES, ...endpointer }, signal);
  try {
    await recogniser.ready();
    let before: string | undefined;
    for (;;) {
      const part = await recording.next();
      if (part.type === 'done') {
        onProgress?.({ share: 1, doneS: part.audio.seconds });
        return part.audio;
      }
      if (part.type === 'progress') {
        // Progress reported while utterances wait would run ahead of what is recognised; this one came in its turn.
        onProgress?.({ share: part.share, doneS: part.decodedS });
        continue;
      }
      const { utterance } = part;
      const heard = await recogniser.recognise(
        utterance.pcm,
        typeof context === 'function' ? context(before) : context,
        { priority, signal, beam },
      );
      recording.taken();
      onProgress?.({ share: part.share, doneS: utterance.endSample / 16_000 });
      if (heard.text === '' || (heard.text === before && heard.confidence < 0.5)) continue;
      before = heard.text;
      onUtterance?.(utterance);
      yield {
        startS: round(utterance.startSample / 16_000),
        endS: round(utterance.endSample / 16_000),
        text: heard.text,
        confidence: heard.confidence,
        words: heard.words,
        others: heard.others,
      };
    }
  } finally {
    await recording.end();
    await own?.close();
  }
}

const round = (seconds: number) => Math.round(seconds * 1000) / 1000;
