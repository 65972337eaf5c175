import { type Signal, signal } from '@preact/signals';
import { evolve } from '../../../../core/log/evolve.ts';
import { Log } from '../../../../core/log/log.ts';
import type { Reading } from '../../../../shared/note.ts';
import type {
  ClientMessage,
  Command,
  Job,
  RecogniserStatus,
  ServerMessage,
} from '../../../../shared/wire.ts';
import { instantInZone } from '../../../words/local-time.ts';
import { Refusal } from './api.ts';
import { isLetIn, SENT_AWAY } from './let-in.ts';
import { type NoteOutbox, openNoteOutbox, type WaitingNote } from './note-outbox.ts';

export type Connection = 'joining' | 'live' | 'away';
export type Done = Extract<ServerMessage, { type: 'done' }>;
export type Heard = Extract<ServerMessage, { type: 'heard' }>;
/** The last thing said or typed, and what came of it. */
export type Latest = {
  text: string;
  noteId?: string;
  reading?: Reading;
  answer?: { text: string; working: string[] };
  confidence?: number;
  source: 'typed' | 'spoken';
  waitedMs?: number;
  workedMs?: number;
};

/** What the server hears: how loud, whether it is speech, and whether it takes down what it hears. */
export type Sound = { level: number; speech: boolean; awake: boolean };

/** The live tie between this page and one quilt's log on the server. */
export type QuiltLink = {
  quiltId: string;
  log: Signal<Log | null>;
  connection: Signal<Connection>;
  recogniser: Signal<RecogniserStatus | null>;
  waiting: Signal<WaitingNote[]>;
  latest: Signal<Latest | null>;
  partial: Signal<string>;
  level: Signal<Sound>;
  jobs: Signal<ReadonlyMap<string, Job>>;
  /** What went wrong last, in words; null once it is put right or dismissed. */
  trouble: Signal<string | null>;
  outboxLasting: Signal<boolean>;
  takeNote(text: string): Promise<void>;
  /** Sends a command; rejects with `Refusal` where the server refuses it or is away. */
  send(command: Command): Promise<Done>;
  say(message: ClientMessage): boolean;
  sendAudio(frame: Int16Array): boolean;
  bufferedBytes(): number;
  /** Called with every message, and with 'open' and 'closed' as the socket comes and goes. */
  listen(listener: (message: ServerMessage | { type: 'open' } | { type: 'closed' }) => void): () => void;
  close(): void;
};

const SILENCE: Sound = { level: 0, speech: false, awake: false };
const PING_MS = 15_000;
const SILENT_MS = 40_000;
const RETRY_MS = [250, 500, 1000, 2000, 4000];

