import { Endpointer, type EndpointerSettings, type Utterance } from './endpointer.ts';
import type { Recogniser, Recognition, RecognitionContext } from './recogniser.ts';
import { VAD_FRAME } from './silero-vad.ts';
import type { VoiceActivity } from './voice-activity.ts';

export type LiveEvent =
  /** About ten times a second: loudness in dB below full scale, the share of samples at the very top, and whether speech is open. */
  | { type: 'level-measured'; db: number; clipped: number; speaking: boolean }
  | { type: 'speech-started'; startS: number }
  /** It was a knock or a cough; nothing will follow. */
  | { type: 'speech-dismissed'; startS: number }
  /** Words so far; `settled` are those that two readings in a row agree on, in order. */
  | { type: 'words-heard'; startS: number; settled: string; text: string }
  /** She has stopped. The sound is whole and can be put on disk before it is recognised. */
  | { type: 'utterance-ended'; startS: number; endS: number; utterance: Utterance }
  /** `recognition.text` is empty where the sound was no speech after all. `waitedMs` is the time since the pause was noticed. */
  | {
      type: 'utterance-recognised';
      startS: number;
      endS: number;
      utterance: Utterance;
      recognition: Recognition;
      waitedMs: number;
    }
  /** Voice activity could not be had for this sound; it is handed back so that nothing heard is lost. */
  | { type: 'listening-failed'; startS: number; pcm: Float32Array; error: Error }
  /** The sound stands; recognition can be tried again later. */
  | { type: 'utterance-failed'; startS: number; endS: number; utterance: Utterance; error: Error };

export type LiveListener = {
  /** @param pcm samples that follow the last, 16 kHz mono, any number of them */
  push(pcm: Float32Array): void;
  /** Ends what is open at once: a held key let go, a stream that stops. Resolves when all events have been given. */
  flush(): Promise<void>;
  /** Gives up what is open and takes in no more; resolves when what had ended before has been given. */
  finish(): Promise<void>;
  /** Gives the listener up; work in hand is called off. */
  close(): void;
  /** Sound received and not yet looked at, s: a client that sends too fast makes it grow. */
  behindS(): number;
};

const RATE = 16_000;
const MOST_SAMPLES = RATE;
const LEVEL_FRAMES = 3;
const REREAD_MS = 800;
/** The first words are looked for sooner than the next: what she sees first is that she is heard. */
const FIRST_READ_MS = 600;
/** Silence after which the final reading is begun ahead of the pause's end; her words are then ready when the pause is. */
const EARLY_MS = 260;

/**
 * Follows one microphone: cuts it into utterances, shows words while she speaks, gives the recognised note when she stops.
 *
 * The last reading starts a quarter of a second into her pause, on just the sound it would have at the end of it; if she
 * speaks on, it is called off. So the recognition hides in the pause, and the note is there when the pause is over.
 *
 * @param context asked anew before each reading: what the recogniser should know
 * @param onEvent never called after `close`
 */
