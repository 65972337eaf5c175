import { AudioFileError } from './audio-file-error.ts';
import { type DecodedAudio, decodeAudio } from './decode-audio.ts';
import { Endpointer, type EndpointerSettings, type Utterance } from './endpointer.ts';
import { QuietGate } from './quiet-gate.ts';
import { loadSileroVad, type SileroVad, VAD_FRAME } from './silero-vad.ts';

export type RecordingReply =
  | { type: 'utterance'; utterance: Utterance; share: number; decodedS: number }
  | { type: 'progress'; share: number; decodedS: number }
  | { type: 'done'; audio: DecodedAudio }
  | { type: 'failed'; message: string; reason: AudioFileError['reason'] | undefined };

/** The parent says `taken` for each utterance, so that the process never runs far ahead of the recogniser. */
export type RecordingRequest =
  | { type: 'read'; path: string; settings: Partial<EndpointerSettings> }
  | { type: 'taken' };

/** Utterances sent and not yet taken. */
const MOST_AHEAD = 3;

/**
 * Reads recordings, one at a time: decodes, runs voice activity, cuts at pauses. A process of its own, so that hours of
 * sound never hold up the server and a damaged file can take down nothing else.
 */
const [modelsDir] = process.argv.slice(2) as [string];
process.on('disconnect', () => process.exit(0));
const send = (reply: RecordingReply) =>
  new Promise<void>((resolve) => process.send?.(reply, () => resolve()));

let ahead = 0;
let wake: (() => void) | undefined;
let loading: Promise<SileroVad> | undefined;
process.on('message', (request: RecordingRequest) => {
  if (request.type === 'taken') {
    ahead--;
    wake?.();
  } else void answer(request.path, request.settings);
});

async function answer(path: string, settings: Partial<EndpointerSettings>): Promise<void> {
  try {
    await read(path, settings);
  } catch (error) {
    await send({
      type: 'failed',
      message: String((error as Error)?.message ?? error),
      reason: error instanceof AudioFileError ? error.reason : undefined,
    });
  }
  // The decoder's memory lies outside the heap, where the engine is slow to see that it can go.
  globalThis.gc?.();
}

async function read(path: string, settings: Partial<EndpointerSettings>): Promise<void> {
  loading ??= loadSileroVad(modelsDir);
  const vad = (await loading).open();
  const gate = new QuietGate();
  const probability = async (sound: Float32Array): Promise<number> => {
    const look = gate.open(sound);
    if (!look) return 0;
    let last = 0;
    for (const one of look.frames) last = await vad.probability(one);
    gate.heard(look, last);
    return last;
  };
  const endpointer = new Endpointer(settings);
  let frame = new Float32Array(VAD_FRAME);
  let filled = 0;
  let samples = 0;
  let share = 0;
  let told = 0;
  ahead = 0;

  const give = async (events: ReturnType<Endpointer['push']>) => {
    for (const event of events) {
      if (event.type !== 'utterance-ended') continue;
      ahead++;
      await send({ type: 'utterance', utterance: event.utterance, share, decodedS: samples / 16_000 });
      while (ahead >= MOST_AHEAD) {
        await new Promise<void>((resolve) => {
          wake = resolve;
        });
      }
    }
  };

  const pieces = decodeAudio(path);
  for (;;) {
    const next = await pieces.next();
    if (next.done) {
      if (filled > 0) {
        frame.fill(0, filled);
        await give(endpointer.push(frame, await probability(frame)));
      }
      await give(endpointer.flush());
      await send({ type: 'done', audio: next.value });
      return;
    }
    const { pcm } = next.value;
    share = next.value.share;
    for (let at = 0; at < pcm.length; ) {
      const count = Math.min(VAD_FRAME - filled, pcm.length - at);
      frame.set(pcm.subarray(at, at + count), filled);
      filled += count;
      at += count;
      samples += count;
      if (filled < VAD_FRAME) continue;
      await give(endpointer.push(frame, await probability(frame)));
      frame = new Float32Array(VAD_FRAME);
      filled = 0;
    }
    if (samples - told > 16_000 * 5) {
      told = samples;
      await send({ type: 'progress', share, decodedS: samples / 16_000 });
    }
  }
}
