import type { ClientMessage, ListeningPause } from '../../shared/wire.ts';

const RATE = 16_000;
/** What the page keeps while the server is away. */
const LIMIT_S = 600;
/** As much as may lie in the socket unsent while held audio is sent after. */
const SOCKET_BYTES = 256 * 1024;
const FRAMES_A_PIECE = 125;

type Way = 'always' | 'held' | 'on-call';

/** The side of the socket that the outbox needs. */
export type AudioWire = {
  say(message: ClientMessage): boolean;
  sendAudio(frame: Int16Array): boolean;
  bufferedBytes(): number;
};

type Stretch = {
  /** The same on every socket, so that the server knows what it was sent before: that of its first stream. */
  id: string | null;
  way: Way;
  /** Instant of the stretch's first sample, in ms. */
  startMs: number;
  /** Samples of it that the server is known to have. */
  kept: number;
  frames: Int16Array[];
  /** How many of `frames` have gone into the present socket. */
  sent: number;
  /** Its stream on the present socket, and how many samples the server had of it before that. */
  streamId: string | null;
  streamBase: number;
  ended: boolean;
  offSaid: boolean;
};

/**
 * Keeps recorded audio until the server says that it has it (`acknowledge`): sent at once while the socket is there, held
 * up to ten minutes while it is away, then sent on in order. What has merely left the socket may be lost in a server that
 * stops. A new socket has to be told the time in which she has said not to be listened to (`pause`), and whether, on
 * call, she has called (`awake`).
 */
export function createAudioOutbox(
  wire: AudioWire,
  newId: () => string,
  {
    limitS = LIMIT_S,
    pause = () => null,
    awake = () => false,
  }: { limitS?: number; pause?: () => ListeningPause | null; awake?: () => boolean } = {},
) {
  let stretches: Stretch[] = [];
  let open = false;

  const heldSamples = () => stretches.reduce((sum, s) => sum + s.frames.reduce((n, f) => n + f.length, 0), 0);

  function flush(): void {
    if (!open) return;
    for (const stretch of stretches) {
      if (stretch.streamId === null) {
        if (stretch.ended && stretch.frames.length === 0) continue;
        const streamId = newId();
        const at = new Date(stretch.startMs + (stretch.kept / RATE) * 1000).toISOString();
        const paused = pause();
        const on = {
          type: 'microphone-on',
          streamId,
          stretchId: stretch.id ?? streamId,
          at,
          way: stretch.way,
          sampleRate: RATE,
          ...(paused ? { pause: paused } : {}),
          ...(stretch.way === 'on-call' && stretch.id !== null && awake() ? { awake: true } : {}),
        } as const;
        if (!wire.say(on)) return;
        stretch.id ??= streamId;
        stretch.streamId = streamId;
        stretch.streamBase = stretch.kept;
      }
      while (stretch.sent < stretch.frames.length) {
        if (wire.bufferedBytes() > SOCKET_BYTES) return;
        const [piece, frames] = nextPiece(stretch);
        if (!wire.sendAudio(piece)) return;
        stretch.sent += frames;
      }
      if (stretch.ended && !stretch.offSaid) {
        if (stretch.way === 'held') wire.say({ type: 'utterance-end', streamId: stretch.streamId });
        wire.say({ type: 'microphone-off', streamId: stretch.streamId });
        stretch.offSaid = true;
      }
      // What comes after waits until this one is whole, so that the server hears in order.
      if (!stretch.ended) return;
    }
    stretches = stretches.filter(
      (s) => !(s.ended && s.frames.length === 0 && (s.offSaid || s.streamId === null)),
    );
  }

  /** One frame while all goes well; held audio in pieces of seconds, so that few messages carry it. */
  function nextPiece(stretch: Stretch): [Int16Array, number] {
    const due = stretch.frames.slice(stretch.sent, stretch.sent + FRAMES_A_PIECE);
    if (due.length === 1) return [due[0]!, 1];
    const piece = new Int16Array(due.reduce((n, frame) => n + frame.length, 0));
    let at = 0;
    for (const frame of due) {
      piece.set(frame, at);
      at += frame.length;
    }
    return [piece, due.length];
  }

  return {
    begin(way: Way, startMs: number): void {
      stretches.push({
        id: null,
        way,
        startMs,
        kept: 0,
        frames: [],
        sent: 0,
        streamId: null,
        streamBase: 0,
        ended: false,
        offSaid: false,
      });
    },
    /** False where no more fits: the caller stops recording and says so. */
    push(frame: Int16Array): boolean {
      const stretch = stretches.at(-1);
      if (!stretch || stretch.ended) return true;
      if (heldSamples() + frame.length > limitS * RATE) return false;
      stretch.frames.push(frame);
      flush();
      return true;
    },
    end(): void {
      const stretch = stretches.at(-1);
      if (stretch) stretch.ended = true;
      flush();
    },
    /** The server has `samples` of the stream. */
    acknowledge(streamId: string, samples: number): void {
      const stretch = stretches.find((s) => s.streamId === streamId);
      if (!stretch) return;
      while (
        stretch.sent > 0 &&
        stretch.frames.length > 0 &&
        stretch.kept + stretch.frames[0]!.length <= stretch.streamBase + samples
      ) {
        stretch.kept += stretch.frames.shift()!.length;
        stretch.sent--;
      }
      flush();
    },
    opened(): void {
      open = true;
      flush();
    },
    /** The socket is gone: what it had not handed over goes into a new stream on the next one. */
    closed(): void {
      open = false;
      for (const stretch of stretches) {
        stretch.sent = 0;
        stretch.streamId = null;
        stretch.offSaid = false;
      }
    },
    flush,
    /** Seconds of sound that the server does not have yet. */
    heldS: () => heldSamples() / RATE,
    /** The stream that is being recorded, as the server knows it. */
    streamId: () => stretches.at(-1)?.streamId ?? null,
  };
}
export type AudioOutbox = ReturnType<typeof createAudioOutbox>;
