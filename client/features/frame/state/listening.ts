import { computed, effect, signal } from '@preact/signals';
import type { ListeningPause } from '../../../../shared/wire.ts';
import { type AudioOutbox, createAudioOutbox } from '../../../audio/audio-outbox.ts';
import type { CapturedFrame } from '../../../audio/capture-worklet.ts';
import { type Microphone, microphoneTrouble, openMicrophone } from '../../../audio/microphone.ts';
import { playTone } from '../../../audio/tones.ts';
import { openQuilt } from '../../link/state/open-quilt.ts';
import type { QuiltLink } from '../../link/state/quilt-link.ts';
import { loadSettings, machineSettings, UNTIL_KNOWN } from '../../settings/state/machine-settings.ts';

/**
 * off: the microphone is closed. opening: waiting for the browser. ready: open but nothing is kept
 * (held to talk, not held now). open: what is said is taken down.
 */
export type Ear = 'off' | 'opening' | 'ready' | 'open';

export const ear = signal<Ear>('off');
/** Peak of the last frame, 0 to 1. */
export const soundLevel = signal(0);
/** Something about the microphone that she should know; null when all is well. */
export const earTrouble = signal<string | null>(null);
/** Seconds of sound that wait for the server. */
export const heldSeconds = signal(0);

export const way = computed(() => (machineSettings.value ?? UNTIL_KNOWN).listening);

/** The microphone is open, and she has said not to be listened to: until a moment, or until she calls. */
export const pause = signal<ListeningPause | null>(null);

const SILENT_FRAMES = 160; // about five seconds
const CLIPPED_FRAMES = 12;
const NO_SOUND = 'The microphone gives no sound at all. See that it is not muted.';

let microphone: Microphone | null = null;
let outbox: AudioOutbox | null = null;
let outboxOf: QuiltLink | null = null;
let unlisten: (() => void) | null = null;
let silent = 0;
let clipped = 0;
let wanted = false;
let pauseEnds: ReturnType<typeof setTimeout> | undefined;

const tone = (name: Parameters<typeof playTone>[0]) => {
  if ((machineSettings.peek() ?? UNTIL_KNOWN).tones) playTone(name);
};

effect(() => {
  const link = openQuilt.value;
  if (link === outboxOf) return;
  unlisten?.();
  outboxOf = link;
  outbox = null;
  if (!link) {
    closeEar();
    return;
  }
  let awake = false;
  const made = createAudioOutbox(link, () => crypto.randomUUID(), {
    pause: () => pause.peek(),
    awake: () => awake,
  });
  outbox = made;
  if (link.connection.peek() === 'live') made.opened();
  const timer = setInterval(() => {
    made.flush();
    heldSeconds.value = Math.round(made.heldS());
  }, 250);
  const stop = link.listen((message) => {
    if (message.type === 'open') made.opened();
    else if (message.type === 'closed') made.closed();
    else if (message.type === 'level' && message.samples !== undefined) {
      awake = message.awake ?? true;
      made.acknowledge(message.streamId, message.samples);
    } else if (message.type === 'pause') {
      // Of an earlier hold, when she holds again already: her hand says otherwise.
      if (ear.peek() !== 'open' || message.streamId === made.streamId()) setPause(message.pause);
    } else if (message.type === 'way') void changeWay();
  });
  unlisten = () => {
    clearInterval(timer);
    stop();
  };
});

function setPause(next: ListeningPause | null): void {
  clearTimeout(pauseEnds);
  const was = pause.peek();
  // Held to talk, her order comes when she has let go.
  pause.value = ear.peek() === 'open' || ear.peek() === 'ready' ? next : null;
  if (pause.peek() && !was) tone('off');
  if (was && !pause.peek() && ear.peek() === 'open') tone('on');
  const until = pause.peek()?.until;
  // The server says when it is over; this is for the time in which it is away.
  if (until) pauseEnds = setTimeout(() => setPause(null), Math.max(0, Date.parse(until) - Date.now()) + 1000);
}

function forgetPause(): void {
  clearTimeout(pauseEnds);
  pause.value = null;
}

/** She has said to be listened to in another way: the next stretch of sound begins in it. */
async function changeWay(): Promise<void> {
  const wasOpen = ear.peek() === 'open';
  if (wasOpen) endStretch();
  await loadSettings();
  if (!wasOpen) return;
  if (way.peek() === 'held') ear.value = 'ready';
  else beginStretch();
}

async function openEar(): Promise<boolean> {
  if (microphone) return true;
  ear.value = 'opening';
  earTrouble.value = null;
  try {
    microphone = await openMicrophone(takeFrame, () => {
      closeEar();
      earTrouble.value = 'The microphone was unplugged. Plug it in, then start listening again.';
      tone('trouble');
    });
    return true;
  } catch (why) {
    ear.value = 'off';
    earTrouble.value = microphoneTrouble(why);
    tone('trouble');
    return false;
  }
}

function takeFrame(frame: CapturedFrame): void {
  soundLevel.value = frame.peak;
  silent = frame.peak < 0.0006 ? silent + 1 : 0;
  clipped = frame.peak > 0.995 ? clipped + 1 : Math.max(0, clipped - 0.05);
  if (silent > SILENT_FRAMES) earTrouble.value = NO_SOUND;
  else if (silent === 0 && earTrouble.peek() === NO_SOUND) earTrouble.value = null;
  if (clipped > CLIPPED_FRAMES)
    earTrouble.value = 'The sound is too loud for the microphone. Move it away or turn it down.';
  if (ear.peek() !== 'open' || !outbox) return;
  if (!outbox.push(frame.samples)) {
    closeEar();
    earTrouble.value =
      'Ten minutes of sound are held here, and no more fits until the server has taken it. Nothing of it is lost. Listening has stopped.';
    tone('trouble');
  }
}

function beginStretch(): void {
  silent = 0;
  clipped = 0;
  outbox?.begin(way.peek(), Date.now());
  ear.value = 'open';
  tone('on');
}

function endStretch(): void {
  forgetPause();
  outbox?.end();
  tone('off');
}

/** Closes the microphone; what was said is sent whole. */
export function closeEar(): void {
  wanted = false;
  if (ear.peek() === 'open') endStretch();
  else forgetPause();
  microphone?.close();
  microphone = null;
  soundLevel.value = 0;
  ear.value = 'off';
}

/** Starts or stops listening (always and on call), or talking (held, by a click instead of a hold). */
export async function toggleEar(): Promise<void> {
  if (ear.peek() === 'opening') return;
  if (pause.peek()) {
    // A hand on the thimble ends the pause, as her call does.
    outbox?.end();
    forgetPause();
    beginStretch();
    return;
  }
  if (ear.peek() === 'open') {
    if (way.peek() === 'held') release();
    else closeEar();
    return;
  }
  if (await openEar()) beginStretch();
}

/** The held key, pedal or touch goes down. A hand that takes hold ends a pause, as her call does. */
export async function press(): Promise<void> {
  wanted = true;
  if (pause.peek() && ear.peek() === 'open') outbox?.end();
  if (pause.peek() && microphone) {
    forgetPause();
    beginStretch();
    return;
  }
  if (ear.peek() === 'open' || ear.peek() === 'opening') return;
  if ((await openEar()) && wanted) beginStretch();
  else if (microphone) ear.value = 'ready';
}

/** The held key, pedal or touch comes up: the utterance ends here. */
export function release(): void {
  wanted = false;
  if (ear.peek() !== 'open') return;
  // A pause goes on: it was ordered while this was held.
  outbox?.end();
  tone('off');
  ear.value = 'ready';
}