export function createLiveListener({
  recogniser,
  voiceActivity,
  context,
  onEvent,
  settings = {},
  showWords = true,
}: {
  recogniser: Recogniser;
  voiceActivity: VoiceActivity;
  context: () => RecognitionContext;
  onEvent: (event: LiveEvent) => void;
  settings?: Partial<EndpointerSettings>;
  showWords?: boolean;
}): LiveListener {
  const endpointer = new Endpointer(settings);
  const stream = voiceActivity.open();
  let rest: Float32Array = new Float32Array(0);
  const waiting: Float32Array[] = [];
  let waitingSamples = 0;
  let looked = 0;
  let isClosed = false;
  let isFinishing = false;
  let work: Promise<void> | undefined;
  const readings = new Set<Promise<void>>();

  let levelFrames = 0;
  let levelSum = 0;
  let clipped = 0;

  let partial: { abort: AbortController; at: number } | undefined;
  let partialText = '';
  let settled = '';
  let lastPartialAt = 0;
  let early: { endSample: number; abort: AbortController; result: Promise<Recognition> } | undefined;

  const emit = (event: LiveEvent) => {
    if (!isClosed) onEvent(event);
  };

  async function look(): Promise<void> {
    while (waiting.length > 0 && !isClosed && !isFinishing) {
      // At most a second at a time, so that a burst after a lost connection does not hold up other microphones.
      const parts = [rest];
      let length = rest.length;
      while (waiting.length > 0 && length < MOST_SAMPLES) {
        parts.push(waiting[0]!);
        length += waiting.shift()!.length;
      }
      const taken = join(parts);
      const frames = Math.floor(taken.length / VAD_FRAME);
      rest = taken.slice(frames * VAD_FRAME);
      waitingSamples -= frames * VAD_FRAME;
      if (frames === 0) continue;
      const pcm = taken.slice(0, frames * VAD_FRAME);
      let probabilities: Float32Array;
      try {
        probabilities = await stream.probabilities(pcm);
      } catch (error) {
        emit({ type: 'listening-failed', startS: looked / RATE, pcm, error: error as Error });
        // As silence, so that the times of what follows stay true.
        probabilities = new Float32Array(frames);
      }
      if (isClosed || isFinishing) return;
      looked += pcm.length;
      for (let i = 0; i < frames; i++) {
        const frame = pcm.slice(i * VAD_FRAME, (i + 1) * VAD_FRAME);
        measure(frame);
        for (const event of endpointer.push(frame, probabilities[i]!)) handle(event);
      }
      readAhead();
    }
  }

  function handle(event: ReturnType<Endpointer['push']>[number]): void {
    if (event.type === 'speech-started') {
      partialText = '';
      settled = '';
      lastPartialAt = performance.now() - (REREAD_MS - FIRST_READ_MS);
      emit({ type: 'speech-started', startS: event.startSample / RATE });
      return;
    }
    stopPartial();
    if (event.type === 'speech-dismissed') {
      stopEarly();
      emit({ type: 'speech-dismissed', startS: event.startSample / RATE });
      return;
    }
    const { utterance } = event;
    const times = { startS: utterance.startSample / RATE, endS: utterance.endSample / RATE };
    emit({ type: 'utterance-ended', ...times, utterance });
    const noticed = performance.now();
    const ahead = early?.endSample === utterance.endSample ? early : undefined;
    if (ahead) early = undefined;
    else stopEarly();
    const result = ahead?.result ?? recogniser.recognise(utterance.pcm, context(), { priority: 'live' });
    const reading = result
      .then(
        (recognition) =>
          emit({
            type: 'utterance-recognised',
            ...times,
            utterance,
            recognition,
            waitedMs: performance.now() - noticed,
          }),
        (error: Error) => emit({ type: 'utterance-failed', ...times, utterance, error }),
      )
      .finally(() => readings.delete(reading));
    readings.add(reading);
  }

  /** Starts the final reading early in a pause, or the next reading of the words so far. */
  function readAhead(): void {
    if (!endpointer.isOpen) return;
    const silent = endpointer.silenceMs;
    if (early && silent < EARLY_MS) stopEarly();
    if (silent >= EARLY_MS && !early) {
      const utterance = endpointer.openUtterance();
      if (!utterance) return;
      stopPartial();
      const abort = new AbortController();
      const result = recogniser.recognise(utterance.pcm, context(), {
        priority: 'live',
        signal: abort.signal,
      });
      result.catch(() => {});
      early = { endSample: utterance.endSample, abort, result };
      return;
    }
    if (!showWords || partial || early || performance.now() - lastPartialAt < REREAD_MS) return;
    const utterance = endpointer.openUtterance();
    if (!utterance || utterance.pcm.length < RATE * 0.6) return;
    const abort = new AbortController();
    const reading = { abort, at: performance.now() };
    partial = reading;
    recogniser
      .recognise(utterance.pcm, context(), { priority: 'partial', signal: abort.signal, beam: 1 })
      .then(
        ({ text }) => {
          if (partial !== reading) return;
          settled = agreement(partialText, text);
          partialText = text;
          if (text !== '') emit({ type: 'words-heard', startS: utterance.startSample / RATE, settled, text });
        },
        () => {},
      )
      .finally(() => {
        if (partial !== reading) return;
        partial = undefined;
        lastPartialAt = performance.now();
      });
  }

  function stopPartial(): void {
    partial?.abort.abort();
    partial = undefined;
  }
  function stopEarly(): void {
    early?.abort.abort();
    early = undefined;
  }

  function measure(frame: Float32Array): void {
    for (const sample of frame) {
      levelSum += sample * sample;
      if (Math.abs(sample) >= 0.999) clipped++;
    }
    if (++levelFrames < LEVEL_FRAMES) return;
    const count = levelFrames * VAD_FRAME;
    emit({
      type: 'level-measured',
      db: 10 * Math.log10(levelSum / count + 1e-12),
      clipped: clipped / count,
      speaking: endpointer.isOpen,
    });
    levelFrames = 0;
    levelSum = 0;
    clipped = 0;
  }

  function run(): Promise<void> {
    work ??= look().finally(() => {
      work = undefined;
    });
    return work;
  }

  return {
    push(pcm) {
      if (isClosed || isFinishing || pcm.length === 0) return;
      // A copy, because the sender may use its buffer again; in pieces, because it may be minutes long.
      for (let at = 0; at < pcm.length; at += MOST_SAMPLES) waiting.push(pcm.slice(at, at + MOST_SAMPLES));
      waitingSamples += pcm.length;
      void run();
    },
    async flush() {
      // Once closed, nothing takes what waits.
      while (!isClosed && (work || waiting.length > 0)) await run();
      if (isClosed) return;
      if (rest.length > 0) {
        const last = new Float32Array(VAD_FRAME);
        last.set(rest);
        waitingSamples += VAD_FRAME - rest.length;
        rest = new Float32Array(0);
        waiting.push(last);
        await run();
      }
      for (const event of endpointer.flush()) handle(event);
      await Promise.all(readings);
    },
    async finish() {
      isFinishing = true;
      stopPartial();
      stopEarly();
      await Promise.all(readings);
    },
    close() {
      if (isClosed) return;
      isClosed = true;
      stopPartial();
      stopEarly();
      stream.close();
    },
    behindS: () => waitingSamples / RATE,
  };
}

/** The words at the start that both readings have, as the second one writes them. */
function agreement(before: string, now: string): string {
  const plain = (word: string) => word.toLowerCase().replace(/[^\p{L}\p{N}']/gu, '');
  const earlier = before.split(' ').map(plain);
  const words = now.split(' ');
  let count = 0;
  while (count < words.length && count < earlier.length && plain(words[count]!) === earlier[count]) count++;
  return words.slice(0, count).join(' ');
}

function join(parts: Float32Array[]): Float32Array {
  const joined = new Float32Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    joined.set(part, at);
    at += part.length;
  }
  return joined;
}
