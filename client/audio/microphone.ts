import type { CapturedFrame } from './capture-worklet.ts';
import workletUrl from './capture-worklet.ts?worker&url';

export type Microphone = { close(): void };

/** Why the microphone would not open, in words that say what to do. */
export function microphoneTrouble(why: unknown): string {
  const name = why instanceof DOMException ? why.name : '';
  if (name === 'NotAllowedError' || name === 'SecurityError') {
    return 'The browser does not let this page use the microphone. Allow it beside the address, then try again. Typing works all the same.';
  }
  if (name === 'NotFoundError' || name === 'OverconstrainedError') {
    return 'No microphone was found. Plug one in, then try again. Typing works all the same.';
  }
  if (name === 'NotReadableError') {
    return 'The microphone is taken by another program. Close that, then try again.';
  }
  return `The microphone would not open${why instanceof Error && why.message ? ` (${why.message})` : ''}. Typing works all the same.`;
}

/**
 * Opens the microphone and hands over 32 ms frames of 16 kHz mono. The context is asked for 16 kHz;
 * where it refuses, the worklet filters and resamples. `onGone` is called when the device goes away.
 */
export async function openMicrophone(
  onFrame: (frame: CapturedFrame) => void,
  onGone: () => void,
): Promise<Microphone> {
  if (!navigator.mediaDevices?.getUserMedia) {
    throw new DOMException('this browser gives no microphone to a page at this address', 'SecurityError');
  }
  const stream = await navigator.mediaDevices.getUserMedia({
    audio: { channelCount: 1, echoCancellation: true, noiseSuppression: false, autoGainControl: true },
  });
  let context: AudioContext;
  try {
    context = new AudioContext({ sampleRate: 16_000, latencyHint: 'interactive' });
    context.createMediaStreamSource(stream).disconnect();
  } catch {
    // Some browsers refuse a source whose rate differs from the context's.
    context = new AudioContext({ latencyHint: 'interactive' });
  }
  try {
    await context.audioWorklet.addModule(workletUrl);
  } catch (why) {
    for (const track of stream.getTracks()) track.stop();
    await context.close();
    throw why;
  }
  const source = context.createMediaStreamSource(stream);
  const capture = new AudioWorkletNode(context, 'capture', { numberOfOutputs: 0 });
  capture.port.onmessage = ({ data }: MessageEvent<CapturedFrame>) => onFrame(data);
  source.connect(capture);
  await context.resume();
  let open = true;
  for (const track of stream.getAudioTracks()) {
    track.onended = () => {
      if (open) onGone();
    };
  }
  return {
    close() {
      open = false;
      capture.port.onmessage = null;
      source.disconnect();
      for (const track of stream.getTracks()) track.stop();
      void context.close();
    },
  };
}
