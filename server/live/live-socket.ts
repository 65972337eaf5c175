import type { IncomingMessage, Server } from 'node:http';
import type { Server as SecureServer } from 'node:https';
import type { Duplex } from 'node:stream';
import { setImmediate, setTimeout } from 'node:timers/promises';
import { type RawData, type WebSocket, WebSocketServer } from 'ws';
import { ClientMessage, type RecogniserStatus, type ServerMessage } from '../../shared/wire.ts';
import type { Hearing } from '../hearing.ts';
import { type LanDoor, NOT_LET_IN } from '../lan/lan-door.ts';
import { InvalidInput } from '../plugins/answer-errors.ts';
import { whyForeign } from '../plugins/guard.ts';
import type { RecordingQueue } from '../recordings/recording-queue.ts';
import { runCommand } from '../run-command.ts';
import { DiskTrouble } from '../store/disk-trouble.ts';
import type { Library } from '../store/library.ts';
import { type QuiltStore, Refusal } from '../store/quilt-store.ts';
import type { LeftOverSound } from './left-over-sound.ts';
import type { MicrophoneStream } from './microphone-stream.ts';
import { OrphanedSound } from './orphaned-sound.ts';
import { stretchHeardUntil } from './stretch-heard-until.ts';

const PATH = '/live';
/** Close code by which a page knows that its device is no longer let in (4000 to 4999 are the application's own, RFC 6455 7.4.2). */
const SENT_AWAY = 4401;
/** A note of 100,000 characters as JSON; a second of audio is 32 kB. */
const MAX_MESSAGE_BYTES = 2 * 1024 * 1024;
/** A page that does not take what it is sent is let go; it comes back and resumes by number. */
const MAX_UNSENT_BYTES = 16 * 1024 * 1024;
/** Events in one message, so that a long log comes in pieces. */
const EVENTS_A_MESSAGE = 2_000;
/** How far a long log may be ahead of the page that takes it. */
const MOST_AHEAD_BYTES = 4 * 1024 * 1024;
const DRAIN_MS = 10;
/** Messages that one page may send in a second: microphone frames come at about 30. */
const MESSAGES_A_SECOND = 400;

export type LiveOptions = {
  library: Library;
  hosts: readonly string[];
  /** Undefined where this server has no ears. */
  hearing: Hearing | undefined;
  queue: RecordingQueue | undefined;
  leftOver: LeftOverSound | undefined;
  /** Where the server listens on the network too: who may come in. */
  door?: LanDoor | undefined;
  heartbeatMs: number;
};

/** The live socket: commands up, events down, as in shared/wire.ts. */
export class LiveSocket {
  readonly #server = new WebSocketServer({ noServer: true, maxPayload: MAX_MESSAGE_BYTES });
  readonly #pages = new Set<Page>();
  readonly #heart: NodeJS.Timeout;
  readonly #orphans = new OrphanedSound();

  constructor(readonly options: LiveOptions) {
    options.hearing?.onStatus((status) => {
      for (const page of this.#pages) page.send({ type: 'recogniser', status });
    });
    options.queue?.onJob((job) => {
      for (const page of this.#pages) if (page.quiltId === job.quiltId) page.send({ type: 'job', job });
    });
    this.#heart = setInterval(() => {
      for (const page of this.#pages) page.beat();
    }, options.heartbeatMs).unref();
  }

  attach(server: Server | SecureServer): void {
    server.on('upgrade', (request: IncomingMessage, socket: Duplex, head: Buffer) => {
      socket.on('error', () => socket.destroy());
      const why = whyForeign(request, this.options.hosts);
      if (why !== undefined) return refuseUpgrade(socket, 403, why);
      if (new URL(request.url ?? '/', 'http://localhost').pathname !== PATH) {
        return refuseUpgrade(socket, 404, `The live socket is at ${PATH}.`);
      }
      const { door } = this.options;
      const who = door ? door.whoIs(request) : 'machine';
      if (!who) return refuseUpgrade(socket, 401, NOT_LET_IN);
      this.#server.handleUpgrade(request, socket, head, (webSocket) => {
        const page = new Page(webSocket, this.options, this.#orphans, () => this.#pages.delete(page));
        if (who !== 'machine') page.deviceId = who.id;
        this.#pages.add(page);
      });
    });
  }

  /** Ends the windows of a device that is no longer let in. */
  sendAway(deviceId: string): void {
    for (const page of this.#pages) {
      if (page.deviceId === deviceId) page.end(SENT_AWAY, 'This device was sent away.');
    }
  }

