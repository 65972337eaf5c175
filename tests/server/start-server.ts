import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { fileURLToPath } from 'node:url';
import { onTestFinished } from 'vitest';
import WebSocket from 'ws';
import { type AppOptions, buildApp } from '../../server/app.ts';
import type { StoreOptions } from '../../server/store/quilt-store.ts';
import type { QuiltDetails } from '../../shared/quilt.ts';
import type { ClientMessage, Command, ServerMessage } from '../../shared/wire.ts';
import { temporaryFolder } from '../store/temporary-folder.ts';

/** The server in this process, listening on a port of its own. */
export async function startServer(options: Partial<AppOptions> = {}): Promise<Server> {
  const dataFolder = options.dataFolder ?? (await temporaryFolder());
  const app = await buildApp({ logging: false, ...options, dataFolder });
  const address = await app.listen({ port: 0, host: '127.0.0.1' });
  let closed = false;
  const close = async (): Promise<void> => {
    if (!closed) await app.close();
    closed = true;
  };
  onTestFinished(close);
  return { ...clientOf(address), app, dataFolder, close };
}
export type Server = ReturnType<typeof clientOf> & {
  app: Awaited<ReturnType<typeof buildApp>>;
  dataFolder: string;
  close: () => Promise<void>;
};

const CHILD = fileURLToPath(new URL('./child-server.ts', import.meta.url));

/**
 * The server as `npm start` has it, in a process that can be killed. `run`: what Node is given, where it is not the
 * source itself; `modelsDir`: the folder of its speech models, where it is to have ears.
 */
export async function spawnServer(
  dataFolder: string,
  {
    run = ['--import', 'tsx', CHILD],
    modelsDir = '',
    sizes = {},
  }: { run?: string[]; modelsDir?: string; sizes?: StoreOptions } = {},
): Promise<ReturnType<typeof clientOf> & { child: ChildProcess }> {
  const child = spawn(process.execPath, run, {
    env: {
      ...process.env,
      QUILTSIDE_DATA: dataFolder,
      QUILTSIDE_MODELS: modelsDir,
      SIZES: JSON.stringify(sizes),
    },
    stdio: ['ignore', 'pipe', 'inherit', 'ipc'],
  });
  let said = '';
  for await (const chunk of child.stdout!) {
    said += String(chunk);
    const address = /http:\/\/127\.0\.0\.1:\d+/.exec(said)?.[0];
    if (address) return { ...clientOf(address), child };
  }
  throw new Error(`The server did not start: ${said}`);
}

export function clientOf(address: string) {
  const json = { 'content-type': 'application/json' };
  return {
    address,
    get: (path: string, init: RequestInit = {}) => fetch(`${address}${path}`, init),
    post: (path: string, body: unknown) =>
      fetch(`${address}${path}`, { method: 'POST', headers: json, body: JSON.stringify(body) }),
    async makeQuilt(details: Partial<QuiltDetails> = {}): Promise<string> {
      const made = await fetch(`${address}/api/quilts`, {
        method: 'POST',
        headers: json,
        body: JSON.stringify({ name: 'Blue star', rows: 7, blocks: 5, ...details }),
      });
      return ((await made.json()) as { id: string }).id;
    },
    command: (quiltId: string, command: Command) =>
      fetch(`${address}/api/quilts/${quiltId}/commands`, {
        method: 'POST',
        headers: json,
        body: JSON.stringify(command),
      }),
    live: () => LiveClient.open(address.replace('http', 'ws')),
  };
}

/** One end of the live socket, which remembers what it was told. */
export class LiveClient {
  readonly messages: ServerMessage[] = [];
  readonly #waiting = new Set<() => void>();
  closed: { code: number; why: string } | undefined;

  private constructor(readonly socket: WebSocket) {
    socket.on('message', (data) => {
      this.messages.push(JSON.parse(String(data)) as ServerMessage);
      for (const wake of this.#waiting) wake();
    });
    socket.on('close', (code, why) => {
      this.closed = { code, why: String(why) };
      for (const wake of this.#waiting) wake();
    });
    socket.on('error', () => undefined);
  }

  static async open(address: string, options: WebSocket.ClientOptions = {}): Promise<LiveClient> {
    const client = new LiveClient(new WebSocket(`${address}/live`, options));
    await once(client.socket, 'open');
    return client;
  }

  send(message: ClientMessage): void {
    this.socket.send(JSON.stringify(message));
  }

  /** The first message that fits, of those that came and those still to come. */
  async until<T extends ServerMessage['type']>(
    type: T,
    fits: (message: Extract<ServerMessage, { type: T }>) => boolean = () => true,
    limitMs = 20_000,
  ): Promise<Extract<ServerMessage, { type: T }>> {
    const find = () =>
      this.messages.find(
        (message): message is Extract<ServerMessage, { type: T }> =>
          message.type === type && fits(message as Extract<ServerMessage, { type: T }>),
      );
    const end = Date.now() + limitMs;
    for (let found = find(); ; found = find()) {
      if (found) return found;
      if (Date.now() > end || this.closed) {
        throw new Error(`No fitting ${type} came: ${JSON.stringify(this.messages.slice(-5)).slice(0, 1000)}`);
      }
      await new Promise<void>((done) => {
        const timer = setTimeout(wake, 200);
        const waiting = this.#waiting;
        function wake(): void {
          clearTimeout(timer);
          waiting.delete(wake);
          done();
        }
        waiting.add(wake);
      });
    }
  }

  async untilClosed(): Promise<{ code: number; why: string }> {
    if (!this.closed) await once(this.socket, 'close');
    return this.closed!;
  }

  /** Numbers of the events that came, in the order they came. */
  get seqs(): number[] {
    return this.messages.flatMap((message) =>
      message.type === 'events' ? message.events.map(({ seq }) => seq) : [],
    );
  }
}
