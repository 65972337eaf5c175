import type { IncomingMessage, Server } from 'node:http';
import type { Duplex } from 'node:stream';
import { type RawData, type WebSocket, WebSocketServer } from 'ws';
import { ClientMessage, type RecogniserStatus, type ServerMessage } from '../../shared/wire.ts';
import { InvalidInput } from '../plugins/answer-errors.ts';
import { whyForeign } from '../plugins/guard.ts';
import { runCommand } from '../run-command.ts';
import type { Library } from '../store/library.ts';
import { type QuiltStore, Refusal } from '../store/quilt-store.ts';

const PATH = '/live';
/** A note of 100,000 characters as JSON; a second of audio is 32 kB. */
const MAX_MESSAGE_BYTES = 2 * 1024 * 1024;
const HEARTBEAT_MS = 20_000;
/** A page that does not take what it is sent is let go; it comes back and resumes by number. */
const MAX_UNSENT_BYTES = 16 * 1024 * 1024;
/** Events in one message, so that a long log comes in pieces. */
const EVENTS_A_MESSAGE = 2_000;
/** Messages that one page may send in a second: microphone frames come at about 30. */
const MESSAGES_A_SECOND = 400;

export type LiveOptions = { library: Library; hosts: readonly string[] };

/** The live socket: commands up, events down, as in shared/wire.ts. */
export class LiveSocket {
  readonly #server = new WebSocketServer({ noServer: true, maxPayload: MAX_MESSAGE_BYTES });
  readonly #pages = new Set<Page>();
  readonly #heart: NodeJS.Timeout;

  constructor(readonly options: LiveOptions) {
    this.#heart = setInterval(() => {
      for (const page of this.#pages) page.beat();
    }, HEARTBEAT_MS).unref();
  }

  attach(server: Server): void {
    server.on('upgrade', (request: IncomingMessage, socket: Duplex, head: Buffer) => {
      socket.on('error', () => socket.destroy());
      const why = whyForeign(request, this.options.hosts);
      if (why !== undefined) return refuseUpgrade(socket, 403, why);
      if (new URL(request.url ?? '/', 'http://localhost').pathname !== PATH) {
        return refuseUpgrade(socket, 404, `The live socket is at ${PATH}.`);
      }
      this.#server.handleUpgrade(request, socket, head, (webSocket) => {
        const page = new Page(webSocket, this.options, () => this.#pages.delete(page));
        this.#pages.add(page);
      });
    });
  }

  close(): void {
    clearInterval(this.#heart);
    for (const page of this.#pages) page.end(1001, 'The server is stopping.');
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
  #store: QuiltStore | undefined;
  #unsubscribe: () => void = () => undefined;
  /** Last event number sent, so that events sent while resuming are neither lost nor sent twice. */
  #sent = 0;
  /** Messages are worked off one at a time, in the order they came. */
  #line: Promise<void> = Promise.resolve();
  #secondBegan = 0;
  #inThisSecond = 0;

  constructor(
    readonly socket: WebSocket,
    readonly options: LiveOptions,
    readonly gone: () => void,
  ) {
    socket.on('pong', () => {
      this.#alive = true;
    });
    socket.on('message', (data, isBinary) => this.#take(data, isBinary));
    socket.on('error', () => socket.terminate());
    socket.on('close', () => {
      this.#unsubscribe();
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
    setTimeout(() => this.socket.terminate(), 500).unref();
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
    if (isBinary) return;
    const message = readMessage(data);
    if (typeof message === 'string') {
      this.send({ type: 'refused', message });
      return;
    }
    this.#line = this.#line
      .then(() => this.#handle(message))
      .catch((error: Error) => {
        const ref = message.type === 'command' ? { ref: message.ref } : {};
        this.send({ type: 'refused', ...ref, message: error.message });
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
      default:
        throw new Refusal(ABSENT.message);
    }
  }

  async #join(quiltId: string, sinceSeq: number): Promise<void> {
    this.#unsubscribe();
    const store = await this.options.library.quilt(quiltId);
    this.#store = store;
    const { log } = store;
    this.send({ type: 'welcome', seq: log.seq, recogniser: ABSENT });
    this.#sent = sinceSeq;
    this.#unsubscribe = store.subscribe((events) => this.#pass(events));
    const missed = log.eventsSince(sinceSeq);
    for (let i = 0; i < missed.length; i += EVENTS_A_MESSAGE)
      this.#pass(missed.slice(i, i + EVENTS_A_MESSAGE));
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