  close(): void {
    clearInterval(this.#heart);
    for (const page of this.#pages) page.end(1001, 'The server is stopping.');
    this.#orphans.close();
    this.#server.close();
  }
}

function refuseUpgrade(socket: Duplex, status: number, why: string): void {
  const body = JSON.stringify({ message: why });
  socket.end(
    `HTTP/1.1 ${status} Refused\r\nConnection: close\r\nContent-Type: application/json\r\nContent-Length: ${Buffer.byteLength(body)}\r\n\r\n${body}`,
  );
}

/** One window's end of the socket. */
class Page {
  #alive = true;
  /** The socket has closed; what it had brought before may still wait in the line. */
  #isGone = false;
  /** The device whose window this is; undefined on the machine itself. */
  deviceId: string | undefined;
  #store: QuiltStore | undefined;
  #unsubscribe: () => void = () => undefined;
  /** Last event number sent, so that events sent while resuming are neither lost nor sent twice. */
  #sent = 0;
  /** Messages are worked off one at a time, in the order they came. */
  #line: Promise<void> = Promise.resolve();
  #microphone: MicrophoneStream | undefined;
  #secondBegan = 0;
  #inThisSecond = 0;

  constructor(
    readonly socket: WebSocket,
    readonly options: LiveOptions,
    readonly orphans: OrphanedSound,
    readonly gone: () => void,
  ) {
    socket.on('pong', () => {
      this.#alive = true;
    });
    socket.on('message', (data, isBinary) => this.#take(data, isBinary));
    socket.on('error', () => socket.terminate());
    socket.on('close', () => {
      this.#isGone = true;
      this.#unsubscribe();
      // Sound that came before the end and still waits in the line goes on into it.
      if (this.#microphone) this.orphans.leave(this.#microphone);
      this.gone();
    });
  }

  beat(): void {
    if (!this.#alive || this.socket.bufferedAmount > MAX_UNSENT_BYTES) {
      this.socket.terminate();
      return;
    }
    this.#alive = false;
    this.socket.ping();
  }

  end(code: number, why: string): void {
    this.socket.close(code, why);
    globalThis.setTimeout(() => this.socket.terminate(), 500).unref();
  }

  send(message: ServerMessage): void {
    if (this.socket.readyState !== this.socket.OPEN) return;
    this.socket.send(JSON.stringify(message));
  }

  #take(data: RawData, isBinary: boolean): void {
    const second = Math.floor(performance.now() / 1000);
    if (second !== this.#secondBegan) {
      this.#secondBegan = second;
      this.#inThisSecond = 0;
    }
    if (++this.#inThisSecond > MESSAGES_A_SECOND) {
      this.send({ type: 'refused', message: 'Too many messages in a second; the connection is closed.' });
      this.end(1008, 'too many messages');
      return;
    }
    if (isBinary) {
      this.#hear(data as Buffer);
      return;
    }
    const message = readMessage(data);
    if (typeof message === 'string') {
      this.send({ type: 'refused', message });
      return;
    }
    this.#line = this.#line
      .then(() => this.#handle(message))
      .catch((error: Error) => {
        // A note that could not be written stays with the page: unanswered, it is sent again when this is back.
        const isNote = message.type === 'command' && message.command.type === 'take-note';
        const isKept = isNote && error instanceof DiskTrouble;
        const ref = message.type === 'command' && !isKept ? { ref: message.ref } : {};
        const field = error instanceof Refusal && error.field !== undefined ? { field: error.field } : {};
        this.send({ type: 'refused', ...ref, ...field, message: error.message });
        if (isKept) this.end(1013, 'try again later');
      });
  }

  async #handle(message: ClientMessage): Promise<void> {
    switch (message.type) {
      case 'ping':
        return this.send({ type: 'pong' });
      case 'hello':
        return this.#join(message.quiltId, message.sinceSeq);
      case 'command': {
        const outcome = await runCommand(this.#joined(), message.command, {
          now: new Date().toISOString(),
          idleMin: this.options.library.settings.data.idleMin,
        });
        return this.send({ type: 'done', ref: message.ref, ...outcome });
      }
      case 'microphone-on': {
        const { hearing, library } = this.options;
        const store = this.#joined();
        if (!hearing || !(await hearing.start())) throw new Refusal(this.#recogniser.message);
        const { MicrophoneStream } = await import('./microphone-stream.ts');
        this.#endMicrophone();
        // In the order in which it was said: what a crash left over comes first.
        await this.options.leftOver?.before(store.id);
        const heardUntil = message.stretchId && (await stretchHeardUntil(store, message.stretchId));
        const stream = new MicrophoneStream({
          store,
          library,
          hearing,
          begin: message,
          send: (answer) => this.send(answer),
          // As with a note that could not be written: it comes again when this page is back.
          onTrouble: (error) => {
            this.send({ type: 'refused', message: error.message });
            this.end(1013, 'try again later');
          },
        });
        if (heardUntil) stream.skipUntil(heardUntil);
        this.orphans.adopt(stream);
        this.#microphone = stream;
        // It fell away while the recogniser was getting ready.
        if (this.#isGone) this.orphans.leave(stream);
        return;
      }
      case 'microphone-off':
      case 'utterance-end':
        if (this.#microphone?.id === message.streamId) this.#endMicrophone();
        return;
      case 'speaking':
        this.#microphone?.speaking(message.on);
        return;
      case 'cancel-job': {
        const store = this.#joined();
        if (!this.options.queue) throw new Refusal(ABSENT.message);
        const job = await this.options.queue.cancel(store, message.jobId);
        return this.send({ type: 'job', job });
      }
    }
  }

  async #join(quiltId: string, sinceSeq: number): Promise<void> {
    this.#unsubscribe();
    const store = await this.options.library.quilt(quiltId);
    this.#store = store;
    if (this.#isGone) return;
    this.send({ type: 'welcome', seq: store.log.seq, recogniser: this.#recogniser });
    this.#sent = sinceSeq;
    for (;;) {
      const missed = store.log.eventsSince(this.#sent, EVENTS_A_MESSAGE);
      if (missed.length === 0) break;
      this.#pass(missed);
      if (missed.length < EVENTS_A_MESSAGE) break;
      // A long log goes out as fast as the page takes it, and others are answered meanwhile.
      await setImmediate();
      while (this.socket.bufferedAmount > MOST_AHEAD_BYTES && !this.#isGone) await setTimeout(DRAIN_MS);
      if (this.#isGone) return;
    }
    // In the same turn as the last piece, so that nothing comes between.
    this.#unsubscribe = store.subscribe((events) => this.#pass(events));
    for (const job of (await this.options.queue?.list(store)) ?? []) this.send({ type: 'job', job });
  }

  get quiltId(): string | undefined {
    return this.#store?.id;
  }

  get #recogniser(): RecogniserStatus {
    return this.options.hearing?.status ?? ABSENT;
  }

  /** Sound goes through the same line as messages, so that it can't overtake the one that begins its stream. */
  #hear(frame: Buffer): void {
    this.#line = this.#line.then(() => {
      if (!this.#microphone || this.#microphone.push(frame)) return;
      this.send({
        type: 'refused',
        message: 'Sound comes faster than it can be heard; the connection is closed.',
      });
      this.end(1008, 'too much sound');
    });
  }

  #endMicrophone(): void {
    const ended = this.#microphone;
    this.#microphone = undefined;
    if (!ended) return;
    this.orphans.forget(ended);
    ended
      .end()
      .catch((error: Error) => this.send({ type: 'refused', message: error.message }))
      .finally(() => ended.drop());
  }

  #pass(events: Parameters<Parameters<QuiltStore['subscribe']>[0]>[0]): void {
    const fresh = events.filter((event) => event.seq > this.#sent);
    if (fresh.length === 0) return;
    this.#sent = fresh.at(-1)!.seq;
    this.send({ type: 'events', events: fresh });
    if (this.socket.bufferedAmount > MAX_UNSENT_BYTES * 4) this.socket.terminate();
  }

  #joined(): QuiltStore {
    if (!this.#store)
      throw new Refusal('Say hello with a quilt first: {"type":"hello","quiltId":…,"sinceSeq":0}.');
    return this.#store;
  }
}

const ABSENT: RecogniserStatus = {
  state: 'absent',
  message: 'There is no recogniser here yet; typed notes are taken as ever.',
};

function readMessage(data: RawData): ClientMessage | string {
  let value: unknown;
  try {
    value = JSON.parse(data.toString());
  } catch {
    return 'A message has to be JSON.';
  }
  const parsed = ClientMessage.safeParse(value);
  return parsed.success ? parsed.data : new InvalidInput(parsed.error).message;
}