export function openQuiltLink(quiltId: string): QuiltLink {
  const log = signal<Log | null>(null);
  const connection = signal<Connection>('joining');
  const recogniser = signal<RecogniserStatus | null>(null);
  const waiting = signal<WaitingNote[]>([]);
  const latest = signal<Latest | null>(null);
  const partial = signal('');
  const level = signal<Sound>(SILENCE);
  const jobs = signal<ReadonlyMap<string, Job>>(new Map());
  const trouble = signal<string | null>(null);
  const outboxLasting = signal(true);
  const listeners = new Set<(message: ServerMessage | { type: 'open' } | { type: 'closed' }) => void>();
  const pending = new Map<string, { resolve: (done: Done) => void; reject: (why: Error) => void }>();

  let socket: WebSocket | null = null;
  let closed = false;
  let tries = 0;
  let retry: ReturnType<typeof setTimeout> | undefined;
  let lastWord = Date.now();
  let joined = false;
  let outbox: NoteOutbox | null = null;
  const outboxReady = openNoteOutbox().then(async (opened) => {
    outbox = opened;
    outboxLasting.value = opened.lasting;
    waiting.value = await opened.list(quiltId);
    void pump();
  });

  const tell = (message: ServerMessage | { type: 'open' } | { type: 'closed' }) => {
    for (const listener of listeners) listener(message);
  };

  function connect(): void {
    if (closed) return;
    const scheme = location.protocol === 'https:' ? 'wss' : 'ws';
    const opening = new WebSocket(`${scheme}://${location.host}/live`);
    opening.binaryType = 'arraybuffer';
    socket = opening;
    opening.onopen = () => {
      lastWord = Date.now();
      say({ type: 'hello', quiltId, sinceSeq: log.peek()?.seq ?? 0 });
    };
    opening.onmessage = ({ data }) => {
      lastWord = Date.now();
      if (typeof data !== 'string') return;
      take(JSON.parse(data) as ServerMessage);
    };
    opening.onclose = ({ code }) => {
      if (code === SENT_AWAY) isLetIn.value = false;
      if (socket === opening) lost();
    };
  }

  function lost(): void {
    socket = null;
    joined = false;
    tell({ type: 'closed' });
    for (const { reject } of pending.values()) {
      reject(
        new Refusal('The connection went away before the server answered. Try again when it is back.', 0),
      );
    }
    pending.clear();
    level.value = SILENCE;
    if (closed) return;
    connection.value = 'away';
    clearTimeout(retry);
    retry = setTimeout(connect, RETRY_MS[Math.min(tries++, RETRY_MS.length - 1)]);
  }

  const watch = setInterval(() => {
    if (!socket || socket.readyState !== WebSocket.OPEN) return;
    if (Date.now() - lastWord > SILENT_MS) {
      const dead = socket;
      lost();
      dead.close();
    } else say({ type: 'ping' });
  }, PING_MS);
  const wake = () => {
    if (!socket && !closed) {
      clearTimeout(retry);
      connect();
    }
  };
  addEventListener('online', wake);

  function take(message: ServerMessage): void {
    switch (message.type) {
      case 'welcome':
        tries = 0;
        joined = true;
        recogniser.value = message.recogniser;
        connection.value = 'live';
        tell({ type: 'open' });
        void pump();
        break;
      case 'events': {
        let next = log.peek() ?? Log.EMPTY;
        for (const numbered of message.events) {
          if (numbered.seq <= next.seq) continue;
          if (numbered.seq !== next.seq + 1) {
            // A gap means that something was missed: ask again from what is known.
            say({ type: 'hello', quiltId, sinceSeq: next.seq });
            break;
          }
          next = evolve(next, numbered);
        }
        log.value = next;
        break;
      }
      case 'done': {
        pending.get(message.ref)?.resolve(message);
        pending.delete(message.ref);
        break;
      }
      case 'refused': {
        const waiter = message.ref === undefined ? undefined : pending.get(message.ref);
        if (waiter && message.ref !== undefined) {
          pending.delete(message.ref);
          waiter.reject(new Refusal(message.message, 422));
        } else trouble.value = message.message;
        break;
      }
      case 'recogniser':
        recogniser.value = message.status;
        break;
      case 'level':
        level.value = { level: message.level, speech: message.speech, awake: message.awake ?? true };
        break;
      case 'partial':
        partial.value = message.text;
        break;
      case 'heard':
        partial.value = '';
        if (message.text.trim()) latest.value = { ...message, source: 'spoken' };
        break;
      case 'job':
        jobs.value = new Map(jobs.peek()).set(message.job.id, message.job);
        break;
      case 'pong':
        break;
    }
    tell(message);
  }

  function say(message: ClientMessage): boolean {
    if (!socket || socket.readyState !== WebSocket.OPEN) return false;
    socket.send(JSON.stringify(message));
    return true;
  }

  function send(command: Command): Promise<Done> {
    return new Promise((resolve, reject) => {
      const ref = crypto.randomUUID();
      pending.set(ref, { resolve, reject });
      if (!joined || !say({ type: 'command', ref, command })) {
        pending.delete(ref);
        reject(
          new Refusal(
            'The server is away, so this was not changed. Notes can still be typed: they wait here.',
            0,
          ),
        );
      }
    });
  }

  let pumping = false;
  /** Sends the waiting notes one by one, the oldest first, each again until the server has it. */
  async function pump(): Promise<void> {
    if (pumping || !joined || !outbox) return;
    pumping = true;
    try {
      for (let note = waiting.peek()[0]; note && joined; note = waiting.peek()[0]) {
        const { clientId, text, at } = note;
        try {
          const done = await send({ type: 'take-note', clientId, text, at });
          latest.value = {
            text,
            source: 'typed',
            ...(done.noteId ? { noteId: done.noteId } : {}),
            ...(done.reading ? { reading: done.reading } : {}),
            ...(done.answer ? { answer: done.answer } : {}),
          };
          tell(done);
        } catch (why) {
          if (why instanceof Refusal && why.status !== 0) {
            trouble.value = `${why.message} The note was: “${text.slice(0, 200)}”`;
          } else return;
        }
        waiting.value = waiting.peek().filter((other) => other.clientId !== clientId);
        await outbox.remove(clientId);
      }
    } finally {
      pumping = false;
    }
  }

  async function takeNote(text: string): Promise<void> {
    await outboxReady;
    const zone = log.peek()?.quilt.zone ?? Intl.DateTimeFormat().resolvedOptions().timeZone;
    const note: WaitingNote = {
      clientId: crypto.randomUUID(),
      quiltId,
      text,
      at: instantInZone(new Date(), zone),
    };
    // kept first, shown after: a note that the page says waits must outlive the window closed the moment after
    await outbox?.add(note);
    waiting.value = [...waiting.peek(), note];
    void pump();
  }

  connect();
  return {
    quiltId,
    log,
    connection,
    recogniser,
    waiting,
    latest,
    partial,
    level,
    jobs,
    trouble,
    outboxLasting,
    takeNote,
    send,
    say,
    sendAudio(frame) {
      if (!socket || socket.readyState !== WebSocket.OPEN || !joined) return false;
      socket.send(frame.buffer as ArrayBuffer);
      return true;
    },
    bufferedBytes: () => socket?.bufferedAmount ?? 0,
    listen(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    close() {
      closed = true;
      clearInterval(watch);
      clearTimeout(retry);
      removeEventListener('online', wake);
      socket?.close();
    },
  };
}
